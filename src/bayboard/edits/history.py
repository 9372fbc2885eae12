"""What was done to a layout, so that it can be taken back: whole layouts, never an inverse."""

from collections.abc import Mapping
from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.edit import Edit
from bayboard.edits.move_gear import MoveGear
from bayboard.model.layout import Layout, Printed


@dataclass(frozen=True, slots=True)
class Step:
    """One edit with the layouts before and after it; `label` is its words at the time.

    `edit` is None where it was made before the file was opened.
    """

    edit: Edit | None
    label: str
    before: Layout
    after: Layout


@dataclass(frozen=True, slots=True)
class History:
    """A layout with the steps that led to it and those taken back, each the newest last.

    Always true: `now` is the last step's `after`, and the `before` of the last one undone.
    """

    now: Layout
    done: tuple[Step, ...] = ()
    undone: tuple[Step, ...] = ()

    def do(self, edit: Edit, folds: bool = False) -> "History":
        """Return the history after the edit; the same when the edit changes nothing.

        `folds`: the edit follows at once on the last, so that a move of the same gear joins its
        step and both are taken back together.
        """
        after = edit.apply(self.now)
        if after is self.now:
            return self
        if folds and self.done and not self.undone:
            joined = _joined(self.done[-1], edit, after)
            if joined is not None:
                return History(after, (*self.done[:-1], joined))
        return History(after, (*self.done, Step(edit, edit.label(self.now), self.now, after)))

    def undo(self) -> "History":
        """Return the history one step back, the same when there is none."""
        if not self.done:
            return self
        step = self.done[-1]
        return History(step.before, self.done[:-1], (*self.undone, step))

    def told(self, printed: Printed | None) -> "History":
        """Return the history with that `printed` in every layout of it: no undo takes a print back."""
        steps = (*self.done, *self.undone)
        known = {id(layout): layout for step in steps for layout in (step.before, step.after)}
        known[id(self.now)] = self.now
        told = {
            key: layout if layout.printed == printed else replace(layout, printed=printed)
            for key, layout in known.items()
        }
        done = tuple(_with_layouts(step, told) for step in self.done)
        undone = tuple(_with_layouts(step, told) for step in self.undone)
        return History(told[id(self.now)], done, undone)

    def redo(self) -> "History":
        """Return the history with the step last taken back done again, the same when there is none."""
        if not self.undone:
            return self
        step = self.undone[-1]
        return History(step.after, (*self.done, step), self.undone[:-1])


def _with_layouts(step: Step, told: Mapping[int, Layout]) -> Step:
    """Return the step with the layouts that stand in `told` for its own, by their identity."""
    return Step(step.edit, step.label, told[id(step.before)], told[id(step.after)])


def _joined(last: Step, edit: Edit, after: Layout) -> Step | None:
    """Return the last step with a move of the same gear joined to it, None when they do not fold."""
    if not isinstance(last.edit, MoveGear) or not isinstance(edit, MoveGear) or last.edit.ids != edit.ids:
        return None
    both = last.edit.followed_by(edit)
    return Step(both, both.label(last.before), last.before, after)
