"""A line to type in: its frame, its letters and its colours; what is typed means is another's."""

from PySide6.QtCore import QEvent, QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QLineEdit, QWidget

from bayboard.window import lettering
from bayboard.window.lettering import BODY, Style
from bayboard.window.theme import LIGHT, Theme, brush, colour, pen

HIGH = 44  # px, of which 2 each side are the ring's
BESIDE = 11  # px from the frame to the text


class TextField(QLineEdit):
    """The line.  Subclasses give how it is lettered and how `wide` it likes to be, px."""

    lettered: Style = BODY
    wide = 300

    def __init__(self, name: str, longest: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.theme: Theme = LIGHT
        self.setAccessibleName(name)
        self.setFrame(False)
        self.setMaxLength(longest)

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        size = theme.size
        self.setFont(lettering.font(self.lettered.sized(size), hinted=True))
        self.setTextMargins(round(BESIDE * size), 0, self.right_margin(), 0)
        palette = self.palette()
        palette.setColor(QPalette.ColorRole.Base, colour("#000000", 0.0))
        palette.setColor(QPalette.ColorRole.Text, colour(theme.ink))
        palette.setColor(QPalette.ColorRole.Highlight, colour(theme.blue))
        palette.setColor(QPalette.ColorRole.HighlightedText, colour(theme.field))
        self.setPalette(palette)
        self.update()

    def right_margin(self) -> int:
        """Return what is kept free of text at the right, px."""
        return round(BESIDE * self.theme.size)

    def sizeHint(self) -> QSize:
        """Return room for what is usually typed and a finger."""
        return QSize(round(self.wide * self.theme.size), round(HIGH * self.theme.size))

    # --- painting ---

    def edge(self) -> tuple[str, float]:
        """Return the colour and width of the frame."""
        if self.hasFocus():
            return self.theme.blue, 2.4
        return (self.theme.ink if self.underMouse() else self.theme.rule2), 1.2

    def paint_behind(self, p: QPainter, rect: QRectF) -> None:
        """Paint what else stands in the frame."""

    def shows_text(self) -> bool:
        """Return whether Qt paints the text."""
        return True

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the frame, what stands in it, and the text."""
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            rect = QRectF(self.rect()).adjusted(2.0, 2.0, -2.0, -2.0)
            p.setBrush(brush(self.theme.field))
            p.setPen(pen(*self.edge()))
            p.drawRoundedRect(rect, 5.0, 5.0)
            self.paint_behind(p, rect)
        if self.shows_text():
            super().paintEvent(event)

    def event(self, event: QEvent) -> bool:
        """Repaint as the pointer comes and goes."""
        if event.type() in (QEvent.Type.Enter, QEvent.Type.Leave):
            self.update()
        return super().event(event)
