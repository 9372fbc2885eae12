"""The undo steps of an open job, of which those made before the file was opened lie in it unread.

The steps are a row of layouts, each with the words of the edit that led to it.  The file numbers them; the
history in memory is the middle of that row, and grows at either end when somebody goes back that far.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

from msgspec import structs

from bayboard.edits.edit import Edit
from bayboard.edits.history import History, Step
from bayboard.model.layout import Layout, Printed
from bayboard.store.records import Draft, Mark
from bayboard.store.states import MOST as MOST_STEPS

Reader = Callable[[int], Layout]


@dataclass(frozen=True, slots=True)
class Batch:
    """What a write to the job file takes: states after `upto` go, `add` follow it, the draft is at `at`."""

    upto: int
    add: tuple[tuple[str, Layout], ...]
    at: int


@dataclass(frozen=True, slots=True)
class Past:
    """The history with the marks of what the file holds beyond it.

    `first` are the words that led to the earliest layout of `history`.  `older` and `newer` are unread
    states, in the file's order.  `written` are the states of the file that are in memory, in order: those
    of the last write, which tell by identity what has to be written again.  `at`: where the file has
    its draft.
    """

    history: History
    first: str = ""
    older: tuple[Mark, ...] = ()
    newer: tuple[Mark, ...] = ()
    written: tuple[tuple[int, Layout], ...] = ()
    at: int = 0

    @property
    def undo_label(self) -> str | None:
        """Return the words of the step that undo takes back, None when there is none."""
        if self.history.done:
            return self.history.done[-1].label
        return self.first if self.older else None

    @property
    def redo_label(self) -> str | None:
        """Return the words of the step that redo does again, None when there is none."""
        if self.history.undone:
            return self.history.undone[-1].label
        return self.newer[0].label if self.newer else None

    def do(self, edit: Edit, folds: bool = False) -> "Past":
        """Return the past after the edit, the same when it changes nothing."""
        history = self.history.do(edit, folds)
        return self if history is self.history else replace(self, history=history, newer=())

    def undo(self, read: Reader) -> "Past":
        """Return the past one step back; a state that is not in memory is had from `read`."""
        if self.history.done or not self.older:
            return replace(self, history=self.history.undo())
        mark, now = self.older[-1], self.history.now
        before = _alike(read(mark.number), now.printed)
        history = History(now, (Step(None, self.first, before, now),), self.history.undone)
        written = ((mark.number, before), *self.written)
        past = replace(self, first=mark.label, older=self.older[:-1], written=written)
        return replace(past, history=history.undo())

    def redo(self, read: Reader) -> "Past":
        """Return the past with the step last taken back done again."""
        if self.history.undone or not self.newer:
            return replace(self, history=self.history.redo())
        mark, now = self.newer[0], self.history.now
        after = _alike(read(mark.number), now.printed)
        history = History(now, self.history.done, (Step(None, mark.label, now, after),))
        written = (*self.written, (mark.number, after))
        return replace(self, history=history.redo(), newer=self.newer[1:], written=written)

    def told(self, printed: Printed | None) -> "Past":
        """Return the past with another `printed` in every layout of it: what is printed is never undone."""
        history = self.history.told(printed)
        numbers = [number for number, _ in self.written]
        whole = len(numbers) == len(self.row())
        layouts = [layout for _, layout in replace(self, history=history).row()]
        return replace(
            self, history=history, written=tuple(zip(numbers, layouts, strict=True)) if whole else ()
        )

    def row(self) -> tuple[tuple[str, Layout], ...]:
        """Return the layouts in memory as one row, oldest first, each with the words that led to it."""
        done, undone = self.history.done, self.history.undone
        start = done[0].before if done else self.history.now
        after = [(step.label, step.after) for step in (*done, *reversed(undone))]
        return ((self.first, start), *after)

    def batch(self) -> Batch | None:
        """Return what has to be written, None when the file holds all of it."""
        row = self.row()
        same = _same(row, self.written)
        if same == len(row) == len(self.written):
            at = self.written[len(self.history.done)][0]
            last = self.newer[-1].number if self.newer else self.written[-1][0]
            return None if at == self.at else Batch(last, (), at)
        upto = self.written[same - 1][0] if same else (self.older[-1].number if self.older else 0)
        if same > len(self.history.done):
            at = self.written[len(self.history.done)][0]
        else:
            at = upto + 1 + len(self.history.done) - same
        return Batch(upto, row[same:], at)

    def again(self) -> Batch:
        """Return the batch that writes the draft once more and changes no step; all must be written."""
        last = self.newer[-1].number if self.newer else self.written[-1][0]
        return Batch(last, (), self.at)

    def unwritten(self) -> "Past":
        """Return the past as for a file that holds nothing of it; what was unread is left behind."""
        return replace(self, older=(), newer=(), written=(), at=0)

    def wrote(self, batch: Batch) -> "Past":
        """Return the past once the batch is in the file."""
        row = self.row()
        kept = len(row) - len(batch.add)
        numbers = [number for number, _ in self.written[:kept]]
        numbers += [batch.upto + 1 + i for i in range(len(batch.add))]
        written = tuple((number, layout) for number, (_, layout) in zip(numbers, row, strict=True))
        newer = () if batch.add else self.newer
        room = max(MOST_STEPS - len(written) - len(newer), 0)
        older = self.older[-room:] if room else ()  # the file drops the oldest
        return replace(self, written=written, at=batch.at, older=older, newer=newer)


def past_of(draft: Draft) -> Past:
    """Return the past of a draft as it came out of its file: all its steps unread."""
    here = next((mark for mark in draft.states if mark.number == draft.at), None)
    return Past(
        History(draft.layout),
        first=here.label if here else "",
        older=tuple(mark for mark in draft.states if mark.number < draft.at),
        newer=tuple(mark for mark in draft.states if mark.number > draft.at),
        written=((draft.at, draft.layout),) if here else (),
        at=draft.at if here else 0,
    )


def _alike(layout: Layout, printed: Printed | None) -> Layout:
    """Return the layout with what is printed now: the sheets lie on the bench whatever is undone."""
    return layout if layout.printed == printed else structs.replace(layout, printed=printed)


def _same(row: tuple[tuple[str, Layout], ...], written: tuple[tuple[int, Layout], ...]) -> int:
    """Return how many layouts at the start of the row the file holds as they are."""
    count = 0
    for (_, layout), (_, there) in zip(row, written, strict=False):
        if layout is not there:
            break
        count += 1
    return count
