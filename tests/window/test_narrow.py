"""A narrow window: Card and Findings take turns, the Section comes over the Wall when asked."""

import pytest
from PySide6.QtCore import QPoint, QRect
from tests.build import gear, layout
from tests.window.hands import SHIFT


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=[gear("A", 200, 200), gear("B", 303, 200)]), (1024, 700))


def seen(hands):
    window = hands.window
    return window.card.isVisible(), window.findings.isVisible()


def test_the_findings_have_the_place_until_the_card_is_opened(hands):
    assert seen(hands) == (False, True)
    hands.click_mm(150, 200)
    assert seen(hands) == (False, True)
    hands.key("Return")
    assert seen(hands) == (True, False)
    assert hands.card.across.hasFocus()


def test_a_figure_opens_the_card_and_enter_ends_it(hands):
    hands.click_mm(150, 200)
    hands.type("150")
    assert seen(hands) == (True, False)
    hands.key("Return")
    assert hands.gear("A").at[0] == 150
    assert seen(hands) == (False, True)
    assert hands.wall.hasFocus()


def test_escape_ends_the_card_before_it_unselects(hands):
    hands.click_mm(150, 200)
    hands.key("Return")
    hands.key("Escape")
    assert seen(hands) == (False, True)
    assert hands.place.selected == ("A",)


def test_the_card_goes_with_the_selection(hands):
    hands.click_mm(150, 200)
    hands.key("Return")
    hands.click_mm(700, 350)
    assert seen(hands) == (False, True)


def test_a_link_turns_from_one_to_the_other_by_mouse(hands):
    turn = hands.window.narrow.turn
    assert not turn.isVisible()
    hands.click_mm(150, 200)
    for now in ((True, False), (False, True)):
        hands.click(turn.mapTo(hands.window, turn.rect().center()).toPointF())
        assert seen(hands) == now


def test_a_wide_window_shows_both(hands):
    hands.frame.resize(1300, 800)
    assert seen(hands) == (True, True)
    assert not hands.window.narrow.turn.isVisible()


def test_the_section_slides_over_a_slim_wall_and_away(hands):
    window = hands.window
    assert window.section.isVisible()
    hands.frame.resize(860, 600)
    assert not window.section.isVisible()
    scale = hands.place.scale
    hands.key("W", SHIFT)
    assert window.section.isVisible()
    assert window.section.geometry().right() == window.width() - 1
    assert hands.place.scale == scale
    slide = window.narrow.slide
    hands.click(slide.mapTo(window, slide.rect().center()).toPointF())
    assert not window.section.isVisible()


def test_the_words_over_the_why_page_do_not_meet(hands):
    findings, turn = hands.window.findings, hands.window.narrow.turn
    hands.click_mm(150, 200)
    findings.tell_why(hands.place.verdict.findings[0])
    back = findings.page.back
    felt = QRect(back.mapTo(hands.window, QPoint(0, 0)), back.size())
    assert turn.isVisible()
    assert not felt.intersects(turn.geometry())


def test_what_is_said_takes_both_lines_of_the_strip_where_one_is_too_short(hands):
    strip = hands.window.strip
    words = "No free spot for A3 without a must. Drag it where it disturbs least, then cure the rest."
    hands.place.said.emit(words)
    assert not strip.name.isVisible()
    assert strip.kept.height() == strip.height() - 1
    hands.place.said.emit("Short.")
    assert strip.name.isVisible()
