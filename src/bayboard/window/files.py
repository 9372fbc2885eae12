"""Opening, saving and beginning a layout; what is not saved is asked about in a line, never in a dialog."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from bayboard.job.job import Job, new_job, open_job
from bayboard.model.refused import Refused
from bayboard.tables.where import shipped
from bayboard.window.last import remember
from bayboard.window.notice import Notice
from bayboard.window.plain_bay import plain_layout
from bayboard.window.workplace import Workplace

KINDS = "Layouts (*.json)"
SAVE, LET_GO, STAY = "Save", "Let the changes go", "Go on working"


def ask_open(parent: QWidget, start: str) -> str:
    """Return the path a person chose to open, "" for none."""
    return QFileDialog.getOpenFileName(parent, "Open a vehicle", start, KINDS)[0]


def ask_save(parent: QWidget, start: str) -> str:
    """Return the path a person chose to save to, "" for none."""
    return QFileDialog.getSaveFileName(parent, "Save the layout", start, KINDS)[0]


class Files(QObject):
    """The way in and out of the window for layouts."""

    closed = Signal()  # the window may go

    def __init__(self, place: Workplace, notice: Notice, window: QWidget) -> None:
        super().__init__(window)
        self.place = place
        self.notice = notice
        self.window = window
        self._then: Callable[[], None] | None = None
        self._path: Path | None = None
        notice.answered.connect(self._answered)

    # --- asked for by keys, buttons, drops ---

    def open(self) -> None:
        """Choose a vehicle and open it."""
        self._unless_unsaved(self._choose)

    def open_path(self, path: Path) -> None:
        """Open a vehicle's file."""
        self._path = path
        self._unless_unsaved(self._open)

    def new(self) -> None:
        """Begin a vehicle with a plain wall and a plain board."""
        self._unless_unsaved(self._new)

    def example(self) -> None:
        """Open the first finished example; it is shown from the program's own files, never changed there."""
        self._unless_unsaved(self._example)

    def may_close(self) -> bool:
        """Return whether nothing would be lost; else ask, and say `closed` when it is settled."""
        if not self._unsaved():
            return True
        self._unless_unsaved(self.closed.emit)
        return False

    def save(self) -> bool:
        """Save to the layout's own file, or ask for one; return whether it is saved."""
        job = self.place.job
        return self.save_as() if job.path is None else self._write(job.path)

    def save_as(self) -> bool:
        """Ask where to save; return whether it is saved."""
        job = self.place.job
        start = job.path or Path.home() / f"{_plain(job.layout.vehicle.name)}.json"
        chosen = ask_save(self.window, str(start))
        if not chosen:
            return False
        path = Path(chosen)
        return self._write(path if path.suffix else path.with_suffix(".json"))

    # --- how ---

    def _unsaved(self) -> bool:
        return self.place.job.dirty and not self.place.first_start

    def _unless_unsaved(self, act: Callable[[], None]) -> None:
        """Do it now, or once it is settled what becomes of the unsaved changes."""
        if not self._unsaved():
            act()
            return
        self._then = act
        name = self.place.layout.vehicle.name
        self.notice.ask(f"Changes to {name} are not saved.", (SAVE, LET_GO, STAY))

    def _answered(self, word: str) -> None:
        act, self._then = self._then, None
        if act is not None and (word == LET_GO or (word == SAVE and self.save())):
            act()

    def _choose(self) -> None:
        path = self.place.job.path
        chosen = ask_open(self.window, str(path.parent if path else Path.home()))
        if chosen:
            self._path = Path(chosen)
            self._open()

    def _open(self) -> None:
        if self._path is None:
            return
        try:
            job = open_job(self._path)
        except Refused as refused:
            self.notice.tell(str(refused))
            return
        remember(self._path)
        self.place.take(job)
        self.place.said.emit(f"Opened {self._path.name}.")

    def _new(self) -> None:
        self.place.take(Job(plain_layout(self.place.units)))

    def _example(self) -> None:
        found = sorted(shipped("demo_layouts").glob("*.json"))
        if not found:
            self.notice.tell("There is no finished example among the program's files.")
            return
        try:
            job = open_job(found[0])
        except Refused as refused:
            self.notice.tell(str(refused))
            return
        self.place.take(Job(job.layout))
        self.place.said.emit("An example to try things on. Saving it asks where to.")

    def _write(self, path: Path) -> bool:
        try:
            self.place.job.save(path)
        except Refused as refused:
            self.notice.tell(str(refused))
            return False
        remember(path)
        self.place.said.emit(f"Saved as {path.name}.")
        return True


def first_job() -> Job:
    """Return the empty job behind the first-start screen."""
    return new_job()


def _plain(name: str) -> str:
    kept = "".join(c if c.isalnum() or c in " -_" else " " for c in name)
    return "-".join(kept.split()).lower() or "layout"
