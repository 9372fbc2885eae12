"""The steel tapes: the hanging one is the height axis of Wall and Section, the other lies at the foot."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from bayboard.model.layout import Layout, Point, Units
from bayboard.window.draw.scale import Scale
from bayboard.window.theme import Theme

HANGING = 36.0  # px wide
FOOT = 28.0  # px high


def tape_zero(layout: Layout) -> Point:
    """Return where both tapes start, mm in bay axes: the lower left of the wall's box, else of the boards'."""
    return (0.0, 0.0)


def paint_hanging_tape(
    p: QPainter,
    rect: QRectF,
    scale: Scale,
    theme: Theme,
    units: Units,
    zero: float = 0.0,
    pointer: float | None = None,
) -> None:
    """Paint the tape that hangs between Wall and Section; `zero` and `pointer` are y in mm."""


def paint_foot_tape(
    p: QPainter,
    rect: QRectF,
    scale: Scale,
    theme: Theme,
    units: Units,
    zero: float = 0.0,
    pointer: float | None = None,
    chalk: float | None = None,
) -> None:
    """Paint the tape at the foot with the chalk line's tag; `zero`, `pointer`, `chalk` are x in mm."""
