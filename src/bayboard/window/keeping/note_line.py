"""Lines at the Wall's foot that ask for a few words: what a revision is, what a vehicle is called."""

from PySide6.QtCore import QRect, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from bayboard.model.check_names import LONGEST_NAME
from bayboard.store.revisions import LONGEST_NOTE
from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.controls import Button, put_away
from bayboard.window.lettering import HELPER, STRONG
from bayboard.window.sheet import paint_asking
from bayboard.window.text_field import HIGH, TextField
from bayboard.window.theme import Theme

ASKED = "What is this one?"
NAMED = "What is this vehicle called?"
LEAVE = "Leave it"


class NoteField(TextField):
    """A line of text.  Enter keeps, Escape leaves; all other keys are the text's."""

    wide = 320
    taken = Signal()
    left = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keep, leave, or type."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.taken.emit()
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            event.accept()
        else:
            super().keyPressEvent(event)


class AskedLine(QWidget):
    """Asks for a few words.  `kept` carries them, "" for none; `left` says that nothing is kept."""

    kept = Signal(str)
    left = Signal()

    def __init__(self, theme: Theme, parent: QWidget, question: str, longest: int) -> None:
        super().__init__(parent)
        self.theme = theme
        self.question = question
        self.helper = ""
        self.room = QRect()
        self.field = NoteField(question, longest, self)
        self.button = Button("", self, act=True, tip="Keeps what is typed. Enter")
        self.leave = Button(LEAVE, self, tip="Goes back to work, nothing kept. Esc")
        self.field.taken.connect(self._take)
        self.field.left.connect(self.close_line)
        self.button.clicked.connect(self._take)
        self.leave.clicked.connect(self.close_line)
        self.hide()

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        for part in (self.field, self.button, self.leave):
            part.dress(theme)
        self.update()

    def open(self, word: str, helper: str, text: str = "") -> None:
        """Ask; `word` is the button's, `helper` says what Enter does, `text` is there to be typed over."""
        self.helper = helper
        self.button.setText(word)
        self.button.setAccessibleName(word)
        self.field.setText(text)
        self.field.selectAll()
        self.field.setAccessibleDescription(helper)
        self.dress(self.theme)
        self.lay(self.room)
        self.show()
        self.raise_()
        self.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        announce(self, f"{self.question} {helper}")

    def lay(self, room: QRect) -> None:
        """Lie at the foot of a rectangle of the window."""
        self.room = room
        size, pad = self.theme.size, round(16 * self.theme.size)
        wide = max(room.width() - 2 * pad, 200)
        high = round((HIGH + 50) * size)
        self.setGeometry(room.left() + pad, room.bottom() - high - pad, wide, high)
        top, x = round(10 * size), wide - pad // 2
        for button in (self.leave, self.button):
            hint = button.sizeHint()
            x -= hint.width()
            button.setGeometry(x, top, hint.width(), hint.height())
        left = round(18 * size + lettering.width(self.question, STRONG.sized(size)) + 14 * size)
        tall = self.field.sizeHint().height()
        middle = top + self.button.sizeHint().height() // 2
        self.field.setGeometry(left, middle - tall // 2, max(x - left - pad // 2, 80), tall)
        self.update()

    def _take(self) -> None:
        put_away(self)
        self.kept.emit(self.field.text())

    def close_line(self) -> None:
        """Go away with nothing kept."""
        if self.isVisible():
            put_away(self)
            self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave with Escape from the buttons, too; nothing else reaches the work behind."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_line()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint a strip of paper with the question."""
        theme, size = self.theme, self.theme.size
        with QPainter(self) as p:
            rect = QRectF(self.rect()).adjusted(1.0, 1.0, -1.0, -1.0)
            paint_asking(p, rect, theme.blue, theme)
            row = QRectF(18.0 * size, self.field.y(), 100.0, self.field.height())
            lettering.draw_in(p, row, self.question, STRONG.sized(size), theme.ink, "left")
            below = QRectF(self.field.x() + 4.0, self.field.geometry().bottom() + 2.0, 10.0, 30.0 * size)
            room = rect.right() - below.x() - 16.0 * size
            words = lettering.elided(self.helper, HELPER.sized(size), room)
            lettering.draw_in(p, below, words, HELPER.sized(size), theme.ink2, "left")


class NoteLine(AskedLine):
    """Asks for the note of a revision."""

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(theme, parent, ASKED, LONGEST_NOTE)

    def ask(self, number: int, helper: str) -> None:
        """Ask for the note of a revision that would have this number."""
        self.open(f"Keep as revision {number}", helper)


class NameLine(AskedLine):
    """Asks for the name of a vehicle."""

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(theme, parent, NAMED, LONGEST_NAME)

    def ask(self, name: str) -> None:
        """Ask for a name in place of `name`."""
        self.open("Name it", "The name on the shelf, in the strip and on every sheet.", name)
