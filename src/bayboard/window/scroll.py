"""A part of a panel that is pushed up and down where it is longer than its room."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

from bayboard.window.finger_push import FingerPush
from bayboard.window.theme import Theme, colour


class Scroll(QScrollArea):
    """A scroll area on paper, without a frame; a finger pushes it."""

    finger: FingerPush | None = None  # Qt sends events before there is one

    def __init__(self, inside: QWidget, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWidget(inside)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.finger = FingerPush(self)

    def viewportEvent(self, event: QEvent) -> bool:
        """Follow a finger; the rest is the area's own."""
        return (self.finger is not None and self.finger.take(event)) or super().viewportEvent(event)

    def dress(self, theme: Theme) -> None:
        """Wear a theme.  A style sheet here would have Qt paint over the frames of the fields inside."""
        palette = self.viewport().palette()
        palette.setColor(self.viewport().backgroundRole(), colour(theme.paper))
        self.viewport().setPalette(palette)
        self.verticalScrollBar().setStyleSheet(_bar_dress(theme))


def _bar_dress(theme: Theme) -> str:
    """Return the dress of a scroll bar: a thin one without arrows."""
    return (
        f"QScrollBar:vertical {{ background: {theme.paper}; width: 12px; margin: 0; border: none; }}"
        f"QScrollBar::handle:vertical {{ background: {theme.rule2}; border-radius: 3px; min-height: 28px;"
        " margin: 2px 2px 2px 4px; }"
        "QScrollBar::add-line:vertical, QScrollBar::sub-line:vertical { height: 0; }"
        "QScrollBar::add-page:vertical, QScrollBar::sub-page:vertical { background: none; }"
    )
