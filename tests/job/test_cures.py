"""Cures looked for beside the window: in order, of one layout only, never a stale one."""

import pytest
from tests.build import gear, layout

from bayboard.edits.move_gear import MoveGear
from bayboard.job import cures
from bayboard.job.cures import Asked, Search, look_for, still_cures
from bayboard.job.runner import InPlace, Ticket, finished
from bayboard.rules.check import check
from bayboard.rules.cures import Cure, Curer

# A and B 3 mm apart (must), C and D 10 mm (should)
START = layout(gear=[gear("A", 200, 200), gear("B", 303, 200), gear("C", 700, 200), gear("D", 810, 200)])
MOVED = MoveGear(("A",), -1.0, 0.0).apply(START)


class Waiting:
    """A runner that keeps its tasks for the test to end."""

    def __init__(self):
        self.tasks = []

    def start(self, task, payload, done, progress=None):
        ticket = Ticket()
        self.tasks.append((ticket, task, payload, done))
        return ticket

    def end(self):
        ticket, task, payload, done = self.tasks.pop(0)
        if not ticket.stopped:
            done(finished(task(payload), Ticket(), lambda: False)[0])


@pytest.fixture
def findings():
    return [f for f in check(START).findings if f.rule == "gap"]


@pytest.fixture
def waiting():
    return Waiting()


def search(runner):
    told = []
    return Search(runner, lambda: told.append(1)), told


def test_findings_are_looked_at_in_the_order_asked_for(waiting, findings):
    made, told = search(waiting)
    made.follow(START, findings[::-1])
    assert [t[2].finding for t in waiting.tasks] == [findings[1]]  # one at a time
    waiting.end()
    assert told == [1]
    assert [t[2].finding for t in waiting.tasks] == [findings[0]]
    waiting.end()
    assert waiting.tasks == []


def test_what_is_found_is_what_the_rules_find(findings):
    made, _ = search(InPlace())
    made.follow(START, findings)
    for finding in findings:
        assert made.found(finding, START) == Curer(START).cures(finding) != ()


def test_until_it_is_found_nobody_knows(waiting, findings):
    made, _ = search(waiting)
    assert not made.looking(findings[0])
    made.follow(START, findings)
    assert made.found(findings[0], START) is None
    assert all(made.looking(f) for f in findings)


def test_a_draft_that_changed_drops_what_was_found_and_what_is_looked_for(waiting, findings):
    made, told = search(waiting)
    made.follow(START, findings)
    waiting.end()
    made.follow(MOVED, findings)
    assert made.found(findings[0], START) is None
    assert made.found(findings[0], MOVED) is None
    waiting.end()  # of the draft before
    assert made.found(findings[0], MOVED) is None and made.found(findings[1], MOVED) is None
    assert told == [1]


def test_a_late_answer_for_a_draft_before_is_no_answer(waiting, findings):
    made, told = search(waiting)
    made.follow(START, findings)
    _, task, payload, done = waiting.tasks[0]
    made.follow(MOVED, findings)
    done(finished(task(payload), Ticket(), lambda: False)[0])
    assert told == [] and made.found(findings[0], MOVED) is None


def test_nothing_is_looked_for_while_something_is_in_the_hand(waiting, findings):
    made, _ = search(waiting)
    made.follow(START, findings)
    made.rest()
    assert waiting.tasks[0][0].stopped
    assert not made.looking(findings[0])
    made.follow(START, findings)
    assert len(waiting.tasks) == 2 and not waiting.tasks[1][0].stopped


def test_what_is_known_of_a_draft_is_not_looked_for_again(waiting, findings):
    made, _ = search(waiting)
    made.follow(START, findings)
    waiting.end()
    made.rest()
    made.follow(START, findings)
    assert made.found(findings[0], START) is not None
    assert [t[2].finding for t in waiting.tasks if not t[0].stopped] == [findings[1]]


def test_a_search_that_breaks_gives_that_finding_up_and_goes_on(waiting, findings):
    made, _ = search(waiting)
    made.follow(START, findings)
    made.broke()
    assert made.found(findings[0], START) == ()
    assert waiting.tasks[-1][2].finding == findings[1]


def test_one_draft_is_worked_out_once(findings, monkeypatch):
    made = []
    real = cures._Last.curer.__class__ if cures._Last.curer else Curer

    class Counted(real):
        def __init__(self, *args):
            made.append(1)
            super().__init__(*args)

    monkeypatch.setattr("bayboard.rules.cures.Curer", Counted)
    for draft in (-1, -1, -2):
        finished(look_for(Asked(draft, START, findings[0])), Ticket(), lambda: False)
    assert len(made) == 2


def test_a_cure_found_for_another_layout_is_tried_before_it_is_taken(findings):
    must = findings[0]
    cure = Curer(START).cures(must)[0]
    assert still_cures(START, must, cure)
    nearer = MoveGear(("B",), -2.0, 0.0).apply(START)
    assert not still_cures(nearer, must, cure)
    gone = layout(gear=[gear("B", 303, 200)])
    assert not still_cures(gone, must, cure)


def test_a_cure_that_would_make_a_new_must_is_none(findings):
    into_c = Cure(MoveGear(("B",), 300.0, 0.0), gone=True, nudge=None)
    assert not still_cures(START, findings[0], into_c)


def test_what_only_eases_is_told_from_what_cures(findings):
    eases = MoveGear(("B",), 4.0, 0.0)  # 7 mm: a should is left
    assert still_cures(START, findings[0], Cure(eases, gone=False, nudge=None))
    assert not still_cures(START, findings[0], Cure(eases, gone=True, nudge=None))
