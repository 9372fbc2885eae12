"""A program that is killed loses nothing that was confirmed, and what it had half written is taken back."""

import pytest
from tests.store.bench import asked, child, kept_job, killed, moved, names, refusal

from bayboard.store.job_file import Damaged, examine, open_job_file, rescue
from bayboard.store.opening import CUT_SHORT

# Writes into an open transaction, and lets SQLite's small memory spill it into the file, before it is killed.
HALF_WRITTEN = """
import sys
from pathlib import Path
from tests.store.bench import moved, write_moves
from bayboard.store.job_file import open_job_file
file = open_job_file(Path(sys.argv[1]))
write_moves(file, 1, 4)
file.keep("confirmed")
file._base.conn.execute("PRAGMA cache_size = 2")
with file._writing():
    for number in range(200):
        file._keep(f"half written {number}", None)
    print("half written", flush=True)
    sys.stdin.read()
"""


@pytest.fixture
def path(tmp_path):
    """A file whose last program was killed in the middle of a change."""
    made = kept_job(tmp_path / "van.bay")
    killed(child(HALF_WRITTEN, made, wait=False))
    assert names(tmp_path) == ["van.bay", "van.bay-journal"]
    return made


def test_what_was_half_written_is_taken_back_and_said(path, tmp_path):
    with open_job_file(path) as file:
        assert file.said == (CUT_SHORT,)
        assert file.draft().layout == moved(4)
        assert [revision.note for revision in file.revisions()][-1] == "confirmed"
        assert file.check_whole() == ()
    assert names(tmp_path) == ["van.bay"]


def test_it_is_said_once(path):
    open_job_file(path).close()
    with open_job_file(path) as file:
        assert file.said == ()


def test_the_file_is_checked_whole_before_the_first_write_however_often_it_is_opened(path):
    open_job_file(path).close()
    with open_job_file(path) as file:
        assert file.check_due
        file.keep("after the crash")
        assert not file.check_due
    assert asked(path, "SELECT checked IS NULL FROM holder") == [(0,)]


def test_a_file_found_damaged_before_the_first_write_is_not_written(path):
    open_job_file(path).close()
    content = path.read_bytes()
    at = content.index(b"note 1")
    path.write_bytes(content[:at] + b"N" + content[at + 1 :])
    with open_job_file(path) as file:
        for _ in range(2):
            damaged = refusal(file.keep, "over it")
            assert isinstance(damaged, Damaged)
            assert "revision 1 is damaged" in str(damaged)
        assert file.draft().layout == moved(4)


def test_who_only_looks_is_told_that_it_must_be_opened_first(path):
    before = path.read_bytes()
    assert "the last change in it was cut short" in str(refusal(open_job_file, path, look=True))
    assert "the last change in it was cut short" in examine(path)[0]
    assert path.read_bytes() == before


def test_a_rescue_takes_the_change_back_on_its_copy_only(path, tmp_path):
    before = path.read_bytes()
    rescue(path, tmp_path / "whole.bay")
    with open_job_file(tmp_path / "whole.bay") as file:
        assert len(file.revisions()) == 4
        assert file.check_whole() == ()
    assert path.read_bytes() == before
    assert names(tmp_path) == ["van.bay", "van.bay-journal", "whole.bay"]


def test_a_journal_that_was_not_begun_properly_is_nothing(tmp_path):
    made = kept_job(tmp_path / "calm.bay")
    made.with_name("calm.bay-journal").write_bytes(bytes(512))
    with open_job_file(made) as file:
        assert file.said == ()
        file.keep("goes on")
    assert names(tmp_path) == ["calm.bay"]
