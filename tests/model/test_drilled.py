"""What was drilled, and how it outlives a plan."""

import pytest
from msgspec.structs import replace
from tests.build import card, gear, layout
from tests.model.rich import rich

from bayboard.model.drilled import drilled_at, drilled_places, is_drilled, planned_at, with_facts
from bayboard.model.layout import Pose
from bayboard.model.read import from_document, read
from bayboard.model.write import write

AMP = {"amp": card(100, 60, screws=[{"at": [40, 20], "thread": "M5"}, {"at": [-40, -20], "thread": "M5"}])}


def _lay(*pieces, fixings=(), **members):
    return layout(cards=AMP, gear=list(pieces), fixings=list(fixings), **members)


def _fixing(name="H1", **members):
    return {"id": name, "at": [500, 60], "thread": "M6"} | members


def test_a_listed_screw_was_drilled_where_it_is_listed():
    one = _lay(gear("A", 200, 200, "amp"), drilled_holes={"A#2": [161, 182]})
    assert (drilled_at(one, "A#1"), drilled_at(one, "A#2")) == (None, (161, 182))
    assert planned_at(one, "A#2") == (160, 180)


def test_a_pose_without_a_listed_screw_means_that_all_were_drilled_in_it():
    one = _lay(gear("A", 300, 200, "amp", drilled={"at": [200, 200], "turn": 90}))
    # (40, 20) turned a quarter to the left is (-20, 40)
    assert drilled_places(one) == {"A#1": (180, 240), "A#2": (220, 160)}


def test_a_pose_with_one_listed_screw_leaves_the_others_to_be_drilled():
    there = {"drilled": {"at": [200, 200], "turn": 0}}
    one = _lay(gear("A", 200, 200, "amp", **there), drilled_holes={"A#1": [240, 220]})
    assert drilled_places(one) == {"A#1": (240, 220)}


@pytest.mark.parametrize("hole", ["A", "A#0", "A#3", "A#x", "A#", "#1", "Z", "Z#1", ""])
def test_what_is_no_hole_has_no_place(hole):
    one = _lay(gear("A", 200, 200, "amp"), drilled_holes={"A#1": [240, 220]})
    assert (planned_at(one, hole), drilled_at(one, hole)) == (None, None)


def test_gear_on_the_bench_plans_no_hole_but_keeps_those_made():
    one = _lay(gear("A", 0, 0, "amp") | {"at": None}, drilled_holes={"A#1": [240, 220]})
    assert (planned_at(one, "A#1"), drilled_at(one, "A#1")) == (None, (240, 220))


@pytest.mark.parametrize(
    ("members", "drilled"),
    [({}, False), ({"drilled": [500, 60]}, True), ({"metal": [500, 60]}, True)],
    ids=["planned", "board", "metal"],
)
def test_a_fixing_is_drilled_in_the_board_or_in_the_metal(members, drilled):
    assert is_drilled(_lay(fixings=[_fixing(**members)]), "H1") is drilled


def test_a_stand_in_is_drilled_by_its_pose_or_one_of_its_screws():
    pose = _lay(gear("A", 0, 0, "amp", drilled={"at": [0, 0], "turn": 0}), gear("B", 9, 9, "amp"))
    screw = _lay(gear("A", 0, 0, "amp"), drilled_holes={"A#2": [1, 1]})
    assert (is_drilled(pose, "A"), is_drilled(pose, "B"), is_drilled(screw, "A")) == (True, False, True)
    assert not is_drilled(screw, "nobody")


def test_an_old_plan_takes_over_what_was_drilled_and_printed_since():
    old = _lay(gear("A", 100, 100, "amp"), fixings=[_fixing()])
    here = {"drilled": {"at": [200, 200], "turn": 0}}
    now = _lay(
        gear("A", 300, 300, "amp", **here),
        fixings=[_fixing(at=[600, 60], drilled=[501, 60], metal=[502, 60])],
        drilled_holes={"A#1": [240, 220]},
        printed={"revision": "3", "holes": []},
    )
    back = with_facts(old, now)
    assert (back.gear[0].at, back.gear[0].drilled) == ((100, 100), Pose(at=(200, 200), turn=0))
    assert (back.fixings[0].at, back.fixings[0].drilled, back.fixings[0].metal) == (
        (500, 60),
        (501, 60),
        (502, 60),
    )
    assert (back.drilled_holes, back.printed) == (now.drilled_holes, now.printed)
    assert read(write(back)) == back


def test_what_has_been_made_anew_since_is_not_drilled_in_the_old_plan_either():
    was = {"drilled": {"at": [200, 200], "turn": 0}}
    old = _lay(
        gear("A", 200, 200, "amp", **was),
        fixings=[_fixing(drilled=[500, 60])],
        drilled_holes={"A#1": [240, 220]},
    )
    now = _lay(gear("A", 200, 200, "amp"), fixings=[_fixing()])
    assert with_facts(old, now) == now


def test_a_screw_that_the_old_card_does_not_have_is_dropped_and_its_pose_with_the_last():
    old = layout(cards={"amp": card(screws=[])}, gear=[gear("A", 1, 1, "amp")])
    now = _lay(gear("A", 1, 1, "amp", drilled={"at": [0, 0], "turn": 0}), drilled_holes={"A#2": [1, 1]})
    back = with_facts(old, now)
    assert (back.drilled_holes, back.gear[0].drilled) == ({}, None)


def test_what_only_the_old_plan_has_keeps_its_holes():
    old = _lay(gear("A", 1, 1, "amp"), gear("B", 9, 9, "amp"), drilled_holes={"A#1": [5, 5]})
    now = _lay(gear("B", 9, 9, "amp"), drilled_holes={"B#2": [7, 7]})
    assert with_facts(old, now).drilled_holes == {"A#1": (5, 5), "B#2": (7, 7)}


def test_a_layout_has_its_own_facts_already():
    whole = from_document(rich())
    assert with_facts(whole, whole) is whole
    other = replace(whole, units="mm")
    assert with_facts(other, whole) is other


def test_what_no_fact_touches_stays_the_same_object():
    old = _lay(gear("A", 1, 1, "amp"), gear("B", 9, 9, "amp"), fixings=[_fixing()])
    now = _lay(gear("A", 1, 1, "amp", drilled={"at": [0, 0], "turn": 0}), gear("B", 9, 9, "amp"))
    back = with_facts(old, now)
    assert back.gear[1] is old.gear[1]
    assert back.fixings is old.fixings
    assert back.gear[0].drilled == now.gear[0].drilled
