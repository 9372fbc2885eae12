"""Exact entry: what is typed, how it is understood, when it is kept."""

import pytest
from PySide6.QtCore import Qt
from tests.build import gear, layout
from tests.window.hands import CTRL, SHIFT


@pytest.fixture
def hands(open_window):
    found = open_window(layout(units="in", gear=[gear("A", 200, 200), gear("B", 600, 100)]))
    found.click_mm(200, 200)
    return found


def test_a_figure_typed_while_something_is_selected_goes_to_the_first_field(hands):
    hands.type("1")
    assert hands.card.across.hasFocus()
    assert hands.card.across.text() == "1"


def test_enter_keeps_the_place_counted_from_the_boards_left(hands):
    hands.type("12 3/8")
    hands.key("Return")
    assert hands.gear("A").at == pytest.approx((12.375 * 25.4, 200), abs=1e-6)
    assert hands.wall.hasFocus()


def test_tab_goes_to_the_next_field_and_keeps_what_was_typed(hands):
    hands.type("10")
    hands.key("Tab")
    assert hands.card.up.hasFocus()
    hands.type("5 1/2")
    hands.key("Return")
    assert hands.gear("A").at == pytest.approx((254, 5.5 * 25.4), abs=1e-6)


def test_escape_restores_and_a_second_one_goes_back_to_the_wall(hands):
    hands.type("33")
    hands.key("Escape")
    assert hands.card.across.text() == "7 7/8"
    assert hands.card.across.hasFocus()
    hands.key("Escape")
    assert hands.wall.hasFocus()
    assert hands.gear("A").at == (200, 200)


@pytest.mark.parametrize(
    ("typed", "reading"),
    [("33", "= 838.2 mm"), ("12 3/8 + 1/2", "12 7/8 in, 327 mm"), ("314 mm", "12 23/64 in, 314 mm")],
)
def test_how_it_was_understood_stands_below(hands, typed, reading):
    hands.type(typed)
    assert hands.card.across.reading == reading


def test_what_is_not_a_length_keeps_its_sentence_and_changes_nothing(hands):
    hands.type("18 7/0")
    assert hands.card.across.wrong.startswith("18 7/0 is not a length")
    hands.key("Return")
    assert hands.card.across.hasFocus()
    assert hands.gear("A").at == (200, 200)


def test_a_slip_of_ten_times_the_bay_is_asked_about(hands):
    hands.type("600")
    assert hands.card.across.reading.endswith("did you mean 600 mm?")


def test_a_wrong_text_is_dropped_when_the_keys_leave(hands):
    hands.type("18 7/0")
    hands.click_mm(600, 100)
    assert hands.card.across.wrong == ""
    assert hands.gear("A").at == (200, 200)
    assert hands.place.selected == ("B",)


def test_what_was_understood_is_kept_for_its_own_piece_when_the_keys_leave(hands):
    hands.type("10")
    hands.click_mm(600, 100)
    assert hands.gear("A").at == pytest.approx((254, 200))
    assert hands.gear("B").at == (600, 100)


def test_several_that_are_not_alike_show_how_many_values(hands):
    hands.click_mm(600, 100, SHIFT)
    assert hands.card.across.many == 2
    assert hands.card.turn.many == 0
    assert hands.card.turn.value == 0


def test_a_value_typed_for_several_goes_to_all_and_is_one_step(hands):
    hands.click_mm(600, 100, SHIFT)
    hands.type("20")
    hands.key("Tab")
    hands.type("8")
    hands.key("Return")
    assert {hands.gear(n).at[0] for n in "AB"} == {508.0}
    assert {hands.gear(n).at[1] for n in "AB"} == {203.2}
    hands.key("Z", CTRL)
    hands.key("Z", CTRL)
    assert (hands.gear("A").at, hands.gear("B").at) == ((200, 200), (600, 100))


def test_the_fields_follow_a_drag(hands):
    hands.drag_mm((200, 200), (300, 200), CTRL, let_go=False)
    shown = hands.card.across.value
    assert shown == pytest.approx(hands.place.scene.placed["A"].at[0])
    hands.key("Escape")
    assert hands.card.across.value == 200


def test_a_drilled_fraction_is_drawn_only_while_nobody_types(hands):
    field = hands.card.across
    field.setFocus(Qt.FocusReason.TabFocusReason)
    assert field.text() == "7 7/8"
    assert field.selectedText() == "7 7/8"


def test_the_units_stand_in_the_field_and_change_with_u(hands):
    assert hands.card.across.unit == "in"
    hands.key("U")
    assert hands.card.across.unit == "mm"
    assert hands.card.across.text() == "200"


def test_a_taped_piece_is_not_moved_by_typing(hands):
    hands.key("T")
    hands.type("20")
    hands.key("Return")
    assert hands.gear("A").at == (200, 200)
    assert "taped down" in hands.line()
