"""M: measuring between two stand-ins, edges or points, until Escape."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from shapely import Point as ShapelyPoint
from tests.build import gear, layout
from tests.window.hands import CTRL, SHIFT

from bayboard.rules.scene import Scene
from bayboard.window.ends import End, end_at, line_between, spot_of


@pytest.fixture
def hands(open_window):
    found = open_window(layout(gear=[gear("A", 200, 200), gear("B", 500, 230), gear("C", 800, 300)]))
    found.wall.setFocus()
    return found


def told(hands):
    """Return the words of the measures that no finding is about."""
    return [m.text for m in hands.wall.show_now().measures if m.severity is None]


def test_between_two_that_are_selected_it_is_told_at_once(hands):
    hands.click_mm(200, 200)
    hands.click_mm(500, 230, SHIFT)
    hands.key("M")
    assert told(hands) == ["200 mm"]
    assert hands.line() == "A to B: 200 mm"
    hands.key("Escape")
    assert told(hands) == []
    assert hands.place.selected == ("A", "B")


def test_it_follows_the_stand_ins_as_they_move(hands):
    hands.click_mm(200, 200)
    hands.click_mm(500, 230, SHIFT)
    hands.key("M")
    hands.place.select(("A",))
    hands.drag_mm((200, 200), (190, 200), CTRL)
    assert "210 mm" in told(hands)


def test_from_one_that_is_selected_the_next_press_says_where_to(hands):
    hands.click_mm(200, 200)
    hands.key("M")
    assert hands.wall.phrase() == "measuring from A: press where to; Esc ends"
    hands.move(hands.px(820, 320))
    assert hands.wall.cursor().shape() == Qt.CursorShape.CrossCursor
    assert told(hands) != []
    hands.click_mm(820, 320)
    assert told(hands) == ["501.6 mm: 500 mm across, 40 mm up"]
    assert hands.gear("A").at == (200, 200)


def test_two_clicks_measure_between_corner_and_edge_and_a_third_begins_anew(hands):
    hands.key("M")
    hands.click_mm(251, 231)
    hands.click_mm(0.5, 232)
    assert told(hands) == ["250 mm"]
    hands.click_mm(800, 300)
    assert told(hands) == []
    assert hands.place.spans.phrase() == "measuring from there: press where to; Esc ends"


def test_one_drag_measures_as_well(hands):
    hands.key("M")
    hands.drag_mm((250, 230), (450, 200))
    assert told(hands) == ["202.2 mm: 200 mm across, 30 mm up"]
    assert hands.line() == "202.2 mm: 200 mm across, 30 mm up"
    assert hands.place.job.undo_label is None


def test_by_keys_alone_the_stand_in_walked_to_is_the_other_end(hands):
    hands.key("Tab")
    hands.key("M")
    hands.key("Tab")
    assert len(told(hands)) == 1


def test_the_key_ends_what_it_began_and_escape_leaves_the_gesture_first(hands):
    hands.key("M")
    hands.key("M")
    assert hands.wall.phrase().startswith("1200 ×")
    hands.key("M")
    hands.press(hands.px(250, 230))
    hands.key("Escape")
    hands.release(hands.px(250, 230))
    assert not hands.place.spans.asking
    assert told(hands) == []


def test_with_three_selected_both_ends_are_asked_for(hands):
    for at, mods in (((200, 200), 0), ((500, 230), SHIFT), ((800, 300), SHIFT)):
        hands.click_mm(*at, mods or Qt.KeyboardModifier.NoModifier)
    hands.key("M")
    assert told(hands) == []
    assert hands.wall.phrase().startswith("measuring: press")


def test_the_menu_offers_it_with_its_key(hands):
    from bayboard.window.menu import lines

    hands.click_mm(200, 200)
    assert ("measure", "Measure to…", "M") in lines(hands.place)
    hands.click_mm(500, 230, SHIFT)
    assert ("measure", "Measure between the two", "M") in lines(hands.place)


SCENE = Scene(layout(gear=[gear("A", 200, 200, turn=30), gear("B", 500, 230)]))


@given(st.floats(-90, 1090), st.floats(-90, 490))
def test_what_is_picked_lies_within_reach_or_is_what_lies_there(x, y):
    end = end_at(SCENE, (x, y), 8.0)
    spot = spot_of(SCENE, end)
    if spot is None:
        assert SCENE.placed[end.piece].polygon.covers(ShapelyPoint(x, y))
    else:
        assert ShapelyPoint(spot).distance(ShapelyPoint(x, y)) <= 8.0 + 1e-9


def test_a_stand_in_is_not_measured_to_itself_nor_to_one_that_is_gone():
    assert line_between(SCENE, End(None, "A"), End(None, "A")) is None
    assert line_between(SCENE, End(None, "A"), End(None, "Z")) is None
