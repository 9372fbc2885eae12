"""The Wall: everything the front view shows, in order from the primer up to the tags."""

from collections.abc import Set

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from bayboard.rules.scene import Scene
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import WallShow
from bayboard.window.theme import Theme


def paint_wall(
    p: QPainter,
    scale: Scale,
    scene: Scene,
    theme: Theme,
    show: WallShow,
    rect: QRectF,
    skip: Set[str] = frozenset(),
    only: Set[str] | None = None,
) -> None:
    """Paint the Wall into `rect`.

    `skip`: ids of gear left out together with their leads, and all overlays with them: the
    static layer under a drag.  `only`: nothing but those gear, their leads and the overlays,
    to be painted over that layer.  With neither, everything.
    """
