"""A switch of several words: one holds, the arrows walk."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.controls import Switch


class Choice(Switch):
    """Words side by side of which one holds; `switched` carries the one that is asked for."""

    def __init__(self, name: str, words: Sequence[str], parent: QWidget | None = None, tip: str = "") -> None:
        super().__init__(name, words, parent, tip)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk with the arrows; Space or Enter goes on, round about."""
        at = self.words.index(self.held)
        if event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            at = min(max(at + (1 if event.key() == Qt.Key.Key_Right else -1), 0), len(self.words) - 1)
        elif event.key() in (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            at = (at + 1) % len(self.words)
        else:
            event.ignore()
            return
        self._switch(self.words[at])
