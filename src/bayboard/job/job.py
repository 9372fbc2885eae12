"""One open job: the draft with its history, what is shown of it, what the rules say of that."""

import re
from collections.abc import Callable, Mapping
from datetime import datetime
from pathlib import Path

from bayboard.edits.edit import Edit
from bayboard.edits.history import History
from bayboard.job.change import Change, Shown, change
from bayboard.job.runner import Done, InPlace, Progress, R, Runner, Task, Ticket
from bayboard.model.layout import Bay, Layout, Units, Vehicle
from bayboard.model.refused import Refused
from bayboard.routing.route import Route
from bayboard.rules.check import Checker, Verdict
from bayboard.rules.scene import Scene
from bayboard.store.files import open_layout, save_layout

Callback = Callable[[Change], None]


class Job:
    """A layout that is worked on.

    Always true: `verdict` and `routes` are those of `shown`, which is the draft, or the draft with one
    edit on top while something is held in hand.  An edit that raises leaves everything as it was.
    """

    def __init__(self, layout: Layout, path: Path | None = None, runner: Runner | None = None) -> None:
        self._history = History(layout)
        self._saved: Layout | None = layout if path is not None else None
        self._fresh = layout
        self._path = path
        self._runner = runner or InPlace()
        self._checker: Checker | None = None
        self._shown = self._look(layout)
        self._callbacks: list[Callback] = []
        self._news: list[Change] = []
        self._telling = False

    @property
    def layout(self) -> Layout:
        """Return the draft: what would be saved."""
        return self._history.now

    @property
    def shown(self) -> Layout:
        """Return the layout to be drawn: the draft, or what is held in hand on top of it."""
        return self._shown.layout

    @property
    def verdict(self) -> Verdict:
        """Return what the rules say of `shown`."""
        return self._shown.verdict

    @property
    def routes(self) -> Mapping[str, Route]:
        """Return the path of each lead of `shown` that has one."""
        return self._shown.routes

    @property
    def scene(self) -> Scene:
        """Return `shown` with all that the rules derived from it."""
        return self._shown.scene

    @property
    def path(self) -> Path | None:
        """Return the file of this job, None while it has none."""
        return self._path

    @property
    def dirty(self) -> bool:
        """Return whether the draft differs from what is in the file; a new job is clean until it changes."""
        return self.layout is not (self._saved or self._fresh)

    @property
    def undo_label(self) -> str | None:
        """Return what `undo` would take back, None when there is nothing."""
        return self._history.done[-1].label if self._history.done else None

    @property
    def redo_label(self) -> str | None:
        """Return what `redo` would do again, None when there is nothing."""
        return self._history.undone[-1].label if self._history.undone else None

    def do(self, edit: Edit, folds: bool = False) -> None:
        """Make the edit, dropping any preview; `folds` joins a move to the last move of the same gear."""
        self._go(self._history.do(edit, folds))

    def preview(self, edit: Edit) -> None:
        """Show the draft with the edit on top, in place of any preview before; nothing is kept."""
        self._show(edit.apply(self.layout), self._history)

    def drop_preview(self) -> None:
        """Show the draft again."""
        self._show(self.layout, self._history)

    def undo(self) -> str | None:
        """Take the last step back, dropping any preview, and return its label; None when there is none."""
        label = self.undo_label
        self._go(self._history.undo())
        return label

    def redo(self) -> str | None:
        """Do the step last taken back again and return its label; None when there is none."""
        label = self.redo_label
        self._go(self._history.redo())
        return label

    def save(self, path: Path | None = None) -> None:
        """Write the draft to `path`, or to its own file; raise `Refused`, all as before, when that fails."""
        target = path or self._path
        if target is None:
            raise Refused("", "this layout has no file yet", "Save it under a name")
        save_layout(target, self.layout)
        self._path, self._saved = target, self.layout
        self._tell(Change(frozenset(), frozenset(), verdict=False, draft=True))

    def set_aside(self, folder: Path) -> Path:
        """Write the draft to a new file in `folder`, which is made if needed, and return its path.

        For when something went wrong: the job's own file stays as it is.
        """
        folder.mkdir(parents=True, exist_ok=True)
        name = self._path.stem if self._path else self.layout.vehicle.name
        plain = re.sub(r"[^A-Za-z0-9-]+", "-", name).strip("-")[:40] or "layout"
        start = f"{plain}-{datetime.now().strftime('%Y%m%d-%H%M%S')}"
        number, path = 1, folder / f"{start}.json"
        while path.exists():
            number += 1
            path = folder / f"{start}-{number}.json"
        save_layout(path, self.layout)
        return path

    def start(self, task: Task[Layout, R], done: Done[R], progress: Progress | None = None) -> Ticket:
        """Start long work on the draft; a result that comes when the draft is another is dropped."""
        asked = self.layout

        def still_true(result: R) -> None:
            """Pass the result on while the draft is the one it was made of."""
            if self.layout is asked:
                done(result)

        return self._runner.start(task, asked, still_true, progress)

    def on_change(self, callback: Callback) -> Callable[[], None]:
        """Call `callback` after every change; return a function that ends it."""
        self._callbacks.append(callback)
        return lambda: self._callbacks.remove(callback) if callback in self._callbacks else None

    def _go(self, history: History) -> None:
        self._show(history.now, history)

    def _show(self, layout: Layout, history: History) -> None:
        draft = history is not self._history
        if layout is self._shown.layout and not draft:
            return
        before, after = self._shown, self._look(layout)
        self._history, self._shown = history, after
        self._tell(change(before, after, draft))

    def _look(self, layout: Layout) -> Shown:
        """Return the layout with all that follows; if that fails, the next look starts from nothing."""
        checker, self._checker = self._checker, None
        if checker is None:
            checker = Checker(layout)
        else:
            checker.move(layout)
        self._checker = checker
        return Shown(layout, checker.now, checker.routes, checker.scene)

    def _tell(self, news: Change) -> None:
        """Call every callback, whatever they raise; news made meanwhile is told after, in order."""
        self._news.append(news)
        if self._telling:
            return
        self._telling, raised = True, []
        try:
            while self._news:
                raised += _told(tuple(self._callbacks), self._news.pop(0))
        finally:
            self._telling = False
        if len(raised) == 1:
            raise raised[0]
        if raised:
            raise ExceptionGroup("several callbacks failed", raised)


def _told(callbacks: tuple[Callback, ...], news: Change) -> list[Exception]:
    raised: list[Exception] = []
    for callback in callbacks:
        try:
            callback(news)
        except Exception as error:
            raised.append(error)
    return raised


def open_job(path: Path) -> Job:
    """Return the job of a layout file; raise `Refused` when there is no layout in it."""
    return Job(open_layout(path), Path(path))


def new_job(name: str = "New vehicle", units: Units = "mm") -> Job:
    """Return a job with nothing measured yet."""
    return Job(Layout(vehicle=Vehicle(name=name), units=units, bay=Bay(wall=()), boards=()))
