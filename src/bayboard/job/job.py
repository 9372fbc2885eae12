"""One open job: the draft with its history, what is shown of it, what the rules say of that, its file."""

from collections.abc import Callable, Mapping
from math import inf
from pathlib import Path
from typing import TYPE_CHECKING, Any

from bayboard.edits.edit import Edit
from bayboard.edits.history import History
from bayboard.job import copies
from bayboard.job.change import Change, Shown, change
from bayboard.job.filed import Filed, no_job_file, only_looked_at
from bayboard.job.go_back import GoBack
from bayboard.job.looking import Looking
from bayboard.job.past import Past, past_of
from bayboard.job.picture import picture
from bayboard.job.runner import Done, InPlace, Progress, R, Runner, Task, Ticket
from bayboard.job.telling import Telling
from bayboard.model.layout import Bay, Layout, Printed, Units, Vehicle
from bayboard.model.refused import Refused
from bayboard.store.files import open_layout, save_layout
from bayboard.store.job_file import JobFile, PrintLine, Revision, examine, is_job_file, open_job_file

if TYPE_CHECKING:  # a command that only keeps or goes back asks no rules and does without them
    from bayboard.routing.route import Route
    from bayboard.rules.check import Verdict
    from bayboard.rules.scene import Scene

NOTHING = Change(frozenset(), frozenset(), verdict=False, draft=True)


class Job:
    """A layout that is worked on.

    Always true: `verdict` and `routes` are those of `shown`, which is the draft, or the draft with one
    edit on top while something is held in hand.  An edit that raises leaves everything as it was.
    Begun with a job file, or housed in one later, `flush` brings the draft and its undo steps into it.
    """

    def __init__(
        self, start: Layout | JobFile, path: Path | None = None, runner: Runner | None = None
    ) -> None:
        self._filed: Filed | None = None
        if isinstance(start, JobFile):
            draft = start.draft()
            self._past, self._filed = past_of(draft), Filed(start, draft.parent, draft.layout)
        else:
            self._past = Past(History(start))
        self._fresh = self.layout
        self._saved: Layout | None = self.layout if path is not None else None
        self._path = path
        self._runner = runner or InPlace()
        self._looking = Looking()
        self._told: Shown | None = None
        self._telling = Telling()

    # --- the draft and what is shown of it ---

    @property
    def layout(self) -> Layout:
        """Return the draft: what would be saved."""
        return self._past.history.now

    @property
    def shown(self) -> Layout:
        """Return the layout to be drawn: the draft, or what is held in hand on top of it."""
        return self._shown.layout

    @property
    def verdict(self) -> "Verdict":
        """Return what the rules say of `shown`, looking to the end where that is still going on."""
        return self._looked.verdict

    @property
    def heard(self) -> "Verdict":
        """Return what is known by now: `verdict`, without what it said of things that moved since."""
        return self._shown.verdict

    @property
    def judged(self) -> bool:
        """Return whether the rules have looked at all of `shown`."""
        return self._shown.judged

    @property
    def routes(self) -> "Mapping[str, Route]":
        """Return the path of each lead of `shown` that has one."""
        return self._looked.routes

    @property
    def scene(self) -> "Scene":
        """Return `shown` with all that the rules derived from it."""
        return self._shown.scene

    @property
    def _shown(self) -> Shown:
        if self._told is None:
            self._told = self._looking.take_up(self.layout)
        return self._looking.shown or self._told

    @property
    def _looked(self) -> Shown:
        return self._shown if self._shown.judged else self._looking.go_on()

    @property
    def undo_label(self) -> str | None:
        """Return what `undo` would take back, None when there is nothing."""
        return self._past.undo_label

    @property
    def redo_label(self) -> str | None:
        """Return what `redo` would do again, None when there is nothing."""
        return self._past.redo_label

    def do(self, edit: Edit, folds: bool = False) -> None:
        """Make the edit, dropping any preview; `folds` joins a move to the last move of the same gear."""
        self._may_change()
        self._show(self._past.do(edit, folds))

    def preview(self, edit: Edit, within: float = inf) -> None:
        """Show the draft with the edit on top in place of any preview; `judge` does what takes longer."""
        self._show(self._past, edit.apply(self.layout), within)

    def judge(self, within: float = inf) -> bool:
        """Let the rules look on for about `within` seconds; return whether they are done, and tell so."""
        before, after = self._told, self._looking.go_on(within) if self._told else self._shown
        if after.judged and before is not None and after is not before:
            self._told = after
            self._telling.tell(change(before, after, draft=False))
        return after.judged

    def drop_preview(self) -> None:
        """Show the draft again."""
        self._show(self._past)

    def undo(self) -> str | None:
        """Take the last step back, dropping any preview, and return its label; None when there is none."""
        self._may_change()
        label = self.undo_label
        self._show(self._past.undo(self._state))
        return label

    def redo(self) -> str | None:
        """Do the step last taken back again and return its label; None when there is none."""
        self._may_change()
        label = self.redo_label
        self._show(self._past.redo(self._state))
        return label

    def verdict_of(self, layout: Layout) -> "Verdict":
        """Return what the rules say of another layout, a revision; the last few are remembered."""
        return self._looking.verdict_of(layout)

    # --- its file ---

    @property
    def path(self) -> Path | None:
        """Return the file of this job, None while it has none."""
        return self._path

    @property
    def file(self) -> JobFile | None:
        """Return the job file, None for a plain layout and for a job without a file."""
        return self._filed.file if self._filed else None

    @property
    def looking(self) -> bool:
        """Return whether the job is only looked at: nothing in it changes."""
        return self._filed is not None and self._filed.file.looking

    @property
    def keeps(self) -> bool:
        """Return whether the job has a job file that it may write."""
        return self._filed is not None and not self._filed.file.looking

    @property
    def dirty(self) -> bool:
        """Return whether the draft differs from what is in the file; a new job is clean until it changes."""
        if self._filed is not None:
            return self.unwritten
        return self.layout is not (self._saved or self._fresh)

    @property
    def unwritten(self) -> bool:
        """Return whether the job file lacks something of the draft or its undo steps."""
        return self.keeps and self._past.batch() is not None

    def flush(self) -> None:
        """Bring the draft and its undo steps into the job file.

        Raises `Refused` when that fails: all stays in memory, and a later flush tries again.
        """
        batch = self._past.batch() if self.keeps else None
        if batch is None or self._filed is None:
            return
        self._filed.write(self.layout, batch)
        self._past = self._past.wrote(batch)
        self._telling.tell(NOTHING)

    def house(self, path: Path) -> None:
        """Make a job file of this job and go on in it; raise `Refused`, all as before, when that fails."""
        before, self._filed = self._filed, copies.housed(self.layout, self._filed, path)
        if before is not None:
            before.file.close()
        self._path = path
        self._past = self._past.unwritten()
        self.flush()
        self._telling.tell(NOTHING)

    def save(self, path: Path | None = None) -> None:
        """Write the draft to `path`, or to its own file; raise `Refused`, all as before, when that fails."""
        if path is None and self._filed is not None:
            self.flush()
            return
        target = path or self._path
        if target is None:
            raise Refused("", "this layout has no file yet", "Save it under a name")
        save_layout(target, self.layout)
        if self._filed is None:
            self._path, self._saved = target, self.layout
        self._telling.tell(NOTHING)

    def save_copy(self, path: Path) -> None:
        """Write a copy to `path`: a `.bay` with every revision, a `.json` of the draft."""
        self.flush()
        copies.save_copy(self.layout, self._filed, path)

    def set_aside(self, folder: Path) -> Path:
        """Write the draft to a new file in `folder`, which is made if needed, and return its path.

        For when something went wrong: the job's own file stays as it is.
        """
        return copies.set_aside(self.layout, self._path, folder)

    def close(self) -> None:
        """Bring everything into the job file and let go of it; raise `Refused` when not all is written.

        After a refusal the file is still held: the work is in memory, and one may try again.
        """
        if self._filed is None:
            return
        self.flush()
        self._picture_draft(self._filed)
        self._filed.file.close()

    # --- revisions ---

    @property
    def parent(self) -> int | None:
        """Return the number of the revision the draft came from, None before the first."""
        return self._filed.parent if self._filed else None

    def revisions(self) -> tuple[Revision, ...]:
        """Return what was kept, oldest first; a plain layout has none."""
        return self._filed.revisions() if self._filed else ()

    def revision(self, number: int) -> Layout:
        """Return a revision's layout; raise `Refused` when there is none of that number."""
        return self._with_file().revision(number)

    def picture(self, number: int) -> bytes | None:
        """Return the small picture (PNG) of a revision, None when it has none."""
        return self._with_file().file.picture(number)

    def kept_as(self) -> int | None:
        """Return the revision that the draft equals, `printed` aside, None when it is not kept yet."""
        if self._filed is None:
            return None
        return self._filed.kept_as(self.layout, (self._filed.newest(), self.parent))

    def keep(self, note: str) -> Revision:
        """Keep the draft as a new revision; raise `Refused` when it cannot be written."""
        filed = self._with_file()
        self._may_change()
        self.flush()
        revision = filed.keep(self.layout, note)
        self._telling.tell(NOTHING)
        return revision

    def restore(self, number: int) -> str:
        """Go back to a revision as one undo step and return its words; today's draft is kept first.

        What is printed and drilled by now stays so.  Raises `Refused`, all as before, when that fails.
        """
        filed = self._with_file()
        self._may_change()
        becomes = filed.becomes(self.layout, number)
        past = self._past.do(GoBack(number, becomes))
        if past is self._past:
            return f"The draft is revision {number} already"
        self.flush()
        past = self._past.do(GoBack(number, becomes))
        batch, label = past.batch(), past.history.done[-1].label
        if batch is not None:
            filed.go_back(self.layout, becomes, number, label, batch.upto)
            self._show(past.wrote(batch))
        return label

    # --- what was printed, and other things beside the draft ---

    def prints(self) -> tuple[PrintLine, ...]:
        """Return the print log, oldest first."""
        return self._filed.file.prints() if self._filed else ()

    def log_print(self, line: PrintLine, printed: Printed | None) -> None:
        """Note a print; `printed`: the holes on its sheets, None when no drill sheet was among them."""
        filed = self._with_file()
        self._may_change()
        self.flush()
        past = self._past if printed is None else self._past.told(printed)
        filed.file.log_print(line, past.history.now)
        self._show(past)
        self._telling.tell(NOTHING)

    def meta(self, name: str) -> Any:
        """Return what the job file keeps under a name beside the layout, None for nothing."""
        return self._filed.file.meta(name) if self._filed else None

    def set_meta(self, name: str, value: Any) -> None:
        """Keep a JSON value under a name beside the layout; nothing happens without a job file to write."""
        if self._filed is not None and self.keeps:
            self._filed.file.set_meta(name, value)

    def examine(self) -> tuple[str, ...]:
        """Return what is broken in the job file, () when it is whole; may run on any thread."""
        return examine(self._filed.file.path) if self._filed else ()

    # --- long work, and who is told ---

    def start(self, task: Task[Layout, R], done: Done[R], progress: Progress | None = None) -> Ticket:
        """Start long work on the draft; a result that comes when the draft is another is dropped."""
        asked = self.layout

        def still_true(result: R) -> None:
            """Pass the result on while the draft is the one it was made of."""
            if self.layout is asked:
                done(result)

        return self._runner.start(task, asked, still_true, progress)

    def on_change(self, callback: Callable[[Change], None]) -> Callable[[], None]:
        """Call `callback` after every change; return a function that ends it."""
        return self._telling.add(callback)

    # --- how ---

    def _with_file(self) -> Filed:
        if self._filed is None:
            raise no_job_file()
        return self._filed

    def _may_change(self) -> None:
        if self.looking:
            raise only_looked_at()

    def _state(self, number: int) -> Layout:
        return self._with_file().file.state(number)

    def _picture_draft(self, filed: Filed) -> None:
        """Give the file the draft's picture for the shelf where it has an older one."""
        if self.keeps and filed.pictured is not self.layout:
            filed.write(self.layout, self._past.again(), picture(self.layout))
            filed.pictured = self.layout

    def _show(self, past: Past, preview: Layout | None = None, within: float = inf) -> None:
        layout = preview or past.history.now
        draft = past.history is not self._past.history
        if self._filed is not None:
            self._filed.came_to(past.history.now)
        if self._told is None and not self._telling.heard and layout is past.history.now:
            self._past = past
            return
        if layout is self._shown.layout and not draft:
            self._past = past
            return
        before = self._told or self._shown
        after = self._looking.take_up(layout, within)
        self._past, self._told = past, after
        self._telling.tell(change(before, after, draft))


def open_job(path: Path, *, look: bool = False, take: bool = False) -> Job:
    """Return the job of a `.json` layout or a `.bay` job file; raise `Refused` when there is none in it.

    `look`: only to look at it; `take`: also where somebody else holds it.
    """
    path = Path(path)
    if is_job_file(path):
        file = open_job_file(path, look=look, take=take)
        try:
            return Job(file, path)
        except BaseException:
            file.close()
            raise
    return Job(open_layout(path), path)


def new_job(name: str = "New vehicle", units: Units = "mm") -> Job:
    """Return a job with nothing measured yet."""
    return Job(Layout(vehicle=Vehicle(name=name), units=units, bay=Bay(wall=()), boards=()))
