"""The line that asks why a finding may be."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from bayboard.window import lettering
from bayboard.window.lettering import BODY
from bayboard.window.theme import Theme


class ReasonField(QLineEdit):
    """One line that says why a finding may be."""

    given = Signal(str)
    left = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setPlaceholderText("Why is it all right? Enter keeps it.")
        self.setAccessibleName("Why this finding may be")
        self.setMaxLength(200)
        self.hide()

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.setFont(lettering.font(BODY.sized(theme.size), hinted=True))
        self.setStyleSheet(
            f"QLineEdit {{ border: 2px solid {theme.blue}; border-radius: 5px; padding: 0 9px;"
            f" background: {theme.field}; color: {theme.ink}; selection-background-color: {theme.blue}; }}"
        )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Give the reason with Enter, leave with Escape."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.text().strip():
                self.given.emit(self.text().strip())
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
