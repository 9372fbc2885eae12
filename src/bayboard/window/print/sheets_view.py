"""The Wall in the Print stage: the template's sheets on the boards, one of them in hand."""

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.access import announce
from bayboard.window.canvas import Canvas
from bayboard.window.draw.ground import paint_ground
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.wall import paint_still
from bayboard.window.nearer import by_fingers, by_wheel
from bayboard.window.print import words
from bayboard.window.print.desk import PrintDesk
from bayboard.window.print.laid import sheet_at
from bayboard.window.print.paint_sheets import paint_boards, paint_in_hand
from bayboard.window.print.titles import paint_title
from bayboard.window.showing import still, wall_show
from bayboard.window.theme import Theme

STILL = 4.0  # px a press may wander and still be a click


class SheetsView(Canvas):
    """The front view with the sheets laid on.  A click takes a sheet in hand, a drag pushes the picture."""

    def __init__(self, desk: PrintDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.place = desk.place
        self._pressed: QPointF | None = None
        self._last = QPointF()
        self._pushed = False
        self._by_keys = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Sheets on the wall")
        self.setMouseTracking(True)
        self.grabGesture(Qt.GestureType.PinchGesture)
        desk.changed.connect(self._tell)
        desk.looked.connect(self._tell)
        self.place.changed.connect(self.update)
        self.place.zoomed.connect(self.rescaled)

    # --- painting ---

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def layer_scale(self) -> Scale:
        """Return the workplace's scale."""
        return self.place.scale

    def still_key(self) -> object:
        """Return what the sheets and the wall behind them are painted from."""
        return self.place.shown, self.desk.laid, self.place.lever

    def paint_still(self, p: QPainter) -> None:
        """Paint the wall and the sheets; without sheets, what hangs there."""
        place, rect = self.place, QRectF(self.rect())
        boards = self.desk.boards()
        if boards:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_ground(p, place.scale, place.scene, self.theme, rect)
            paint_boards(p, place.scale, boards, self.theme, frozenset(self.desk.swap_numbers()))
        else:
            paint_still(p, place.scale, place.scene, self.theme, still(wall_show(place)), rect)

    def paint_live(self, p: QPainter) -> None:
        """Paint the frame round the sheet in hand and the title line."""
        found, rect = self.desk.sheet(), QRectF(self.rect())
        if found is not None:
            paint_in_hand(p, self.place.scale, found[1], self.theme, self.desk.units, rect, self._by_keys)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        ground = None if self.place.whole else self.theme.room
        paint_title(p, rect, "Wall", self.phrase(), self.theme, self.theme.ink, ground)

    def phrase(self) -> str:
        """Return what the title line says: what lies on the board, or why nothing does."""
        desk = self.desk
        if not desk.boards():
            if desk.laying:
                return "laying out the sheets"
            return "no template: " + ("it is switched off" if "drill" in desk.kinds() else "no board yet")
        numbers = desk.swap_numbers()
        count = sum(len(board.sheets) for board in desk.boards())
        if numbers:
            stay = f"the other {count - len(numbers)} stay" if count - len(numbers) > 1 else "the other stays"
            return f"{words.swap_sheets(numbers)} to swap, {stay}"
        sheets = words.sheets_of_paper(count, desk.paper)
        order = ", in taping order" if count > 1 else ""
        back = ", seen through the board" if desk.boards()[0].back else ""
        last = " as it was last" if desk.refused is not None else ""
        return f"the template laid on the board{last}, {sheets}{order}{back}"

    def _tell(self) -> None:
        found = self.desk.sheet()
        said = self.phrase()
        if found is not None:
            said = f"Sheet {found[1].number} of {self.desk.count()}, {words.lies(found[1])}"
        if said != self.accessibleDescription():
            self.setAccessibleDescription(said)
            announce(self, said)
        self.update()

    # --- the mouse ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click or a push."""
        self._by_keys = False
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            self._pressed = self._last = event.position()
            self._pushed = event.button() == Qt.MouseButton.MiddleButton

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Push the picture."""
        at = event.position()
        self.place.point(self.place.scale.mm(at))
        if self._pressed is None:
            over = sheet_at(self.desk.boards(), self.place.scale.mm(at))
            shape = Qt.CursorShape.ArrowCursor if over is None else Qt.CursorShape.PointingHandCursor
            self.setCursor(shape)
            return
        far = at - self._pressed
        self._pushed = self._pushed or far.manhattanLength() > STILL
        if self._pushed:
            by, self._last = at - self._last, at
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
            self.place.set_scale(self.place.scale.moved(by.x(), by.y()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Take the sheet in hand that was clicked."""
        pressed, self._pressed = self._pressed, None
        self.setCursor(Qt.CursorShape.ArrowCursor)
        if pressed is None or self._pushed:
            return
        number = sheet_at(self.desk.boards(), self.place.scale.mm(pressed))
        if number is not None:
            self.desk.take(number - 1)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer; two fingers on a pad push the picture."""
        by_wheel(self.place, event)

    def event(self, event: QEvent) -> bool:
        """Zoom with two fingers."""
        return by_fingers(self, event) or super().event(event)

    # --- keys ---

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk the sheets with Tab, then leave."""
        number = self.desk.chosen + (1 if forward else -1)
        inside = self.desk.sheet() is not None and 0 <= number < self.desk.count("drill")
        if self.hasFocus() and self.isVisible() and inside:
            self._by_keys = True
            return self.desk.take(number)
        return super().focusNextPrevChild(forward)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the ring; coming by Tab, begin at that end of the pile."""
        last = self.desk.count("drill") - 1
        ends = {Qt.FocusReason.TabFocusReason: 0, Qt.FocusReason.BacktabFocusReason: last}
        self._by_keys = event.reason() in ends or event.reason() == Qt.FocusReason.ShortcutFocusReason
        if event.reason() in ends:
            self.desk.take(ends[event.reason()])
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Show the ring; 0 shows the wall whole; what else a key means is the window's."""
        self._by_keys = True
        self.update()
        if event.text() == "0":
            self.place.fit()
        else:
            event.ignore()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the ring away."""
        self._by_keys = False
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw sharp at once."""
        self.settle()
