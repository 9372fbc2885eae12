"""A question in the foot of drill day, asked in place: two answers, and the safe one is the second."""

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.drill_day.plan import FINGER
from bayboard.window.drill_day.pressed import DayButton
from bayboard.window.lettering import Style
from bayboard.window.theme import LIGHT, Theme, brush


class AskLine(QWidget):
    """The question; `yes` is the only answer that changes anything."""

    yes = Signal()
    left = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme: Theme = LIGHT
        self.text = ""
        self.do = DayButton("Yes", self)
        self.leave = DayButton("Leave it as it is", self, tip="Changes nothing. Esc")
        self.do.clicked.connect(self.yes)
        self.leave.clicked.connect(self.left)
        self.hide()

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        self.do.dress(theme)
        self.leave.dress(theme)

    def ask(self, text: str, do: str) -> None:
        """Ask; the keys go to the answer that leaves all as it is."""
        self.text = text
        self.setAccessibleName(text)
        self.do.setText(do)
        self.do.setAccessibleName(do)
        self._lay_out()
        self.show()
        self.raise_()
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)

    def _lay_out(self) -> None:
        high, x = round(FINGER), 0
        for button in (self.do, self.leave):
            wide = button.sizeHint().width() + 12
            button.setGeometry(x, self.height() - high - 4, wide, high)
            x += wide + 8

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the answers in their places."""
        self._lay_out()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave with Escape; every other key waits for an answer."""
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Go between the two answers."""
        (self.leave if self.do.hasFocus() else self.do).setFocus(Qt.FocusReason.TabFocusReason)
        return True

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the question."""
        theme = self.theme
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(theme.paper))
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            style = Style(px=18.0 * theme.size, weight=600)
            room = QRectF(self.rect())
            for i, line in enumerate(lettering.wrapped(self.text, style, room.width() - 8.0)[:2]):
                at = QPointF(4.0, (26.0 + 24.0 * i) * theme.size)
                lettering.draw(p, at, line, style, theme.ink)
