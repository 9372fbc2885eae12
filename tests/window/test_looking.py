"""Looking: zoom and pan, one scale in all views, the section line, the lever, the tapes."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPointF
from tests.build import card, gear, layout
from tests.window.hands import CTRL, MIDDLE

SEAT = {
    "id": "S",
    "x": [0, 600],
    "up": [[100, 0], [300, 0], [300, 400], [90, 400]],
    "folded": [[400, -50], [900, -50], [900, 20], [400, 20]],
}


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=[gear("A", 200, 200), gear("B", 800, 200)], bay={"seats": [SEAT]}))


def test_the_wheel_zooms_at_the_pointer(hands):
    at = hands.px(200, 200)
    before = hands.place.scale.px_per_mm
    hands.wheel(at, 240)
    assert hands.place.scale.px_per_mm > before
    assert (hands.px(200, 200) - at).manhattanLength() < 1e-6


def test_zoom_stops_at_both_ends(hands):
    for _ in range(60):
        hands.wheel(hands.px(200, 200), 480)
    near = hands.place.scale.px_per_mm
    for _ in range(120):
        hands.wheel(hands.px(200, 200), -480)
    assert 5 < near < 50
    assert 0.01 < hands.place.scale.px_per_mm < 0.2


@pytest.mark.parametrize("with_space", [True, False], ids=["space and drag", "middle button"])
def test_the_picture_is_pushed_about(hands, with_space):
    from PySide6.QtCore import Qt
    from PySide6.QtTest import QTest

    start = QPointF(300, 300)
    before = hands.place.scale
    if with_space:
        QTest.keyPress(hands.frame.windowHandle(), Qt.Key.Key_Space)
        hands.drag(start, start + QPointF(50, -20))
        QTest.keyRelease(hands.frame.windowHandle(), Qt.Key.Key_Space)
    else:
        hands.drag(start, start + QPointF(50, -20), button=MIDDLE)
    assert hands.place.scale.x0 == pytest.approx(before.x0 + 50)
    assert hands.place.scale.y0 == pytest.approx(before.y0 - 20)
    assert hands.gear("A").at == (200, 200)
    hands.drag_mm((200, 200), (210, 200), CTRL)  # and without Space it is a drag again
    assert hands.gear("A").at != (200, 200)


def test_wall_section_and_ledge_share_one_scale(hands):
    for act in (lambda: None, lambda: hands.wheel(hands.px(500, 200), 360), lambda: hands.type("0")):
        act()
        section = hands.window.section.layer_scale()
        assert section.px_per_mm == hands.place.scale.px_per_mm
        assert section.y0 == hands.place.scale.y0
        assert hands.window.section.y() == hands.wall.y()


def test_after_a_rough_picture_comes_a_sharp_one(hands, qtbot):
    hands.picture()
    hands.wheel(hands.px(200, 200), 240)
    assert hands.wall._rough.isActive()
    hands.picture()
    assert hands.wall._drawn_scale != hands.place.scale
    qtbot.waitUntil(lambda: not hands.wall._rough.isActive(), timeout=2000)
    hands.picture()
    assert hands.wall._drawn_scale == hands.place.scale


def test_a_jump_of_the_picture_is_drawn_at_once(hands):
    hands.picture()
    scale = hands.place.scale
    hands.place.set_scale(replace(scale, x0=scale.x0 - 0.6 * hands.wall.width()))
    assert hands.wall._rough.isActive()
    hands.picture()
    assert hands.wall._drawn_scale == hands.place.scale


def test_the_chalk_line_is_dragged_by_its_flag(hands):
    x = hands.place.chalk_x
    flag = hands.wall.mapTo(hands.window, QPointF(hands.place.scale.px(x, 0).x(), 12))
    hands.drag(flag, flag + QPointF(-80, 5))
    assert hands.place.chalk_x == pytest.approx(x - 80 / hands.place.scale.px_per_mm, abs=0.5)


def test_escape_puts_the_chalk_line_back(hands):
    x = hands.place.chalk_x
    flag = hands.wall.mapTo(hands.window, QPointF(hands.place.scale.px(x, 0).x(), 12))
    hands.drag(flag, flag + QPointF(-80, 5), let_go=False)
    hands.key("Escape")
    assert hands.place.chalk_x == pytest.approx(x)


def test_a_press_on_the_lower_tape_brings_the_line_there_and_it_follows(hands):
    tape = hands.window.foot
    at = tape.mapTo(hands.window, QPointF(hands.place.scale.px(300, 0).x(), 10))
    hands.press(at)
    assert hands.place.chalk_x == pytest.approx(300)
    hands.move(at + QPointF(40, 0))
    hands.release(at + QPointF(40, 0))
    assert hands.place.chalk_x == pytest.approx(300 + 40 / hands.place.scale.px_per_mm)


def test_the_line_goes_along_with_what_is_dragged_and_back_on_escape(hands):
    hands.drag_mm((200, 200), (400, 200), CTRL, let_go=False)
    assert hands.place.chalk_x == pytest.approx(400, abs=1.5)
    hands.key("Escape")
    assert hands.place.chalk_x == pytest.approx(200)


def test_the_section_measures_the_room_under_the_seat(hands):
    hands.click_mm(200, 200)
    (depth,) = hands.window.section.show_now().depths
    # by hand: the front of A stands at 20 + 10 + 50 = 80; the seat's face runs from z 100 at y 0 to z 90 at
    # y 400, so over y 170..230 it comes nearest at y 230: 100 - 10 * 230 / 400 = 94.25; left 14.25
    assert depth.front == pytest.approx((80, 230))
    assert depth.seat == pytest.approx((94.25, 230))
    assert (depth.text, *depth.shorter) == ("14.3 mm left under the seat", "14.3 mm left")
    assert hands.window.card.pieces()[0].id == "A"


def test_no_room_is_told_where_no_seat_stands(hands):
    hands.click_mm(800, 200)
    assert hands.window.section.show_now().depths == ()


def test_with_the_seat_folded_the_lines_of_sight_are_shown(open_window):
    dial = {"id": "gain", "kind": "dial", "at": [0, 0], "z": 50, "facing": "out"}
    cards = {"box": card(service=[dial])}
    hands = open_window(layout(gear=[gear("A", 200, 200)], cards=cards, bay={"seats": [SEAT]}))
    hands.click_mm(200, 200)
    assert hands.window.section.show_now().sights == ()
    hands.key("F")
    (sight,) = hands.window.section.show_now().sights
    assert sight.verdict == "clear"
    assert sight.point == pytest.approx((80.5, 200), abs=0.01)  # half a millimetre off its own face


def test_the_units_switch_and_the_lever_are_pressed(hands):
    strip = hands.window.strip
    for switch, word in ((strip.units, "in"), (strip.lever, "folded")):
        half = switch.halves()[switch.words.index(word)]
        hands.click(switch.mapTo(hands.window, half.center()))
    assert hands.layout.units == "in"
    assert hands.place.lever == "folded"


def test_resizing_keeps_a_whole_wall_whole(hands):
    hands.frame.resize(1280, 800)
    hands.app.processEvents()
    for x, y in hands.layout.bay.wall:
        assert hands.place.wall_rect.contains(hands.place.scale.px(x, y))


def test_stages_that_are_not_built_are_not_shown(hands):
    assert [lath.name for lath in hands.window.strip.laths()] == [s.name for s in hands.window.strip.stages]
    assert set(hands.window.panes) == {s.name for s in hands.window.strip.stages}


def test_a_stage_can_bring_its_own_parts(hands):
    from PySide6.QtWidgets import QWidget

    from bayboard.window.stages import Panes, Stage

    bench = QWidget(hands.window)
    hands.window.add_stage(Panes(Stage("Trial", 9), bench=bench))
    assert not bench.isVisible()
    lath = hands.window.strip.lath_places()[-1]
    hands.click(hands.window.strip.mapTo(hands.window, lath.center()))
    assert bench.isVisible()
    assert not hands.bench.isVisible()
    assert hands.wall.isVisible()
    assert bench.geometry() == hands.window.plan().bench
    hands.key("2", CTRL)
    assert hands.bench.isVisible()
    assert not bench.isVisible()
