"""The Wall and the Bench under fingers: real touches, through the window's handle."""

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtTest import QTest
from tests.build import card, gear, layout

from bayboard.window.gestures.gesture import HOLD


@pytest.fixture
def hands(open_window):
    pieces = [
        gear("A", 200, 200),
        gear("S", 700, 100, card="stud"),
        gear("B", 0, 0) | {"at": None},
    ]
    return open_window(layout(gear=pieces, cards={"stud": card(16, 16)}))


def test_a_tap_selects_and_a_tap_on_the_bare_wall_unselects(hands):
    hands.fingers(hands.px(200, 200)).lift()
    assert hands.place.selected == ("A",)
    hands.fingers(hands.px(450, 350)).lift()
    assert hands.place.selected == ()


def test_a_drag_moves_a_stand_in_in_one_step(hands):
    hands.fingers(hands.px(200, 200)).drag(hands.px(400, 260)).lift()
    assert hands.gear("A").at == pytest.approx((400, 260), abs=1.0)
    assert hands.place.job.undo_label.startswith("Move A right ")


def test_a_stud_of_14_pixels_is_felt_over_40(hands):
    at = hands.px(700, 100) + QPointF(17, -17)
    hands.fingers(at).lift()
    assert hands.place.selected == ("S",)
    hands.fingers(at + QPointF(6, 0)).lift()
    assert hands.place.selected == ()


def test_one_finger_on_the_bare_wall_pushes_the_picture(hands):
    before, start = hands.place.scale, hands.px(450, 350)
    hands.fingers(start).drag(start + QPointF(-60, 25)).lift()
    after = hands.place.scale
    assert after.px_per_mm == before.px_per_mm
    assert (after.x0 - before.x0, after.y0 - before.y0) == pytest.approx((-60, 25), abs=1.5)
    assert hands.place.selected == ()


def test_two_fingers_keep_what_lies_under_them(hands):
    a, b = hands.px(400, 100), hands.px(600, 300)
    fingers = hands.fingers(a, b)
    ends = a + QPointF(-70, 60), b + QPointF(90, -20)
    fingers.drag(*ends)
    grown = hands.place.scale.px_per_mm
    middle = (ends[0] + ends[1]) / 2
    fingers.lift()
    assert hands.place.scale.px_per_mm == grown > 1.3 * 0.8667
    on_wall = hands.wall.mapFrom(hands.window, middle)
    assert hands.place.scale.mm(on_wall) == pytest.approx((500, 200), abs=3)


def test_a_second_finger_calls_off_what_the_first_began(hands):
    first = hands.px(200, 200)
    fingers = hands.fingers(first).drag(hands.px(300, 260))
    assert hands.place.hand.pieces == {"A"}
    fingers.second(hands.px(600, 300))
    assert hands.place.hand.pieces == frozenset()
    fingers.lift()
    assert hands.gear("A").at == (200, 200)
    assert hands.place.job.undo_label is None


@pytest.fixture
def wanted(hands):
    """Return the places a menu was asked for, fingers resting no longer than they need to."""
    asked = []
    assert hands.wall._hold.interval() == HOLD == 450
    hands.wall._hold.setInterval(0)
    hands.wall.menu_wanted.disconnect()
    hands.wall.menu_wanted.connect(asked.append)
    return asked


def test_a_finger_that_rests_on_a_stand_in_asks_for_its_menu(hands, wanted):
    fingers = hands.fingers(hands.px(200, 200))
    QTest.qWait(5)
    assert len(wanted) == 1
    fingers.lift()
    assert hands.place.selected == ("A",)
    assert hands.gear("A").at == (200, 200)


def test_a_finger_that_rested_on_the_bare_wall_draws_a_box_or_asks_for_the_menu(hands, wanted):
    scale = hands.place.scale
    fingers = hands.fingers(hands.px(100, 100))
    QTest.qWait(5)
    assert hands.place.hand.marquee is not None
    fingers.drag(hands.px(260, 300)).lift()
    assert (hands.place.selected, hands.place.scale, wanted) == (("A",), scale, [])
    fingers = hands.fingers(hands.px(450, 350))
    QTest.qWait(5)
    fingers.lift()
    assert len(wanted) == 1
    assert hands.place.hand.marquee is None


def test_a_finger_takes_a_piece_from_the_ledge_to_the_board(hands):
    spot = next(spot for spot in hands.bench.places() if spot.gear == "B")
    start = QPointF(hands.bench.mapTo(hands.window, spot.rect.center()))
    hands.fingers(start).drag(hands.px(500, 250)).lift()
    assert hands.gear("B").at == pytest.approx((500, 250), abs=1.0)


def test_a_finger_that_rests_on_a_waiting_piece_asks_for_its_menu(hands):
    asked = []
    hands.bench.menu_wanted.disconnect()
    hands.bench.menu_wanted.connect(asked.append)
    assert hands.bench._hold.interval() == HOLD
    hands.bench._hold.setInterval(0)
    spot = next(spot for spot in hands.bench.places() if spot.gear == "B")
    fingers = hands.fingers(QPointF(hands.bench.mapTo(hands.window, spot.rect.center())))
    QTest.qWait(5)
    fingers.lift()
    assert len(asked) == 1
    assert (hands.place.selected, hands.gear("B").at) == (("B",), None)
