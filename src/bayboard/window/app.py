"""The window as a program: the first frame at once, everything else after it."""

import math
import sys
from pathlib import Path

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QWidget

from bayboard.window.bench_style import BenchStyle
from bayboard.window.desktop import ask_desktop, desktop_is_dark
from bayboard.window.first_frame import Frame
from bayboard.window.theme import palette
from bayboard.window.wishes import read_wishes, wish


def run(path: str | None) -> int:
    """Open the window with a layout file, or with the last vehicle; return the exit code when it closes."""
    app = application()
    wishes = read_wishes(_across())
    wish(wishes, keep=False)
    ask_desktop(wishes)
    frame = Frame(wishes.theme(desktop_is_dark()), Opening(path).furnish)
    app.setPalette(palette(frame.theme))
    frame.show()
    return app.exec()


def application() -> QApplication:
    """Return the one Qt application, made if there is none."""
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        app = QApplication([sys.argv[0] if sys.argv else "bayboard"])
    app.setApplicationName("Bayboard")
    if not isinstance(app.style(), BenchStyle):
        app.setStyle(BenchStyle())
    return app


def _across() -> float:
    """Return how large the screen is from corner to corner, mm; 0 where nobody knows."""
    screen = QGuiApplication.primaryScreen()
    return 0.0 if screen is None else math.hypot(*screen.physicalSize().toTuple())


class Opening:
    """What is brought into the frame once it stands: loaded only then."""

    def __init__(self, path: str | None) -> None:
        self.path = path

    def furnish(self, frame: Frame) -> QWidget:
        """Return the workplace with the layout asked for."""
        from bayboard.window.furnish import furnished  # noqa: PLC0415  it loads all that is slow to load

        return furnished(frame, None if self.path is None else Path(self.path))
