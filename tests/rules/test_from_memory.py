"""A figure from memory may raise a caution; it never clears a finding and never makes a must.

The one exception is the length of a hand, which the contract itself puts into reach and on-stay.
"""

import msgspec
import pytest
from tests.bays import bay
from tests.build import card, gear, layout

from bayboard.model.read import from_document
from bayboard.rules import RULES
from bayboard.rules.check import check
from bayboard.rules.pages import LIMITS_OF
from bayboard.tables.limits import FIXED, LIMITS, limit

HAND = "corridor_length"
MEMORY = [name for name, known in LIMITS.items() if known.status == "memory"]
READ_NOW = [name for name in MEMORY if any(name in LIMITS_OF[rule.RULE] for rule in RULES)]
CROWDED = bay(6, seed=3, across=3, jitter=20)
CROWDED["bay"].pop("eye", None)
USUAL = from_document(CROWDED | {"limits": {"sight_angle": 25}})  # so that sight has much to say


def _told(given, rules):
    verdict = check(given, rules)
    return {(f.rule, f.severity, f.subjects, f.measure) for f in verdict.findings}, verdict.unchecked


def test_no_threshold_that_cannot_be_changed_is_from_memory():
    assert {known.status for known in FIXED.values()} == {"practice"}
    assert {"sight_angle", "eye_near", HAND} <= set(READ_NOW)


@pytest.mark.parametrize("name", [name for name in READ_NOW if name != HAND])
@pytest.mark.parametrize("share", [0.5, 1.5])
def test_no_must_hangs_on_a_figure_from_memory(name, share):
    readers = tuple(rule for rule in RULES if name in LIMITS_OF[rule.RULE])
    other = msgspec.structs.replace(USUAL, limits=USUAL.limits | {name: limit(USUAL, name) * share})
    (was, unlooked), (now, still_unlooked) = _told(USUAL, readers), _told(other, readers)
    assert {severity for _, severity, *_ in was ^ now} <= {"should", "note"}
    assert was != now  # the figure does count
    assert unlooked == still_unlooked


@pytest.mark.parametrize("heat", [60.0, 1e5])
def test_the_film_of_still_air_makes_no_more_than_a_note(heat):
    verdict = check(layout(gear=[gear("A", 200, 200)], cards={"box": card(heat=heat)}))
    assert [f.severity for f in verdict.findings if f.rule == "heat-rise"] == ["note"]


def test_a_cool_board_clears_nothing_that_is_unknown():
    pieces = [gear("A", 200, 200), gear("B", 500, 200, "slab")]
    verdict = check(layout(gear=pieces, cards={"box": card(heat=1)}))
    assert [f for f in verdict.findings if f.rule == "heat-rise"] == []
    assert [u.subjects for u in verdict.unchecked if u.rule == "heat-rise"] == [("B",)]
