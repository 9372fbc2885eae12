"""The ledge: gear that still waits, standing true to the Wall's scale, its size written below."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from bayboard.model.layout import Layout
from bayboard.window.draw.scale import Scale
from bayboard.window.theme import Theme


@dataclass(frozen=True, slots=True)
class LedgePlace:
    """Where a waiting piece stands: its id, the pixels it takes, and the room of its size below."""

    gear: str
    rect: QRectF
    label: QRectF


def ledge_places(
    rect: QRectF, scale: Scale, layout: Layout, theme: Theme, scrolled: float = 0.0
) -> tuple[LedgePlace, ...]:
    """Return where the waiting gear stands from left to right; past the right edge they go on."""
    return ()


def paint_ledge(
    p: QPainter,
    rect: QRectF,
    scale: Scale,
    layout: Layout,
    theme: Theme,
    focused: str | None = None,
    hovered: str | None = None,
    in_hand: str | None = None,
    scrolled: float = 0.0,
) -> None:
    """Paint the ledge's back, its lip and what stands on it; a piece in hand is left out."""
