"""What can be done when a job's file cannot be written, or is no longer as this window left it."""

import os
from collections.abc import Callable
from pathlib import Path

from bayboard.job.job import Job, open_job
from bayboard.job.shelf import fresh_path, shelf_folder
from bayboard.model.refused import Refused
from bayboard.store.job_file import Changed, Held
from bayboard.window.keeping.door import Came, same_file, who_holds
from bayboard.window.keeping.keeper import Keeper
from bayboard.window.last import aside_folder, remember
from bayboard.window.notice import CLOSE, Notice
from bayboard.window.workplace import Workplace

KEEP_MINE, TAKE_THEIRS, LATER = "Keep mine in a new file", "Take the file's", "Not now"
ELSEWHERE = "Go on in another file"


class WaysOut:
    """Tells why a draft is not written, and goes the way that a person chooses.

    `ask_where` asks for the path of another job file; `came` puts another job on the Wall.
    """

    def __init__(
        self,
        place: Workplace,
        notice: Notice,
        keeper: Keeper,
        ask_where: Callable[[], Path | None],
        came: Came,
    ) -> None:
        self.place = place
        self.notice = notice
        self.keeper = keeper
        self.ask_where = ask_where
        self.came = came
        self._told = ""

    def tell(self, refused: Refused) -> None:
        """Tell of a draft that is not written; the sentence goes away when it is."""
        if isinstance(refused, Changed):
            self._told = self._changed_words(refused)
            answers = (KEEP_MINE, TAKE_THEIRS, LATER) if self._file_is_there() else (KEEP_MINE, LATER)
            self.notice.offer(self._told, answers, "must", self._settle_changed)
        else:
            self._told = str(refused)
            self.notice.offer(self._told, (ELSEWHERE, CLOSE), "must", self._settle)

    def tell_again(self) -> bool:
        """Tell of what stands in the way now, if anything does."""
        if self.keeper.trouble is None:
            return False
        self.tell(self.keeper.trouble)
        return True

    def healed(self) -> None:
        """Take the sentence back and say that all is written again."""
        if self._told:
            self.notice.withdraw(self._told)
        self._told = ""
        path = self.place.job.path
        self.place.said.emit(f"Written again: all of it is in {path.name}." if path else "Written again.")

    def _changed_words(self, refused: Refused) -> str:
        path = self.place.job.path
        name = path.name if path else "The file"
        return f"{name}: {refused.what}. Nothing was written over it; what you did since is still here."

    def _file_is_there(self) -> bool:
        path = self.place.job.path
        return path is not None and path.exists()

    # --- the file was changed underneath ---

    def _settle_changed(self, word: str) -> None:
        if word == KEEP_MINE:
            self.keep_mine()
        elif word == TAKE_THEIRS:
            self.take_theirs()

    def keep_mine(self) -> bool:
        """Go on in a new file beside the old one, or on the shelf; return whether that is done."""
        old = self.place.job.path
        name = old.stem if old else self.place.layout.vehicle.name
        folders = [shelf_folder()]
        if old is not None and os.access(old.parent, os.W_OK):
            folders.insert(0, old.parent)
        trouble = ""
        for folder in folders:
            try:
                path = fresh_path(folder, name)
                lost = self._house(path)
            except (Refused, OSError, ValueError) as error:
                trouble = str(error)
                continue
            remember(path)
            behind = f" The revisions could not be taken along: {lost}" if lost else ""
            self.place.said.emit(f"Work goes on in {path.name}.{behind}")
            if lost:
                self.notice.tell(f"Work goes on in {path.name}.{behind}", "should")
            return True
        self.notice.tell(trouble)
        return False

    def _house(self, path: Path) -> str:
        """Go on in a file at `path`; return why the old revisions did not come along, "" when they did."""
        try:
            self.keeper.house_at(path)
        except Refused as refused:
            fresh = Job(self.place.layout)
            fresh.house(path)  # raises where nothing can be written at all
            self._swap(fresh)
            return str(refused)
        return ""

    def _swap(self, job: Job) -> None:
        self.keeper.let_go()
        self.came(job, None, ())

    def take_theirs(self) -> None:
        """Open the file as it is now; this window's draft is saved aside first."""
        job, path = self.place.job, self.place.job.path
        if job.file is None or path is None:
            return
        try:
            aside = job.set_aside(aside_folder())
        except (Refused, OSError) as error:
            self.notice.tell(f"Nothing was changed, for yours could not be saved aside: {error}")
            return
        self.keeper.let_go()
        told = (f"{path.name} as it is in the file. Yours is saved aside as {aside}.",)
        try:
            self.came(open_job(path), None, told)
        except Held:
            self._look_at_theirs(path, told)
        except Refused as refused:
            self._stay(refused)

    def _look_at_theirs(self, path: Path, told: tuple[str, ...]) -> None:
        try:
            self.came(open_job(path, look=True), who_holds(path), told)
        except Refused as refused:
            self._stay(refused)

    def _stay(self, refused: Refused) -> None:
        """Go on with this window's draft, in a file of its own: theirs cannot be opened."""
        self.came(Job(self.place.layout), None, ())
        self.keeper.house()
        self.notice.tell(str(refused))

    # --- the file cannot be written ---

    def _settle(self, word: str) -> None:
        if word == ELSEWHERE:
            self.go_elsewhere()

    def go_elsewhere(self) -> bool:
        """Ask for another job file and go on in it; return whether that is done."""
        path = self.ask_where()
        return path is not None and self.go_on_in(path)

    def go_on_in(self, path: Path) -> bool:
        """Go on in another job file at `path`; return whether that is done."""
        if same_file(path, self.place.job.path):
            self.notice.tell(f"{path.name} is the file itself. Name another.")
            return False
        try:
            lost = self._house(path)
        except Refused as refused:
            self.notice.tell(str(refused))
            return False
        remember(path)
        self.place.said.emit(f"Work goes on in {path.name}.")
        if lost:
            self.notice.tell(f"The revisions could not be taken along: {lost}", "should")
        return True
