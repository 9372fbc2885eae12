"""Saving a copy: a job file takes every revision along, a plain layout says what stays behind."""

import pytest
from tests.window.hands import CTRL, SHIFT
from tests.window.keeping.bench import in_file, job_file, small, window_on

from bayboard.model.write import write
from bayboard.store.job_file import open_job_file
from bayboard.window import files


@pytest.fixture
def van(tmp_path):
    return job_file(tmp_path / "van.bay", ("first", "second"))


@pytest.fixture
def hands(open_window, van):
    return window_on(open_window, van)


def copy_to(hands, path, monkeypatch):
    asked = []
    monkeypatch.setattr(files, "ask_save", lambda _, start: (asked.append(start), str(path))[1])
    hands.key("S", CTRL | SHIFT)
    return asked[0]


def test_a_copy_takes_every_revision_and_the_work_stays_where_it_was(hands, van, tmp_path, monkeypatch):
    hands.drag_mm((201, 200), (300, 200))
    start = copy_to(hands, tmp_path / "stick.bay", monkeypatch)
    assert start.endswith("van copy.bay")
    with open_job_file(tmp_path / "stick.bay") as copy:
        assert [revision.note for revision in copy.revisions()] == ["first", "second"]
        assert copy.draft().layout == hands.layout
    assert hands.place.job.path == van
    assert hands.line() == "Saved a copy as stick.bay."


def test_a_name_without_an_ending_is_that_of_the_job(hands, tmp_path, monkeypatch):
    copy_to(hands, tmp_path / "v2.1", monkeypatch)
    assert (tmp_path / "v2.1.bay").exists()


def test_a_plain_copy_says_what_stays_behind(hands, tmp_path, monkeypatch):
    copy_to(hands, tmp_path / "plain.json", monkeypatch)
    assert (tmp_path / "plain.json").read_text(encoding="utf-8") == write(hands.layout)
    assert (
        hands.line() == "Saved a copy as plain.json. 2 revisions stay behind in van.bay: a .json holds none."
    )


def test_a_copy_onto_itself_is_refused(hands, van, monkeypatch):
    before = van.read_bytes()
    copy_to(hands, van, monkeypatch)
    assert "this is the file itself" in hands.window.notice.text
    assert van.read_bytes() == before


def test_a_copy_where_nothing_can_be_written_is_told(hands, tmp_path, monkeypatch):
    copy_to(hands, tmp_path / "gone" / "copy.bay", monkeypatch)
    assert hands.window.notice.isVisible()
    assert hands.place.job.keeps


def test_a_job_file_made_of_a_plain_layout_leaves_the_work_in_the_layout(open_window, tmp_path, monkeypatch):
    path = tmp_path / "crew.json"
    path.write_text(write(small()), encoding="utf-8")
    hands = window_on(open_window, path)
    copy_to(hands, tmp_path / "crew.bay", monkeypatch)
    assert in_file(tmp_path / "crew.bay") == hands.layout
    assert hands.place.job.path == path


def test_a_vehicle_without_a_file_goes_on_in_the_one_it_is_given(open_window, tmp_path, monkeypatch):
    hands = open_window(small())
    copy_to(hands, tmp_path / "mine.bay", monkeypatch)
    assert hands.place.job.path == tmp_path / "mine.bay"
    assert hands.place.job.keeps


def test_choosing_none_saves_nothing(hands, tmp_path, monkeypatch):
    monkeypatch.setattr(files, "ask_save", lambda *_: "")
    hands.key("S", CTRL | SHIFT)
    assert [path.name for path in tmp_path.glob("*.bay")] == ["van.bay"]
