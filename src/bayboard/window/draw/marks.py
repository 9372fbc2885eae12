"""The signs of a finding: solid diamond, filled triangle, open ring; the tick and the open square."""

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter

from bayboard.rules.finding import Severity
from bayboard.window.theme import Theme

MARK = 24.0  # px across, before the Scale setting


def paint_mark(
    p: QPainter,
    at: QPointF,
    severity: Severity,
    number: int | None,
    theme: Theme,
    across: float = MARK,
    cased: bool = True,
) -> None:
    """Paint a severity's sign round `at`, its number inside; `cased` for the scene, not for panels."""


def paint_tick(p: QPainter, at: QPointF, theme: Theme, across: float = 18.0) -> None:
    """Paint the tick round `at`; a word beside it says what is well."""


def paint_unchecked(p: QPainter, at: QPointF, count: int, theme: Theme, across: float = 22.0) -> None:
    """Paint the open square with the count of what nobody could look at round `at`."""
