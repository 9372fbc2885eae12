"""What moves on the Wall, and that nothing waits for it."""

import pytest
from tests.build import gear, layout
from tests.window.hands import CTRL

from bayboard.window import motion


@pytest.fixture
def hands(open_window):
    motion.choose(True)
    return open_window(layout(gear=[gear("A", 200, 200), gear("B", 600, 200)]))


def shift(hands, name="A"):
    carrying = hands.wall.carrying
    return carrying.aloft(hands.wall.show_now().measures).shift(name)


def at_rest(hands):
    """Let the motion come to its end now."""
    hands.wall.carrying._lift.finish()
    hands.wall.carrying._slide.finish()
    assert hands.wall.carrying.pieces() == hands.place.hand.pieces


def test_what_is_undone_stands_at_once_and_slides_there_from_where_it_was(hands):
    hands.drag_mm((200, 200), (300, 250), CTRL)
    at_rest(hands)
    hands.key("Z", CTRL)
    assert hands.place.scene.placed["A"].at == (200, 200)
    k = hands.place.scale.px_per_mm
    assert hands.wall.carrying.pieces() == {"A"}
    assert 60 * k < shift(hands).x() <= 100 * k + 0.1
    assert shift(hands).y() < -30 * k
    at_rest(hands)
    assert shift(hands).isNull()


def test_an_arrow_moves_at_once(hands):
    hands.click_mm(200, 200)
    hands.key("Right")
    hands.wall.carrying._lift.finish()
    assert hands.wall.carrying.pieces() == frozenset()


def test_a_piece_in_the_hand_lifts_3_px_and_lies_down_where_it_is_let_go(hands):
    hands.drag_mm((200, 200), (300, 200), CTRL, let_go=False)
    at_rest(hands)
    aloft = hands.wall.carrying.aloft(hands.wall.show_now().measures)
    assert (aloft.height("A"), aloft.height("B")) == (1.0, 0.0)
    assert (shift(hands).x(), shift(hands).y()) == (0.0, -3.0)
    hands.release(hands.px(300, 200))
    assert "A" in hands.wall.carrying.pieces()
    at_rest(hands)


def test_near_to_something_it_lifts_by_a_quarter_of_the_gap_at_most(hands):
    hands.drag_mm((200, 200), (494, 200), CTRL, let_go=False)
    at_rest(hands)
    assert shift(hands).y() == pytest.approx(-6 * hands.place.scale.px_per_mm / 4, abs=0.01)
    hands.release(hands.px(494, 200))


def test_where_a_line_takes_hold_it_ticks_into_place(hands):
    k = hands.place.scale.px_per_mm
    hands.drag_mm((200, 200), (300, 200 + 20 / k), let_go=False)
    assert hands.place.hand.snaps == ()
    hands.move(hands.px(300, 200 + 6 / k))
    assert len(hands.place.hand.snaps) == 1
    assert hands.place.scene.placed["A"].at[1] == pytest.approx(200)
    assert shift(hands).y() == pytest.approx(-6, abs=1.5)
    at_rest(hands)
    assert shift(hands).isNull()
    hands.release(hands.px(300, 200 + 6 / k))


def test_without_motion_all_is_where_it_belongs_at_once(hands):
    motion.choose(False)
    hands.drag_mm((200, 200), (300, 250), CTRL)
    assert hands.wall.carrying.pieces() == frozenset()
    hands.key("Z", CTRL)
    assert hands.wall.carrying.pieces() == frozenset()
    assert shift(hands).isNull()


def test_over_the_ledge_it_is_in_the_hand_under_the_pointer(hands):
    bench = hands.bench.geometry().center()
    hands.drag(hands.px(200, 200), bench.toPointF(), let_go=False)
    assert hands.window.in_hand.isVisible()
    ((name, x, y),) = hands.place.hand.air
    at = hands.wall.mapFrom(hands.window, bench)
    assert (name, x, y) == ("A", pytest.approx(at.x(), abs=1), pytest.approx(at.y(), abs=1))
    hands.key("Escape")
    assert not hands.window.in_hand.isVisible()
    assert hands.place.scene.placed["A"].at == (200, 200)


def test_news_of_something_else_does_not_cut_a_slide_short(hands):
    hands.drag_mm((200, 200), (300, 250), CTRL)
    hands.key("Z", CTRL)
    hands.place.changed.emit()
    assert "A" in hands.wall.carrying.pieces()
    hands.wall.carrying._slide.finish()


def test_what_keys_hang_comes_up_from_the_ledge(open_window):
    motion.choose(True)
    hands = open_window(layout(gear=[gear("A", 200, 200) | {"at": None}]))
    hands.type("1")
    hands.key("Return")
    assert hands.gear("A").at is not None
    on_ledge = hands.place.scale.px(*hands.gear("A").at) + shift(hands)
    assert on_ledge.y() > 0.7 * hands.wall.height()
    hands.wall.carrying._slide.finish()
