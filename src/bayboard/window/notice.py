"""A line of text over the Wall that stays until it is read or answered: no dialog."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget

from bayboard.rules.finding import Severity
from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.controls import TARGET, Button, put_away
from bayboard.window.draw.marks import paint_mark
from bayboard.window.lettering import BODY
from bayboard.window.sheet import paint_asking
from bayboard.window.theme import Theme

CLOSE = "Close"
LEAST_TEXT = 300  # px beside the answers; with less they go under the sentence
LINE = 23  # px from one line to the next


@dataclass(frozen=True, slots=True)
class Said:
    """What a notice says.  `then` is told the answer; without a severity it is a question."""

    text: str
    answers: tuple[str, ...] = (CLOSE,)
    severity: Severity | None = None
    then: Callable[[str], None] | None = None

    @property
    def asks(self) -> bool:
        """Return whether it is a question that somebody waits to have answered."""
        return self.severity is None


class Notice(QWidget):
    """A sentence with its answers.  Escape is the last of them.

    A question that was asked for takes the place of anything; what is only told waits until a question
    or something graver is answered.
    """

    answered = Signal(str)

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme = theme
        self.said = Said("")
        self.waiting: list[Said] = []
        self.buttons: list[Button] = []
        self.room = QRect()
        self._below = False  # the answers stand under the sentence, for want of room beside it
        self._text_wide, self._text_high = 400, 2 * TARGET
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.hide()

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        for button in self.buttons:
            button.dress(theme)
        self.update()

    @property
    def text(self) -> str:
        """Return the sentence."""
        return self.said.text

    def tell(self, text: str, severity: Severity | None = "must") -> None:
        """Say a sentence that stays until it is closed."""
        self.offer(text, (CLOSE,), severity)

    def offer(
        self,
        text: str,
        answers: Sequence[str] = (CLOSE,),
        severity: Severity | None = "must",
        then: Callable[[str], None] | None = None,
    ) -> None:
        """Say a sentence that nobody asked for, with ways out; it waits while a question stands."""
        said = Said(text, tuple(answers), severity, then)
        if self.isVisible() and said != self.said:
            if self.said.asks or _graver(self.said, said):
                if said not in self.waiting:
                    self.waiting.append(said)
                return
            if self.said.then is not None:
                self.waiting.insert(0, self.said)  # its ways out are wanted still
        self._show(said)

    def ask(self, text: str, answers: Sequence[str], then: Callable[[str], None] | None = None) -> None:
        """Ask; the first answer is the one that keeps the work, the last one leaves all as it is."""
        if self.isVisible() and self.said.severity is not None:
            self.waiting.insert(0, self.said)
        self._show(Said(text, tuple(answers), None, then))

    def withdraw(self, text: str) -> None:
        """Take back a sentence that is no longer true, whether it stands or waits."""
        self.waiting = [said for said in self.waiting if said.text != text]
        if self.isVisible() and self.text == text:
            self._next()

    def clear(self) -> None:
        """Say nothing any longer: what was said is about a vehicle that is gone."""
        self.waiting.clear()
        put_away(self)

    def _show(self, said: Said) -> None:
        for button in self.buttons:
            put_away(button)
            button.deleteLater()
        self.said, answers = said, said.answers
        self.setAccessibleName(said.text)
        self.buttons = [Button(word, self, act=i == 0 and len(answers) > 1) for i, word in enumerate(answers)]
        for button in self.buttons:
            button.dress(self.theme)
            button.clicked.connect(self._pressed)
            button.show()
        self.lay(self.room)
        self.show()
        self.raise_()
        if isinstance(QApplication.focusWidget(), QLineEdit):
            announce(self, said.text)  # somebody is typing: the keys stay where they are
        else:
            self.buttons[0].setFocus(Qt.FocusReason.OtherFocusReason)

    def lay(self, room: QRect) -> None:
        """Lie at the top of a rectangle of the window, as high as the text needs."""
        self.room = room
        size, pad = self.theme.size, round(16 * self.theme.size)
        wide = max(room.width() - 2 * pad, 200)
        words = sum(button.sizeHint().width() for button in self.buttons)
        self._below = wide - words - 5 * pad < LEAST_TEXT * size
        self._text_wide = wide - 5 * pad - (0 if self._below else words)
        row = round((TARGET + 16) * size)
        high = max(round(len(self._lines()) * LINE * size) + 2 * pad, row)
        self._text_high = high
        if self._below:
            high += row - pad
        self.setGeometry(room.left() + pad, room.top() + round(44 * size), wide, high)
        middle = high - row // 2 if self._below else high // 2
        x = wide - pad // 2
        for button in reversed(self.buttons):
            hint = button.sizeHint()
            x -= hint.width()
            button.setGeometry(x, middle - hint.height() // 2, hint.width(), hint.height())
        self.update()

    def _lines(self) -> tuple[str, ...]:
        return lettering.wrapped(self.text, BODY.sized(self.theme.size), max(self._text_wide, 120.0))

    def _pressed(self) -> None:
        button = self.sender()
        self._answer(button.text() if isinstance(button, Button) else "")

    def _answer(self, word: str) -> None:
        then = self.said.then
        put_away(self)
        if then is not None:
            then(word)
        if not self.isVisible():
            self._next()
        if not self.isVisible():
            self.answered.emit(word)

    def _next(self) -> None:
        """Go away, or say what has waited."""
        had_keys = put_away(self)
        if self.waiting:
            self._show(self.waiting.pop(0))
        elif had_keys:
            self.answered.emit("")

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
            rect, severity = QRectF(self.rect()).adjusted(1.0, 1.0, -1.0, -1.0), self.said.severity
            paint_asking(p, rect, theme.severity(severity) if severity else theme.blue, theme)
            x = 18.0 * size
            if severity:
                paint_mark(p, QPointF(26.0 * size, self._text_high / 2), severity, None, theme, cased=False)
                x = 48.0 * size
            lines = self._lines()
            y = self._text_high / 2 - (len(lines) - 1) * LINE / 2 * size
            for i, line in enumerate(lines):
                row = QRectF(x, y + i * LINE * size - 10.0, 10.0, 20.0)
                lettering.draw_in(p, row, line, BODY.sized(size), theme.ink, "left")


def _graver(one: Said, other: Said) -> bool:
    """Return whether `one` must not be covered by `other`."""
    return one.severity == "must" and other.severity != "must"
