"""A full disk, a folder that takes nothing, a file that is gone: one sentence, nothing lost, and on again."""

import shutil
import sqlite3

import pytest
from tests.store.bench import JPEG, PLAIN, asked, kept_job, moved, names, refusal, write_moves

from bayboard.store import base
from bayboard.store.job_file import Changed, examine, make_job_file, open_job_file


@pytest.fixture
def file(tmp_path):
    with open_job_file(kept_job(tmp_path / "van.bay")) as opened:
        yield opened


def pages(file, most=None):
    """Say how many pages the file may have at most, as a full disk does."""
    (count,) = file._base.one("PRAGMA page_count")
    file._base.all(f"PRAGMA max_page_count = {most or count}")


def test_a_full_disk_leaves_the_last_good_state_and_a_sentence(file):
    pages(file)
    said = refusal(file.add_photo, JPEG * 200)
    assert str(said).endswith("the disk is full. Your work is still here; free some room and keep again.")
    assert file.draft().layout == moved(3)
    assert file.photos() == ()
    assert file.check_whole() == ()


def test_after_room_was_made_the_same_file_is_written_again(file):
    pages(file)
    refusal(file.add_photo, JPEG * 200)
    pages(file, 10_000)
    file.add_photo(JPEG * 200)
    write_moves(file, 1, 4)
    file.close()
    with open_job_file(file.path) as again:
        assert (again.draft().layout, len(again.photos())) == (moved(4), 1)


def test_a_write_that_fails_at_its_end_may_be_made_again(file, monkeypatch):
    done = file._base.do

    def failing(statement, *values):
        if statement == "COMMIT":
            raise file._base.said(full())
        done(statement, *values)

    monkeypatch.setattr(file._base, "do", failing)
    refusal(file.keep, "fails")
    monkeypatch.undo()
    assert file.keep("made again").number == 4


def test_a_write_that_failed_only_in_being_confirmed_is_no_change_by_another(file, monkeypatch):
    done = file._base.do

    def unconfirmed(statement, *values):
        done(statement, *values)
        if statement == "COMMIT":
            raise file._base.said(full())

    monkeypatch.setattr(file._base, "do", unconfirmed)
    refusal(file.set_meta, "view", 1)
    monkeypatch.undo()
    file.set_meta("view", 2)
    assert file.meta("view") == 2


def full():
    """Return what SQLite raises on a full disk."""
    error = sqlite3.OperationalError("database or disk is full")
    error.sqlite_errorcode = sqlite3.SQLITE_FULL
    return error


@pytest.mark.parametrize(
    "code, says",
    [
        (sqlite3.SQLITE_IOERR_FSYNC, "the disk does not take it"),
        (sqlite3.SQLITE_READONLY, "this file may only be read"),
        (sqlite3.SQLITE_READONLY_DBMOVED, "this file is no longer there"),
        (sqlite3.SQLITE_CANTOPEN, "nothing may be written in that folder"),
        (sqlite3.SQLITE_BUSY, "another program is using this file"),
        (sqlite3.SQLITE_CORRUPT, "this job file is damaged"),
        (sqlite3.SQLITE_AUTH, "this job file cannot be used (auth)"),
    ],
)
def test_every_trouble_has_its_sentence(file, code, says):
    error = sqlite3.OperationalError("")
    error.sqlite_errorcode, error.sqlite_errorname = code, "SQLITE_AUTH"
    assert str(file._base.said(error)).startswith(f"{file.path}: {says}. ")


def test_a_program_that_reads_for_long_delays_a_write_and_then_it_is_refused(file):
    file._base.conn.execute("PRAGMA busy_timeout = 50")
    reader = sqlite3.connect(file.path, isolation_level=None)
    reader.execute("BEGIN")
    reader.execute("SELECT * FROM draft").fetchall()
    assert "another program is using this file" in str(refusal(file.keep, "waits"))
    reader.execute("COMMIT")
    reader.close()
    assert file.keep("goes on").number == 4


def test_a_file_that_was_moved_away_is_not_written(file, tmp_path):
    moved_to = file.path.rename(tmp_path / "elsewhere.bay")
    assert isinstance(refusal(file.keep, "lost"), Changed)
    assert names(tmp_path) == ["elsewhere.bay"]
    moved_to.rename(file.path)
    assert file.keep("back again").number == 4


def test_a_file_that_another_took_the_place_of_is_not_written(file, tmp_path):
    shutil.copy(file.path, tmp_path / "older.bay")
    (tmp_path / "older.bay").replace(file.path)
    before = file.path.read_bytes()
    assert "another file has taken this one's place" in str(refusal(file.keep, "over it"))
    file.close()
    assert file.path.read_bytes() == before


def test_an_older_copy_written_over_the_file_is_noticed(file):
    older = file.path.read_bytes()
    write_moves(file, 1, 4)
    with file.path.open("r+b") as same_file:
        same_file.write(older)
        same_file.truncate()
    assert isinstance(refusal(file.keep, "over it"), Changed)


def test_a_changed_folder_of_the_program_changes_nothing(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with make_job_file("van.bay", PLAIN) as file:
        (tmp_path / "sub").mkdir()
        monkeypatch.chdir(tmp_path / "sub")
        assert file.keep("still found").number == 1


def test_a_file_that_may_only_be_read_can_be_looked_at(tmp_path, monkeypatch):
    path = kept_job(tmp_path / "van.bay")
    # what SQLite does with a file that it may not write: it opens it to be read, whoever the user is
    monkeypatch.setattr(base, "uri_of", lambda path, look: path.as_uri() + "?mode=ro")
    assert "Look at it, or work on a copy elsewhere" in str(refusal(open_job_file, path))
    with open_job_file(path, look=True) as file:
        assert file.draft().layout == moved(3)


def test_a_check_beside_the_work_sees_what_is_there(file):
    write_moves(file, 1, 4)
    assert examine(file.path) == ()
    file.was_checked()
    assert asked(file.path, "SELECT length(checked) FROM holder") == [(10,)]
