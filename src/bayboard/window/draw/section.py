"""The Section: what a cut at the chalk line shows, looking left, the metal at the right."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from bayboard.rules.scene import Scene
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import SectionShow
from bayboard.window.theme import Theme


def paint_section(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: SectionShow, rect: QRectF
) -> None:
    """Paint the Section into `rect`; `scale` is the Wall's `beside(pixel column of z = 0)`."""
