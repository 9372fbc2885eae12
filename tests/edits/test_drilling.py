"""What the edits of drilling do beyond the laws."""

from math import cos, dist, radians, sin

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.build import card, gear, layout

from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.drill_metal import DrillMetal
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.new_plastic import NewPlastic
from bayboard.edits.plan_new_hole import PlanNewHole
from bayboard.edits.put_back import PutBack, fitted
from bayboard.edits.remove_gear import RemoveGear
from bayboard.edits.undrill_hole import UndrillHole
from bayboard.model.drilled import drilled_places
from bayboard.model.layout import Pose
from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.model.write import write

CORNERS = [(40, 20), (-40, 20), (-40, -20), (40, -20)]
SCREWS = [{"at": list(at), "thread": "M5"} for at in CORNERS]
CARDS = {"amp": card(100, 60, screws=SCREWS), "box": card()}


def start(**members):
    """Return two screwed stand-ins on two boards, one on the bench, one without screws and three fixings."""
    board = {"outline": [[0, 0], [900, 0], [900, 400], [0, 400]], "thickness": 10, "standoff": 20}
    plain = {
        "boards": [{"id": "BD"} | board, {"id": "B2"} | board | {"standoff": 60}],
        "gear": [
            gear("A", 200, 200, "amp"),
            gear("B", 600, 200, "amp", board="B2", turn=90),
            gear("W", 0, 0, "amp") | {"at": None},
            gear("N", 700, 300),
        ],
        "fixings": [
            {"id": "H1", "at": [30, 30], "thread": "M6"},
            {"id": "H2", "at": [800, 30], "thread": "M6", "drilled": [801, 30], "metal": [800, 31]},
            {"id": "H3", "board": "B2", "at": [30, 30], "thread": "M6", "metal": [30, 32]},
        ],
    }
    return layout(cards=CARDS, **(plain | members))


def _after(*edits, of=None):
    now = of or start()
    for edit in edits:
        now = edit.apply(now)
        assert read(write(now)) == now
    return now


def _gear(layout, name):
    return next(g for g in layout.gear if g.id == name)


def _fixing(layout, name):
    return next(f for f in layout.fixings if f.id == name)


def test_the_first_hole_of_a_stand_in_fixes_the_pose_and_later_ones_leave_it():
    now = _after(DrillHole("A#3"), MoveGear(("A",), 5, 0), DrillHole("A#1"))
    assert _gear(now, "A").drilled == Pose(at=(200, 200), turn=0)
    assert now.drilled_holes == {"A#1": (245, 220), "A#3": (160, 180)}


def test_a_hole_is_planned_where_the_turned_stand_in_has_its_screw():
    assert _after(DrillHole("B#1")).drilled_holes == {"B#1": (580, 240)}


def test_drilling_again_says_where_it_really_is():
    now = _after(DrillHole("A#1"), DrillHole("A#2"), DrillHole("A#1", (241, 220)))
    assert now.drilled_holes == {"A#1": (241, 220), "A#2": (160, 220)}


def test_a_stand_in_drilled_whole_in_a_pose_keeps_its_other_holes_when_one_is_told():
    whole = start(gear=[gear("A", 210, 200, "amp", drilled={"at": [200, 200], "turn": 0})])
    now = _after(DrillHole("A#2", (161, 220)), of=whole)
    assert now.drilled_holes == {"A#1": (240, 220), "A#2": (161, 220), "A#3": (160, 180), "A#4": (240, 180)}
    now = _after(UndrillHole("A#2"), of=whole)
    assert list(now.drilled_holes) == ["A#1", "A#3", "A#4"]
    assert _gear(now, "A").drilled == Pose(at=(200, 200), turn=0)


def test_a_mis_press_is_taken_back_and_the_pose_goes_with_the_last_hole():
    now = _after(DrillHole("A#1"), DrillHole("A#2"), UndrillHole("A#1"))
    assert (list(now.drilled_holes), _gear(now, "A").drilled is None) == (["A#2"], False)
    assert _after(UndrillHole("A#2"), of=now) == start()


def test_what_was_drilled_in_the_metal_stays_when_the_board_is_not_drilled_after_all():
    fixing = _fixing(_after(UndrillHole("H2")), "H2")
    assert (fixing.drilled, fixing.metal) == (None, (800, 31))


def test_board_and_metal_are_told_apart():
    fixing = _fixing(_after(DrillHole("H1"), DrillMetal("H1", (30, 31.25))), "H1")
    assert (fixing.drilled, fixing.metal, fixing.at) == ((30, 30), (30, 31.25), (30, 30))


@pytest.mark.parametrize(("name", "at"), [("H2", (801, 30)), ("H3", (30, 32))], ids=["board", "metal"])
def test_a_fixing_goes_back_to_its_hole_in_the_board_else_in_the_metal(name, at):
    assert _fixing(_after(PutBack(name)), name).at == at


def test_new_holes_are_planned_in_the_board_and_in_metal_that_was_drilled_alone():
    now = _after(DrillHole("A#1"), PlanNewHole("A"), PlanNewHole("H2"), PlanNewHole("H3"))
    assert (now.drilled_holes, _gear(now, "A").drilled) == ({}, None)
    assert (_fixing(now, "H2").drilled, _fixing(now, "H2").metal) == (None, (800, 31))
    assert _fixing(now, "H3").metal is None


def test_new_plastic_has_no_holes_but_the_metal_and_the_other_board_do():
    drilled = _after(DrillHole("A#1"), DrillHole("B#1"), DrillHole("H3"))
    now = _after(NewPlastic("BD"), of=drilled)
    assert drilled_places(now) == {"B#1": (580, 240), "H3": (30, 30)}
    assert (_gear(now, "A").drilled, _fixing(now, "H2").metal) == (None, (800, 31))
    assert _gear(now, "B").drilled is not None


def test_new_plastic_forgets_what_was_drilled_for_gear_that_went_back_to_the_bench():
    there = gear("W", 0, 0, "amp") | {"at": None, "drilled": {"at": [9, 9], "turn": 0}}
    assert _after(NewPlastic("BD"), of=start(gear=[there])).gear[0].drilled is None


@pytest.mark.parametrize(
    "edit",
    [
        UndrillHole("H1"),
        UndrillHole("A#1"),
        PlanNewHole("A"),
        PlanNewHole("H1"),
        NewPlastic("B2"),
        DrillHole("H2", (801, 30)),
    ],
    ids=repr,
)
def test_an_edit_that_changes_nothing_gives_the_same_layout(edit):
    before = start()
    assert edit.apply(before) is before


def test_removed_gear_leaves_no_hole_behind():
    assert _after(DrillHole("A#1"), RemoveGear("A")).drilled_holes == {}


@pytest.mark.parametrize(
    ("edit", "says"),
    [
        (DrillHole("H9"), "there is no such hole"),
        (DrillHole("A"), "there is no such hole"),
        (DrillHole("A#5"), "there is no such hole"),
        (DrillHole("N#1"), "there is no such hole"),
        (DrillHole("W#1"), "on the bench"),
        (DrillHole("W#1", (5, 5)), "on the bench"),
        (DrillHole("H1", (0, 2e5)), "100 m"),
        (DrillHole("A#1", (0, float("nan"))), "100 m"),
        (DrillMetal("A#1"), "ends in the board"),
        (DrillMetal("BD"), "there is no such hole"),
        (UndrillHole("A#0"), "there is no such hole"),
        (PutBack("H1"), "nothing was drilled"),
        (PutBack("A"), "nothing was drilled"),
        (PutBack("N"), "no screws"),
        (PutBack("BD"), "neither gear nor a fixing"),
        (PlanNewHole("N"), "no screws"),
        (PlanNewHole("A#1"), "neither gear nor a fixing"),
        (NewPlastic("A"), "no such board"),
    ],
    ids=repr,
)
def test_what_makes_no_such_hole_is_refused_in_one_sentence(edit, says):
    with pytest.raises(Refused, match=says) as caught:
        edit.apply(start())
    assert str(caught.value).endswith(".")


@pytest.mark.parametrize("turn", [0, 12.5, 90, 359.9])
def test_a_stand_in_goes_back_exactly_where_all_its_holes_were_drilled(turn):
    there = start(gear=[gear("A", 200.125, 200, "amp", turn=turn)])
    drilled = _after(*(DrillHole(f"A#{n}") for n in (1, 2, 3, 4)), of=there)
    back = _after(MoveGear(("A",), 40, -3), PutBack("A"), of=drilled)
    assert back == drilled


def test_a_stand_in_lies_on_holes_that_all_went_astray_alike():
    now = _after(*(DrillHole(f"A#{n}", (x + 202, y + 199)) for n, (x, y) in enumerate(CORNERS, start=1)))
    back = _gear(_after(PutBack("A"), of=now), "A")
    assert (back.at, back.turn, back.drilled) == ((202, 199), 0, Pose(at=(202, 199), turn=0))


def test_with_one_hole_a_stand_in_shifts_to_it_with_the_turn_it_was_drilled_with():
    now = _after(DrillHole("B#1", (581, 243)), of=start())
    turned = start(
        gear=[gear("B", 600, 200, "amp", turn=30, drilled={"at": [600, 200], "turn": 90})],
        drilled_holes=dict(now.drilled_holes),
    )
    back = _gear(_after(PutBack("B"), of=turned), "B")
    assert (back.at, back.turn) == ((601, 203), 90)


def test_without_a_listed_hole_a_stand_in_goes_back_to_its_pose_from_the_bench_too():
    there = gear("W", 0, 0, "amp") | {"at": None, "drilled": {"at": [90, 80], "turn": 15}}
    back = _gear(_after(PutBack("W"), of=start(gear=[there])), "W")
    assert (back.at, back.turn) == ((90, 80), 15)


OFF = st.floats(-3, 3)


@settings(derandomize=True, max_examples=60, deadline=None)
@given(
    st.floats(0, 360, exclude_max=True),
    st.tuples(st.floats(-500, 500), st.floats(-500, 500)),
    st.lists(st.tuples(OFF, OFF), min_size=2, max_size=4),
)
def test_no_pose_near_the_fitted_one_fits_better(turn, at, astray):
    pairs = [(s, _moved(_put(s, at, turn), off)) for s, off in zip(CORNERS, astray, strict=False)]
    pose = fitted(pairs, 0.0)
    best = _squares(pairs, pose.at, pose.turn)
    for dx, dy, by in ((1e-3, 0, 0), (-1e-3, 0, 0), (0, 1e-3, 0), (0, -1e-3, 0), (0, 0, 1e-3), (0, 0, -1e-3)):
        assert _squares(pairs, _moved(pose.at, (dx, dy)), pose.turn + by) >= best - 1e-9


@settings(derandomize=True, max_examples=40, deadline=None)
@given(st.floats(0, 360, exclude_max=True), st.lists(st.tuples(OFF, OFF), min_size=3, max_size=4))
def test_the_fit_is_that_of_numpys_singular_values(turn, astray):
    # Kabsch by the singular value decomposition, numpy.linalg.svd: the usual form for any dimension
    pairs = [(s, _moved(_put(s, (300, 200), turn), off)) for s, off in zip(CORNERS, astray, strict=False)]
    screws, holes = (np.array([p[i] for p in pairs]) for i in (0, 1))
    u, _, v = np.linalg.svd((screws - screws.mean(0)).T @ (holes - holes.mean(0)))
    rotation = v.T @ np.diag([1, np.sign(np.linalg.det(v.T @ u.T))]) @ u.T
    at = holes.mean(0) - rotation @ screws.mean(0)
    pose = fitted(pairs, 0.0)
    assert pose.at == pytest.approx(tuple(at), abs=2e-6)
    assert cos(radians(pose.turn)) == pytest.approx(rotation[0, 0], abs=1e-7)
    assert sin(radians(pose.turn)) == pytest.approx(rotation[1, 0], abs=1e-7)


def test_holes_on_one_spot_tell_no_turn():
    pose = fitted([((40, 20), (240, 220)), ((40, 20), (240, 220))], 30.0)
    assert pose.turn == 30.0


def _put(screw, at, turn):
    c, s = cos(radians(turn)), sin(radians(turn))
    return at[0] + c * screw[0] - s * screw[1], at[1] + s * screw[0] + c * screw[1]


def _moved(at, by):
    return at[0] + by[0], at[1] + by[1]


def _squares(pairs, at, turn):
    return sum(dist(_put(screw, at, turn), hole) ** 2 for screw, hole in pairs)
