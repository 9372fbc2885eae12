"""A check that goes along with a layout says what a fresh check says, after any walk."""

import msgspec
import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule
from tests.bays import bay

from bayboard.mechanics.printed import printed_of
from bayboard.model.layout import Pose
from bayboard.model.read import from_document
from bayboard.rules.check import Checker, check, moved_gear

PIECES = 6
START = from_document(bay(PIECES, across=3))
PRINTED = msgspec.structs.replace(START, printed=printed_of(START, "1"), drilled_holes={"A1#1": (9.0, 9.0)})


def _with(layout, number, **members):
    piece = msgspec.structs.replace(layout.gear[number], **members)
    return msgspec.structs.replace(layout, gear=(*layout.gear[:number], piece, *layout.gear[number + 1 :]))


class Walk(RuleBasedStateMachine):
    """Stand-ins are moved, turned, lifted, put on the bench and back; now and then something else changes."""

    @initialize()
    def start(self):
        self.layout = START
        self.checker = Checker(START)

    def _go(self, layout):
        self.layout = layout
        self.checker.move(layout)

    @rule(n=st.integers(0, PIECES - 1), by=st.tuples(st.floats(-90, 90), st.floats(-70, 70)))
    def move(self, n, by):
        at = self.layout.gear[n].at
        if at is not None:
            self._go(_with(self.layout, n, at=(at[0] + by[0], at[1] + by[1])))

    @rule(n=st.integers(0, PIECES - 1), turn=st.sampled_from([0.0, 90.0, 180.0, 30.0]))
    def turn(self, n, turn):
        self._go(_with(self.layout, n, turn=turn))

    @rule(n=st.integers(0, PIECES - 1), lift=st.sampled_from([0.0, 5.9, 8.0, 60.0]))
    def lift(self, n, lift):
        self._go(_with(self.layout, n, lift=lift))

    @rule(pair=st.tuples(st.integers(0, PIECES - 1), st.integers(0, PIECES - 1)))
    def swap(self, pair):
        (a, b), pieces = pair, self.layout.gear
        if pieces[a].at is not None and pieces[b].at is not None:
            self._go(_with(_with(self.layout, a, at=pieces[b].at), b, at=pieces[a].at))

    @rule(n=st.integers(0, PIECES - 1))
    def to_the_bench_or_back(self, n):
        at = None if self.layout.gear[n].at is not None else (240.0, 180.0)
        self._go(_with(self.layout, n, at=at))

    @rule(gap=st.sampled_from([15.0, 30.0]))
    def ask_for_more_room(self, gap):
        self._go(msgspec.structs.replace(self.layout, limits={"gap_should": gap}))

    @rule(n=st.integers(0, PIECES - 1), off=st.sampled_from([0.0, 0.2]))
    def drill(self, n, off):
        gear = self.layout.gear[n]
        if gear.at is not None:
            pose = Pose(at=(gear.at[0] + off, gear.at[1]), turn=gear.turn + off)
            self._go(_with(self.layout, n, drilled=pose))

    @rule(n=st.integers(0, PIECES - 1))
    def drill_one_screw(self, n):
        gear = self.layout.gear[n]
        self._go(msgspec.structs.replace(self.layout, drilled_holes={f"{gear.id}#1": (99.0, 99.0)}))

    @rule()
    def print_the_sheets(self):
        self._go(msgspec.structs.replace(self.layout, printed=printed_of(self.layout, "1")))

    @invariant()
    def it_says_what_a_fresh_check_says(self):
        fresh = check(self.layout)
        assert self.checker.now.findings == fresh.findings
        assert self.checker.now.unchecked == fresh.unchecked


Walk.TestCase.settings = settings(max_examples=8, stateful_step_count=8, derandomize=True, deadline=None)
TestWalk = Walk.TestCase


def test_the_walk_starts_from_a_layout_with_something_to_say():
    rules = {finding.rule for finding in check(START).findings}
    assert {"sight", "reach", "beside", "crossing", "lead-path"} <= rules


@pytest.mark.parametrize(
    ("members", "moved"),
    [
        ({"at": (10.0, 10.0)}, {"A1"}),
        ({"turn": 45.0}, {"A1"}),
        ({"taped": True}, {"A1"}),
        ({"at": None}, None),
        ({"card": "amp" if START.gear[1].card != "amp" else "low"}, None),
    ],
    ids=["moved", "turned", "taped", "benched", "another card"],
)
def test_only_places_of_gear_are_a_step(members, moved):
    assert moved_gear(START, _with(START, 1, **members)) == moved


def test_an_equal_layout_read_anew_is_no_step_at_all():
    assert moved_gear(START, from_document(bay(PIECES, across=3))) == frozenset()


def test_a_let_be_entry_is_told_at_once():
    checker = Checker(START)
    worst = next(f for f in checker.now.findings if f.severity == "should" and f.measure is not None)
    from bayboard.model.layout import LetBe

    left = LetBe(rule=worst.rule, subjects=worst.subjects, measure=worst.measure, reason="seen")
    verdict = checker.move(msgspec.structs.replace(START, let_be=(left,)))
    assert verdict.counts["let_be"] >= 1
    assert verdict.findings == check(msgspec.structs.replace(START, let_be=(left,))).findings


def test_a_piece_that_leaves_its_holes_and_its_sheets_is_told_step_by_step():
    checker = Checker(PRINTED)
    assert "reprint" not in {f.rule for f in checker.now.findings}
    moved = _with(PRINTED, 1, at=(30.0, 40.0))
    assert checker.move(moved).findings == check(moved).findings
    assert {"drilled", "reprint"} <= {f.rule for f in checker.now.findings}
    away = _with(moved, 2, at=(80.0, 90.0), drilled=Pose(at=(0.0, 0.0), turn=0.0))
    assert checker.move(away).findings == check(away).findings
    assert checker.move(PRINTED).findings == check(PRINTED).findings
