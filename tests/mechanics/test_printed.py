"""What was printed, and what has changed since."""

import pytest
from msgspec.structs import replace
from tests.build import card, gear, layout
from tests.plain.random_layouts import random_document

from bayboard.mechanics.holes import holes
from bayboard.mechanics.printed import changed_among, changed_holes, printed_of
from bayboard.model.layout import PrintedHole, Slot
from bayboard.model.read import from_document, read
from bayboard.model.write import write
from bayboard.tables.limits import FIXED, LIMITS, fixed

AMP = {"amp": card(100, 60, screws=[{"at": [40, 20], "thread": "M5"}, {"at": [-40, -20], "thread": "M5"}])}


def _lay(*fixings, **members):
    return layout(cards=AMP, fixings=list(fixings), **members)


def _fixing(name="H1", x=500, **members):
    return {"id": name, "at": [x, 60], "thread": "M6"} | members


def _print(one, revision="4"):
    return replace(one, printed=printed_of(one, revision))


def test_the_printed_holes_are_those_of_the_layout():
    slot = {"travel": 8, "angle": 30}
    one = _print(_lay(_fixing(slot=slot), gear=[gear("A", 300, 200, "amp", turn=90)]))
    assert one.printed.revision == "4"
    # M5 taps 4.2 (ISO 2306), M6 clears 6.6 (ISO 273 medium); values from memory
    assert one.printed.holes == (
        PrintedHole(id="A#1", at=(280, 240), make="tap", drill=4.2, slot=None),
        PrintedHole(id="A#2", at=(320, 160), make="tap", drill=4.2, slot=None),
        PrintedHole(id="H1", at=(500, 60), make="slot", drill=6.6, slot=Slot(travel=8, angle=30)),
    )


@pytest.mark.parametrize("seed", range(0, 60, 3))
def test_what_has_just_been_printed_can_be_written_and_has_not_changed(seed):
    one = _print(from_document(random_document(seed)), str(seed))
    assert read(write(one)) == one
    assert changed_holes(one) == {}
    assert len(one.printed.holes) == sum(hole.drill is not None for hole in holes(one))


def test_nothing_printed_is_nothing_changed():
    assert changed_holes(_lay(_fixing())) == {}
    assert changed_among(_lay(_fixing()), ()) == {}


def test_a_hole_without_a_known_drill_is_neither_printed_nor_new():
    one = _print(_lay(_fixing(thread="M7")))
    assert one.printed.holes == ()
    assert changed_holes(one) == {}


def test_a_hole_whose_drill_is_no_longer_known_has_changed():
    one = _print(_lay(_fixing()))
    other = replace(one, fixings=(replace(one.fixings[0], thread="M7"),))
    assert changed_holes(other) == {"BD": ("H1",)}


def test_holes_are_told_in_document_order_and_gone_ones_as_they_were_printed():
    one = _print(_lay(_fixing("H2"), _fixing("H1", 600), _fixing("H0", 700), gear=[gear("A", 1, 1, "amp")]))
    after = _lay(_fixing("H9", 800), _fixing("H0", 701), gear=[gear("A", 1, 2, "amp")])
    assert changed_holes(replace(after, printed=one.printed)) == {
        "BD": ("A#1", "A#2", "H9", "H0", "H2", "H1")
    }


def test_boards_are_told_in_document_order():
    board = {"outline": [[0, 0], [900, 0], [900, 400], [0, 400]], "thickness": 10, "standoff": 20}
    boards = [{"id": "Z"} | board, {"id": "B"} | board]
    one = _print(_lay(_fixing("H1", board="B"), _fixing("H2"), boards=boards))
    none = layout(boards=boards, cards=AMP)
    assert changed_holes(replace(none, printed=one.printed)) == {"Z": ("H1", "H2")}
    moved = replace(one, fixings=tuple(replace(f, at=(f.at[0], 99.0)) for f in one.fixings))
    assert list(changed_holes(moved).items()) == [("Z", ("H2",)), ("B", ("H1",))]


def test_without_a_board_no_board_is_told():
    one = _print(_lay(_fixing()))
    bare = layout(boards=[])
    assert changed_holes(replace(bare, printed=one.printed)) == {}


@pytest.mark.parametrize("name", FIXED)
def test_what_the_contract_does_not_name_cannot_be_changed_by_a_layout(name):
    from bayboard.model.refused import Refused

    assert name not in LIMITS
    with pytest.raises(Refused, match="there is no limit"):
        layout(limits={name: 5})


def test_an_unknown_threshold_is_a_mistake():
    with pytest.raises(KeyError):
        fixed("gap_must")
