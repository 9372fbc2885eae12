"""The holes a layout asks for."""

import pytest
from tests.build import card, gear, layout

from bayboard.mechanics.holes import holes

SCREWED = {
    "amp": card(100, 60, screws=[{"at": [40, 20], "thread": "M5"}, {"at": [-40, -20], "thread": "#10-32"}])
}
SLOT = {"travel": 8, "angle": 30}


def _lay(**members):
    return layout(cards=SCREWED, **members)


def test_screws_are_tapped_where_the_stand_in_puts_them():
    first, second = holes(_lay(gear=[gear("A1", 300, 200, "amp", turn=90)]))
    assert (first.id, first.owner, first.board, first.make, first.thread) == ("A1#1", "A1", "BD", "tap", "M5")
    # turned a quarter to the left, (40, 20) stands at (-20, 40) from the middle
    assert (first.at, first.drill) == ((280, 240), 4.2)
    assert (second.id, second.at) == ("A1#2", (320, 160))
    assert second.drill == pytest.approx(0.159 * 25.4, abs=0.001)  # drill 21; value from memory


@pytest.mark.parametrize("into", ["insert", "through", "factory", "stud"])
def test_fixings_go_through_a_clearance_hole(into):
    (hole,) = holes(_lay(fixings=[{"id": "X1", "at": [50, 60], "thread": "M6", "into": into}]))
    # ISO 273 medium: 6.6 for M6; value from memory
    assert (hole.id, hole.owner, hole.make, hole.drill, hole.slot, hole.at) == (
        "X1",
        "X1",
        "clear",
        6.6,
        None,
        (50, 60),
    )


def test_a_slot_is_as_wide_as_the_clearance_and_stands_at_its_centre():
    (hole,) = holes(_lay(fixings=[{"id": "X1", "at": [50, 60], "thread": "M6", "slot": SLOT}]))
    assert (hole.make, hole.drill, hole.at) == ("slot", 6.6, (50, 60))
    assert (hole.slot.travel, hole.slot.angle) == (8, 30)


def test_gear_comes_first_and_each_in_document_order():
    things = [gear("B", 700, 200, "amp"), gear("A", 300, 200, "amp")]
    fixings = [{"id": "X2", "at": [50, 60], "thread": "M6"}, {"id": "X1", "at": [90, 60], "thread": "M6"}]
    found = holes(_lay(gear=things, fixings=fixings))
    assert [hole.id for hole in found] == ["B#1", "B#2", "A#1", "A#2", "X2", "X1"]


def test_gear_on_the_bench_makes_no_holes():
    assert holes(_lay(gear=[gear("A", 0, 0, "amp") | {"at": None}])) == ()


def test_a_hole_stays_planned_where_it_is_though_drilled_elsewhere():
    fixing = {"id": "X1", "at": [50, 60], "thread": "M6", "drilled": [51, 60]}
    there = {"drilled": {"at": [301, 200], "turn": 0}}
    found = holes(
        _lay(gear=[gear("A", 300, 200, "amp", **there)], fixings=[fixing], drilled_holes={"A#1": [341, 221]})
    )
    assert [hole.at for hole in found] == [(340, 220), (260, 180), (50, 60)]


def test_a_thread_that_is_in_no_table_leaves_the_drill_open():
    (hole,) = holes(_lay(fixings=[{"id": "X1", "at": [50, 60], "thread": "M7"}]))
    assert (hole.drill, hole.thread) == (None, "M7")
