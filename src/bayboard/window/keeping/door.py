"""Opening a vehicle's file: what stands in the way is told, with the ways there are."""

import os
from collections.abc import Callable
from pathlib import Path

from bayboard.job.job import Job, open_job
from bayboard.job.shelf import shelf_folder
from bayboard.model.refused import Refused
from bayboard.store.holder import runs
from bayboard.store.job_file import Damaged, Held, Holder, Kept, Newer, is_job_file, rescue
from bayboard.store.shelf_reader import look_at
from bayboard.window.keeping.words import held_words
from bayboard.window.notice import Notice

LOOK, TAKE, CANCEL = "Look only", "Take it over", "Cancel"
SHOW_KEPT = "Look at its notes and pictures"
SAVE_READABLE = "Save what can be read"

Came = Callable[[Job, Holder | None, tuple[str, ...]], None]
ShowKept = Callable[[Path, tuple[Kept, ...]], None]
Settle = Callable[[Callable[[], None]], None]


class Door:
    """Opens files.  `came` is given the job, who else holds it, and what is to be told of the opening.

    `settle` does an act once nothing would be lost by it: work may go on while a question stands.
    """

    def __init__(self, notice: Notice, settle: Settle, came: Came, show_kept: ShowKept) -> None:
        self.notice = notice
        self.settle = settle
        self.came = came
        self.show_kept = show_kept

    def open(self, path: Path, look: bool = False, take: bool = False, told: tuple[str, ...] = ()) -> None:
        """Open a file to work on, only to `look` at, or to `take` over from who holds it."""
        try:
            job = open_job(path, look=look, take=take)
        except Held as held:
            self.ask_held(path, held.holder)
        except Newer as newer:
            self._tell_newer(path, newer)
        except Damaged as damaged:
            self._ask_damaged(path, str(damaged))
        except Refused as refused:
            self._tell_refused(path, refused, look)
        else:
            said = job.file.said if job.file is not None else ()
            self.came(job, who_holds(path) if look else None, (*told, *said))

    def ask_held(self, path: Path, holder: Holder) -> None:
        """Ask what to do with a file that somebody else has open."""

        def answered(word: str) -> None:
            """Open it as the person wants."""
            if word in (LOOK, TAKE):
                self.settle(lambda: self.open(path, look=word == LOOK, take=word == TAKE))

        self.notice.ask(held_words(path, holder), (LOOK, TAKE, CANCEL), answered)

    def _tell_newer(self, path: Path, newer: Newer) -> None:
        if not newer.kept:
            self.notice.tell(str(newer))
            return

        def answered(word: str) -> None:
            """Show what it keeps."""
            if word == SHOW_KEPT:
                self.show_kept(path, newer.kept)

        self.notice.ask(str(newer), (SHOW_KEPT, CANCEL), answered)

    def _ask_damaged(self, path: Path, sentence: str) -> None:
        out = rescued_path(path)

        def answered(word: str) -> None:
            """Save what can be read and open that."""
            if word == SAVE_READABLE:
                self.settle(lambda: self.rescue(path, out))

        text = f"{sentence} It would be saved as {out.name}; {path.name} stays as it is."
        self.notice.ask(text, (SAVE_READABLE, CANCEL), answered)

    def rescue(self, path: Path, out: Path) -> None:
        """Save what can be read of a damaged file into `out` and open that."""
        try:
            told = rescue(path, out)
        except Refused as refused:
            self.notice.tell(str(refused))
            return
        self.open(out, told=(f"Saved as {out.name}.", *told))

    def _tell_refused(self, path: Path, refused: Refused, look: bool) -> None:
        """Tell why a file is not opened; offer to look at it where that can be done."""
        if look or not _can_be_looked_at(path):
            self.notice.tell(str(refused))
            return

        def answered(word: str) -> None:
            """Look at it."""
            if word == LOOK:
                self.settle(lambda: self.open(path, look=True))

        self.notice.ask(str(refused), (LOOK, CANCEL), answered)


def who_holds(path: Path) -> Holder | None:
    """Return who has a job file open as far as can be told; None for nobody, or a program that is gone."""
    hold = look_at(path).facts.hold if is_job_file(path) else None
    if hold is None or runs(hold) is False:
        return None
    return Holder(hold.user, hold.host, hold.since)


def rescued_path(path: Path) -> Path:
    """Return a new path for what is rescued of a file: beside it, or on the shelf."""
    folder = path.parent if os.access(path.parent, os.W_OK) else shelf_folder()
    number, out = 1, folder / f"{path.stem} rescued.bay"
    while os.path.lexists(out):
        number += 1
        out = folder / f"{path.stem} rescued {number}.bay"
    return out


def same_file(one: Path | None, other: Path | None) -> bool:
    """Return whether two paths lead to one file."""
    try:
        return one is not None and other is not None and one.samefile(other)
    except (OSError, ValueError):
        return False


def _can_be_looked_at(path: Path) -> bool:
    if not is_job_file(path):
        return False
    try:
        open_job(path, look=True).close()
    except Refused:
        return False
    return True
