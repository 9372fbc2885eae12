"""Plain layouts are opened and saved; unsaved work is asked about, what cannot be read is said in place."""

import json
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication
from tests.build import document, gear, layout
from tests.window.hands import CTRL, SHIFT

from bayboard.model.write import write
from bayboard.window import files, last


@pytest.fixture
def saved(tmp_path):
    path = tmp_path / "crew.json"
    path.write_text(
        json.dumps(document(vehicle={"name": "Crew"}, gear=[gear("X", 300, 200)])), encoding="utf-8"
    )
    return path


@pytest.fixture
def hands(open_window, tmp_path):
    """A plain layout: saved when asked, and asked about."""
    made = layout(gear=[gear("A", 200, 200)])
    path = tmp_path / "mine.json"
    path.write_text(write(made), encoding="utf-8")
    return open_window(made, path=path)


def drop(hands, *paths):
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    at, copy, left, plain = (
        QPoint(400, 300),
        Qt.DropAction.CopyAction,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier,
    )
    enter = QDragEnterEvent(at, copy, data, left, plain.NoModifier)
    QApplication.sendEvent(hands.window, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(hands.window, QDropEvent(QPointF(at), copy, data, left, plain.NoModifier))


def answer(hands, word):
    button = next(b for b in hands.window.notice.buttons if b.text() == word)
    hands.click(button.mapTo(hands.window, QPointF(button.rect().center())))


def test_a_dropped_file_is_opened(hands, saved):
    drop(hands, saved)
    assert hands.layout.vehicle.name == "Crew"
    assert hands.frame.windowTitle().startswith("Crew")


def test_a_chosen_file_is_opened_and_remembered(hands, saved, monkeypatch):
    monkeypatch.setattr(files, "ask_open", lambda *_: str(saved))
    hands.key("O", CTRL | SHIFT)
    assert hands.layout.vehicle.name == "Crew"
    assert last.last_vehicle() == saved.resolve()


def test_choosing_none_changes_nothing(hands, monkeypatch):
    monkeypatch.setattr(files, "ask_open", lambda *_: "")
    before = hands.layout
    hands.key("O", CTRL | SHIFT)
    assert hands.layout is before


@pytest.mark.parametrize(
    ("text", "says"), [("{", "crew.json"), ('{"bayboard": 9}', "newer"), ("\x00\xff", "crew.json")]
)
def test_a_file_that_cannot_be_read_is_said_in_place_and_the_work_stays(hands, saved, text, says):
    hands.drag_mm((200, 200), (300, 200))
    before = hands.layout
    saved.write_bytes(text.encode("latin-1"))
    drop(hands, saved)
    answer(hands, files.LET_GO)
    assert hands.window.notice.isVisible()
    assert says in hands.window.notice.text
    assert hands.layout is before


def test_unsaved_changes_are_asked_about_before_another_is_opened(hands, saved):
    hands.drag_mm((200, 200), (300, 200))
    drop(hands, saved)
    assert hands.layout.vehicle.name == "Plain bay"
    assert "not saved" in hands.window.notice.text
    answer(hands, files.STAY)
    assert hands.layout.vehicle.name == "Plain bay"
    drop(hands, saved)
    answer(hands, files.LET_GO)
    assert hands.layout.vehicle.name == "Crew"


def test_escape_answers_to_go_on_working(hands, saved):
    hands.drag_mm((200, 200), (300, 200))
    drop(hands, saved)
    hands.key("Escape")
    assert not hands.window.notice.isVisible()
    assert hands.layout.vehicle.name == "Plain bay"
    assert hands.wall.hasFocus()


def test_saving_first_and_then_opening(hands, saved, tmp_path):
    hands.drag_mm((200, 200), (300, 200))
    kept = hands.layout
    drop(hands, saved)
    answer(hands, files.SAVE)
    assert (tmp_path / "mine.json").read_text(encoding="utf-8") == write(kept)
    assert hands.layout.vehicle.name == "Crew"


def test_save_writes_the_normal_form_to_its_own_file(hands, saved):
    drop(hands, saved)
    hands.drag_mm((300, 200), (400, 200))
    assert hands.frame.isWindowModified()
    hands.key("S", CTRL)
    assert saved.read_text(encoding="utf-8") == write(hands.layout)
    assert not hands.frame.isWindowModified()
    assert hands.line() == "Saved as crew.json."


def test_save_as_adds_the_ending_that_is_missing(hands, tmp_path, monkeypatch):
    monkeypatch.setattr(files, "ask_save", lambda *_: str(tmp_path / "other"))
    hands.key("S", CTRL | SHIFT)
    assert (tmp_path / "other.json").exists()
    assert hands.place.job.path == tmp_path / "other.json"


def test_where_nothing_can_be_written_is_said_and_the_work_stays(hands, tmp_path, monkeypatch):
    monkeypatch.setattr(files, "ask_save", lambda *_: str(tmp_path / "gone" / "x.json"))
    hands.drag_mm((200, 200), (300, 200))
    hands.key("S", CTRL | SHIFT)
    assert "no such folder" in hands.window.notice.text
    assert hands.place.job.dirty


def test_new_gives_a_plain_wall_and_a_plain_board(hands):
    hands.key("N", CTRL)
    assert len(hands.layout.bay.wall) == 4
    assert len(hands.layout.boards) == 1
    assert hands.layout.gear == ()
    assert [f for f in hands.place.verdict.findings if f.severity == "must"] == []


def test_the_window_does_not_close_over_unsaved_changes(hands):
    hands.drag_mm((200, 200), (300, 200))
    hands.frame.close()
    assert hands.frame.isVisible()
    answer(hands, files.STAY)
    assert hands.frame.isVisible()
    hands.key("Q", CTRL)
    answer(hands, files.LET_GO)
    hands.app.processEvents()


def test_let_go_closes_it_where_somebody_waits_for_that(hands):
    closed = []
    hands.window.closing.connect(lambda: closed.append(True))
    hands.drag_mm((200, 200), (300, 200))
    hands.frame.close()
    answer(hands, files.LET_GO)
    assert closed == [True]


def test_a_window_with_nothing_unsaved_closes_at_once(hands):
    hands.frame.close()
    assert not hands.frame.isVisible()


@pytest.mark.parametrize("text", ["", "{", "[]", '{"last": 5}', '{"last": "/nowhere/x.json"}', "\udcff"])
def test_a_broken_memory_of_the_last_vehicle_is_harmless(text):
    folder = last.data_folder()
    folder.mkdir(parents=True)
    (folder / "window.json").write_bytes(text.encode("utf-8", "surrogateescape"))
    assert last.last_vehicle() is None


def test_the_last_vehicle_is_opened_when_none_is_named(saved, qtbot):
    from bayboard.window.app import application
    from bayboard.window.first_frame import Frame
    from bayboard.window.furnish import furnished
    from bayboard.window.theme import LIGHT

    application()
    last.remember(saved)
    frame = Frame(LIGHT, lambda frame: furnished(frame, None))
    qtbot.addWidget(frame)
    frame.bring_in()
    assert frame.furniture.place.layout.vehicle.name == "Crew"
    assert frame.windowTitle().startswith("Crew")


def test_a_named_file_that_is_not_there_is_said_on_an_empty_workplace(qtbot):
    from bayboard.window.app import application
    from bayboard.window.first_frame import Frame
    from bayboard.window.furnish import furnished
    from bayboard.window.theme import LIGHT

    application()
    frame = Frame(LIGHT, lambda frame: furnished(frame, Path("nowhere.json")))
    qtbot.addWidget(frame)
    frame.show()
    frame.bring_in()
    assert "no such file" in frame.furniture.notice.text
    assert frame.furniture.place.first_start


def test_a_line_about_one_vehicle_is_not_shown_over_the_next(open_window):
    hands = open_window(first_start=True)
    hands.key("K")
    assert hands.line() == "Nothing is open that could be kept."
    hands.key("N", CTRL)
    assert hands.line() == ""


def test_on_first_start_one_may_open_look_or_begin(open_window):
    hands = open_window(first_start=True)
    shown = [button.text() for button in hands.card.begin if button.isVisible()]
    assert shown == ["Open a vehicle", "See a finished one", "A new vehicle"]
    button = hands.card.begin[1]
    hands.click(button.mapTo(hands.window, QPointF(button.rect().center())))
    assert hands.layout.boards
    assert hands.place.job.path is None  # the shipped file is never written to
    assert not hands.card.begin[0].isVisible()
