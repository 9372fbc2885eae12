"""A full disk, a folder that closes, a file that is moved: the last good state stays, and it is said."""

import contextlib
import os
import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
from tests.store.plain_file import look
from tests.store.pushing import PUSHES, large
from tests.store.specimen import specimen

from bayboard.model.refused import Refused
from bayboard.store.job_file import Changed, copy_job_file, make_job_file, open_job_file

CHILD = Path(__file__).with_name("hard_times.py")


@pytest.fixture
def connections(monkeypatch):
    """Return the SQLite connections that are made from now on."""
    made, connect = [], sqlite3.connect

    def kept(*given, **named):
        made.append(connect(*given, **named))
        return made[-1]

    monkeypatch.setattr(sqlite3, "connect", kept)
    return made


@pytest.fixture
def job(tmp_path):
    """Return the path of a file that holds something of everything, and no page that is free."""
    path = tmp_path / "job.bay"
    specimen(path, rounds=1)
    with contextlib.closing(sqlite3.connect(path)) as conn:
        conn.execute("vacuum")
    return path


@pytest.mark.parametrize("push", PUSHES.values(), ids=PUSHES)
def test_on_a_full_disk_the_last_good_state_stays_and_work_goes_on_when_there_is_room(push, job, connections):
    with open_job_file(job) as file:
        conn, before = connections[-1], look(file)
        (pages,) = conn.execute("pragma page_count").fetchone()
        conn.execute(f"pragma max_page_count = {pages}")
        with pytest.raises(Refused, match="the disk is full"):
            push(file)
        assert look(file) == before
        conn.execute("pragma max_page_count = 1000000")
        push(file)
        after = look(file)
        assert after != before
    with open_job_file(job) as again:
        assert look(again) == after
        assert again.check_whole() == ()


def child(*words):
    """Return the lines of a child that lived through hard times."""
    done = subprocess.run(
        [sys.executable, str(CHILD), *map(str, words)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.splitlines()


def test_where_files_may_not_grow_the_last_good_state_stays(tmp_path):
    said = child("room", tmp_path / "job.bay", 12, 1)
    assert said
    assert all(line.endswith(".") for line in said)


def test_in_a_folder_that_closes_nothing_is_lost():
    said = child("folder")
    assert len(said) == len(PUSHES)
    assert all("nothing may be written in that folder" in line for line in said)


def test_a_file_that_was_moved_away_is_not_written_and_work_goes_on_when_it_is_back(job):
    with open_job_file(job) as file:
        before = look(file)
        away = job.rename(job.with_name("away.bay"))
        with pytest.raises(Changed, match="no longer there"):
            PUSHES["keep"](file)
        assert not job.exists()
        away.rename(job)
        assert look(file) == before
        PUSHES["keep"](file)


def test_a_file_that_took_the_others_place_is_not_written_over(job, tmp_path):
    other = tmp_path / "other.bay"
    specimen(other, seed=9, rounds=1)
    bytes_of_other = other.read_bytes()
    with open_job_file(job) as file:
        other.replace(job)
        with pytest.raises(Changed, match="taken this one's place"):
            PUSHES["edit"](file)
    assert job.read_bytes() == bytes_of_other


def test_a_file_that_was_written_over_in_place_is_not_written_again(job, tmp_path):
    other = tmp_path / "other.bay"
    specimen(other, seed=9, rounds=1)
    with open_job_file(job) as file:
        job.write_bytes(other.read_bytes())
        with pytest.raises(Refused):
            PUSHES["keep"](file)
    assert job.read_bytes() == other.read_bytes()


def test_a_file_that_was_emptied_is_not_filled_behind_anybodys_back(job):
    with open_job_file(job) as file:
        os.truncate(job, 0)
        with pytest.raises(Refused):
            PUSHES["edit"](file)
    assert job.stat().st_size == 0


def test_a_file_taken_over_by_another_window_is_not_written_by_the_first(job):
    with open_job_file(job) as first:
        with open_job_file(job, take=True) as second:
            PUSHES["keep"](second)
            with pytest.raises(Changed):
                PUSHES["keep"](first)
            kept = look(second)["revisions"]
        with open_job_file(job, look=True) as again:
            assert look(again)["revisions"] == kept


def test_while_another_program_locks_the_file_it_says_so_and_goes_on_afterwards(job, monkeypatch):
    monkeypatch.setattr("bayboard.store.base._PATIENCE", 0.1)
    with open_job_file(job) as file:
        before = look(file)
        other = sqlite3.connect(job, isolation_level=None)
        other.execute("begin exclusive")
        with pytest.raises(Refused, match="another program is using this file"):
            PUSHES["keep"](file)
        other.execute("rollback")
        other.close()
        assert look(file) == before
        PUSHES["keep"](file)


def test_a_new_file_or_a_copy_that_finds_no_room_leaves_nothing_behind(tmp_path, job, monkeypatch):
    out = tmp_path / "out.bay"
    out.write_bytes(b"what was there")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(Refused):
        make_job_file(tmp_path / "new.bay", large())
    with pytest.raises(Refused):
        copy_job_file(job, out)
    assert out.read_bytes() == b"what was there"
    assert {path.name for path in tmp_path.iterdir()} == {"job.bay", "out.bay"}
