"""Where did it go?  Two lengths, asked in place of the blue field; of a fixing also in the metal."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.model.layout import Point, Units
from bayboard.units.length import show_length
from bayboard.window import lettering
from bayboard.window.controls import Switch
from bayboard.window.draw.marks import paint_mark
from bayboard.window.drill_day.place_field import PlaceField, beyond
from bayboard.window.drill_day.plan import FINGER
from bayboard.window.drill_day.pressed import DayButton
from bayboard.window.lettering import Style
from bayboard.window.sheet import paint_asking
from bayboard.window.theme import LIGHT, Theme, brush

BOARD, METAL = "in the board", "in the sheet metal"
SAME = 1e-6  # mm; typed lengths are kept to this
HINT = "From the board's lower left corner. Or how far off: right 2, up 1."


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked about: the hole, where it was planned (mm from left and foot), of a fixing.

    `made`: it is drilled already, so that it may be said that it is not.
    """

    hole: str
    planned: Point
    metal: Point | None = None
    made: bool = False


class WherePanel(QWidget):
    """The question.  `answered` carries (in the metal, from left, up); `left` that nothing is said."""

    answered = Signal(bool, float, float)
    not_made = Signal()
    left = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme: Theme = LIGHT
        self.asked = Asked("", (0.0, 0.0))
        self.across = PlaceField("How far it is from the board's left edge", "left", "right", self)
        self.up = PlaceField("How far it is up from the board's foot", "down", "up", self)
        self.which = Switch(
            "Which hole", (BOARD, METAL), self, "The hole in the board, or the one behind it."
        )
        self.keep = DayButton("It went here", self, act=True, tip="Writes down where the hole is. Enter")
        self.undo = DayButton("It is not drilled", self)
        self.leave = DayButton("Leave it", self, tip="Goes back, nothing written. Esc")
        self.setAccessibleName("Where did it go?")
        self._connect()
        self.hide()

    def _connect(self) -> None:
        self.keep.clicked.connect(self._answer)
        self.undo.clicked.connect(self.not_made)
        self.leave.clicked.connect(self.left)
        self.which.switched.connect(self._switch)
        self.across.beside.connect(self.up.take)
        self.up.beside.connect(self.across.take)
        for field in (self.across, self.up):
            field.read_anew.connect(self.update)
            field.entered.connect(self._answer)
            field.left.connect(self.left)

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        for control in (self.across, self.up, self.which, self.keep, self.undo, self.leave):
            control.dress(theme)

    def ask(self, asked: Asked, units: Units, span: float) -> None:
        """Ask about a hole; its plan stands in the fields."""
        self.asked = asked
        for field in (self.across, self.up):
            field.set_units(units, span)
        self.which.hold(BOARD)
        self.which.setVisible(asked.metal is not None)
        self.undo.setVisible(asked.made)
        self._start(asked.planned)
        self.show()
        self.raise_()
        self._lay_out()
        self.across.setFocus(Qt.FocusReason.OtherFocusReason)

    def _start(self, planned: Point) -> None:
        self.across.plan(planned[0])
        self.up.plan(planned[1])
        self.across.selectAll()

    def _switch(self, word: str) -> None:
        self.which.hold(word)
        metal = self.asked.metal if word == METAL else None
        self._start(metal or self.asked.planned)
        self.undo.setVisible(self.asked.made and word == BOARD)
        self.update()

    @property
    def in_metal(self) -> bool:
        """Return whether it is the hole in the sheet metal that is asked about."""
        return self.asked.metal is not None and self.which.held == METAL

    def _answer(self) -> None:
        offs = self.across.off(), self.up.off()
        if offs[0] is None or offs[1] is None:
            (self.across if offs[0] is None else self.up).setFocus(Qt.FocusReason.OtherFocusReason)
            return
        self.answered.emit(self.in_metal, self.across.planned + offs[0], self.up.planned + offs[1])

    # --- keys ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Answer with Enter, leave with Escape; nothing else goes on to the window."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._answer()
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk the fields and buttons here, round about."""
        stops = [self.across, self.up, self.which, self.keep, self.undo, self.leave]
        there = [w for w in stops if w.isVisible()]
        if not there:  # Qt asks here too while the panel is being hidden
            return False
        here = next((i for i, w in enumerate(there) if w.hasFocus()), -1)
        there[(here + (1 if forward else -1)) % len(there)].setFocus(Qt.FocusReason.TabFocusReason)
        return True

    # --- looks ---

    def needs(self) -> float:
        """Return how high the question must be, in pixels."""
        return 2 * FINGER + 116.0 * self.theme.size

    def _lay_out(self) -> None:
        high, gap = round(FINGER), 14
        wide = (self.width() - 2 * gap - gap) // 2
        size = self.theme.size
        top = round(64 * size)
        self.across.setGeometry(gap, top, wide, high)
        self.up.setGeometry(gap + wide + gap, top, wide, high)
        foot = min(round(top + high + 54.0 * size), self.height() - high - 8)
        x = gap - 4
        for button in (self.keep, self.undo, self.leave):
            if button.isHidden():
                continue
            button.setGeometry(x, foot, button.sizeHint().width() + 10, high)
            x = button.geometry().right() + 6
        hint = self.which.sizeHint()
        self.which.setGeometry(self.width() - hint.width() - gap, 4, hint.width(), hint.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the fields in their places."""
        self._lay_out()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the sheet, what is asked, and how it is read."""
        theme, size = self.theme, self.theme.size
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(theme.paper))
            paint_asking(p, QRectF(self.rect()).adjusted(1.0, 1.0, -1.0, -1.0), theme.blue, theme)
            title = Style(px=20.0 * size, weight=700)
            room = (self.width() if self.which.isHidden() else self.which.x()) - 24.0
            words = next((w for w in self._titles() if lettering.width(w, title) <= room), "")
            lettering.draw(p, QPointF(16.0, 30.0 * size), words, title, theme.ink)
            self._paint_fields(p)

    def _titles(self) -> tuple[str, ...]:
        """Return what is asked, and in fewer words."""
        return f"Where did {self.asked.hole} go?", f"{self.asked.hole} went", self.asked.hole

    def _paint_fields(self, p: QPainter) -> None:
        theme, size = self.theme, self.theme.size
        small = Style(px=15.0 * size)
        for field, label in ((self.across, "from the left"), (self.up, "up from the foot")):
            box = field.geometry()
            lettering.draw(p, QPointF(box.left() + 3.0, box.top() - 5.0), label, small, theme.ink2)
            words = lettering.elided(field.reading, small, box.width() - 4.0)
            lettering.draw(p, QPointF(box.left() + 3.0, box.bottom() + 19.0 * size), words, small, theme.ink)
        wrong = self.across.wrong or self.up.wrong
        y = self.across.geometry().bottom() + 43.0 * size
        x = 18.0
        if wrong:
            paint_mark(p, QPointF(x + 8.0, y - 5.0), "must", None, theme, 16.0 * size, cased=False)
            x += 24.0
        words = lettering.elided(wrong or self.result(), small, self.width() - x - 14.0)
        lettering.draw(p, QPointF(x, y), words, small, theme.must if wrong else theme.ink2)

    def result(self) -> str:
        """Return how far off the plan the place is that stands in the fields."""
        x, y = self.across.off(), self.up.off()
        if x is None or y is None or (abs(x) < SAME and abs(y) < SAME):
            return HINT
        units = self.across.units
        told = [
            f"{show_length(abs(off), units)} {beyond(more if off > 0 else less)} the plan"
            for off, less, more in ((x, "left", "right"), (y, "down", "up"))
            if abs(off) >= SAME
        ]
        return f"{' and '.join(told)}."
