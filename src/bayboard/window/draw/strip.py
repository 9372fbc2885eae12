"""The stage strip: laths of a folding rule, joined by rivets."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from bayboard.rules.finding import Severity
from bayboard.window.theme import Theme


@dataclass(frozen=True, slots=True)
class Lath:
    """A stage: its name and its worst open finding, else what is unchecked, else a tick.

    `worst` is (severity, number); `unchecked` counts; both empty and `looked` true: a tick.
    """

    name: str
    current: bool = False
    worst: tuple[Severity, int] | None = None
    unchecked: int = 0
    looked: bool = True
    hovered: bool = False
    focused: bool = False


def lath_rects(rect: QRectF, count: int, theme: Theme) -> tuple[QRectF, ...]:
    """Return where the laths lie in the strip, left to right; they overlap by a rivet."""
    return ()


def paint_strip(p: QPainter, rect: QRectF, laths: tuple[Lath, ...], theme: Theme) -> None:
    """Paint the folding rule into the strip's rectangle."""
