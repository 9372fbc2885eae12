"""Keeping as one goes: every change of the draft is in its file within a second, if that can be written.

A change is written when hands rest, at the latest 0.75 s after it; only that limit reaches into a drag.
"""

import contextlib
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal

from bayboard.job.shelf import fresh_path, shelf_folder
from bayboard.model.refused import Refused
from bayboard.store.holder import host
from bayboard.store.job_file import Changed, JobFile
from bayboard.store.sentences import reason
from bayboard.store.shelf_reader import look_at
from bayboard.window.keeping.view_state import NAME as VIEW
from bayboard.window.workplace import EMPTY, Workplace

REST = 250  # ms after the last change
LATEST = 750  # ms after the first change that is not written; a slow disk has the rest of the second
AGAIN = 10_000  # ms until what could not be written is tried again
SOON = 300  # ms, where the file is only busy with being checked


class Keeper(QObject):
    """Writes the draft of the job on the Wall.  Always true: `trouble` is why it is not written, or None."""

    troubled = Signal(object)  # a `Refused`, once for each trouble
    settled = Signal()  # what could not be written is written
    housed = Signal(object)  # the path of the job file that was made for a job without one
    homeless = Signal(str)  # the sentence when none could be made
    stands = Signal()  # how the draft stands in its file may be different

    def __init__(self, place: Workplace, parent: QObject) -> None:
        super().__init__(parent)
        self.place = place
        self.trouble: Refused | None = None
        self.checked = False  # the file is being read whole beside the window, and may be busy for a moment
        self.alone = False  # no file could be made for this job: it is a draft in memory
        self.view: Callable[[], Any] = lambda: None  # how the vehicle is looked at, as JSON
        self._seen = place.layout
        self._gone: JobFile | None = None  # the file that was let go
        self._lost = False  # another program has taken the file over
        self._rest = self._timer(REST, self._rested)
        self._latest = self._timer(LATEST, self.write)
        self._again = self._timer(AGAIN, self.write)
        place.opened.connect(self._begin)
        place.changed.connect(self._follow)

    def _timer(self, ms: int, act: object) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(True)
        timer.setInterval(ms)
        timer.timeout.connect(act)
        return timer

    def _begin(self) -> None:
        """Another job is on the Wall."""
        self._stop()
        self.trouble, self.alone, self.checked, self._lost = None, False, False, False
        self._seen = self.place.layout
        self.stands.emit()

    def _follow(self) -> None:
        layout = self.place.layout
        if layout is self._seen:
            if self.trouble is not None and not self._lost and not self.place.job.unwritten:
                self._is_written()  # somebody else has written it
            return
        self._seen = layout
        if self._waits():
            self._rest.start()
            if not self._latest.isActive():
                self._latest.start()

    def _waits(self) -> bool:
        return self.place.job.unwritten or self._wants_file()

    def _wants_file(self) -> bool:
        """Return whether this is a new vehicle's first change, or an example's."""
        job = self.place.job
        plain = job.file is None and job.path is None
        return plain and job.dirty and not self.place.first_start and not self.alone

    def _rested(self) -> None:
        place = self.place
        if place.hand is not EMPTY or place.shown is not place.layout:
            self._rest.start()
        else:
            self.write()

    def _stop(self) -> None:
        for timer in (self._rest, self._latest, self._again):
            timer.stop()

    # --- writing ---

    def write(self) -> bool:
        """Bring the draft into its job file now; return whether no job file lacks anything of it."""
        self._stop()
        if self._is_gone():
            return True
        if self._lost:
            return not self.place.job.unwritten
        try:
            if self._wants_file() and not self.house():
                return False
            self.place.job.flush()
        except Refused as refused:
            self._is_not_written(refused)
            return False
        self._is_written()
        return True

    def house(self) -> bool:
        """Make a job file on the shelf for a job without one; return whether it has one now."""
        folder = shelf_folder()
        try:
            path = fresh_path(folder, self.place.layout.vehicle.name)
            self.house_at(path)
        except (Refused, OSError, ValueError) as error:
            why = error.what if isinstance(error, Refused) else reason(error)
            self.alone = True
            self.homeless.emit(f"No job file could be made in {folder}: {why}.")
            self.stands.emit()
            return False
        self.housed.emit(path)
        return True

    def house_at(self, path: Path) -> None:
        """Make a job file at `path` and go on in it; raise `Refused`, all as before, when that fails."""
        self.place.job.house(path)
        self.alone = self._lost = False
        self._is_written()

    def look_after(self) -> None:
        """See whether the file is still ours, before anything is done to it: told when it is not."""
        job = self.place.job
        if not job.keeps or job.path is None or self._is_gone() or self.trouble is not None:
            return
        taken = taken_over(job.path)
        if taken is not None:
            self._lost = True
            self._is_not_written(taken)

    def save_view(self) -> None:
        """Keep how the vehicle is looked at in its file; that it cannot be is no reason to stop."""
        job = self.place.job
        if job.keeps and not self._is_gone() and not job.unwritten:
            with contextlib.suppress(Refused):
                job.set_meta(VIEW, self.view())

    def let_go(self) -> None:
        """Let the file of the job on the Wall go; what is not written of it stays unwritten."""
        self._stop()
        job = self.place.job
        file = job.file
        if file is None or self._is_gone():
            return
        self.save_view()
        if not job.unwritten:
            with contextlib.suppress(Refused):
                job.close()
        file.close()
        self._gone = file

    def _is_gone(self) -> bool:
        return self._gone is not None and self.place.job.file is self._gone

    def _is_written(self) -> None:
        healed, self.trouble = self.trouble is not None, None
        self._stop()
        self.stands.emit()
        if healed:
            self.settled.emit()

    def _is_not_written(self, refused: Refused) -> None:
        self._again.start(SOON if self.checked else AGAIN)
        if self.checked:
            return
        told = self.trouble is not None and self.trouble.what == refused.what
        self.trouble = refused
        self.stands.emit()
        if not told:
            self.troubled.emit(refused)


def taken_over(path: Path) -> Changed | None:
    """Return the sentence when a file that this program opened is another's by now, None when it is ours."""
    facts = look_at(path).facts
    hold = facts.hold
    if facts.trouble or (hold is not None and (hold.pid, hold.host) == (os.getpid(), host())):
        return None
    who = f" by {hold.user} on {hold.host}" if hold is not None else ""
    return Changed(path.name, f"this file was taken over{who}", "Save a copy under another name")
