"""Drill day worked by hand: the space bar, taps, the board, questions in place, and nothing by accident."""

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication
from tests.window.drill_day.days import DayHands, board_day, two_boards
from tests.window.hands import CTRL, SHIFT

from bayboard.edits.move_gear import MoveGear
from bayboard.edits.set_taped import SetTaped
from bayboard.mechanics.printed import printed_of
from bayboard.model.drilled import drilled_at


@pytest.fixture
def open_day(qapp, qtbot):
    """Return a function that opens a window at drill day."""
    from bayboard.window.trouble import TROUBLE

    made, broken = [], []
    TROUBLE.told = broken.append
    TROUBLE.forget()

    def opened(*args, **members):
        hands = DayHands(*args, **members)
        made.append(hands)
        qtbot.addWidget(hands.frame)
        return hands

    yield opened
    for hands in made:
        hands.frame.settled = True
    TROUBLE.told = None
    assert not broken, "a painting broke; see the log above"


@pytest.fixture
def hands(open_day):
    return open_day()


def count(hands):
    return hands.book.count()[0]


def test_it_covers_the_whole_window_also_after_a_change_of_size(hands):
    assert hands.view.geometry() == hands.window.rect()
    hands.frame.resize(1300, 820)
    hands.app.processEvents()
    assert hands.view.geometry() == hands.window.rect()
    assert not hands.window.strip.isVisible()


def test_the_space_bar_drills_and_the_next_hole_is_spoken_of(hands):
    first = hands.shown.now.name
    hands.key("Space")
    assert drilled_at(hands.layout, first) is not None
    assert hands.shown.now.name != first
    assert hands.shown.count == "1 of 8 drilled"
    assert hands.shown.says.startswith("next: ")
    assert hands.view.board.accessibleDescription() == hands.shown.says


def test_a_tap_anywhere_in_the_blue_field_drills(hands):
    rect = hands.view.press.geometry()
    hands.click(QPointF(rect.left() + 12, rect.top() + 12))
    hands.click(QPointF(rect.right() - 12, rect.bottom() - 12))
    assert count(hands) == 2


def test_a_trembling_press_drills_one_hole(hands):
    hands.view.clock = lambda: 100.0
    hands.key("Space")
    hands.key("Space")
    assert count(hands) == 1


def test_a_space_bar_held_down_drills_one_hole(hands):
    for repeated in (False, True, True, True):
        kind = QEvent.Type.KeyPress
        event = QKeyEvent(kind, Qt.Key.Key_Space, Qt.KeyboardModifier.NoModifier, " ", repeated)
        QApplication.sendEvent(hands.view.board, event)
    assert count(hands) == 1


def test_a_mouse_press_on_a_button_leaves_the_space_bar_to_the_drill(hands):
    hands.key("Space")
    hands.click(hands.middle(hands.view.back))
    assert count(hands) == 0
    hands.key("Space")
    assert count(hands) == 1


def test_backspace_takes_the_last_one_back(hands):
    hands.key("Space")
    hands.key("Backspace")
    assert count(hands) == 0
    assert hands.view.line.endswith("is not drilled yet.")
    hands.key("Backspace")
    assert hands.view.line == "Nothing is drilled yet."


def test_the_datum_holes_are_measured_before_the_third(hands):
    for _ in range(2):
        hands.key("Space")
    assert hands.shown.board.check is not None
    assert hands.shown.now.figure == "1025.3"  # sqrt(960^2 + 360^2) = 1025.28
    assert "centre to centre" in hands.shown.says
    hands.key("Space")
    assert count(hands) == 2
    assert hands.shown.board.check is None


def test_a_press_on_a_hole_takes_it_now(hands):
    hands.click(hands.at_hole("A1#3"))
    assert hands.shown.now.name == "A1#3"
    hands.key("Space")
    assert drilled_at(hands.layout, "A1#3") is not None


def test_a_press_beside_a_hole_still_hits_it_with_a_glove(hands):
    hands.click(hands.at_hole("H1") + QPointF(22, -18))
    assert hands.shown.now.name == "H1"


def test_arrows_and_tab_walk_the_holes_both_ways(hands):
    order = [one.hole.id for one in hands.book.all]
    hands.key("Right")
    assert hands.shown.now.name == order[1]
    hands.key("Tab")
    assert hands.shown.now.name == order[2]
    hands.key("Left")
    assert hands.shown.now.name == order[1]


def test_tab_goes_on_to_the_buttons_past_the_last_hole_and_stays_in_view(hands):
    for _ in range(len(hands.book.all) + 3):
        hands.key("Tab")
    assert hands.view.isAncestorOf(QApplication.focusWidget())
    assert QApplication.focusWidget() is not hands.view.board


def test_a_card_of_what_comes_later_takes_that_hole(hands):
    then = hands.shown.then[2]
    hands.click(hands.middle(hands.view.cards[2]))
    assert hands.shown.now.name == then.hole


def test_space_on_a_hole_that_is_made_goes_on(hands):
    hands.key("Space")
    made = hands.book.all[0].hole.id
    hands.click(hands.at_hole(made))
    assert hands.shown.now.made and not hands.shown.now.press
    hands.key("Space")
    assert count(hands) == 1
    assert hands.shown.now.name == hands.book.all[1].hole.id


def test_a_layout_without_a_file_gets_one_with_the_first_tick_and_it_is_said(hands):
    assert hands.place.job.file is None
    hands.key("Space")
    job = hands.place.job
    assert job.keeps and not job.unwritten and job.path.suffix == ".bay"
    assert hands.view.line == f"What is drilled is kept in {job.path.name}."


def test_each_press_is_in_the_file_before_the_next(hands, tmp_path):
    hands.place.job.house(tmp_path / "day.bay")
    for pressed in range(1, 9):
        hands.key("Space")
        assert not hands.place.job.unwritten
        noted = hands.place.job.meta("drill_day")
        assert len(noted["pressed"]) == hands.book.count()[0], pressed


# --- where it went ---


def test_n_asks_where_it_went_and_enter_keeps_the_place(hands):
    hands.click(hands.at_hole("A1#2"))
    hands.key("N")
    assert hands.view.where.isVisible()
    hands.type("261")
    hands.key("Tab")
    hands.type("219.5")
    hands.key("Return")
    assert drilled_at(hands.layout, "A1#2") == (261.0, 219.5)
    assert not hands.view.where.isVisible()
    assert hands.place.job.undo_label.startswith("Drilled A1#2 at ")


def test_a_way_off_the_plan_is_typed_in_one_go(hands):
    x, y = hands.book.parts("A1#2")[0].at
    hands.click(hands.at_hole("A1#2"))
    hands.key("N")
    hands.type("right 2, down 1")
    hands.key("Return")
    assert drilled_at(hands.layout, "A1#2") == pytest.approx((x + 2, y - 1))


def test_letters_typed_there_are_no_keys_of_the_window(hands):
    hands.key("N")
    hands.type("n")
    hands.key("Space")
    assert count(hands) == 0
    assert hands.view.where.isVisible()


def test_escape_takes_back_what_was_typed_then_leaves_the_question_then_drill_day(hands):
    hands.key("N")
    hands.type("3")
    hands.key("Escape")
    assert hands.view.where.isVisible()
    hands.key("Escape")
    assert not hands.view.where.isVisible() and hands.view.isVisible()
    hands.key("Escape")
    assert not hands.view.isVisible()
    assert hands.window.stage == "Arrange"
    assert hands.window.strip.isVisible() and hands.window.foot.isVisible()


def test_what_is_no_length_is_said_and_nothing_is_kept(hands):
    hands.key("N")
    hands.type("18 7/0")
    hands.key("Return")
    assert hands.view.where.isVisible()
    assert "is not a length" in hands.view.where.across.wrong
    assert count(hands) == 0


def test_the_hole_in_the_sheet_metal_of_a_fixing_is_told_there_too(hands):
    hands.click(hands.at_hole("H1"))
    hands.key("N")
    hands.view.where.which.switched.emit("in the sheet metal")
    hands.view.where.across.type_in("right 2")
    hands.key("Return")
    fixing = hands.layout.fixings[0]
    assert fixing.metal == pytest.approx((22, 20)) and fixing.drilled is None


def test_a_screw_has_no_hole_in_the_metal(hands):
    hands.click(hands.at_hole("A1#1"))
    hands.key("N")
    assert not hands.view.where.which.isVisible()


def test_a_hole_that_is_not_made_after_all_is_said_so(hands):
    hands.key("Space")
    made = hands.book.all[0].hole.id
    hands.click(hands.at_hole(made))
    hands.key("N")
    hands.click(hands.middle(hands.view.where.undo))
    assert drilled_at(hands.layout, made) is None


# --- new plastic ---


def test_new_plastic_is_asked_first_and_the_safe_answer_has_the_keys(hands):
    hands.key("Space")
    hands.click(hands.middle(hands.view.plastic))
    assert hands.view.ask.isVisible()
    hands.key("Space")
    assert not hands.view.ask.isVisible() and count(hands) == 1


def test_new_plastic_is_one_undo_step(hands):
    for _ in range(4):
        hands.key("Space")
    before = hands.layout
    hands.click(hands.middle(hands.view.plastic))
    hands.click(hands.middle(hands.view.ask.do))
    assert count(hands) == 0
    hands.key("Z", CTRL)
    assert hands.layout == before


# --- nothing by accident ---


@pytest.mark.parametrize("key", ["R", "T", "B", "Delete", "P", "C", "F", "M", "Return", "0"])
def test_keys_of_the_plan_sleep(hands, key):
    hands.place.select(("A1",))
    before = hands.layout
    hands.key(key)
    hands.key(key, SHIFT)
    assert hands.layout is before and hands.view.isVisible()


def test_undo_stops_at_what_was_done_before_drill_day(open_day):
    hands = open_day()
    hands.place.do(SetTaped(("A1",), True))
    hands.key("Z", CTRL)
    assert hands.layout.gear[0].taped
    hands.key("Space")
    hands.key("Z", CTRL)
    assert count(hands) == 0 and hands.layout.gear[0].taped


def test_undo_is_the_plan_s_again_once_drill_day_is_left(hands):
    hands.key("Space")
    hands.key("Escape")
    hands.key("Z", CTRL)
    assert count(hands) == 0


# --- the wrong sheet ---


def test_holes_that_differ_from_the_sheets_are_said_and_marked(open_day):
    made = board_day()
    moved = MoveGear(("A1",), 3.0, 0.0).apply(replace(made, printed=printed_of(made, "4")))
    hands = open_day(moved)
    assert hands.shown.warning.startswith("4 holes differ from the sheets of revision 4")
    marked = {dot.hole for dot in hands.shown.board.dots if dot.differs}
    assert marked == {"A1#1", "A1#2", "A1#3", "A1#4"}
    assert hands.view.plan().warning.height() > 40


def test_a_hole_that_differs_is_said_when_it_is_the_next(open_day):
    made = board_day()
    hands = open_day(MoveGear(("A1",), 3.0, 0.0).apply(replace(made, printed=printed_of(made, "4"))))
    hands.click(hands.at_hole("A1#2"))
    assert hands.shown.now.caption.startswith("Not as on the sheets of revision 4: go by these figures")
    assert hands.shown.says.endswith("not as on the sheets")
    hands.click(hands.at_hole("H1"))
    assert not hands.shown.now.astray


def test_sheets_that_hold_show_no_warning(open_day):
    made = board_day()
    hands = open_day(replace(made, printed=printed_of(made, "4")))
    assert hands.shown.warning == ""
    assert "no sheets" not in hands.shown.phrase


def test_a_board_never_printed_is_said(hands):
    assert "no sheets printed" in hands.shown.phrase


# --- more than one board, and the end ---


def test_board_after_board_and_the_change_is_said(open_day):
    hands = open_day(two_boards())
    assert "board 1 of 2: LEFT" in hands.shown.phrase
    hands.key("Space")
    assert hands.view.line == "LEFT is drilled. Now take RIGHT."
    assert "board 2 of 2: RIGHT" in hands.shown.phrase


def test_at_the_end_it_says_so_and_the_space_bar_goes_back(hands):
    for _ in range(9):
        hands.key("Space")
    assert hands.shown.now.name == "All drilled"
    assert hands.shown.count == "8 of 8 drilled"
    assert all(bit.done for bit in hands.shown.bits)
    hands.key("Space")
    assert not hands.view.isVisible()


def test_the_list_stays_when_one_stops_for_now(hands):
    hands.key("Space")
    hands.key("Escape")
    hands.window.show_stage("Drill day")
    assert hands.shown.count == "1 of 8 drilled"


@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000), (1920, 1080)])
def test_everything_to_press_is_large_enough_for_a_glove(open_day, size):
    hands = open_day(size=size)
    hands.key("N")
    where = (hands.view.where.across, hands.view.where.keep, hands.view.where.leave)
    for part in (hands.view.press, *hands.view.cards, *hands.view.controls, *where):
        assert part.height() >= 60 and part.width() >= 60, part
        assert hands.view.rect().contains(part.mapTo(hands.view, part.rect().center()))


def test_everything_has_a_name_for_who_cannot_see_it(hands):
    for part in (hands.view.press, *hands.view.cards, *hands.view.controls):
        assert part.accessibleName()
    said = hands.view.board.parts_said()
    assert len(said) == 8 and "H3, second hole, to come" in said
    assert [hands.view.board.part_held(i) for i in range(8)].count(True) == 1


def test_before_anything_is_open_there_is_nothing_to_drill(open_window):
    from bayboard.window.drill_day.stage import add_drill_day

    hands = open_window(first_start=True)
    day = add_drill_day(hands.window)
    hands.window.show_stage("Drill day")
    for key in ("Space", "N", "Backspace", "Right", "Tab"):
        hands.key(key)
    assert day.view.show_now().now.name == "Nothing to drill"
    assert hands.place.job.path is None


def test_what_is_not_written_is_told_in_the_header_for_as_long_as_it_is_not(hands, tmp_path, monkeypatch):
    from bayboard.model.refused import Refused
    from bayboard.store.job_file import JobFile

    hands.place.job.house(tmp_path / "day.bay")
    whole = JobFile.write

    def full(*_, **__):
        raise Refused("day.bay", "the disk is full", "Free some room")

    assert hands.view.trouble() == ""
    monkeypatch.setattr(JobFile, "write", full)
    hands.key("Space")
    hands.window.files.keeper.write()
    hands.window.notice.hide()
    hands.view._hush()
    assert hands.view.trouble() == "not written: the disk is full"
    told = hands.picture()
    monkeypatch.setattr(JobFile, "write", whole)
    hands.window.files.keeper.write()
    hands.view._hush()
    assert hands.view.trouble() == "" and hands.picture() != told
