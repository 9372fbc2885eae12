"""Pieces that wait: taken from the ledge in one press, move and release, or hung by their number."""

import pytest
from PySide6.QtCore import QPointF
from tests.build import gear, layout
from tests.window.hands import CTRL


@pytest.fixture
def hands(open_window):
    pieces = [
        gear("A", 200, 200),
        gear("B", 0, 0) | {"at": None},
        gear("C", 0, 0, card="slab") | {"at": None},
    ]
    return open_window(layout(gear=pieces))


def on_ledge(hands, name):
    spot = next(spot for spot in hands.bench.places() if spot.gear == name)
    return hands.bench.mapTo(hands.window, spot.rect.center())


def test_a_drag_from_the_ledge_hangs_it_where_it_is_let_go(hands):
    hands.drag(on_ledge(hands, "B"), hands.px(500, 250), CTRL)
    assert hands.gear("B").at == pytest.approx((500, 250), abs=1.0)
    assert hands.place.selected == ("B",)


def test_it_is_shown_on_the_board_at_true_size_before_it_is_let_go(hands):
    hands.drag(on_ledge(hands, "B"), hands.px(500, 250), let_go=False)
    assert hands.gear("B").at is None
    piece = hands.place.scene.placed["B"]
    assert piece.at == pytest.approx((500, 250), abs=1.0)
    assert len(hands.place.hand.ghosts) == 1
    hands.release(hands.px(500, 250))
    hands.key("Z", CTRL)
    assert hands.gear("B").at is None


def test_between_ledge_and_wall_it_is_in_the_hand(hands):
    start = on_ledge(hands, "B")
    hands.press(start)
    hands.move(start + QPointF(30, -8))
    assert hands.window.in_hand.isVisible()
    hands.move(hands.px(500, 250))
    assert not hands.window.in_hand.isVisible()
    hands.release(hands.px(500, 250))
    assert hands.gear("B").at is not None


def test_let_go_off_the_wall_it_stays_on_the_ledge(hands):
    start = on_ledge(hands, "B")
    hands.drag(start, start + QPointF(250, 0))
    assert hands.gear("B").at is None
    assert hands.place.job.undo_label is None


def test_escape_puts_it_back_on_the_ledge(hands):
    hands.drag(on_ledge(hands, "B"), hands.px(500, 250), let_go=False)
    hands.key("Escape")
    assert hands.gear("B").at is None
    assert "B" not in hands.place.scene.placed


def test_its_number_and_enter_hang_it_on_the_first_spot_without_a_must(hands):
    hands.key("Escape")
    hands.type("2")
    assert hands.bench.number == "2"
    hands.key("Return")
    assert hands.gear("C").at is not None
    assert [f for f in hands.place.verdict.findings if f.severity == "must"] == []
    assert hands.place.selected == ("C",)


def test_a_number_that_is_not_there_is_said(hands):
    hands.type("7")
    hands.key("Return")
    assert hands.line() == "There is no number 7 on the bench."


def test_arrows_walk_the_ledge_and_enter_hangs(hands):
    hands.bench.setFocus()
    hands.key("Right")
    assert hands.place.selected == ("C",)
    hands.key("Left")
    hands.key("Return")
    assert hands.gear("B").at is not None


def test_n_takes_the_keys_from_the_ledge_so_that_enter_is_the_cures(hands):
    hands.bench.setFocus()
    hands.key("N")
    assert hands.wall.hasFocus()


def test_a_full_board_is_said_and_changes_nothing(open_window):
    pieces = [gear("A", 500, 200, card="big"), gear("B", 0, 0) | {"at": None}]
    from tests.build import card

    hands = open_window(layout(gear=pieces, cards={"big": card(980, 380)}))
    hands.type("1")
    hands.key("Return")
    assert hands.gear("B").at is None
    assert "No free spot for B" in hands.line()


def test_a_grip_off_the_middle_keeps_its_place_under_the_pointer(hands):
    k = hands.place.scale.px_per_mm
    hands.drag(on_ledge(hands, "C") + QPointF(40, 0), hands.px(500, 250), CTRL)
    assert hands.gear("C").at == pytest.approx((500 - 40 / k, 250), abs=1.0)


def test_a_long_ledge_is_pushed_along_by_its_bare_wood(open_window):
    pieces = [gear(f"S{i}", 0, 0, card="slab") | {"at": None} for i in range(6)]
    hands = open_window(layout(gear=pieces))
    first = hands.bench.places()[0].rect
    bare = hands.bench.mapTo(hands.window, QPointF(first.right() + 8, first.top() - 20))
    hands.drag(bare, bare - QPointF(120, 0))
    assert hands.bench.scrolled == pytest.approx(120)
    hands.drag(bare, bare + QPointF(500, 0))
    assert hands.bench.scrolled == 0


def test_the_menu_key_asks_about_the_piece_where_the_keys_are(hands):
    from PySide6.QtGui import QContextMenuEvent
    from PySide6.QtWidgets import QApplication

    asked = []
    hands.bench.menu_wanted.disconnect()
    hands.bench.menu_wanted.connect(asked.append)
    hands.bench.setFocus()
    hands.key("Right")
    at = hands.bench.rect().center()
    event = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, at, hands.bench.mapToGlobal(at))
    QApplication.sendEvent(hands.bench, event)
    assert len(asked) == 1
    assert hands.place.selected == ("C",)
