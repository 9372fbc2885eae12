"""A panel of paper: the ground that every such panel is painted on."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.first_frame import paint_panel
from bayboard.window.theme import Theme, brush, pen
from bayboard.window.workplace import Workplace


def paint_asking(p: QPainter, rect: QRectF, edge: str, theme: Theme) -> None:
    """Paint the paper of what waits for an answer: a sheet with a strong edge, lying on anything."""
    p.setRenderHint(QPainter.RenderHint.Antialiasing)
    p.setBrush(brush(theme.paper))
    p.setPen(pen(edge, 2.0))
    p.drawRoundedRect(rect, 8.0, 8.0)


class Sheet(QWidget):
    """A sheet with round corners.  Subclasses give `paint` and, where something lies on it, `lay_out`."""

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = place

    def ground(self) -> str:
        """Return the colour that is seen behind the corners."""
        return self.place.theme.bench

    def lay_out(self) -> None:
        """Put what lies on the sheet in its place."""

    def paint(self, p: QPainter) -> None:
        """Paint what stands on the sheet, with a ready painter."""

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep what lies on the sheet in its place."""
        self.lay_out()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the sheet and what stands on it."""
        theme = self.place.theme
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(self.ground()))
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_panel(p, QRectF(self.rect()), theme.paper, theme)
            self.paint(p)


class Wrapped(QWidget):
    """Lines on paper, wrapped to the width there is.  Subclasses give `follow`, which wraps, and `paint`."""

    def __init__(self, place: Workplace) -> None:
        super().__init__()
        self.place = place

    def follow(self) -> None:
        """Wrap the lines, and be as high as they are."""

    def paint(self, p: QPainter) -> None:
        """Paint the lines, with a ready painter."""

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Wrap the lines anew."""
        self.follow()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the paper and the lines."""
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(self.place.theme.paper))
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            self.paint(p)
