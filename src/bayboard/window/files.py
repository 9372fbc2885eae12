"""The way in and out of the window for vehicles; what has no file is asked about in a line, no dialog."""

import os
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from bayboard.job.job import Job, new_job, open_job
from bayboard.job.shelf import fresh_path, shelf_folder
from bayboard.model.refused import Refused
from bayboard.store.job_file import Changed, Holder
from bayboard.tables.where import shipped
from bayboard.window.keeping import words
from bayboard.window.keeping.copying import BAY, as_job_file, copy_name, plain_stem, save_copy, with_ending
from bayboard.window.keeping.door import SAVE_READABLE, Door, rescued_path, same_file
from bayboard.window.keeping.keeper import Keeper
from bayboard.window.keeping.note_line import NoteLine
from bayboard.window.keeping.ways_out import WaysOut
from bayboard.window.keeping.whole_check import WholeCheck
from bayboard.window.last import remember
from bayboard.window.notice import CLOSE, Notice
from bayboard.window.plain_bay import plain_layout
from bayboard.window.standing import NOTHING_OPEN, Standing, standing
from bayboard.window.workplace import Workplace

BOTH = "Vehicles (*.bay *.json)"
JOBS, LAYOUTS = "Job files, every revision (*.bay)", "Plain layouts, no revisions (*.json)"
SAVE, LET_GO, STAY = "Save", "Let the changes go", "Go on working"


def ask_open(parent: QWidget, start: str) -> str:
    """Return the path a person chose to open, "" for none."""
    return QFileDialog.getOpenFileName(parent, "Open a vehicle", start, f"{BOTH};;All files (*)")[0]


def ask_save(parent: QWidget, start: str) -> str:
    """Return the path a person chose to save to, "" for none."""
    kinds = (LAYOUTS, JOBS) if start.lower().endswith(".json") else (JOBS, LAYOUTS)
    return QFileDialog.getSaveFileName(parent, "Save a copy", start, ";;".join(kinds))[0]


class Files(QObject):
    """Opens, begins, keeps, saves and lets go of vehicles.  Always true: the draft is kept by `keeper`."""

    closed = Signal()  # the window may go
    begun = Signal()  # a new vehicle is on the Wall
    arrived = Signal()  # another vehicle is on the Wall, from its file
    kept_shown = Signal(object, object)  # a path; what a file of a newer form keeps

    def __init__(self, place: Workplace, notice: Notice, note_line: NoteLine, window: QWidget) -> None:
        super().__init__(window)
        self.place = place
        self.notice = notice
        self.note_line = note_line
        self.window = window
        self.holder: Holder | None = None  # who else has the file that is only looked at
        self._stood: tuple[tuple[object, ...], int | None] | None = None
        self.keeper = Keeper(place, self)
        self.check = WholeCheck(place, self)
        self.door = Door(notice, self._settle, self.came, self.kept_shown.emit)
        self.ways = WaysOut(place, notice, self.keeper, self._ask_where, self.came)
        self._connect()

    def _connect(self) -> None:
        keeper, check = self.keeper, self.check
        self.note_line.kept.connect(self._keep)
        self.place.opened.connect(self.note_line.close_line)
        keeper.troubled.connect(self.ways.tell)
        keeper.settled.connect(self.ways.healed)
        keeper.housed.connect(self._housed)
        keeper.homeless.connect(self._homeless)
        check.began.connect(self._check_began)
        check.ended.connect(self._check_ended)
        check.harmed.connect(self._harmed)

    # --- asked for by keys, buttons, drops ---

    def open(self) -> None:
        """Choose a vehicle and open it."""
        self._settle(self._choose)

    def open_path(self, path: Path, look: bool = False) -> None:
        """Open a vehicle's file, `look`: without holding it."""
        job = self.place.job
        if job.keeps and not self.place.first_start and same_file(path, job.path):
            if not self.ways.tell_again():
                self.place.said.emit(f"{path.name} is on the Wall already.")
            return
        self._settle(lambda: self.door.open(path, look))

    def new(self) -> None:
        """Begin a vehicle with a plain wall and a plain board."""
        self._settle(self._begin)

    def example(self) -> None:
        """Put up the first finished example; the program's own file is never changed."""
        self._settle(self._example)

    def may_close(self) -> bool:
        """Return whether nothing would be lost; else ask, and say `closed` when it is settled."""
        if self._is_settled():
            self.keeper.let_go()
            return True
        self._settle(self._close)
        return False

    def save(self) -> bool:
        """Save a plain layout to its own file, keep a revision of others; return whether it is saved."""
        job = self.place.job
        if job.file is not None or job.path is None:
            self.keep()
            return False
        return self._write(job.path)

    def save_copy(self) -> bool:
        """Ask where to, and save a copy; return whether it is saved."""
        job = self.place.job
        folder = job.path.parent if job.path else Path.home()
        chosen = ask_save(self.window, str(folder / copy_name(job)))
        if not chosen:
            return False
        path = with_ending(Path(chosen), job)
        if job.file is None and path.suffix.lower() != BAY:
            return self._write(path)
        return self._copy(path)

    def keep(self) -> None:
        """Ask for a note in a line, and keep the draft as a revision."""
        job, place = self.place.job, self.place
        if place.first_start:
            place.said.emit("Nothing is open that could be kept.")
        elif job.looking:
            place.said.emit(words.ONLY_LOOKED_AT)
        elif self.keeper.write() or not self.ways.tell_again():
            kept_as, newest = self._kept()
            made = self._house_beside(job) if job.file is None and job.path else None
            self.note_line.ask(newest + 1, words.note_helper(kept_as, made))

    # --- how it stands ---

    def standing(self) -> Standing:
        """Return how the job on the Wall stands in its file."""
        if self.place.first_start:
            return Standing(NOTHING_OPEN)
        kept_as, kept = self._kept()
        return standing(self.place.job, self.keeper.trouble, self.holder, kept_as, kept, self.keeper.alone)

    def _kept(self) -> tuple[int | None, int]:
        """Return the revision that the draft equals, and the newest, 0 for none or where it cannot be read.

        They are looked up anew only when something changed.
        """
        job = self.place.job
        try:
            kept = job.revisions()
            key = (job, job.layout, job.parent, kept)
            if self._stood is None or any(a is not b for a, b in zip(self._stood[0], key, strict=True)):
                self._stood = (key, job.kept_as())
        except Refused:
            return None, 0
        return self._stood[1], kept[-1].number if kept else 0

    # --- what has no file yet ---

    def _is_settled(self) -> bool:
        """Bring everything into its file; return whether nothing would be lost now."""
        if self.place.first_start:
            return True
        return self.keeper.write() and not self.place.job.dirty

    def _settle(self, act: Callable[[], None]) -> None:
        """Do it now, or once it is known what becomes of changes that are in no file."""
        self.note_line.close_line()
        if self._is_settled():
            act()
            return
        name, trouble = self.place.layout.vehicle.name, self.keeper.trouble
        why = f": {trouble.what}" if trouble is not None else ""
        told = f"What was done last to {name} is not written{why}." if why else ""

        def answered(word: str) -> None:
            """Go on when the changes are saved or given up."""
            if word == LET_GO or (word == SAVE and self._save_somewhere()):
                act()

        self.notice.ask(told or f"Changes to {name} are not saved.", (SAVE, LET_GO, STAY), answered)

    def _save_somewhere(self) -> bool:
        """Save what its own file does not take; return whether it is in a file now."""
        job = self.place.job
        if self.keeper.trouble is not None:
            if self.keeper.write():
                return True
            changed = isinstance(self.keeper.trouble, Changed)
            return self.ways.keep_mine() if changed else self.ways.go_elsewhere()
        return self.save_copy() if job.path is None else self._write(job.path)

    def _close(self) -> None:
        self.keeper.let_go()
        self.closed.emit()

    # --- opening ---

    def _choose(self) -> None:
        path = self.place.job.path
        chosen = ask_open(self.window, str(path.parent if path else shelf_folder()))
        if chosen:
            self.door.open(Path(chosen))

    def _begin(self) -> None:
        self._put_up(Job(plain_layout(self.place.units)))
        self.begun.emit()

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
        self._put_up(Job(job.layout))
        self.place.said.emit("An example to try things on. It gets a file of its own at the first change.")

    def came(self, job: Job, holder: Holder | None = None, told: tuple[str, ...] = ()) -> None:
        """Put an opened vehicle on the Wall and say what there is to say of it."""
        self._put_up(job, holder)
        path = job.path
        if path is not None:
            remember(path)
            self.place.said.emit(f"{'Looking at' if job.looking else 'Opened'} {path.name}.")
        if told:
            self.notice.offer(" ".join(told), (CLOSE,), "note")
        self.arrived.emit()

    def _put_up(self, job: Job, holder: Holder | None = None) -> None:
        self.keeper.let_go()
        self.holder = holder
        self.notice.clear()
        self.place.take(job)

    # --- keeping and saving ---

    def _keep(self, note: str) -> None:
        job = self.place.job
        left, made = (job.path, None) if job.file is None else (None, None)
        if job.file is None:
            made = self.house()
            if made is None:
                return
        try:
            revision = job.keep(note)
        except Refused as refused:
            self.ways.tell(refused)
            return
        self.place.said.emit(words.kept_words(revision.number, made, left))

    def house(self) -> Path | None:
        """Make a job file of a job without one; return its path, None when that cannot be: it is told."""
        job = self.place.job
        if job.path is None:
            return job.path if self.keeper.house() else None
        try:
            path = self._house_beside(job)
            self.keeper.house_at(path)
        except Refused as refused:
            path = self._on_the_shelf(job.path.stem)
            if path is None:
                self.notice.tell(str(refused))
                return None
        remember(path)
        return path

    def _on_the_shelf(self, name: str) -> Path | None:
        try:
            path = fresh_path(shelf_folder(), name)
            self.keeper.house_at(path)
        except (Refused, OSError, ValueError):
            return None
        return path

    @staticmethod
    def _house_beside(job: Job) -> Path:
        """Return the new job file's path: beside the layout, of its name where that is free."""
        plain = job.path or shelf_folder() / plain_stem(job.layout.vehicle.name)
        number, path = 1, plain.with_suffix(BAY)
        while os.path.lexists(path):
            number += 1
            path = plain.with_name(f"{plain.stem}-{number}{BAY}")
        return path

    def _write(self, path: Path) -> bool:
        try:
            self.place.job.save(path)
        except Refused as refused:
            self.notice.tell(str(refused))
            return False
        remember(path)
        self.place.said.emit(f"Saved as {path.name}.")
        return True

    def _copy(self, path: Path) -> bool:
        job = self.place.job
        if path.suffix.lower() == BAY and self.keeper.trouble is not None and not self.keeper.write():
            return self.ways.go_on_in(path)  # its own file takes nothing more: the copy is where work goes on
        try:
            if job.path is None and not os.path.lexists(path):
                self.keeper.house_at(path)
                remember(path)
                said = f"Work goes on in {path.name}, kept as you go."
            else:
                said = save_copy(job, path)
        except Refused as refused:
            self.notice.tell(str(refused))
            return False
        self.place.said.emit(said)
        return True

    # --- what the keeper and the check say ---

    def _ask_where(self) -> Path | None:
        """Ask for the path of a job file to go on in; None for none."""
        job = self.place.job
        chosen = ask_save(self.window, str(shelf_folder() / Path(copy_name(job)).with_suffix(BAY)))
        return as_job_file(Path(chosen)) if chosen else None

    def _housed(self, path: Path) -> None:
        remember(path)
        self.place.said.emit(f"Kept as you go from now on, in {path.name} on the shelf.")

    def _homeless(self, sentence: str) -> None:
        self.notice.offer(
            f"{sentence} The work is only in this window; K tries again, Ctrl Shift S saves it elsewhere."
        )

    def _check_began(self) -> None:
        self.keeper.checked = True

    def _check_ended(self) -> None:
        self.keeper.checked = False

    def _harmed(self, sentences: tuple[str, ...]) -> None:
        """Tell that the file on the Wall is not whole, and offer to save what is."""
        path = self.place.job.path
        if path is None:
            return
        more = len(sentences) - 1
        rest = f" (and {more} more like it)" if more else ""
        out = rescued_path(path)
        text = (
            f"{path.name} is not whole: {sentences[0]}{rest} Do not rely on this file alone; "
            f"what can be read would be saved as {out.name}."
        )

        def answered(word: str) -> None:
            """Save what can be read and go on in that."""
            if word == SAVE_READABLE:
                self._settle(lambda: self.door.rescue(path, out))

        self.notice.offer(text, (SAVE_READABLE, CLOSE), "must", answered)


def first_job() -> Job:
    """Return the empty job behind the first-start screen."""
    return new_job()
