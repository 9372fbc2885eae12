"""A check that goes along with a layout says what a fresh check says, whatever edits are made."""

from random import Random

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule
from tests.any_edit import MAKERS, any_edit
from tests.bays import bay
from tests.edits.test_laws import EDITS

from bayboard.edits.history import History
from bayboard.edits.move_gear import MoveGear
from bayboard.model.read import from_document
from bayboard.rules.check import Checker, check

START = from_document(bay(6, across=3))
KINDS = sorted(MAKERS, key=lambda kind: kind.__name__)


class _Made:
    """An edit that was made already."""

    def __init__(self, after):
        self.after = after

    def apply(self, _):
        return self.after

    def label(self, _):
        return "Walk"


class Walk(RuleBasedStateMachine):
    """Edits of every kind, taken back and done again; now and then a look is left half way."""

    @initialize()
    def start(self):
        self.history, self.checker = History(START), Checker(START)

    @rule(kind=st.sampled_from(KINDS), seed=st.integers(0, 10**6))
    def edit(self, kind, seed):
        after = any_edit(Random(seed), self.history.now, self.checker.now, kind)
        self.history = self.history.do(_Made(after))

    @rule(seed=st.integers(0, 10**6), parts=st.integers(0, 12))
    def drag(self, seed, parts):
        """Begin to look at places on the way, and leave it."""
        by = any_edit(Random(seed), self.history.now, self.checker.now, MoveGear)
        self.checker.begin(by)
        for _ in range(parts):
            self.checker.go_on(0.0)
        self.history = self.history.do(_Made(any_edit(Random(seed + 1), by, self.checker.now, MoveGear)))

    @precondition(lambda self: self.history.done)
    @rule()
    def undo(self):
        self.history = self.history.undo()

    @precondition(lambda self: self.history.undone)
    @rule()
    def redo(self):
        self.history = self.history.redo()

    @invariant()
    def it_says_what_a_fresh_check_says(self):
        now, fresh = self.checker.move(self.history.now), check(self.history.now)
        assert now.findings == fresh.findings
        assert now.unchecked == fresh.unchecked


Walk.TestCase.settings = settings(max_examples=3, stateful_step_count=7, derandomize=True, deadline=None)
TestWalk = Walk.TestCase


def test_every_kind_of_edit_is_walked():
    assert set(MAKERS) == {type(edit) for edit, _ in EDITS}


def test_a_look_in_parts_says_nothing_new_until_its_end():
    checker = Checker(START)
    before = checker.now
    after = MoveGear(("A1",), 30.0, 5.0).apply(START)
    checker.begin(after)
    parts = 0
    while not checker.go_on(1e-9):
        assert checker.now is before and checker.scene.layout is START
        parts += 1
    assert parts > 20
    assert checker.now == check(after)
