"""The board on drill day as one presses it: a press takes the nearest hole, Tab and arrows walk them."""

from collections.abc import Callable
from math import hypot

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.drill_day.paint_board import paint_day_board, scale_of
from bayboard.window.drill_day.show import BoardShow, Dot
from bayboard.window.listed import Listed
from bayboard.window.theme import LIGHT, Theme, brush
from bayboard.window.trouble import TROUBLE

FELT = 32.0  # px round a hole that are felt: a gloved finger


class BoardField(QWidget, Listed):
    """The panel with the board.  `taken` carries the hole and the part that was pressed."""

    reads_as = "Board"
    taken = Signal(str, int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme: Theme = LIGHT
        self.unit = 1.0
        self.board: BoardShow | None = None
        self.walk: Callable[[int], bool] | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAccessibleName("Board")

    def tell(self, board: BoardShow | None, says: str, theme: Theme, unit: float) -> None:
        """Hold what is shown and what is said of it."""
        self.board, self.theme, self.unit = board, theme, unit
        self.setAccessibleDescription(says)
        self.update()

    # --- for who cannot see it ---

    def parts_said(self) -> tuple[str, ...]:
        """Return each hole in a few words."""
        return tuple(_said(one) for one in self._dots())

    def part_rect(self, index: int) -> QRectF:
        """Return where a hole is felt, in pixels."""
        assert self.board is not None
        at = scale_of(self.board, self.rect_of(), self.unit).px(*self._dots()[index].at)
        return QRectF(at.x() - FELT, at.y() - FELT, 2 * FELT, 2 * FELT)

    def part_held(self, index: int) -> bool:
        """Return whether a hole is the one that is spoken of."""
        return self._dots()[index].chosen

    def _dots(self) -> tuple[Dot, ...]:
        return () if self.board is None else self.board.dots

    # --- hands ---

    def rect_of(self) -> QRectF:
        """Return where the board is painted."""
        return QRectF(self.rect())

    def dot_at(self, at: QPointF) -> Dot | None:
        """Return the hole nearest to a pixel, as far as a finger reaches."""
        if self.board is None:
            return None
        scale = scale_of(self.board, self.rect_of(), self.unit)
        spots = [(scale.px(*one.at) - at, one) for one in self.board.dots]
        near = [(hypot(by.x(), by.y()), i, one) for i, (by, one) in enumerate(spots)]
        far, _, one = min(near, default=(FELT + 1.0, 0, None))
        return one if far <= FELT else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take the hole that is pressed."""
        one = self.dot_at(event.position()) if event.button() == Qt.MouseButton.LeftButton else None
        if one is not None:
            self.taken.emit(one.hole, one.part)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show that a hole can be pressed."""
        over = self.dot_at(event.position()) is not None
        self.setCursor(Qt.CursorShape.PointingHandCursor if over else Qt.CursorShape.ArrowCursor)

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk the holes with Tab before the keys go on to the buttons."""
        if self.walk is not None and self.walk(1 if forward else -1):
            return True
        return super().focusNextPrevChild(forward)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the board; a broken painting is reported and leaves the rest alone."""
        with QPainter(self) as p:
            try:
                p.setRenderHint(QPainter.RenderHint.Antialiasing)
                p.fillRect(self.rect(), brush(self.theme.bench))
                paint_day_board(p, self.rect_of(), self.board, self.theme, self.unit)
            except Exception as error:
                TROUBLE.report(error)


def _said(one: Dot) -> str:
    """Return a hole as it is read aloud: "H5, second hole, to come, not as printed"."""
    told = [one.hole]
    if one.part > 1:
        told.append("second hole")
    told.append("drilled" if one.state == "drilled" else "to come")
    if one.differs:
        told.append("not as printed")
    return ", ".join(told)
