"""What is drawn in chalk before a cure is taken: new places, the way there, and the button's words."""

import pytest
from tests.build import gear, layout

from bayboard.edits.move_gear import MoveGear
from bayboard.edits.set_standoff import SetStandoff
from bayboard.edits.swap_gear import SwapGear
from bayboard.edits.turn_gear import TurnGear
from bayboard.window.cure_show import shown

START = layout(gear=[gear("A", 200, 200), gear("B", 500, 200)])


def test_a_move_shows_the_outline_there_and_an_arrow_from_corner_to_corner():
    (cure,) = shown(START, MoveGear(("A",), 10.0, -4.0))
    assert cure.end == pytest.approx((cure.start[0] + 10.0, cure.start[1] - 4.0))
    assert cure.start in {(x - 10.0, y + 4.0) for x, y in cure.ring}
    assert cure.text == MoveGear(("A",), 10.0, -4.0).label(START)


def test_a_swap_shows_both_places_and_says_its_words_once():
    cures = shown(START, SwapGear("A", "B"))
    assert len(cures) == 2
    assert [bool(cure.text) for cure in cures] == [True, False]


def test_a_turn_shows_the_turned_outline():
    (cure,) = shown(START, TurnGear(("A",), 90.0))
    xs, ys = zip(*cure.ring, strict=True)
    before = shown(START, MoveGear(("A",), 1.0, 0.0))[0].ring
    assert max(xs) - min(xs) == pytest.approx(max(y for _, y in before) - min(y for _, y in before))
    assert max(ys) > min(ys)


def test_what_moves_a_board_shows_the_board():
    (cure,) = shown(START, SetStandoff("BD", 45.0))
    assert cure.ring == START.boards[0].outline
    assert cure.text == SetStandoff("BD", 45.0).label(START)


def test_what_cannot_be_done_shows_nothing():
    assert shown(START, MoveGear(("GONE",), 1.0, 0.0)) == ()


def test_the_same_question_is_answered_from_memory():
    edit = MoveGear(("A",), 10.0, -4.0)
    assert shown(START, edit) is shown(START, MoveGear(("A",), 10.0, -4.0))
