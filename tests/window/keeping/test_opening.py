"""Opening a file that somebody has, that is newer, damaged or cut short: told, with the ways there are."""

import sqlite3

import pytest
from PySide6.QtCore import QPointF, QRectF, Qt
from tests.window.keeping.bench import (
    answer,
    answers,
    held_elsewhere,
    in_file,
    job_file,
    rest,
    small,
    state,
    window_on,
)

from bayboard.model.write import write
from bayboard.store import schema
from bayboard.store.job_file import open_job_file
from bayboard.window import files, last
from bayboard.window.keeping import door
from bayboard.window.keeping.kept_only import NOTES


@pytest.fixture
def van(tmp_path):
    return job_file(tmp_path / "van.bay", ("shown to owner", "wired"))


def test_a_job_file_is_opened_remembered_and_named(open_window, van):
    hands = window_on(open_window, van)
    assert hands.place.job.keeps
    assert last.last_vehicle() == van.resolve()
    assert state(hands) == "revision 2"
    assert hands.frame.windowTitle().startswith("Plain bay")


def test_the_dialog_knows_both_kinds(open_window, van, monkeypatch):
    asked = []
    monkeypatch.setattr(
        "PySide6.QtWidgets.QFileDialog.getOpenFileName",
        lambda *words: (asked.append(words[-1]), (str(van), ""))[1],
    )
    hands = open_window(first_start=True)
    hands.key("O", Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert "*.bay" in asked[0]
    assert "*.json" in asked[0]
    assert hands.place.job.path == van


# --- held by another program ---


def test_a_held_file_asks_and_says_who_and_where(open_window, van):
    with held_elsewhere(van):
        hands = window_on(open_window, van)
        assert answers(hands) == (door.LOOK, door.TAKE, door.CANCEL)
        holder = door.who_holds(van)
        assert holder.host in hands.window.notice.text
        assert holder.name in hands.window.notice.text
        assert "can write nothing more into it" in hands.window.notice.text
        answer(hands, door.CANCEL)
        assert hands.place.first_start


def test_looking_at_a_held_file_changes_nothing_and_says_so(open_window, van):
    with held_elsewhere(van):
        hands = window_on(open_window, van)
        answer(hands, door.LOOK)
        assert hands.place.job.looking
        assert state(hands).startswith(f"looking only: open on {door.who_holds(van).host} since ")
        before = hands.layout
        hands.drag_mm((200, 200), (300, 200))
        assert hands.layout is before
        assert "only looked at" in hands.line()
        hands.key("K")
        assert not hands.window.note_line.isVisible()
        assert "only looked at" in hands.line()
        hands.frame.close()
        assert not hands.frame.isVisible()


def test_taking_over_makes_it_ours(open_window, van):
    with held_elsewhere(van):
        hands = window_on(open_window, van)
        answer(hands, door.TAKE)
        hands.drag_mm((200, 200), (300, 200))
        rest()
        assert in_file(van) == hands.layout


@pytest.mark.parametrize("ending", [".bay", ".json"])
def test_what_is_done_while_the_question_stands_is_not_lost(open_window, van, tmp_path, ending):
    mine = tmp_path / f"mine{ending}"
    if ending == ".bay":
        job_file(mine, vehicle={"name": "Mine"})
    else:
        mine.write_text(write(small(vehicle={"name": "Mine"})), encoding="utf-8")
    hands = window_on(open_window, mine)
    with held_elsewhere(van):
        hands.window.files.open_path(van)
        hands.drag_mm((200, 200), (300, 200))
        moved = hands.layout
        answer(hands, door.LOOK)
        if ending == ".json":
            assert "not saved" in hands.window.notice.text
            answer(hands, files.SAVE)
            assert mine.read_text(encoding="utf-8") == write(moved)
        else:
            assert in_file(mine) == moved
        assert hands.place.job.looking


def test_a_program_that_is_gone_is_succeeded_without_a_question(open_window, van):
    with held_elsewhere(van) as other:
        other.kill()
        other.wait()
    hands = window_on(open_window, van)
    assert hands.place.job.keeps
    assert answers(hands) in ((), ("Close",))


def test_the_file_on_the_wall_is_not_opened_twice(open_window, van):
    hands = window_on(open_window, van)
    job = hands.place.job
    hands.window.files.open_path(van)
    assert hands.place.job is job
    assert hands.line() == "van.bay is on the Wall already."


def test_looked_at_it_may_be_opened_to_work_on(open_window, van):
    hands = open_window(first_start=True)
    hands.window.files.open_path(van, look=True)
    assert state(hands) == "looking only"
    hands.window.files.open_path(van)
    assert hands.place.job.keeps


def test_another_vehicle_lets_the_first_go(open_window, van, tmp_path):
    other = job_file(tmp_path / "other.bay", vehicle={"name": "Other"})
    hands = window_on(open_window, van)
    hands.drag_mm((200, 200), (300, 200))
    moved = hands.layout
    hands.window.files.open_path(other)
    assert hands.layout.vehicle.name == "Other"
    assert in_file(van) == moved
    open_job_file(van).close()


def test_a_file_that_cannot_be_opened_leaves_the_first_on_the_wall(open_window, van, tmp_path):
    hands = window_on(open_window, van)
    hands.window.files.open_path(tmp_path / "nowhere.bay")
    assert "no such file" in hands.window.notice.text
    assert hands.place.job.keeps
    hands.key("Escape")
    hands.drag_mm((201, 200), (300, 200))
    rest()
    assert in_file(van) == hands.layout


# --- changed underneath: a second window in another process ---


@pytest.fixture
def taken(open_window, van):
    """A window whose file another program takes over and writes to; it has a change of its own."""
    hands = window_on(open_window, van)
    with held_elsewhere(van, "take", "write"):
        pass
    hands.drag_mm((201, 200), (300, 200))
    rest()
    return hands


def test_nothing_is_written_over_a_file_that_was_changed(taken, van):
    assert in_file(van) != taken.layout
    assert "Nothing was written over it" in taken.window.notice.text
    assert state(taken).startswith("not written: this file was changed")
    assert answers(taken)[:2] == ("Keep mine in a new file", "Take the file's")


def test_mine_may_be_kept_in_a_new_file_with_all_that_was_kept(taken, van):
    mine = taken.layout
    answer(taken, "Keep mine in a new file")
    path = taken.place.job.path
    assert path == van.with_name("van-2.bay")
    assert in_file(path) == mine
    assert [r.note for r in taken.place.job.revisions()] == ["shown to owner", "wired"]
    assert in_file(van) != mine
    taken.place.undo()
    rest()
    assert in_file(path) == taken.layout != mine


def test_theirs_may_be_taken_and_mine_is_set_aside(taken, van, tmp_path):
    mine = taken.layout
    answer(taken, "Take the file's")
    assert taken.layout == in_file(van) != mine
    assert taken.place.job.keeps
    (aside,) = (tmp_path / "data" / "set aside").glob("*.json")
    assert aside.read_text(encoding="utf-8") == write(mine)
    assert str(aside) in taken.window.notice.text


def test_theirs_is_looked_at_while_the_other_has_it(open_window, van):
    hands = window_on(open_window, van)
    with held_elsewhere(van, "take", "write"):
        hands.drag_mm((201, 200), (300, 200))
        rest()
        answer(hands, "Take the file's")
        assert hands.place.job.looking
        assert "looking only: open on " in state(hands)


def test_not_now_leaves_it_unwritten_and_k_asks_again(taken):
    answer(taken, "Not now")
    assert answers(taken) == ()
    assert taken.place.job.unwritten
    taken.key("K")
    assert "Nothing was written over it" in taken.window.notice.text
    assert not taken.window.note_line.isVisible()


def test_coming_back_to_a_window_whose_file_was_taken_over_says_so_before_anything_is_done(open_window, van):
    hands = window_on(open_window, van)
    with held_elsewhere(van, "take"):
        hands.app.applicationStateChanged.emit(Qt.ApplicationState.ApplicationActive)
        assert "was taken over by" in hands.window.notice.text
        assert state(hands).startswith("this file was taken over by ")
        answer(hands, "Not now")
        hands.frame.close()  # nothing of it is unwritten
        assert not hands.frame.isVisible()


def test_work_in_a_window_whose_file_was_taken_over_goes_on_in_a_new_one(open_window, van):
    hands = window_on(open_window, van)
    with held_elsewhere(van, "take"):
        hands.app.applicationStateChanged.emit(Qt.ApplicationState.ApplicationActive)
        hands.drag_mm((201, 200), (300, 200))
        rest()
        assert state(hands).startswith("not written: this file was taken over by ")
        answer(hands, "Keep mine in a new file")
        assert state(hands) == "draft after revision 2"
        assert in_file(van.with_name("van-2.bay")) == hands.layout


def test_coming_back_to_a_file_that_is_ours_says_nothing(open_window, van):
    hands = window_on(open_window, van)
    hands.app.applicationStateChanged.emit(Qt.ApplicationState.ApplicationActive)
    assert answers(hands) == ()
    assert state(hands) == "revision 2"


# --- not as it should be ---


def test_a_newer_file_shows_its_notes_and_pictures(open_window, van):
    with sqlite3.connect(van) as file:
        file.execute(f"PRAGMA user_version = {schema.FORM + 1}")
    file.close()
    hands = window_on(open_window, van)
    assert "made by a newer Bayboard" in hands.window.notice.text
    answer(hands, door.SHOW_KEPT)
    assert hands.window.stage == NOTES.name
    view = hands.window.joined.kept_only.view
    assert [one.note for one in view.kept] == ["shown to owner", "wired"]
    assert view.parts_said()[0].endswith("shown to owner”")
    shown = QRectF(view.rect())
    assert all(shown.contains(view.part_rect(i)) for i in range(2))
    hands.key("Left")
    assert view.current == 0
    hands.click(hands.wall.mapTo(hands.window, view.part_rect(1).center()))
    assert view.current == 1
    view.resize(view.width(), 200)  # so that there is something to push
    view._push(-1e4)
    at = hands.wall.mapTo(hands.window, QPointF(90, 120))
    hands.fingers(at).drag(at - QPointF(0, 50)).lift()
    assert view.scrolled == pytest.approx(50, abs=2)
    assert view.current == 1
    hands.key("Escape")
    assert hands.window.stage == "Arrange"
    assert hands.place.first_start


@pytest.fixture
def harmed(van):
    with sqlite3.connect(van) as file:
        file.execute("DROP TABLE holder")
    file.close()
    return van


def test_what_can_be_read_of_a_damaged_file_is_saved_and_opened(open_window, harmed):
    before = harmed.read_bytes()
    hands = window_on(open_window, harmed)
    assert answers(hands) == (door.SAVE_READABLE, door.CANCEL)
    answer(hands, door.SAVE_READABLE)
    assert hands.place.job.path == harmed.with_name("van rescued.bay")
    assert [r.note for r in hands.place.job.revisions()] == ["shown to owner", "wired"]
    assert hands.window.notice.text.startswith("Saved as van rescued.bay.")
    assert harmed.read_bytes() == before


def test_a_damaged_file_may_be_left_alone(open_window, harmed):
    hands = window_on(open_window, harmed)
    assert "van rescued.bay" in hands.window.notice.text
    answer(hands, door.CANCEL)
    assert hands.place.first_start
    assert not harmed.with_name("van rescued.bay").exists()


def test_a_second_rescue_has_a_name_of_its_own(harmed):
    harmed.with_name("van rescued.bay").write_bytes(b"")
    assert door.rescued_path(harmed).name == "van rescued 2.bay"


def test_a_folder_that_may_only_be_read_offers_to_look(open_window, van, monkeypatch):
    from bayboard.model.refused import Refused

    real = door.open_job

    def in_a_locked_folder(path, *, look=False, take=False):
        if not look:
            raise Refused(str(path), "nothing may be written in that folder", "Look at it")
        return real(path, look=look, take=take)

    monkeypatch.setattr(door, "open_job", in_a_locked_folder)
    hands = window_on(open_window, van)
    assert answers(hands) == (door.LOOK, door.CANCEL)
    answer(hands, door.LOOK)
    assert hands.place.job.looking


def test_what_was_cut_short_is_told_as_a_note(open_window, van):
    from bayboard.job.job import open_job

    job = open_job(van)
    hands = open_window(first_start=True)
    hands.window.files.came(job, told=("The last change was cut short.",))
    assert hands.window.notice.said.severity == "note"
    assert "cut short" in hands.window.notice.text


# --- at the start ---


def _start(qtbot, path):
    from bayboard.window.app import application
    from bayboard.window.first_frame import Frame
    from bayboard.window.furnish import furnished
    from bayboard.window.theme import LIGHT

    application()
    frame = Frame(LIGHT, lambda frame: furnished(frame, path))
    qtbot.addWidget(frame)
    frame.show()
    frame.bring_in()
    return frame


def test_the_program_starts_with_the_job_file_that_was_open_last(van, qtbot):
    last.remember(van)
    frame = _start(qtbot, None)
    assert frame.furniture.place.job.path == van.resolve()
    frame.close()
    open_job_file(van).close()


def test_the_program_asks_where_the_named_file_is_held(van, qtbot):
    with held_elsewhere(van):
        frame = _start(qtbot, van)
        buttons = frame.furniture.notice.buttons
        assert [button.text() for button in buttons] == [door.LOOK, door.TAKE, door.CANCEL]
        assert frame.focusWidget() is buttons[0]  # Enter answers at once
        frame.close()
