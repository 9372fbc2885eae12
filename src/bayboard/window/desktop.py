"""The desktop's light or dark scheme: what it asks for, and what its own parts are told to wear."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from bayboard.window.wishes import Wishes


def desktop_is_dark() -> bool:
    """Return whether the desktop asks for dark colours now."""
    return QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark


def ask_desktop(wishes: Wishes) -> None:
    """Have the desktop's own parts (title bar, file windows) wear what is wished, too."""
    hints = QGuiApplication.styleHints()
    if wishes.colours == "as the system":
        hints.unsetColorScheme()
    else:
        hints.setColorScheme(Qt.ColorScheme.Dark if wishes.colours == "dark" else Qt.ColorScheme.Light)
