"""Every edit obeys the same laws: new edit, one line in the table."""

import pickle
from dataclasses import FrozenInstanceError, fields

import pytest
from tests.build import card, gear, layout, rectangle

from bayboard.edits.add_gear import AddGear
from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.drill_metal import DrillMetal
from bayboard.edits.edit import Edit
from bayboard.edits.history import History
from bayboard.edits.let_finding_be import LetFindingBe, LetFindingSpeak
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.name_vehicle import NameVehicle
from bayboard.edits.new_plastic import NewPlastic
from bayboard.edits.place_gear import PlaceGear
from bayboard.edits.plan_new_hole import PlanNewHole
from bayboard.edits.put_back import PutBack
from bayboard.edits.remove_gear import RemoveGear
from bayboard.edits.set_gear_lift import SetGearLift
from bayboard.edits.set_limit import SetLimit
from bayboard.edits.set_standoff import SetStandoff
from bayboard.edits.set_taped import SetTaped
from bayboard.edits.set_units import SetUnits
from bayboard.edits.several import Several
from bayboard.edits.swap_gear import SwapGear
from bayboard.edits.to_bench import ToBench
from bayboard.edits.turn_gear import TurnGear
from bayboard.edits.undrill_hole import UndrillHole
from bayboard.model.layout import Layout
from bayboard.model.read import read
from bayboard.model.write import write

PORT = {"id": "P", "kind": "power", "at": [50, 0], "z": 10, "towards": 0, "plug": 20, "ways": 4}
AMP = card(
    100, 60, ports=[PORT], screws=[{"at": [40, 20], "thread": "M5"}], kind="amplifier", name="Ferrand 4"
)


def start(units="in"):
    """Return a layout with something of everything that edits touch."""
    return layout(
        units=units,
        cards={"amp": AMP},
        boards=[
            {"id": "BD", "outline": rectangle(0, 0, 1000, 400), "thickness": 10, "standoff": 20},
            {"id": "B2", "outline": rectangle(0, 0, 400, 400), "thickness": 10, "standoff": 90},
        ],
        gear=[
            gear("A1", 200.125, 150, "amp"),
            gear("A2", 500, 150, "amp", turn=270, taped=True, lift=3),
            gear("A3", 0, 0, "amp", turn=45) | {"at": None},
        ],
        leads=[
            {"id": "C1", "from": "A1.P", "to": "A2.P", "size": "4 AWG"},
            {"id": "C2", "from": "A2.P", "to": "A3.P", "size": None},
        ],
        fixings=[
            {"id": "H5", "at": [30, 30], "thread": "M6", "drilled": [30.5, 30], "metal": [30, 29.5]},
            {"id": "H6", "board": "B2", "at": [370, 30], "thread": "1/4-20"},
        ],
        drilled_holes={"A1#1": [240, 170], "A2#1": [520, 110]},
        limits={"sight_angle": 70},
        let_be=[
            {"rule": "gap", "subjects": ["A1", "A2"], "measure": 12, "reason": "both run cold"},
            {"rule": "sight", "subjects": ["A2.D"], "measure": 70, "reason": "never turned"},
        ],
    )


EDITS = [
    (MoveGear(("A1",), -3.175, 0), "Move A1 left 1/8 in"),
    (MoveGear(("A1",), 0, 25.4), "Move A1 up 1 in"),
    (MoveGear(("A1", "A2"), 12.7, -6.35), "Move A1 and A2 right 1/2 in, down 1/4 in"),
    (MoveGear(("A1", "A2", "A3"), 1.5875, 0), "Move 3 stand-ins right 1/16 in"),
    (MoveGear(("A1", "A2"), 25.4, 0, (("A2", "B2"),)), "Move A1 and A2 right 1 in onto board B2"),
    (MoveGear(("A1",), 0, 0, (("A1", "B2"),)), "Move A1 onto board B2"),
    (PlaceGear("A3", (300.1234567891, 200)), "Place A3"),
    (PlaceGear("A1", (90, 80), 90.0), "Move A1"),
    (PlaceGear("A1", (90, 80), -90.0, "B2"), "Move A1"),
    (TurnGear(("A1",), 90), "Turn A1 a quarter left"),
    (TurnGear(("A2",), 90), "Turn A2 a quarter left"),
    (TurnGear(("A1", "A3"), -37.5), "Turn A1 and A3 right 37.5°"),
    (TurnGear(("A1", "A2"), 15, (350.0625, 150)), "Turn A1 and A2 together left 15°"),
    (SetTaped(("A1",), True), "Tape A1 down"),
    (SetTaped(("A2",), False), "Loosen A2"),
    (ToBench(("A2",)), "Put A2 back on the bench"),
    (SetGearLift("A1", 12.7), "Lift A1 to 1/2 in"),
    (SetStandoff("B2", 15.875), "Standoff of B2 5/8 in"),
    (SwapGear("A1", "A2"), "Swap A1 and A2"),
    (SwapGear("A3", "A1"), "Swap A3 and A1"),
    (AddGear("amp", "A4"), "Add A4, Ferrand 4"),
    (RemoveGear("A2"), "Remove A2"),
    (LetFindingBe("sight", ("A1.D",), 65.5, "set once"), "Let sight of A1.D be"),
    (LetFindingBe("gap", ("A1", "A2"), 11, "still cold"), "Let gap of A1 and A2 be"),
    (LetFindingSpeak("gap", ("A1", "A2")), "Let gap of A1 and A2 speak again"),
    (SetUnits("mm"), "Show millimetres"),
    (SetLimit("gap_must", 9.525), "Set a limit to 3/8 in: room between two pieces, at least"),
    (SetLimit("sight_angle", None), "Set a limit back to 60°: can be read up to this angle"),
    (NameVehicle(" Tarn panel  van "), "Name the vehicle Tarn panel van"),
    (DrillHole("H6"), "Drilled H6"),
    (DrillHole("H5", (314.325, 101.6)), "Drilled H5 at 12 3/8, 4 in"),
    (DrillHole("A2#1"), "Drilled A2#1"),
    (DrillHole("A1#1", (240.1234567891, 170)), "Drilled A1#1 at 9 29/64, 6 11/16 in"),
    (DrillMetal("H6"), "Drilled the metal for H6"),
    (DrillMetal("H5", (25.4, 12.7)), "Drilled the metal for H5 at 1, 1/2 in"),
    (UndrillHole("H5"), "H5 is not drilled yet"),
    (UndrillHole("A1#1"), "A1#1 is not drilled yet"),
    (PutBack("H5"), "Put H5 back where it was drilled"),
    (PutBack("A1"), "Put A1 back where it was drilled"),
    (PlanNewHole("A2"), "Plan new holes for A2"),
    (PlanNewHole("H5"), "Plan a new hole for H5"),
    (NewPlastic("BD"), "New plastic for board BD"),
    (Several((TurnGear(("A1",), 90), MoveGear(("A1",), 1, 1)), "Take the cure"), "Take the cure"),
]


def _named(item):
    return f"{type(item).__name__}" if isinstance(item, Edit) else None


@pytest.mark.parametrize(("edit", "label"), EDITS, ids=_named)
def test_an_edit_can_be_made_undone_and_made_again(edit, label):
    before = start()
    after = edit.apply(before)
    assert after != before
    assert edit.label(before) == label
    assert History(before).do(edit).now == after
    assert History(before).do(edit).undo().now is before
    assert History(before).do(edit).undo().redo().now == after


@pytest.mark.parametrize(("edit", "label"), EDITS, ids=_named)
def test_what_an_edit_makes_can_be_written_and_read_back(edit, label):
    after = edit.apply(start())
    assert read(write(after)) == after


@pytest.mark.parametrize(("edit", "label"), EDITS, ids=_named)
def test_an_edit_is_a_value(edit, label):
    twin = pickle.loads(pickle.dumps(edit))
    assert (twin, hash(twin)) == (edit, hash(edit))
    field = fields(edit)[0].name
    with pytest.raises(FrozenInstanceError):
        setattr(edit, field, None)


@pytest.mark.parametrize(("edit", "label"), EDITS, ids=_named)
def test_what_an_edit_does_not_touch_stays_the_same_object(edit, label):
    before = start()
    after = edit.apply(before)
    for member in Layout.__struct_fields__:
        was, now = getattr(before, member), getattr(after, member)
        assert was is now or was != now, member
    kept = {gear.id: gear for gear in before.gear}
    assert all(gear is kept[gear.id] or gear != kept[gear.id] for gear in after.gear if gear.id in kept)


def test_every_edit_of_the_room_is_in_the_table():
    from importlib import import_module
    from pkgutil import iter_modules

    import bayboard.edits as room

    kinds = set()
    for module in iter_modules(room.__path__):
        found = vars(import_module(f"bayboard.edits.{module.name}")).values()
        kinds |= {k for k in found if isinstance(k, type) and k is not Edit and hasattr(k, "apply")}
    assert kinds == {type(edit) for edit, _ in EDITS}
