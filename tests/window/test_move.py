"""A stand-in moved by hand: shown while the button is down, done once when it is let go."""

import pytest
from PySide6.QtCore import QPointF
from tests.build import gear, layout
from tests.window.hands import CTRL, SHIFT


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=[gear("A", 200, 200), gear("B", 600, 200), gear("C", 610, 210)]))


def test_a_drag_moves_it_by_as_many_mm_as_the_pointer_went(hands):
    hands.drag_mm((200, 200), (263, 321), CTRL)
    x, y = hands.gear("A").at
    assert (x, y) == pytest.approx((263, 321), abs=1e-6)


def test_a_drag_comes_to_rest_on_a_whole_millimetre_of_the_tape(hands):
    hands.drag_mm((200, 200), (300.4, 90.7))
    x, y = hands.gear("A").at
    assert (x, y) == (pytest.approx(round(x), abs=1e-6), pytest.approx(round(y), abs=1e-6))
    assert (x, y) == pytest.approx((300.4, 90.7), abs=0.51)


def test_nothing_is_kept_before_the_button_is_let_go(hands):
    hands.drag_mm((200, 200), (300, 300), let_go=False)
    assert hands.gear("A").at == (200, 200)
    assert hands.place.scene.placed["A"].at != (200, 200)
    assert hands.place.job.undo_label is None
    hands.release(hands.px(300, 300))
    assert hands.gear("A").at != (200, 200)


def test_escape_puts_it_back(hands):
    hands.drag_mm((200, 200), (300, 300), let_go=False)
    hands.key("Escape")
    hands.release(hands.px(300, 300))
    assert hands.gear("A").at == (200, 200)
    assert hands.place.scene.placed["A"].at == (200, 200)
    assert hands.place.job.undo_label is None


def test_one_undo_takes_the_whole_drag_back(hands):
    hands.drag_mm((200, 200), (300, 300))
    hands.key("Z", CTRL)
    assert hands.gear("A").at == (200, 200)
    assert hands.line().startswith("Undone: move A ")
    hands.key("Z", CTRL | SHIFT)
    assert hands.gear("A").at != (200, 200)


def test_a_trembling_click_moves_nothing(hands):
    at = hands.px(200, 200)
    hands.press(at)
    hands.move(at + QPointF(2, 1))
    hands.release(at + QPointF(2, 1))
    assert hands.gear("A").at == (200, 200)
    assert hands.place.selected == ("A",)


def test_it_snaps_level_with_a_neighbour_and_shows_the_line(hands):
    k = hands.place.scale.px_per_mm
    hands.drag_mm((200, 200), (300, 205 + 3 / k), let_go=False)
    assert hands.place.scene.placed["A"].at[1] == pytest.approx(200) or hands.place.hand.snaps
    flat = [snap for snap in hands.place.hand.snaps if snap.a[1] == snap.b[1]]
    assert flat
    hands.release(hands.px(300, 205 + 3 / k))
    level = {200.0, 210.0}
    assert any(abs(hands.gear("A").at[1] - y) < 1e-6 for y in level)


def test_control_sets_it_free_of_snap(hands):
    hands.drag_mm((200, 200), (300, 202.5), CTRL, let_go=False)
    assert hands.place.hand.snaps == ()
    hands.release(hands.px(300, 202.5), CTRL)
    assert hands.gear("A").at[1] == pytest.approx(202.5, abs=1e-6)


def test_a_taped_one_cannot_be_dragged_and_says_why(open_window):
    hands = open_window(layout(gear=[gear("A", 200, 200, taped=True)]))
    hands.drag_mm((200, 200), (300, 300))
    assert hands.gear("A").at == (200, 200)
    assert "taped down" in hands.line()


def test_all_that_is_selected_goes_together(hands):
    hands.click_mm(200, 200)
    hands.click_mm(555, 190, SHIFT)
    assert set(hands.place.selected) == {"A", "B"}
    hands.drag_mm((200, 200), (210, 260), CTRL)
    assert hands.gear("A").at == pytest.approx((210, 260), abs=1e-6)
    assert hands.gear("B").at == pytest.approx((610, 260), abs=1e-6)
    assert hands.gear("C").at == (610, 210)
    hands.key("Z", CTRL)
    assert (hands.gear("A").at, hands.gear("B").at) == ((200, 200), (600, 200))


def test_let_go_over_the_bench_it_is_back_there(hands):
    bench = QPointF(hands.bench.geometry().center())
    hands.drag(hands.px(200, 200), bench)
    assert hands.gear("A").at is None


def test_while_it_moves_it_wears_a_chalk_measure_on_each_side(hands):
    hands.drag_mm((200, 200), (240, 210), let_go=False)
    plain = [m for m in hands.wall.show_now().measures if m.severity is None]
    assert len(plain) == 4
    piece = hands.place.scene.placed["A"]
    x0, y0, x1, y1 = piece.box
    ends = {(m.text) for m in plain}
    assert f"{round(x0, 1):g} mm" in ends and f"{round(y0, 1):g} mm" in ends
    assert f"{round(400 - y1, 1):g} mm" in ends and f"{round(550 - x1, 1):g} mm" in ends
    hands.release(hands.px(240, 210))


def test_findings_come_while_it_is_in_the_hand_and_its_measure_wears_the_number(hands):
    assert [f.rule for f in hands.place.verdict.findings if "A" in f.subjects] == []
    hands.drag_mm((200, 200), (200 + 294, 200), CTRL, let_go=False)
    found = [f for f in hands.place.verdict.findings if set(f.subjects) == {"A", "B"}]
    assert [f.rule for f in found] == ["gap"]
    told = [m for m in hands.wall.show_now().measures if m.severity]
    assert hands.place.verdict.number(found[0]) in {m.number for m in told}
    hands.key("Escape")
    assert [f.rule for f in hands.place.verdict.findings if "A" in f.subjects] == []
