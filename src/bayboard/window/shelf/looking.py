"""The shelf looked over beside the window: in a thread of its own, so that no disk is waited for.

What is known comes at once, then what is there, as it is read; pictures come when they are asked for.
"""

import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from queue import Empty, SimpleQueue
from typing import Protocol

from PySide6.QtCore import QObject, QTimer, Signal

from bayboard.store.found import Found
from bayboard.store.shelf import Shelf
from bayboard.window.trouble import TROUBLE

POLL = 25  # ms between two looks for news
NEWS = 0.4  # s between two lists while files are read
PAUSE = 0.002  # s that the window is let through after each file
ASKED = 0.5  # s between two looks whether somebody still wants to know


class News(Protocol):
    """Something that came out of the thread."""

    def __call__(self, looking: "Looking") -> None:
        """Pass it on, in the window's thread."""


@dataclass
class Errand:
    """One look over the shelf: where to, what to tell, and what is asked meanwhile."""

    opened: Callable[[], Shelf]
    folders: tuple[Path, ...]
    files: tuple[Path, ...]
    news: "SimpleQueue[News]" = field(default_factory=SimpleQueue)
    wanted: "SimpleQueue[str]" = field(default_factory=SimpleQueue)
    stopped: threading.Event = field(default_factory=threading.Event)

    def run(self) -> None:
        """Look over the shelf and answer for pictures until it is stopped."""
        try:
            self.folders = tuple(map(_followed, self.folders))
            shelf = self.opened()
            try:
                self._look(shelf)
                while not self.stopped.is_set():
                    self._answer(shelf, ASKED)
            finally:
                shelf.close()
        except Exception as error:  # it is told where the window's troubles are told
            self._tell_broken(error)

    def _look(self, shelf: Shelf) -> None:
        self._tell(shelf.known(self.folders, self.files), 0.0)
        told = time.monotonic()
        for share in shelf.look_over(self.folders, self.files):
            if self.stopped.is_set():
                return
            if time.monotonic() - told > NEWS:
                self._tell(shelf.known(self.folders, self.files), min(share, 0.99))
                told = time.monotonic()
            self._answer(shelf, 0.0)
            time.sleep(PAUSE)
        self._tell(shelf.find("", self.folders, self.files), 1.0)

    def _answer(self, shelf: Shelf, patience: float) -> None:
        """Give the pictures that are asked for; wait so long for the first."""
        try:
            file = self.wanted.get(timeout=patience) if patience else self.wanted.get_nowait()
        except Empty:
            return
        picture = shelf.picture(file)
        self.news.put(lambda looking: looking.pictured.emit(file, picture))

    def _tell(self, vehicles: tuple[Found, ...], share: float) -> None:
        self.news.put(lambda looking: looking.seen.emit(vehicles, share))

    def _tell_broken(self, error: Exception) -> None:
        self.news.put(lambda looking: looking.broke(error))


def _followed(folder: Path) -> Path:
    """Return where a folder really is, so that no vehicle hangs there under two names."""
    try:
        return folder.resolve()
    except (OSError, ValueError, RuntimeError):
        return folder


class Looking(QObject):
    """The window's side of it: starts a look, passes on what comes, and lets it go."""

    seen = Signal(object, float)  # the vehicles so far, newest first; the share that was looked over
    pictured = Signal(str, object)  # a vehicle's file; its picture as a PNG, or None

    def __init__(self, opened: Callable[[], Shelf], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._opened = opened
        self._errand: Errand | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(POLL)
        self._timer.timeout.connect(self.take)

    def start(self, folders: tuple[Path, ...], files: tuple[Path, ...]) -> None:
        """Begin a look; one that is under way is let go."""
        self.end()
        self._errand = Errand(self._opened, folders, files)
        threading.Thread(target=self._errand.run, name="shelf", daemon=True).start()
        self._timer.start()

    def want(self, file: str) -> None:
        """Ask for a picture; it comes as `pictured`."""
        if self._errand is not None:
            self._errand.wanted.put(file)

    def take(self) -> None:
        """Pass on what has come by now."""
        errand = self._errand
        while errand is not None and errand is self._errand:
            try:
                news = errand.news.get_nowait()
            except Empty:
                return
            news(self)

    def broke(self, error: Exception) -> None:
        """Tell that a look failed."""
        self.end()
        TROUBLE.report(error)

    def end(self) -> None:
        """Let a look go: nothing more comes of it."""
        self._timer.stop()
        if self._errand is not None:
            self._errand.stopped.set()
            self._errand = None
