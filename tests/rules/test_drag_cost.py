"""A step of a drag costs a fraction of a whole check; tests/long/drag.py keeps the figures."""

import statistics
import time

import msgspec
from tests.bays import bay

from bayboard.geometry import sight, solids
from bayboard.model.read import from_document
from bayboard.rules.check import Checker, check

PAIRS = 7
START = from_document(bay(16, across=4))
MANY = from_document(bay(30, across=6))


def _moved(layout, number, by=1.0):
    piece = layout.gear[number]
    at = (piece.at[0] + by, piece.at[1] + by)
    rest = msgspec.structs.replace(piece, at=at)
    return msgspec.structs.replace(layout, gear=(*layout.gear[:number], rest, *layout.gear[number + 1 :]))


def _seconds(act):
    begin = time.thread_time()  # others may be at work beside
    act()
    return time.thread_time() - begin


def test_a_step_takes_less_than_half_of_a_whole_check():
    layout, checker, ratios = MANY, Checker(MANY), []
    for n in range(PAIRS):
        layout = _moved(layout, n)
        step = _seconds(lambda: checker.move(layout))  # noqa: B023
        ratios.append(step / _seconds(lambda: check(layout)))  # noqa: B023
    assert statistics.median(ratios) < 0.5


def test_a_step_looks_along_few_rays(monkeypatch):
    """Counted, not timed: rays tried by a whole look and by a step."""
    looked = []
    monkeypatch.setattr(
        sight, "blockers", lambda *rays: looked.append(len(rays[0])) or solids.blockers(*rays)
    )
    checker = Checker(START)
    whole = sum(looked)
    looked.clear()
    checker.move(_moved(START, 5))
    assert 0 < sum(looked) < whole / 4


def test_nothing_moved_costs_no_look(monkeypatch):
    checker = Checker(START)
    before = checker.now.findings
    monkeypatch.setattr(sight, "blockers", None)
    assert checker.move(msgspec.structs.replace(START, x={"note": "mine"})).findings == before
