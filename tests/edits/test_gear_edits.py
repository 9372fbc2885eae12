"""What the edits of gear do beyond the laws."""

import pytest
from tests.edits.test_laws import start

from bayboard.edits.add_gear import AddGear, free_gear_id
from bayboard.edits.let_finding_be import LetFindingBe
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.place_gear import PlaceGear
from bayboard.edits.remove_gear import RemoveGear
from bayboard.edits.set_gear_lift import SetGearLift
from bayboard.edits.set_taped import SetTaped
from bayboard.edits.several import Several
from bayboard.edits.to_bench import ToBench
from bayboard.edits.turn_gear import TurnGear
from bayboard.model.refused import Refused


def _gear(layout):
    return {gear.id: gear for gear in layout.gear}


def test_places_are_kept_to_a_millionth_of_a_mm_and_every_64th_of_an_inch_is_exact():
    moved = PlaceGear("A1", (0.12345678, 25.4 / 64)).apply(start())
    assert _gear(moved)["A1"].at == (0.123457, 0.396875)


def test_sixty_four_moves_of_a_64th_are_an_inch():
    layout = PlaceGear("A1", (0, 0)).apply(start())
    for _ in range(64):
        layout = MoveGear(("A1",), 25.4 / 64, 0).apply(layout)
    assert _gear(layout)["A1"].at == (25.4, 0)


@pytest.mark.parametrize(
    ("turns", "at_last"),
    [((90, 90, 90, 90), 0), ((-90,), 270), ((0.1,) * 3600, 0), ((360,), 0), ((-0.0,), 0)],
)
def test_turns_come_round(turns, at_last):
    layout = start()
    for by in turns:
        layout = TurnGear(("A1",), by).apply(layout)
    assert _gear(layout)["A1"].turn == at_last


@pytest.mark.parametrize(
    "edit",
    [
        MoveGear(("A1",), 0, 0),
        MoveGear(("A3",), 5, 5),  # on the bench
        PlaceGear("A1", (200.125, 150)),
        TurnGear(("A1",), 720),
        SetTaped(("A2",), True),
        ToBench(("A3",)),
        SetGearLift("A2", 3),
        Several((TurnGear(("A1",), 360), MoveGear(("A1",), 0, 0)), "nothing"),
    ],
)
def test_an_edit_that_changes_nothing_gives_the_same_layout(edit):
    before = start()
    assert edit.apply(before) is before


def test_gear_put_back_on_the_bench_keeps_turn_and_lift_but_not_its_tape():
    gear = _gear(ToBench(("A2",)).apply(start()))["A2"]
    assert (gear.at, gear.turn, gear.lift, gear.taped) == (None, 270, 3, False)


def test_removed_gear_takes_its_leads_drilled_screws_and_let_be_with_it():
    after = RemoveGear("A2").apply(start())
    assert [gear.id for gear in after.gear] == ["A1", "A3"]
    assert after.leads == ()
    assert list(after.drilled_holes) == ["A1#1"]
    assert after.let_be == ()


def test_new_gear_waits_on_the_bench_of_the_first_board():
    gear = AddGear("amp", "NEW").apply(start()).gear[-1]
    assert (gear.id, gear.at, gear.board, gear.turn) == ("NEW", None, "BD", 0)


def test_a_free_id_is_the_first_that_nothing_has():
    assert free_gear_id(start(), "amp") == "A4"


@pytest.mark.parametrize("name", ["A1", "C1", "BD", "no spaces", "", "x" * 25])
def test_an_id_that_is_taken_or_misspelled_is_refused(name):
    with pytest.raises(Refused):
        AddGear("amp", name).apply(start())


def test_a_card_that_is_not_there_is_refused():
    with pytest.raises(Refused, match="there is no card"):
        AddGear("sub", "A9").apply(start())


@pytest.mark.parametrize(
    "edit", [MoveGear(("Z",), 1, 0), RemoveGear("Z"), PlaceGear("A1", (0, 0), None, "Z")]
)
def test_a_thing_that_is_not_there_is_named(edit):
    with pytest.raises(KeyError, match="there is no"):
        edit.apply(start())


@pytest.mark.parametrize("far", [100_001.0, -1e9, float("inf"), float("nan")])
def test_a_place_that_no_layout_holds_is_refused(far):
    with pytest.raises(Refused, match="100 m"):
        PlaceGear("A1", (far, 0)).apply(start())
    with pytest.raises(Refused, match="100 m"):
        SetGearLift("A1", far).apply(start())


def test_letting_a_finding_be_needs_a_reason_and_replaces_an_older_one():
    with pytest.raises(Refused, match="no reason"):
        LetFindingBe("gap", ("A1", "A2"), 11, "  ").apply(start())
    after = LetFindingBe("gap", ("A1", "A2"), 11, " cold ").apply(start())
    assert [(e.rule, e.measure, e.reason) for e in after.let_be] == [
        ("sight", 70, "never turned"),
        ("gap", 11, "cold"),
    ]


def test_a_move_label_speaks_the_layouts_units():
    edit = MoveGear(("A1",), 3.175, 0)
    assert edit.label(start("in")) == "Move A1 right 1/8 in"
    assert edit.label(start("mm")) == "Move A1 right 3.2 mm"


def test_a_move_takes_each_piece_to_its_own_board_and_leaves_the_others_on_theirs():
    after = _gear(MoveGear(("A1", "A2"), 5, 0, (("A2", "B2"),)).apply(start()))
    assert (after["A1"].board, after["A2"].board) == ("BD", "B2")
    with pytest.raises(KeyError, match="B9"):
        MoveGear(("A1",), 5, 0, (("A1", "B9"),)).apply(start())


def test_moves_that_follow_each_other_end_on_the_last_board():
    there = MoveGear(("A1",), 5, 0, (("A1", "B2"),))
    assert there.followed_by(MoveGear(("A1",), 1, 0)) == MoveGear(("A1",), 6, 0, (("A1", "B2"),))
    assert there.followed_by(MoveGear(("A1",), -5, 0, (("A1", "BD"),))).onto == (("A1", "BD"),)


def test_a_turn_together_is_a_quarter_round_one_point_and_keeps_distances():
    after = _gear(TurnGear(("A1", "A2", "A3"), 90, (300, 150)).apply(start()))
    assert after["A1"].at == (300, 50.125)
    assert after["A2"].at == (300, 350)
    assert (after["A1"].turn, after["A2"].turn, after["A3"].turn) == (90, 0, 135)
    assert after["A3"].at is None
