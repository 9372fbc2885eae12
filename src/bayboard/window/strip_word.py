"""Words in the strip that lead somewhere: the vehicle's name to the shelf, its revision to what was kept."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.controls import Control
from bayboard.window.lettering import Style
from bayboard.window.theme import brush, pen

MARGIN = 6.0  # px beside the words, for the ring
TWO = 2.5  # heights of its letters that two lines need


class StripWord(Control):
    """A line of words.  Where it leads somewhere it is underlined under the pointer and takes the keys."""

    def __init__(self, style: Style, parent: QWidget, tip: str) -> None:
        super().__init__("", parent)
        self.style_of = style
        self.tip = tip
        self.token = ""
        self.leads = False

    def say(self, words: str, token: str, leads: bool, where: str) -> None:
        """Show words in an ink; `leads`: they may be pressed and go `where`."""
        if (words, token, leads) == (self.text(), self.token, self.leads):
            return
        self.token, self.leads = token, leads
        self.setText(words)
        self.setAccessibleName(f"{words}. {where}" if leads else words)
        self.setToolTip(f"{words}. {self.tip}" if leads else words)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus if leads else Qt.FocusPolicy.NoFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor if leads else Qt.CursorShape.ArrowCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents, not leads)
        self.update()

    def margin(self) -> float:
        """Return how far the words lie inside."""
        return MARGIN

    def sizeHint(self) -> QSize:
        """Return room for the words."""
        style = self.style_of.sized(self.theme.size)
        return QSize(round(lettering.width(self.text(), style) + 2 * MARGIN) + 1, round(26 * self.theme.size))

    def paint(self, p: QPainter) -> None:
        """Paint the words, their line under the pointer, the ring where the keys are."""
        style, size = self.style_of.sized(self.theme.size), self.theme.size
        rect = QRectF(self.rect()).adjusted(MARGIN, 0.0, -MARGIN, 0.0)
        if rect.height() >= TWO * style.px and lettering.width(self.text(), style) > rect.width() + 1.0:
            self._paint_wrapped(p, rect, style)
            return
        words = lettering.elided(self.text(), style, rect.width() + 1.0)
        middle = rect.adjusted(0.0, 5.0 * size, 0.0, 0.0) if rect.y() + self.y() < 1.0 else rect
        lettering.draw_in(p, middle, words, style, self.token, "left")
        if self.leads and (self.underMouse() or self.hasFocus()):
            y = middle.center().y() + lettering.line(words, style).rise / 2 + 3.0
            p.fillRect(QRectF(rect.left(), y, lettering.width(words, style), 1.2), brush(self.token))
        if self.hasFocus():
            p.setPen(pen(self.theme.blue, 2.0))
            p.drawRoundedRect(QRectF(self.rect()).adjusted(1.0, 2.0, -1.0, -2.0), 4.0, 4.0)

    def _paint_wrapped(self, p: QPainter, rect: QRectF, style: Style) -> None:
        first, *rest = lettering.wrapped(self.text(), style, rect.width())
        half = rect.height() / 2 - 2.0
        lines = (first, lettering.elided(" ".join(rest), style, rect.width()))
        for i, words in enumerate(lines):
            row = QRectF(rect.left(), rect.top() + 2.0 + i * half, rect.width(), half)
            lettering.draw_in(p, row, words, style, self.token, "left")
