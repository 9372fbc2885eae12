"""The field above the line: what is typed is what the shelf shows; the arrows walk the cards."""

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QLineEdit, QWidget

from bayboard.window import lettering
from bayboard.window.fields import HIGH
from bayboard.window.lettering import BODY, HELPER
from bayboard.window.shelf import words
from bayboard.window.theme import LIGHT, Theme, brush, colour, pen

LONGEST = 80  # letters
# with Ctrl these mean the text; any other letter or figure with Ctrl is an act of the window
OF_TEXT = frozenset((Qt.Key.Key_A, Qt.Key.Key_C, Qt.Key.Key_V, Qt.Key.Key_X, Qt.Key.Key_Y, Qt.Key.Key_Z))
WALKS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class SearchField(QLineEdit):
    """A line of text.  Arrows, Enter and Escape mean the shelf, all other keys the text."""

    walked = Signal(int)
    taken = Signal()  # Enter
    left = Signal()  # Escape with nothing typed

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.theme = LIGHT
        self.setAccessibleName(words.FIND_ALOUD)
        self.setToolTip("Words of the name or of any note; all of them must be there")
        self.setFrame(False)
        self.setMaxLength(LONGEST)

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        size = theme.size
        self.setFont(lettering.font(BODY.sized(size), hinted=True))
        self.setTextMargins(round(11 * size), 0, round(11 * size), 0)
        palette = self.palette()
        palette.setColor(QPalette.ColorRole.Base, colour("#000000", 0.0))
        palette.setColor(QPalette.ColorRole.Text, colour(theme.ink))
        palette.setColor(QPalette.ColorRole.Highlight, colour(theme.blue))
        palette.setColor(QPalette.ColorRole.HighlightedText, colour(theme.field))
        self.setPalette(palette)
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for a few words and a finger."""
        return QSize(round(300 * self.theme.size), round(HIGH * self.theme.size))

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

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the frame, then the text or what it is for."""
        theme, size = self.theme, self.theme.size
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            p.setBrush(brush(theme.field))
            edge = theme.blue if self.hasFocus() else theme.ink if self.underMouse() else theme.rule2
            p.setPen(pen(edge, 2.4 if self.hasFocus() else 1.2))
            rect = QRectF(self.rect()).adjusted(2.0, 2.0, -2.0, -2.0)
            p.drawRoundedRect(rect, 5.0, 5.0)
            if not self.text():
                room = rect.adjusted(17.0 * size, 0.0, -12.0 * size, 0.0)
                lettering.draw_in(p, room, words.FIND, HELPER.sized(size), theme.ink2, "left")
        super().paintEvent(event)

    def event(self, event: QEvent) -> bool:
        """Repaint as the pointer comes and goes."""
        if event.type() in (QEvent.Type.Enter, QEvent.Type.Leave):
            self.update()
        return super().event(event)


def _is_letter(key: Qt.Key) -> bool:
    return Qt.Key.Key_0 <= key <= Qt.Key.Key_9 or Qt.Key.Key_A <= key <= Qt.Key.Key_Z
