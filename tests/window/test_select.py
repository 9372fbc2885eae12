"""What is selected: by click, by keys in reading order, by a box drawn from the bare wall."""

import pytest
from PySide6.QtCore import QPointF, Qt
from tests.build import gear, layout
from tests.window.hands import CTRL, SHIFT


@pytest.fixture
def hands(open_window):
    # two rows: A and B above, C below; D lies over A
    pieces = [gear("A", 200, 300), gear("B", 600, 310), gear("C", 300, 100), gear("D", 230, 310)]
    return open_window(layout(gear=pieces))


def test_a_click_selects_what_lies_on_top(hands):
    hands.click_mm(185, 325)
    assert hands.place.selected == ("D",)


def test_a_click_on_the_same_spot_goes_to_what_lies_under(hands):
    for expected in ("D", "A", "D"):
        hands.click_mm(185, 325)
        assert hands.place.selected == (expected,)


def test_a_click_on_the_bare_wall_unselects(hands):
    hands.click_mm(600, 310)
    hands.click_mm(800, 100)
    assert hands.place.selected == ()


@pytest.mark.parametrize("mods", [SHIFT, CTRL])
def test_with_shift_or_control_a_click_adds_and_takes_away(hands, mods):
    hands.click_mm(600, 310)
    hands.click_mm(300, 100, mods)
    assert set(hands.place.selected) == {"B", "C"}
    hands.click_mm(600, 310, mods)
    assert hands.place.selected == ("C",)


def test_tab_walks_row_by_row_and_then_leaves_the_wall(hands):
    walked = []
    for _ in range(4):
        hands.key("Tab")
        walked.append(hands.place.selected[0])
    assert walked == ["A", "D", "B", "C"]
    hands.key("Tab")
    assert not hands.wall.hasFocus()
    assert hands.bench.hasFocus()


def test_shift_tab_walks_back(hands):
    hands.click_mm(300, 100)
    hands.key("Backtab", SHIFT)
    assert hands.place.selected == ("B",)


@pytest.mark.parametrize(
    "ends", [((120, 60), (420, 250)), ((420, 250), (120, 60))], ids=["rightwards", "leftwards"]
)
def test_a_box_from_the_bare_wall_takes_what_it_touches(hands, ends):
    hands.drag_mm((450, 50), (310, 290))
    assert set(hands.place.selected) == {"C"}
    hands.click_mm(800, 60)
    hands.drag_mm(*ends)
    assert set(hands.place.selected) == {"C"}


def test_a_box_that_only_touches_an_edge_takes_the_piece_too(hands):
    hands.drag_mm((700, 60), (640, 300))
    assert hands.place.selected == ("B",)


def test_escape_unselects(hands):
    hands.click_mm(600, 310)
    hands.key("Escape")
    assert hands.place.selected == ()


def test_the_section_follows_to_the_middle_of_what_is_selected(hands):
    hands.click_mm(600, 310)
    assert hands.place.chalk_x == pytest.approx(600)


def test_the_section_follows_what_keys_and_undo_move_but_stays_where_it_is_drawn(hands):
    hands.click_mm(600, 310)
    hands.key("Right", SHIFT)
    assert hands.place.chalk_x == pytest.approx(610)
    hands.key("Z", CTRL)
    assert hands.place.chalk_x == pytest.approx(600)
    hands.place.set_chalk(570)
    hands.key("T")
    assert hands.place.chalk_x == 570


def test_the_section_stays_when_it_does_not_follow(hands):
    before = hands.place.chalk_x
    hands.wall.setFocus()
    hands.key("C", SHIFT)
    assert hands.line() == "The chalk line stays where it is."
    hands.click_mm(600, 310)
    assert hands.place.chalk_x == before
    hands.key("C", SHIFT)
    hands.click_mm(300, 100)
    assert hands.place.chalk_x == pytest.approx(300)


def test_hovering_shows_the_gap_to_what_is_nearest(hands):
    hands.move(hands.px(600, 310))
    assert hands.place.hovered == "B"
    assert len([m for m in hands.wall.show_now().measures if m.severity is None]) == 1
    assert hands.wall.cursor().shape() == Qt.CursorShape.OpenHandCursor


def test_the_menu_has_at_most_seven_lines_each_with_its_key(hands):
    from bayboard.window.menu import lines

    hands.click_mm(600, 310)
    told = lines(hands.place)
    assert 5 <= len(told) <= 7
    assert ("turn", "Turn a quarter", "R") in told


def test_on_the_bare_wall_the_mouse_alone_undoes_and_keeps(hands):
    from bayboard.window.menu import lines

    hands.drag_mm((600, 310), (620, 310))
    moved = hands.layout
    hands.place.select(())
    acts = [act for act, _, _ in lines(hands.place)]
    assert len(acts) <= 7
    hands.window.menu.chosen.emit("undo")
    assert hands.layout != moved
    hands.window.menu.chosen.emit("keep")
    assert hands.window.note_line.isVisible() and {"undo", "redo", "keep", "save_as"} <= set(acts)


def test_a_finger_that_rests_opens_the_menu_and_moves_nothing(hands, qtbot):
    from PySide6.QtCore import QEvent
    from PySide6.QtGui import QMouseEvent
    from PySide6.QtWidgets import QApplication

    wanted = []
    hands.wall.menu_wanted.disconnect()
    hands.wall.menu_wanted.connect(wanted.append)
    at = hands.wall.mapFrom(hands.window, hands.px(600, 310))
    left = Qt.MouseButton.LeftButton
    touch = Qt.MouseEventSource.MouseEventSynthesizedBySystem
    where = hands.wall.mapToGlobal(at)
    event = QMouseEvent(
        QEvent.Type.MouseButtonPress, at, at, where, left, left, Qt.KeyboardModifier.NoModifier, touch
    )
    QApplication.sendEvent(hands.wall, event)
    qtbot.waitUntil(lambda: wanted != [], timeout=2000)
    assert hands.place.selected == ("B",)
    assert hands.wall.gesture is None
    assert hands.place.job.undo_label is None


def test_a_click_in_the_section_selects_the_piece_that_is_cut(hands):
    hands.place.set_chalk(300)
    view = hands.window.section
    piece = hands.place.scene.placed["C"]
    spot = view.layer_scale().px(-(piece.under + 10), 100)
    hands.click(view.mapTo(hands.window, QPointF(spot)))
    assert hands.place.selected == ("C",)
