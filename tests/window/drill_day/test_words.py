"""The drill and what is done with it in words; what must not be drilled from the sheets."""

import pytest
from msgspec.structs import replace
from tests.build import card, gear, layout
from tests.window.drill_day.days import board_day

from bayboard.edits.move_gear import MoveGear
from bayboard.mechanics.drill_day import drillings
from bayboard.mechanics.printed import printed_of
from bayboard.window.drill_day import words


def drilling(made, name):
    return next(one for one in drillings(made) if one.hole.id == name)


def threaded(name):
    screws = [{"at": [0, 0], "thread": name}]
    return layout(cards={"one": card(screws=screws)}, gear=[gear("A1", 300, 200, "one")])


# Tap and clearance drills: ISO 2306, ISO 273 and ASME B18.2.8 as threads.csv has them; 17/64 in is 6.747 mm,
# the next 1/64 over 6.6 mm.
@pytest.mark.parametrize(
    "units, figure, what",
    [("in", ("17/64", "in"), "6.6 mm, right through"), ("mm", ("6.6", "mm"), "17/64 in, right through")],
)
def test_a_clearance_hole_is_told_in_both_systems(units, figure, what):
    one = drilling(board_day(), "H1")
    assert words.figure(one, units) == figure
    assert words.what(one, units) == what


@pytest.mark.parametrize("units", ["in", "mm"])
def test_a_metric_tap_drill_keeps_its_millimetres(units):
    one = drilling(board_day(), "A1#1")
    assert words.figure(one, units) == ("4.2", "mm")
    assert words.what(one, units) == "right through, then tap M5"


def test_an_inch_tap_drill_goes_by_its_name():
    one = drilling(threaded("#8-32"), "A1#1")
    assert words.figure(one, "in") == ("#29", "")
    assert words.what(one, "in") == "3.45 mm, right through, then tap #8-32"


def test_a_tap_drill_that_is_a_fraction_is_one():
    assert words.figure(drilling(threaded("3/8-16"), "A1#1"), "in") == ("5/16", "in")


def test_an_unknown_drill_is_said():
    one = drilling(threaded("Z9"), "A1#1")
    assert words.figure(one, "mm") == ("?", "")
    assert words.what(one, "mm") == "drill not known: Z9 is not in the tables"


def test_the_next_hole_is_spoken_as_a_person_would():
    one = drilling(board_day(), "H1")
    said = words.sentence(one, 1186.65625, 22.225, "in")
    assert said == "next: H1, 17/64 inch, 46 23/32 from the left, 7/8 up"


# --- the wrong sheet ---


def warned(made, drilled=frozenset()):
    known = frozenset(one.hole.id for one in drillings(made))
    return words.warning(made, drilled, known)


def test_sheets_that_still_hold_warn_of_nothing():
    made = board_day()
    assert warned(made) == ""
    assert warned(replace(made, printed=printed_of(made, "4"))) == ""


def test_holes_that_moved_since_are_named_with_their_revision():
    made = board_day()
    moved = MoveGear(("A1",), 3.0, 0.0).apply(replace(made, printed=printed_of(made, "4")))
    assert warned(moved) == (
        "4 holes differ from the sheets of revision 4: A1#1, A1#2, A1#3, A1#4."
        " Do not drill these from that paper."
    )


def test_a_hole_that_is_made_needs_no_sheet_any_more():
    made = board_day()
    moved = MoveGear(("A1",), 3.0, 0.0).apply(replace(made, printed=printed_of(made, "4")))
    assert warned(moved, frozenset(("A1#1", "A1#2", "A1#4"))) == (
        "1 hole differs from the sheets of revision 4: A1#3. Do not drill this one from that paper."
    )


def test_a_hole_that_is_gone_is_on_the_paper_all_the_same():
    made = board_day()
    less = replace(made, printed=printed_of(made, "4"), fixings=made.fixings[1:])
    assert warned(less) == "H1 on the sheets of revision 4 is no longer wanted."


def test_many_are_counted_and_not_all_named():
    pieces = [gear(f"A{i}", 150 + 250 * i, 200, "amp") for i in range(3)]
    made = board_day(gear=pieces)
    moved = MoveGear(("A0", "A1", "A2"), 0.0, 5.0).apply(replace(made, printed=printed_of(made, "draft")))
    said = warned(moved)
    assert said.startswith("12 holes differ from the sheets that were printed: A0#1, ")
    assert "and 7 more" in said


# --- the end ---


def test_at_the_end_it_says_what_comes_next():
    assert words.all_made(board_day(), 8) == (
        "8 holes in BD",
        "Next: saw between the two holes of each slot, cut the threads and deburr both sides.",
    )


def test_without_slots_and_threads_there_is_less_to_do():
    plain = layout(fixings=[{"id": "H1", "at": [20, 20], "thread": "M6"}])
    assert words.all_made(plain, 1) == ("1 hole in BD", "Next: deburr both sides.")
