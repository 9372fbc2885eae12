"""The field above the line: what is typed is what the shelf shows; the arrows walk the cards."""

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.lettering import HELPER
from bayboard.window.shelf import words
from bayboard.window.text_field import TextField

LONGEST = 80  # letters
# with Ctrl these mean the text; any other letter or figure with Ctrl is an act of the window
OF_TEXT = frozenset((Qt.Key.Key_A, Qt.Key.Key_C, Qt.Key.Key_V, Qt.Key.Key_X, Qt.Key.Key_Y, Qt.Key.Key_Z))
WALKS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class SearchField(TextField):
    """A line of text.  Arrows, Enter and Escape mean the shelf, all other keys the text."""

    walked = Signal(int)
    taken = Signal()  # Enter
    left = Signal()  # Escape with nothing typed

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(words.FIND_ALOUD, LONGEST, parent)
        self.setToolTip("Words of the name or of any note; all of them must be there.")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk the cards, take one down, or leave; letters are typed."""
        key, held = Qt.Key(event.key()), event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if key in WALKS and held == Qt.KeyboardModifier.NoModifier:
            self.walked.emit(WALKS[key])
        elif held & Qt.KeyboardModifier.ControlModifier and _is_letter(key) and key not in OF_TEXT:
            event.ignore()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.taken.emit()
        elif key == Qt.Key.Key_Escape:
            if self.text():
                self.setText("")
            else:
                self.left.emit()
        else:
            super().keyPressEvent(event)

    def paint_behind(self, p: QPainter, rect: QRectF) -> None:
        """Paint what the field is for, until something is typed."""
        size = self.theme.size
        if not self.text():
            room = rect.adjusted(17.0 * size, 0.0, -12.0 * size, 0.0)
            lettering.draw_in(p, room, words.FIND, HELPER.sized(size), self.theme.ink2, "left")


def _is_letter(key: Qt.Key) -> bool:
    return Qt.Key.Key_0 <= key <= Qt.Key.Key_9 or Qt.Key.Key_A <= key <= Qt.Key.Key_Z
