"""The history, walked at random against a plain list of layouts."""

from itertools import pairwise

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule
from msgspec.structs import replace
from tests.edits.test_laws import start

from bayboard.edits.history import History
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.set_units import SetUnits
from bayboard.edits.turn_gear import TurnGear
from bayboard.model.layout import Printed

START = start()
MM = st.sampled_from([0.0, 0.396875, 1.0, -2.5])
WHO = st.sampled_from(["A1", "A2"])


class Walk(RuleBasedStateMachine):
    """Edits, undo and redo next to a list of layouts and a place in it."""

    def __init__(self):
        super().__init__()
        self.history = History(START)
        self.shadow, self.here = [START], 0
        self.last = None

    def _do(self, edit, folds=False):
        after = edit.apply(self.shadow[self.here])
        joined = folds and self.here == len(self.shadow) - 1 and self.here > 0 and self._joins(edit)
        self.history = self.history.do(edit, folds)
        if after is self.shadow[self.here]:
            return
        keep = self.here if joined else self.here + 1
        self.shadow = [*self.shadow[:keep], after]
        self.here = keep
        self.last = edit

    def _joins(self, edit):
        return isinstance(self.last, MoveGear) and isinstance(edit, MoveGear) and self.last.ids == edit.ids

    @rule(who=WHO, dx=MM, dy=MM, folds=st.booleans())
    def move(self, who, dx, dy, folds):
        self._do(MoveGear((who,), dx, dy), folds)

    @rule(who=WHO)
    def turn(self, who):
        self._do(TurnGear((who,), 90))

    @rule(units=st.sampled_from(["mm", "in"]))
    def say(self, units):
        self._do(SetUnits(units))

    @rule()
    def undo(self):
        self.history = self.history.undo()
        self.here = max(self.here - 1, 0)
        self.last = self.history.done[-1].edit if self.history.done else None

    @rule()
    def redo(self):
        self.history = self.history.redo()
        self.here = min(self.here + 1, len(self.shadow) - 1)
        self.last = self.history.done[-1].edit if self.history.done else None

    @invariant()
    def the_layout_is_what_we_remember(self):
        assert self.history.now == self.shadow[self.here]
        assert len(self.history.done) == self.here
        assert len(self.history.undone) == len(self.shadow) - 1 - self.here


TestWalk = Walk.TestCase
TestWalk.settings = settings(derandomize=True, max_examples=40, stateful_step_count=25, deadline=None)


def test_key_presses_in_a_row_are_taken_back_as_one_and_told_as_one():
    history = History(START)
    for _ in range(3):
        history = history.do(MoveGear(("A1",), 1.5875, 0), folds=True)
    assert len(history.done) == 1
    assert history.done[-1].label == "Move A1 right 3/16 in"
    assert history.undo().now is START


def test_a_key_press_for_another_piece_is_a_step_of_its_own():
    history = History(START).do(MoveGear(("A1",), 1, 0)).do(MoveGear(("A2",), 1, 0), folds=True)
    assert len(history.done) == 2


def test_a_move_after_an_undo_does_not_join_what_was_undone():
    history = History(START).do(MoveGear(("A1",), 1, 0)).do(TurnGear(("A1",), 90)).undo()
    history = history.do(MoveGear(("A1",), 1, 0), folds=True)
    assert [step.label for step in history.done] == ["Move A1 right 3/64 in", "Move A1 right 3/64 in"]


def test_a_new_edit_forgets_what_was_undone():
    history = History(START).do(TurnGear(("A1",), 90)).undo().do(MoveGear(("A1",), 1, 0))
    assert history.undone == ()
    assert history.redo() is history


PRINTED = Printed(revision="3", holes=())


def _walked():
    """Return a history with steps done and steps undone."""
    history = History(START)
    for edit in (MoveGear(("A1",), 1, 0), TurnGear(("A2",), 90), SetUnits("mm"), TurnGear(("A1",), 90)):
        history = history.do(edit)
    return history.undo().undo()


def test_what_is_printed_stands_in_every_layout_of_the_history():
    told = _walked().told(PRINTED)
    steps = (*told.done, *told.undone)
    layouts = [told.now, *(step.before for step in steps), *(step.after for step in steps)]
    assert {layout.printed for layout in layouts} == {PRINTED}
    bare = replace(told.undo().undo().now, printed=None)
    assert (bare, told.redo().redo().redo().now.units) == (START, "mm")


def test_a_told_history_is_still_one_row_of_the_same_layouts():
    told = _walked().told(PRINTED)
    assert told.done[-1].after is told.now
    assert told.undone[-1].before is told.now
    row = (*told.done, *reversed(told.undone))
    assert all(a.after is b.before for a, b in pairwise(row))
    assert [(s.edit, s.label) for s in told.done] == [(s.edit, s.label) for s in _walked().done]


def test_layouts_that_are_told_what_they_know_stay_the_same_objects():
    history = _walked()
    same = history.told(None)
    assert same.now is history.now
    assert all(a.before is b.before for a, b in zip(same.done, history.done, strict=True))
    again = history.told(PRINTED)
    assert again.told(Printed(revision="3", holes=())).now is again.now


def test_what_a_told_layout_does_not_touch_stays_the_same_object():
    history = _walked()
    assert history.told(PRINTED).now.gear is history.now.gear
