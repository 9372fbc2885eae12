"""Every change of the draft reaches its file within a second; a new vehicle gets a file at its first."""

import time

import pytest
from PySide6.QtTest import QTest
from tests.window.hands import CTRL
from tests.window.keeping.bench import (
    answer,
    answers,
    in_file,
    job_file,
    rest,
    shelf,
    small,
    state,
    window_on,
)

from bayboard.edits.move_gear import MoveGear
from bayboard.model.read import read
from bayboard.window import files
from bayboard.window.keeping import keeper

SECOND = 1.0 + 0.6  # s; a second is promised, the rest is for a machine that does much else


@pytest.fixture
def van(tmp_path):
    return job_file(tmp_path / "van.bay")


@pytest.fixture
def hands(open_window, van):
    return window_on(open_window, van)


def test_a_move_is_in_the_file_once_hands_rest(hands, van):
    hands.drag_mm((200, 200), (300, 200))
    rest()
    assert in_file(van) == hands.layout
    assert not hands.place.job.unwritten
    assert not hands.frame.isWindowModified()


def test_nothing_is_written_while_a_piece_is_in_the_hand(hands, van):
    before = in_file(van)
    hands.drag_mm((200, 200), (300, 200), let_go=False)
    rest()
    assert in_file(van) == before
    hands.release(hands.px(300, 200))
    rest()
    assert in_file(van) == hands.layout != before


def test_a_change_is_written_within_a_second_though_the_next_drag_has_begun(hands, van):
    hands.place.do(MoveGear(("A",), 10.0, 0.0))
    moved = hands.layout
    began = time.monotonic()
    hands.press(hands.px(210, 200))
    for step in range(40):
        hands.move(hands.px(210 + step, 200))
        QTest.qWait(20)
        if not hands.place.job.unwritten:
            break
    assert time.monotonic() - began < SECOND
    assert hands.place.shown != moved  # still in the hand
    assert in_file(van) == moved
    hands.release(hands.px(210, 200))


def test_changes_that_never_rest_are_written_within_a_second(hands):
    writes = []
    hands.window.files.keeper.stands.connect(lambda: writes.append(time.monotonic()))
    began = time.monotonic()
    while time.monotonic() - began < SECOND:
        hands.place.do(MoveGear(("A",), 0.5, 0.0), fold=False)
        QTest.qWait(60)
    assert writes


def test_quick_changes_are_written_together(hands):
    written = []
    flush = hands.place.job.flush
    hands.place.job.flush = lambda: (written.append(1), flush())
    for _ in range(5):
        hands.place.do(MoveGear(("A",), 1.0, 0.0), fold=False)
        QTest.qWait(20)
    rest()
    assert len(written) == 1


@pytest.mark.parametrize("leave", ["stage", "focus", "broken"])
def test_it_is_written_at_once_when_one_turns_away(hands, van, leave):
    from PySide6.QtCore import Qt

    from bayboard.window.stages import Panes, Stage

    hands.window.add_stage(Panes(Stage("Other", 0)), lath=False)
    hands.drag_mm((200, 200), (300, 200))
    if leave == "stage":
        hands.window.show_stage("Other")
    elif leave == "focus":
        hands.app.applicationStateChanged.emit(Qt.ApplicationState.ApplicationInactive)
    else:
        hands.window.set_aside()
    assert in_file(van) == hands.layout


def test_closing_writes_and_lets_go_of_the_file(hands, van):
    hands.drag_mm((200, 200), (300, 200))
    hands.frame.close()
    assert not hands.frame.isVisible()
    assert in_file(van) == hands.layout
    assert [path.name for path in van.parent.iterdir() if path.name.startswith("van")] == ["van.bay"]
    from bayboard.store.job_file import open_job_file

    open_job_file(van).close()  # held by nobody


def test_undo_survives_closing_and_says_what_it_takes_back(open_window, van):
    hands = window_on(open_window, van)
    before = hands.layout
    hands.drag_mm((200, 200), (300, 200))
    moved = hands.layout
    hands.frame.close()
    again = window_on(open_window, van)
    assert again.layout == moved
    again.key("Z", CTRL)
    assert again.layout == before
    assert again.line().startswith("Undone: move A")
    again.key("Y", CTRL)
    assert again.layout == moved


# --- a job without a file ---


def test_a_new_vehicle_gets_its_file_at_the_first_change(open_window):
    hands = open_window(small())
    rest()
    assert shelf() == []  # nothing was done yet
    hands.drag_mm((200, 200), (300, 200))
    rest()
    (path,) = shelf()
    assert path.name == "Plain-bay.bay"
    assert in_file(path) == hands.layout
    assert hands.place.job.path == path
    assert state(hands) == "not kept yet"
    assert "Plain-bay.bay" in hands.line()


def test_a_finished_example_gets_a_file_of_its_own_at_the_first_change(open_window):
    hands = open_window(first_start=True)
    hands.window.files.example()
    rest()
    assert shelf() == []
    hands.key("U")  # the units are a part of the layout
    rest()
    (path,) = shelf()
    assert in_file(path).vehicle == hands.layout.vehicle


def test_two_vehicles_of_one_name_have_two_files(open_window):
    for _ in range(2):
        hands = open_window(small())
        hands.drag_mm((200, 200), (300, 200))
        hands.window.files.keeper.write()
    assert [path.name for path in shelf()] == ["Plain-bay-2.bay", "Plain-bay.bay"]


def test_where_no_shelf_can_be_made_the_work_goes_on_unsaved(open_window, tmp_path, monkeypatch):
    (tmp_path / "in the way").write_text("a file", encoding="utf-8")
    monkeypatch.setenv("BAYBOARD_SHELF", str(tmp_path / "in the way" / "shelf"))
    hands = open_window(small())
    hands.drag_mm((200, 200), (300, 200))
    rest()
    assert "No job file could be made" in hands.window.notice.text
    assert hands.frame.isWindowModified()
    assert state(hands) == "draft, not in any file"
    hands.key("Escape")
    hands.frame.close()  # the old way: asked about
    assert hands.frame.isVisible()
    monkeypatch.setattr(files, "ask_save", lambda *_: str(tmp_path / "mine.bay"))
    answer(hands, files.SAVE)
    assert in_file(tmp_path / "mine.bay") == hands.layout


# --- what cannot be written ---


@pytest.fixture
def full(hands):
    """Make the disk full: the file may not grow by a page, and give a way to free it."""
    connection = hands.place.job.file._base.conn
    pages = connection.execute("PRAGMA page_count").fetchone()[0]
    connection.execute(f"PRAGMA max_page_count = {pages}")
    yield lambda: connection.execute("PRAGMA max_page_count = 1000000")


def crowd(hands):
    """Make so many changes that the file has to grow."""
    for step in range(60):
        hands.place.do(MoveGear(("A",), 1.0 + step / 7, 0.3), fold=False)


def test_a_full_disk_is_told_once_and_the_work_stays(hands, van, full):
    before = in_file(van)
    crowd(hands)
    rest()
    assert "the disk is full" in hands.window.notice.text
    assert state(hands) == "not written: the disk is full"
    assert hands.frame.isWindowModified()
    hands.key("Escape")
    hands.place.do(MoveGear(("A",), 1.0, 0.0))
    rest()
    assert answers(hands) == ()  # not told again
    assert in_file(van) == before


def test_it_is_tried_again_at_the_next_change_and_said(hands, van, full):
    crowd(hands)
    rest()
    full()
    hands.place.do(MoveGear(("A",), 1.0, 0.0))
    rest()
    assert in_file(van) == hands.layout
    assert hands.line() == "Written again: all of it is in van.bay."
    assert answers(hands) == ()  # the sentence is taken back
    assert state(hands) == "draft after revision 1"


def test_it_is_tried_again_after_a_while_with_no_change(hands, van, full, monkeypatch):
    monkeypatch.setattr(keeper, "AGAIN", 100)
    crowd(hands)
    rest()
    full()
    rest(300)
    assert in_file(van) == hands.layout


def test_closing_while_unwritten_asks_and_stays(hands, full):
    crowd(hands)
    hands.frame.close()
    assert hands.frame.isVisible()
    assert "not written: the disk is full" in hands.window.notice.text
    answer(hands, files.STAY)
    assert hands.frame.isVisible()


def test_closing_while_unwritten_may_go_on_in_another_file(hands, full, tmp_path, monkeypatch):
    closed = []
    hands.window.closing.connect(lambda: closed.append(True))
    crowd(hands)
    mine = hands.layout
    hands.frame.close()
    monkeypatch.setattr(files, "ask_save", lambda *_: str(tmp_path / "stick" / "van.bay"))
    (tmp_path / "stick").mkdir()
    answer(hands, files.SAVE)
    assert closed == [True]
    assert in_file(tmp_path / "stick" / "van.bay") == mine


def test_letting_the_changes_go_closes_and_leaves_the_file_as_it_was(hands, van, full):
    closed = []
    hands.window.closing.connect(lambda: closed.append(True))
    before = in_file(van)
    crowd(hands)
    hands.frame.close()
    answer(hands, files.LET_GO)
    assert closed == [True]
    assert in_file(van) == before


def test_another_vehicle_is_not_opened_over_what_is_not_written(hands, full, tmp_path):
    other = job_file(tmp_path / "other.bay", vehicle={"name": "Other"})
    crowd(hands)
    hands.window.files.open_path(other)
    assert hands.layout.vehicle.name == "Plain bay"
    answer(hands, files.LET_GO)
    assert hands.layout.vehicle.name == "Other"


def test_a_pulled_stick_is_told_and_all_is_written_once_it_is_back(hands, van):
    gone = van.with_name("gone.bay")
    van.rename(gone)
    hands.drag_mm((200, 200), (300, 200))
    rest()
    assert "no longer there" in hands.window.notice.text
    assert state(hands).startswith("not written: ")
    gone.rename(van)
    hands.window.files.keeper.write()
    assert in_file(van) == hands.layout
    assert answers(hands) == ()


@pytest.mark.parametrize("name", ["saved.json", "saved.bay"])
def test_a_copy_can_be_saved_while_the_file_takes_nothing(hands, van, full, tmp_path, monkeypatch, name):
    crowd(hands)
    rest()
    mine = hands.layout
    (tmp_path / "stick").mkdir()
    monkeypatch.setattr(files, "ask_save", lambda *_: str(tmp_path / "stick" / name))
    hands.window.files.save_copy()
    if name.endswith(".json"):
        assert read((tmp_path / "stick" / name).read_text(encoding="utf-8")) == mine
        assert hands.place.job.path == van
    else:
        assert in_file(tmp_path / "stick" / name) == mine
        assert hands.place.job.path == tmp_path / "stick" / name


def test_going_on_in_the_same_file_is_refused(hands, van, full):
    crowd(hands)
    rest()
    assert not hands.window.files.ways.go_on_in(van)
    assert "is the file itself" in hands.window.notice.text
