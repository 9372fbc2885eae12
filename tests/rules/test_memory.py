"""A figure from memory may raise a caution, never clear a finding (shared/reference/README.md).

Each is taken away in turn: put where it asks for nothing.  What is found without it must be found with it.
"""

import pytest
from msgspec.structs import replace
from tests.build import card, gear, layout
from tests.plain.random_layouts import random_document

from bayboard.model.read import from_document
from bayboard.rules import RULES
from bayboard.rules.check import check
from bayboard.rules.finding import SEVERITIES
from bayboard.rules.pages import LIMITS_OF
from bayboard.tables.limits import FIXED, LIMITS

ASKS_NOTHING = {
    "sight_angle": 180.0,  # whatever is seen can be read
    "eye_near": 0.0,  # eyes may come as near as they like
    "corridor_length": 0.001,  # a hand needs no length
}
NOT_YET_READ = {"engage_must", "long_time_hot", "hot_short"}  # by rules of screws that are not there yet
SEEDS = range(40)
RANK = {severity: rank for rank, severity in enumerate(SEVERITIES)}


def _judged(judged, rules):
    """Return how grave each finding is, by rule and subjects."""
    found = {}
    for f in check(judged, rules).findings:
        key = (f.rule, f.subjects)
        found[key] = min(RANK[f.severity], found.get(key, 9))
    return found


def _plain(seed):
    """Return a random layout with the limits and the eyes' distance as they usually are."""
    drawn = from_document(random_document(seed))
    return replace(drawn, limits={}, bay=replace(drawn.bay, eye=replace(drawn.bay.eye, z=None)))


def _readers(name):
    return [rule for rule in RULES if name in LIMITS_OF[rule.RULE]]


def test_every_figure_from_memory_is_taken_away_here():
    from_memory = {n for n, known in {**LIMITS, **FIXED}.items() if known.status == "memory"}
    assert from_memory == ASKS_NOTHING.keys() | NOT_YET_READ
    assert not [name for name in NOT_YET_READ if _readers(name)]


@pytest.mark.parametrize("name", ASKS_NOTHING)
def test_a_figure_from_memory_never_clears_a_finding(name):
    raised = 0
    for seed in SEEDS:
        usual = _plain(seed)
        without = _judged(replace(usual, limits={name: ASKS_NOTHING[name]}), _readers(name))
        with_it = _judged(usual, _readers(name))
        assert without.keys() <= with_it.keys(), seed
        assert all(with_it[key] <= grave for key, grave in without.items()), seed
        raised += len(with_it) - len(without)
    assert raised > 0 or name == "eye_near"  # few random layouts are seen from near alone


def test_what_is_seen_from_nearer_than_one_reads_is_told():
    dial = {"id": "dial", "kind": "dial", "at": [0, 0], "z": 50, "facing": "out"}
    pieces = [gear("A", 500, 200, "dial"), gear("B", 500, 200, "lid", lift=400)]  # from z 430, eyes from 500
    under = layout(cards={"dial": card(service=[dial]), "lid": card(4000, 4000, 10)}, gear=pieces)
    assert ("sight", ("A.dial",)) in _judged(under, _readers("eye_near"))
    near = replace(under, limits={"eye_near": 0.0})
    assert ("sight", ("A.dial",)) not in _judged(near, _readers("eye_near"))
