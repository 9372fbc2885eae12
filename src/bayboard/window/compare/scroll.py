"""A part of a panel that is pushed up and down where it is longer than its room."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

from bayboard.window.findings_panel import bar_dress
from bayboard.window.theme import Theme

OWN = frozenset((Qt.Key.Key_PageUp, Qt.Key.Key_PageDown))


class Scroll(QScrollArea):
    """A scroll area without a frame that leaves the arrows to the mode."""

    def __init__(self, inside: QWidget, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWidget(inside)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.setStyleSheet(f"QScrollArea, QScrollArea > QWidget {{ background: {theme.paper}; }}")
        self.verticalScrollBar().setStyleSheet(bar_dress(theme))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Push by a page; every other key is the window's."""
        if event.key() in OWN:
            super().keyPressEvent(event)
        else:
            event.ignore()
