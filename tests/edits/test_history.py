"""The history, walked at random against a plain list of layouts."""

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule
from tests.edits.test_laws import start

from bayboard.edits.history import History
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.set_units import SetUnits
from bayboard.edits.turn_gear import TurnGear

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
