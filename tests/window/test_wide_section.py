"""The Section pulled wide: one scale before and after, the Wall a strip round the line, remembered."""

import pytest
from PySide6.QtCore import QPointF, QRect
from tests.build import gear, layout
from tests.window.hands import CTRL

from bayboard.window import motion
from bayboard.window.floor_plan import FloorPlan
from bayboard.window.keeping.view_state import take_view, view_of
from bayboard.window.pull import pulled

UP = [[100, 0], [150, 0], [150, 400], [100, 400]]
SEAT = {
    "id": "S",
    "x": [0, 600],
    "up": UP,
    "folded": [[100, -50], [500, -50], [500, 0], [100, 0]],
    "hinge": [100, 0],
    "swing": -90,
}


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=[gear("A", 200, 200), gear("B", 800, 200)], bay={"seats": [SEAT]}))


def _line(hands):
    return hands.place.scale.px(hands.place.chalk_x, 0.0).x()


def test_w_pulls_the_section_wide_and_back_on_one_scale(hands):
    before, narrow = hands.place.scale, hands.window.section.width()
    hands.key("W")
    section = hands.window.section
    assert (narrow, section.width()) == (372, 1112)  # the widths drawn for a window of 1600
    assert hands.place.scale.px_per_mm == before.px_per_mm
    assert hands.place.scale.y0 == before.y0
    assert section.layer_scale().px_per_mm == before.px_per_mm
    assert _line(hands) == pytest.approx(hands.wall.width() / 2)
    assert section.phrases()[0].startswith("pulled wide, at ")
    hands.key("W")
    assert hands.place.scale == before
    assert section.width() == narrow


def test_the_tape_under_it_counts_out_from_the_wall(hands):
    hands.key("W")
    out, section = hands.window.pull.out, hands.window.section
    assert out.isVisible()
    assert (out.x(), out.width()) == (section.x(), section.width())
    assert section.geometry().bottom() + 1 == out.y()
    hands.key("W")
    assert not out.isVisible()


def test_the_hanging_tape_draws_it_and_a_small_pull_goes_back(hands):
    tape = hands.window.hanging
    grip = QPointF(tape.geometry().center())
    hands.drag(grip, grip + QPointF(-370, 0))
    assert hands.window.section.width() == pytest.approx(372 + 370, abs=2)
    grip = QPointF(tape.geometry().center())
    hands.drag(grip, grip + QPointF(330, 0))
    assert hands.window.section.width() == 372


def test_the_strip_goes_along_with_what_is_selected(hands):
    hands.click_mm(200, 200)
    hands.key("W")
    hands.place.select(("B",))
    assert 0 < _line(hands) < hands.wall.width()
    assert hands.place.chalk_x == pytest.approx(800)


def test_a_piece_is_dragged_in_the_strip_as_ever(hands):
    hands.click_mm(200, 200)
    hands.key("W")
    hands.drag_mm((200, 200), (230, 210), CTRL)
    assert hands.gear("A").at == pytest.approx((230, 210), abs=1.5)


def test_the_strip_stays_while_something_is_drawn_to_its_edge(hands):
    hands.click_mm(200, 200)
    hands.key("W")
    before = hands.place.scale
    edge = hands.wall.mapTo(hands.window, QPointF(hands.wall.width() - 10, 0)).x()
    start = hands.px(200, 200)
    hands.drag(start, QPointF(edge, start.y()), CTRL, let_go=False)
    assert hands.place.scale == before
    hands.release(QPointF(edge, start.y()), CTRL)
    hands.place.set_chalk(hands.place.chalk_x)
    assert 0.15 <= _line(hands) / hands.wall.width() <= 0.85


def test_what_is_zoomed_stays_as_large(hands):
    hands.wheel(hands.px(200, 200), 240)
    before = hands.place.scale.px_per_mm
    for _ in range(2):
        hands.key("W")
        assert hands.place.scale.px_per_mm == before


def test_how_wide_it_is_is_kept_with_the_view(hands):
    hands.key("W")
    view = view_of(hands.place, "Arrange")
    assert view["wide"] == 1.0
    hands.key("W")
    take_view(hands.place, view)
    assert hands.window.section.width() == 1112


@pytest.mark.parametrize("value", [None, "1", -0.5, 7, True, float("nan")])
def test_a_broken_width_is_as_good_as_none(hands, value):
    take_view(hands.place, {"wide": value})
    assert hands.place.wide == 0.0


def test_a_section_that_lies_over_the_wall_leaves_it_whole():
    strip, wall, section = QRect(0, 0, 850, 50), QRect(0, 50, 814, 300), QRect(550, 50, 300, 328)
    rest = (QRect(), QRect(), QRect())
    plan = FloorPlan(strip, wall, QRect(514, 50, 36, 328), QRect(0, 350, 814, 28), section, *rest)
    made = pulled(plan, 1.0)
    assert made.wall == wall
    assert made.section.width() == round(850 * 1112 / 1600)
    assert made.hanging.right() + 1 == made.section.left()


def test_the_seat_swings_when_motion_is_wanted_and_jumps_when_not(hands, qtbot):
    section = hands.window.section
    hands.place.set_chalk(300.0)
    assert section.show_now().swings
    motion.choose(False)
    hands.key("F")
    assert section.show_now().folding is None
    motion.choose(True)
    try:
        hands.key("F")
        assert section.show_now().folding == pytest.approx(1.0, abs=0.6)
        qtbot.waitUntil(lambda: section.show_now().folding is None, timeout=1000)
    finally:
        motion.choose(False)
    assert hands.place.lever == "up"


def test_the_section_is_told_in_sentences(hands):
    hands.click_mm(200, 200)
    said = hands.window.section.parts_said()
    # front of A at 20 + 10 + 50 = 80, the seat's face at 100
    assert said[:2] == ["A Plain box, cut", "A: 20 mm left under the seat"]
    hands.window.section._describe()
    told = hands.window.section.accessibleDescription()
    assert told.startswith("at 300 mm, seat up. A Plain box, cut. ")
