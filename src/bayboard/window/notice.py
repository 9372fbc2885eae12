"""A line of text over the Wall that stays until it is read or answered: no dialog."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from bayboard.rules.finding import Severity
from bayboard.window import lettering
from bayboard.window.controls import TARGET, Button
from bayboard.window.draw.marks import paint_mark
from bayboard.window.lettering import BODY
from bayboard.window.theme import Theme, brush, pen

CLOSE = "Close"


class Notice(QWidget):
    """A sentence with its answers.  Escape is the last of them."""

    answered = Signal(str)

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme = theme
        self.text = ""
        self.severity: Severity | None = None
        self.buttons: list[Button] = []
        self.room = QRect()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.hide()

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        for button in self.buttons:
            button.dress(theme)
        self.update()

    def tell(self, text: str, severity: Severity | None = "must") -> None:
        """Say a sentence that stays until it is closed."""
        self._show(text, (CLOSE,), severity)

    def ask(self, text: str, answers: Sequence[str]) -> None:
        """Ask; the first answer is the one that keeps the work, the last one leaves all as it is."""
        self._show(text, answers, None)

    def _show(self, text: str, answers: Sequence[str], severity: Severity | None) -> None:
        for button in self.buttons:
            button.hide()
            button.deleteLater()
        self.text, self.severity = text, severity
        self.setAccessibleName(text)
        self.buttons = [Button(word, self, act=i == 0 and len(answers) > 1) for i, word in enumerate(answers)]
        for button in self.buttons:
            button.dress(self.theme)
            button.clicked.connect(self._pressed)
            button.show()
        self.lay(self.room)
        self.show()
        self.raise_()
        self.buttons[0].setFocus(Qt.FocusReason.OtherFocusReason)

    def lay(self, room: QRect) -> None:
        """Lie at the top of a rectangle of the window, as high as the text needs."""
        self.room = room
        size, pad = self.theme.size, round(16 * self.theme.size)
        wide = max(room.width() - 2 * pad, 200)
        words = sum(button.sizeHint().width() for button in self.buttons)
        lines = len(self._lines(wide - words - 5 * pad))
        high = max(round(lines * 23 * size) + 2 * pad, round((TARGET + 16) * size))
        self.setGeometry(room.left() + pad, room.top() + round(44 * size), wide, high)
        x = wide - pad // 2
        for button in reversed(self.buttons):
            hint = button.sizeHint()
            x -= hint.width()
            button.setGeometry(x, (high - hint.height()) // 2, hint.width(), hint.height())
        self.update()

    def _lines(self, room: float) -> tuple[str, ...]:
        return lettering.wrapped(self.text, BODY.sized(self.theme.size), max(room, 120.0))

    def _pressed(self) -> None:
        button = self.sender()
        self._answer(button.text() if isinstance(button, Button) else "")

    def _answer(self, word: str) -> None:
        self.hide()
        self.answered.emit(word)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Answer with Escape what leaves all as it is."""
        if event.key() == Qt.Key.Key_Escape:
            self._answer(self.buttons[-1].text())
        else:
            event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint a sheet of paper with the sentence on it."""
        theme, size = self.theme, self.theme.size
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            rect = QRectF(self.rect()).adjusted(1.0, 1.0, -1.0, -1.0)
            p.setBrush(brush(theme.paper))
            p.setPen(pen(theme.severity(self.severity) if self.severity else theme.blue, 2.0))
            p.drawRoundedRect(rect, 8.0, 8.0)
            x = 18.0 * size
            if self.severity:
                paint_mark(
                    p, QPointF(26.0 * size, rect.center().y()), self.severity, None, theme, cased=False
                )
                x = 48.0 * size
            lines = self._lines(self.buttons[0].x() - x - 12.0)
            y = rect.center().y() - (len(lines) - 1) * 11.5 * size
            for i, line in enumerate(lines):
                row = QRectF(x, y + i * 23.0 * size - 10.0, 10.0, 20.0)
                lettering.draw_in(p, row, line, BODY.sized(size), theme.ink, "left")
