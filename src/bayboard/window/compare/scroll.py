"""A scrolled part of Kept, where the arrows are the mode's."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from bayboard.window.scroll import Scroll

OWN = frozenset((Qt.Key.Key_PageUp, Qt.Key.Key_PageDown))


class PageScroll(Scroll):
    """A scroll area that leaves the arrows to the mode."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Push by a page; every other key is the window's."""
        if event.key() in OWN:
            super().keyPressEvent(event)
        else:
            event.ignore()
