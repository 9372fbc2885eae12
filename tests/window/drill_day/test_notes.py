"""What drill day remembers beside the layout survives its file, and a hostile file is read without harm."""

import json

from hypothesis import given, settings
from hypothesis import strategies as st

from bayboard.window.drill_day.notes import MOST, Notes, read_notes

JSON = st.recursive(
    st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=5), inner, max_size=4),
    max_leaves=12,
)
MEMBERS = st.fixed_dictionaries({}, optional=dict.fromkeys(("halves", "pressed", "checked"), JSON))


def test_notes_come_back_as_they_were_written():
    notes = Notes().halved("H3", (1.5, 2.0)).after(("A1#1", 1)).after(("H3", 1)).check("BD")
    assert read_notes(json.loads(json.dumps(notes.to_json()))) == notes


@settings(derandomize=True, max_examples=150, deadline=None)
@given(JSON | MEMBERS)
def test_whatever_lies_there_is_read_and_can_be_written_again(value):
    notes = read_notes(value)
    assert read_notes(json.loads(json.dumps(notes.to_json()))) == notes


def test_places_that_no_board_reaches_are_left_out():
    halves = {"A": [1e300, 0], "B": [0, "x"], "C": [True, 1], "D": [1], "E": [3, 4]}
    assert read_notes({"halves": halves}).halves == {"E": (3.0, 4.0)}


def test_a_hole_pressed_again_counts_once_and_last():
    notes = Notes().after(("A", 1)).after(("B", 1)).after(("A", 1))
    assert notes.pressed == (("B", 1), ("A", 1))


def test_the_row_of_presses_does_not_grow_without_end():
    assert len(read_notes({"pressed": [["H", n] for n in range(2 * MOST)]}).pressed) == MOST
