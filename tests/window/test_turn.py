"""A stand-in turned by its clipped corner."""

from math import cos, radians, sin

import pytest
from PySide6.QtCore import QPointF, QRectF
from tests.build import card, gear, layout
from tests.window.hands import CTRL, PLAIN, SHIFT

from bayboard.rules.scene import Scene
from bayboard.window import lettering
from bayboard.window.draw.gear import face_of
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.turning import _degrees_rect, _of_one, degrees_tag, turn_grip
from bayboard.window.draw.wall import wall_marks
from bayboard.window.theme import LIGHT


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


def grip_of(hands):
    """Return the middle of the grip of what is selected, in pixels of the Wall."""
    pieces = [hands.place.scene.placed[name] for name in hands.place.selected]
    return turn_grip(hands.place.scale, pieces, hands.place.theme).felt.center()


def test_several_turn_together_by_one_grip_about_their_middle(open_window):
    hands = open_window(layout(gear=[gear("A", 300, 200), gear("B", 500, 200), gear("C", 800, 300)]))
    before = hands.layout
    hands.click_mm(300, 200)
    hands.click_mm(500, 200, SHIFT)
    grip, middle = grip_of(hands), hands.place.scale.px(400, 200)
    quarter = QPointF(middle.x() + grip.y() - middle.y(), middle.y() - grip.x() + middle.x())
    hands.drag(
        hands.wall.mapTo(hands.window, grip), hands.wall.mapTo(hands.window, quarter), PLAIN, let_go=False
    )
    assert hands.wall.show_now().turning == pytest.approx(90)
    assert [ghost.label for ghost in hands.place.hand.ghosts] == ["A", "B"]
    hands.release(hands.wall.mapTo(hands.window, quarter))
    assert hands.gear("A").at == pytest.approx((400, 100), abs=1e-6)
    assert hands.gear("B").at == pytest.approx((400, 300), abs=1e-6)
    assert (hands.gear("A").turn, hands.gear("B").turn, hands.gear("C").turn) == (90, 90, 0)
    hands.key("Z", CTRL)
    assert hands.layout == before


def test_the_grip_is_felt_over_44_px_however_small_the_card(open_window):
    hands = open_window(layout(gear=[gear("A", 300, 200)], cards={"box": card(20, 12)}))
    hands.click_mm(300, 200)
    piece = hands.place.scene.placed["A"]
    felt = turn_grip(hands.place.scale, [piece], hands.place.theme).felt
    assert (felt.width(), felt.height()) == (44, 44)
    assert not felt.contains(hands.place.scale.px(300, 200))


@pytest.mark.parametrize("size", [1.0, 1.15, 1.3, 1.5])
@pytest.mark.parametrize("high", [90, 120, 200])
def test_degrees_in_the_corner_keep_off_number_and_name(size, high):
    theme, scale = LIGHT.sized(size), Scale(1.0, 0.0, 0.0)
    cards = {"amp": card(240, high, name="Longer name")}
    piece = Scene(layout(gear=[gear("A12", 300, 200, "amp")], cards=cards)).placed["A12"]
    grip = _of_one(scale, piece, theme)
    spot = _degrees_rect(grip, theme).translated(-scale.px(*piece.at))
    words = face_of(scale, piece, theme).words[:2]
    lines = [(word, lettering.line(word.text, word.style)) for word in words]
    boxes = [QRectF(w.x - line.width / 2, w.y - line.rise, line.width, line.rise) for w, line in lines]
    assert not (grip.roomy and any(box.intersects(spot) for box in boxes))
    assert grip.roomy or size > 1.0 or high < 200


def test_no_tag_covers_the_degrees_while_it_turns(open_window):
    hands = open_window(
        layout(gear=[gear("A", 300, 200, card="slab"), gear("B", 420, 200), gear("C", 180, 200)])
    )
    hands.click_mm(300, 200)
    turned_by(hands, 30, PLAIN, let_go=False)
    place, view = hands.place, hands.wall
    degrees = degrees_tag(place.scale, [place.scene.placed["A"]], place.theme, 30.0, view._rect())
    found = wall_marks(place.scale, place.scene, place.theme, view.show_now(), view._rect())
    tags = [tag for _, tag in found.values() if tag is not None]
    assert tags
    assert not any(tag.intersects(degrees) for tag in tags)
    hands.key("Escape")
