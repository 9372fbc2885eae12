"""The workplace made and put into the first frame: this loads geometry, rules and all views."""

import contextlib
from pathlib import Path

from PySide6.QtCore import QObject, QTimer
from PySide6.QtGui import QAccessible, QGuiApplication

from bayboard.job.job import open_job
from bayboard.model.refused import Refused
from bayboard.window import lettering, trouble
from bayboard.window.access import interface_for
from bayboard.window.beside import Beside, Process
from bayboard.window.compare.stage import add_compare
from bayboard.window.drill_day.stage import add_drill_day
from bayboard.window.files import first_job
from bayboard.window.first_frame import Frame
from bayboard.window.last import last_vehicle, recent
from bayboard.window.main_window import MainWindow
from bayboard.window.print.stage import add_print
from bayboard.window.shelf.stage import add_shelf
from bayboard.window.sweeping import Sweeper
from bayboard.window.workplace import Workplace


def furnished(frame: Frame, path: Path | None) -> MainWindow:
    """Return the workplace for a frame; a file that cannot be read is said in place."""
    trouble.watch()
    QAccessible.installFactory(interface_for)
    lettering.load_fonts()
    place = Workplace(first_job(), frame.theme, first_start=True)
    window = MainWindow(place, frame)
    process = Process()
    add_print(window, Beside(window, process))
    window.findings.cure_beside(Beside(window, process))
    add_compare(window)
    add_drill_day(window)
    shelf = add_shelf(window)
    link = _Link(frame, window)
    window.closing.connect(link.close)
    app = QGuiApplication.instance()
    if app is not None:
        app.aboutToQuit.connect(Sweeper(frame).stop)
    trouble.TROUBLE.told = window.notice.tell
    trouble.TROUBLE.set_aside = window.set_aside
    if path is not None:
        window.files.open_path(path)
    else:
        _put_up_last(window)
        if recent():
            QTimer.singleShot(0, shelf.open)  # once the window stands, for the field takes the keys
    return window


def _put_up_last(window: MainWindow) -> None:
    """Put up the vehicle that was open last; where it cannot be opened the shelf tells why."""
    path = last_vehicle()
    if path is None:
        return
    with contextlib.suppress(Refused):
        window.files.came(open_job(path))


class _Link(QObject):
    """What joins the frame to its furniture; it lives as long as the frame."""

    def __init__(self, frame: Frame, window: MainWindow) -> None:
        super().__init__(frame)
        self.frame = frame
        self.window = window

    def close(self) -> None:
        """Close the frame: unsaved changes are settled."""
        self.frame.settled = True
        self.frame.close()
