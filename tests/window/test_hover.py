"""What the pointer passes over: stand-ins, leads with their ends, and what it costs."""

from itertools import pairwise
from math import dist

import pytest
from PySide6.QtCore import Qt
from tests.build import card, gear, layout

PORT = {"id": "P", "kind": "power", "at": [50, 0], "z": 10, "towards": 0, "plug": 20, "ways": 2}


@pytest.fixture
def hands(open_window):
    bay = {"entries": [{"id": "EB", "name": "battery", "at": [700, 450], "carries": ["power"], "run": 900}]}
    pieces = [gear("A", 200, 200, card="amp"), gear("B", 700, 100), gear("C", 705, 60, taped=True)]
    leads = [{"id": "C1", "from": "A.P", "to": "EB", "size": "4 AWG"}]
    return open_window(layout(bay=bay, gear=pieces, leads=leads, cards={"amp": card(ports=[PORT])}))


def on_lead(hands):
    """Return a pixel of the window on the lead, halfway along its longest stretch."""
    points = hands.place.scene.routes["C1"].points[:, :2].tolist()
    long = max(pairwise(points), key=lambda ends: dist(*ends))
    return hands.px(*[(a + b) / 2 for a, b in zip(*long, strict=True)])


def test_over_a_lead_its_ends_are_named(hands):
    hands.move(on_lead(hands))
    assert hands.place.hovered == "C1"
    assert [words for _, words in hands.wall.show_now().named] == ["A, 12 V", "battery"]
    assert hands.wall.cursor().shape() == Qt.CursorShape.ArrowCursor
    hands.move(hands.px(450, 30))
    assert hands.place.hovered is None
    assert hands.wall.show_now().named == ()


def test_a_lead_under_the_pointer_is_drawn_a_pixel_wider(hands):
    at = hands.wall.mapFrom(hands.window, on_lead(hands)).toPoint()
    before = hands.wall.grab().toImage()
    hands.move(on_lead(hands))
    after = hands.wall.grab().toImage()
    near = [(at.x() + dx, at.y() + dy) for dx in range(-9, 10) for dy in range(-9, 10)]
    assert any(before.pixelColor(*one) != after.pixelColor(*one) for one in near)


def test_passing_over_things_leaves_the_still_layer_as_it_is(hands):
    before = hands.wall.still_key()
    for at in (hands.px(200, 200), on_lead(hands), hands.px(700, 120), hands.px(450, 30)):
        hands.move(at)
        assert hands.wall.still_key() == before


def test_the_hand_opens_over_what_it_could_take_only(hands):
    hands.move(hands.px(200, 200))
    assert hands.wall.cursor().shape() == Qt.CursorShape.OpenHandCursor
    hands.move(hands.px(705, 40))
    assert hands.place.hovered == "C"
    assert hands.wall.cursor().shape() == Qt.CursorShape.ArrowCursor


def test_a_stand_in_that_lies_under_another_is_not_drawn_over_it(hands):
    at = hands.wall.mapFrom(hands.window, hands.px(690, 80)).toPoint()
    before = hands.wall.grab().toImage().pixelColor(at)
    hands.move(hands.px(655, 125))
    assert hands.place.hovered == "B"
    assert hands.wall.grab().toImage().pixelColor(at) == before
