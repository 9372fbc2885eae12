"""The keys of Arrange: every act without a mouse; letters only while no field has the keys."""

import pytest
from PySide6.QtCore import Qt
from tests.build import document, gear, layout
from tests.window.hands import CTRL, SHIFT

from bayboard.model.read import from_document


@pytest.fixture
def hands(open_window):
    found = open_window(layout(gear=[gear("A", 200, 200), gear("B", 600, 200)]))
    found.click_mm(200, 200)
    return found


@pytest.mark.parametrize(
    ("units", "key", "mods", "by"),
    [
        ("mm", "Right", Qt.KeyboardModifier.NoModifier, (1, 0)),
        ("mm", "Left", Qt.KeyboardModifier.NoModifier, (-1, 0)),
        ("mm", "Up", SHIFT, (0, 10)),
        ("in", "Down", Qt.KeyboardModifier.NoModifier, (0, -25.4 / 16)),
        ("in", "Right", SHIFT, (25.4 / 2, 0)),
    ],
)
def test_an_arrow_moves_by_its_step(open_window, units, key, mods, by):
    hands = open_window(layout(units=units, gear=[gear("A", 200, 200)]))
    hands.click_mm(200, 200)
    hands.key(key, mods)
    assert hands.gear("A").at == pytest.approx((200 + by[0], 200 + by[1]), abs=1e-6)


def test_presses_in_quick_succession_are_one_step_to_undo(hands):
    for _ in range(5):
        hands.key("Right")
    assert hands.gear("A").at == (205, 200)
    hands.key("Z", CTRL)
    assert hands.gear("A").at == (200, 200)


def test_presses_far_apart_are_steps_of_their_own(hands):
    times = iter([0.0, 700.0])
    hands.window.acts._clock = lambda: next(times)
    hands.key("Right")
    hands.key("Right")
    hands.key("Z", CTRL)
    assert hands.gear("A").at == (201, 200)


def test_an_arrow_lays_the_chalk_measures_on(hands):
    assert hands.wall.show_now().measures == ()
    hands.key("Up")
    assert len(hands.wall.show_now().measures) == 4


def test_r_turns_a_quarter_and_shift_r_back(hands):
    hands.key("R")
    assert hands.gear("A").turn == 90
    hands.key("R", SHIFT)
    hands.key("R", SHIFT)
    assert hands.gear("A").turn == 270


def test_t_tapes_down_and_lifts(hands):
    hands.key("T")
    assert hands.gear("A").taped
    hands.key("Right")
    assert hands.gear("A").at == (200, 200)
    assert "taped down" in hands.line()
    hands.key("T")
    assert not hands.gear("A").taped


def test_b_puts_it_back_on_the_bench(hands):
    hands.key("B")
    assert hands.gear("A").at is None
    assert hands.place.selected == ()


def test_c_draws_the_chalk_line_through_what_is_selected(hands):
    hands.place.set_chalk(900)
    hands.key("C")
    assert hands.place.chalk_x == pytest.approx(200)


def test_f_folds_the_seat_and_u_changes_the_units(hands):
    hands.key("F")
    assert hands.place.lever == "folded"
    assert hands.window.strip.lever.held == "folded"
    hands.key("U")
    assert hands.layout.units == "in"
    assert hands.window.strip.units.held == "in"


def test_letters_type_in_a_field_and_do_nothing_else(hands):
    hands.type("1")
    assert hands.card.typing()
    hands.type("ftb")
    assert hands.place.lever == "up"
    assert not hands.gear("A").taped
    assert hands.card.across.text() == "1ftb"


def test_plus_minus_and_nought_zoom(hands):
    hands.key("Escape")
    whole = hands.place.scale.px_per_mm
    hands.type("+")
    assert hands.place.scale.px_per_mm > whole
    hands.type("--")
    assert hands.place.scale.px_per_mm < whole
    hands.type("0")
    assert hands.place.scale.px_per_mm == pytest.approx(whole)


def test_f1_shows_the_keys_and_any_key_puts_them_away(hands):
    hands.key("F1")
    assert hands.window.help.isVisible()
    hands.key("A")
    assert not hands.window.help.isVisible()
    assert hands.wall.hasFocus()


@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000)])
def test_no_line_of_f1_is_cut_short(open_window, monkeypatch, size):
    from bayboard.window import lettering

    hands = open_window(layout(), size=size)
    hands.key("F1")
    drawn = []
    monkeypatch.setattr(lettering, "draw", lambda p, at, text, *_: drawn.append(text))
    hands.window.help.grab()
    told = " ".join(drawn)
    assert all(keys in drawn and says in told for keys, says in hands.window.help.lines)
    assert hands.window.rect().contains(hands.window.help.geometry())


def test_reading_the_keys_or_a_notice_leaves_the_selection(open_window):
    hands = open_window(layout(gear=[gear("A", 200, 200), gear("B", 600, 200)]))
    hands.click_mm(600, 200)
    hands.key("F1")
    hands.key("Escape")
    assert hands.place.selected == ("B",) and hands.wall.hasFocus()
    notice = hands.window.notice
    notice.tell("The stick was pulled.")
    notice.tell("The disk is full.")
    hands.key("Return")
    assert hands.place.selected == ("B",) and notice.text == "The disk is full."
    notice.withdraw("The disk is full.")
    assert hands.place.selected == ("B",) and hands.wall.hasFocus()


def test_f6_goes_round_the_parts_of_the_window(open_window):
    hands = open_window(layout(gear=[gear("A", 200, 200), gear("B", 303, 200)]))
    hands.key("Tab")
    seen = []
    for _ in range(6):
        hands.key("F6")
        seen.append(hands.app.focusWidget())
    window = hands.window
    parts = [window.section, window.bench, window.findings.list, window.card.across, window.strip]
    assert seen == [*parts, window.wall]


def test_the_wall_and_the_section_wear_a_ring_when_the_keys_come_by_keys(open_window):
    hands = open_window(layout())
    for view in (hands.wall, hands.window.section):
        view.setFocus(Qt.FocusReason.MouseFocusReason)
        assert not view.ringed()
        hands.window.strip.setFocus()
        plain = view.grab().toImage()
        view.setFocus(Qt.FocusReason.TabFocusReason)
        assert view.ringed() and view.grab().toImage() != plain


def test_n_walks_the_findings_and_selects_what_they_are_about(open_window):
    pieces = [gear("A", 200, 200), gear("B", 302, 200), gear("C", 700, 200), gear("D", 804, 200)]
    hands = open_window(layout(gear=pieces))
    hands.key("N")
    assert set(hands.place.selected) == {"A", "B"}
    hands.key("N")
    assert set(hands.place.selected) == {"C", "D"}
    hands.key("N", SHIFT)
    assert set(hands.place.selected) == {"A", "B"}


def test_every_key_of_the_table_is_an_act_of_the_window(hands):
    from bayboard.window.keys import BINDINGS

    acts = {*hands.window.key_acts._simple, *hands.window.key_acts._with, "close"}
    assert {binding.act for binding in BINDINGS} <= acts


def test_undo_with_nothing_done_says_so(hands):
    hands.key("Z", CTRL)
    assert hands.line() == "Nothing to undo."


def test_a_screenful_of_keys_is_explained_with_its_act(hands):
    from bayboard.window.keys import told

    assert len(told()) >= 20
    assert all(keys and says for keys, says in told())


def test_the_document_of_the_plain_bay_is_the_one_that_is_shown(open_window):
    given = from_document(document(gear=[gear("A", 200, 200)]))
    assert open_window(given).layout is given
