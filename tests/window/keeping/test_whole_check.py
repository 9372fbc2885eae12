"""The whole check runs beside the window, is noted in the file, and tells what is not whole."""

import pytest
from PySide6.QtTest import QTest
from tests.window.keeping.bench import answer, answers, job_file, window_on

from bayboard.job.job import open_job
from bayboard.window.keeping import door, whole_check


@pytest.fixture
def van(tmp_path):
    return job_file(tmp_path / "van.bay")


def due(path):
    """Make the check of a file due, as on another day."""
    import sqlite3

    with sqlite3.connect(path) as file:
        file.execute("UPDATE holder SET checked = '2020-01-01' WHERE one = 1")
    file.close()


def checked(hands, qtbot):
    """Let the check run to its end."""
    with qtbot.waitSignal(hands.window.files.check.ended, timeout=10_000):
        hands.window.files.check.begin()


def test_a_whole_file_is_noted_as_checked_today(open_window, van, qtbot):
    due(van)
    hands = window_on(open_window, van)
    assert hands.place.job.file.check_due
    checked(hands, qtbot)
    assert not hands.place.job.file.check_due
    assert answers(hands) == ()


def test_it_begins_by_itself_when_it_is_due(open_window, van, qtbot, monkeypatch):
    due(van)
    monkeypatch.setattr(whole_check, "WAIT", 1)
    hands = open_window(first_start=True)
    hands.window.files.check._timer.setInterval(1)
    with qtbot.waitSignal(hands.window.files.check.ended, timeout=10_000):
        hands.window.files.open_path(van)
    assert not hands.place.job.file.check_due


def test_what_is_not_whole_is_told_with_what_to_do(open_window, van, qtbot, monkeypatch):
    hands = window_on(open_window, van)
    monkeypatch.setattr(hands.place.job, "examine", lambda: ("Revision 1 is damaged.", "Photo 2 is damaged."))
    checked(hands, qtbot)
    text = hands.window.notice.text
    assert text.startswith("van.bay is not whole: Revision 1 is damaged. (and 1 more like it)")
    assert "van rescued.bay" in text
    answer(hands, door.SAVE_READABLE)
    assert hands.place.job.path == van.with_name("van rescued.bay")


def test_a_check_that_breaks_is_told_and_harmless(open_window, van, qtbot, monkeypatch):
    def broken():
        raise OSError("the stick is gone")

    hands = window_on(open_window, van)
    monkeypatch.setattr(hands.place.job, "examine", broken)
    checked(hands, qtbot)
    assert "could not be read whole" in hands.window.notice.text


def test_what_is_found_of_another_vehicle_is_dropped(open_window, van, tmp_path, monkeypatch):
    hands = window_on(open_window, van)
    monkeypatch.setattr(hands.place.job, "examine", lambda: ("Revision 1 is damaged.",))
    hands.window.files.check.begin()
    other = job_file(tmp_path / "other.bay", vehicle={"name": "Other"})
    hands.window.files.open_path(other)
    QTest.qWait(150)
    assert answers(hands) == ()
    assert not hands.window.files.keeper.checked


def test_a_file_that_is_busy_with_the_check_is_no_trouble(open_window, van):
    from bayboard.edits.move_gear import MoveGear
    from bayboard.model.refused import Refused

    hands = window_on(open_window, van)
    keeper, job = hands.window.files.keeper, hands.place.job
    keeper.checked = True
    flush = job.flush

    def busy():
        raise Refused("van.bay", "another program is using this file", "Wait")

    job.flush = busy
    hands.place.do(MoveGear(("A",), 5.0, 0.0))
    assert not keeper.write()
    assert keeper.trouble is None
    job.flush = flush
    QTest.qWait(400)
    assert not job.unwritten


def test_the_check_reads_the_file_whole(van):
    job = open_job(van)
    try:
        assert job.examine() == ()
    finally:
        job.close()
