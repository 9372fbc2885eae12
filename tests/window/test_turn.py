"""A stand-in turned by its clipped corner."""

from math import cos, radians, sin

import pytest
from PySide6.QtCore import QPointF
from tests.build import gear, layout
from tests.window.hands import CTRL, PLAIN

from bayboard.window.draw.turning import turn_grip


@pytest.fixture
def hands(open_window):
    found = open_window(layout(gear=[gear("A", 300, 200, card="slab")]))
    found.click_mm(300, 200)
    return found


def turned_by(hands, degrees, mods, let_go=True):
    """Drag the grip round the middle by some degrees, counter-clockwise."""
    piece = hands.place.scene.placed["A"]
    grip = turn_grip(hands.place.scale, [piece], hands.place.theme).felt.center()
    middle, c, s = hands.place.scale.px(*piece.at), cos(radians(degrees)), sin(radians(degrees))
    x, y = grip.x() - middle.x(), grip.y() - middle.y()
    end = QPointF(middle.x() + c * x + s * y, middle.y() - s * x + c * y)
    hands.drag(hands.wall.mapTo(hands.window, grip), hands.wall.mapTo(hands.window, end), mods, let_go=let_go)


@pytest.mark.parametrize(("by", "expected"), [(88, 90), (-17, 345), (44, 45), (180, 180)])
def test_the_grip_turns_by_fifteen_degrees(hands, by, expected):
    turned_by(hands, by, PLAIN)
    assert hands.gear("A").turn == pytest.approx(expected)


@pytest.mark.parametrize(("by", "expected"), [(7.2, 7), (-3.2, 357)])
def test_with_control_by_single_degrees(hands, by, expected):
    turned_by(hands, by, CTRL)
    assert hands.gear("A").turn == pytest.approx(expected)


def test_the_degrees_are_shown_while_it_turns(hands):
    turned_by(hands, 30, PLAIN, let_go=False)
    assert hands.wall.show_now().turning == pytest.approx(30)
    hands.key("Escape")
    assert hands.gear("A").turn == 0


def test_a_typed_turn_is_kept(hands):
    hands.card.turn.setFocus()
    hands.type("-12,5")
    hands.key("Return")
    assert hands.gear("A").turn == pytest.approx(347.5)
    hands.key("Z", CTRL)
    assert hands.gear("A").turn == 0


def test_a_taped_one_says_why_it_will_not_turn(hands):
    hands.key("T")
    turned_by(hands, 90, PLAIN)
    assert hands.gear("A").turn == 0
    assert "taped down" in hands.line()
