"""Programs that are none of ours agree on what is in a job file.

The command-line tool of SQLite (sqlite.org/cli.html) and `sha256sum` (FIPS 180-4) where they are
installed; the same questions go to Python's own libraries everywhere.
"""

import hashlib
import shutil
import sqlite3
import subprocess
from contextlib import closing

import pytest
from tests.store.specimen import specimen

from bayboard.store.job_file import open_job_file


def by_library(path, sql):
    """Return SQLite's answer, asked through Python."""
    with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as conn:
        return "\n".join(str(row[0]) for row in conn.execute(sql))


def by_tool(path, sql):
    """Return SQLite's answer, asked through its command-line tool."""
    words = ["sqlite3", "-readonly", str(path), sql]
    return subprocess.run(words, capture_output=True, text=True, check=True).stdout.rstrip("\n")


def written_by_library(path, number, out):
    with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as conn:
        (text,) = conn.execute(
            "select cast(layout as blob) from revision where number = ?", (number,)
        ).fetchone()
    out.write_bytes(text)


def written_by_tool(path, number, out):
    by_tool(path, f"select writefile('{out}', layout) from revision where number = {number}")


def summed_by_library(out):
    return hashlib.sha256(out.read_bytes()).hexdigest()


def summed_by_tool(out):
    return subprocess.run(["sha256sum", str(out)], capture_output=True, text=True, check=True).stdout.split()[
        0
    ]


ASK = [by_library] + [by_tool] * bool(shutil.which("sqlite3"))
WRITE = [written_by_library] + [written_by_tool] * bool(shutil.which("sqlite3"))
SUM = [summed_by_library] + [summed_by_tool] * bool(shutil.which("sha256sum"))


@pytest.fixture(scope="module")
def job(tmp_path_factory):
    """A file with something of everything, and its revisions."""
    path = tmp_path_factory.mktemp("outside") / "job.bay"
    specimen(path)
    with open_job_file(path) as file:
        return path, file.revisions()


@pytest.mark.parametrize("ask", ASK)
def test_sqlite_finds_the_file_whole(job, ask):
    assert ask(job[0], "pragma integrity_check") == "ok"
    assert ask(job[0], "pragma foreign_key_check") == ""


@pytest.mark.parametrize("ask", ASK)
def test_the_file_says_what_it_is_and_keeps_no_log_of_its_own(job, ask):
    assert ask(job[0], "pragma application_id") == str(int.from_bytes(job[0].read_bytes()[68:72], "big"))
    assert ask(job[0], "pragma user_version") == "1"
    assert ask(job[0], "pragma journal_mode") == "delete"


@pytest.mark.parametrize("summed", SUM)
@pytest.mark.parametrize("write", WRITE)
def test_a_revision_taken_out_by_others_has_the_hash_that_is_listed(job, tmp_path, write, summed):
    path, revisions = job
    assert len(revisions) > 3
    for revision in revisions:
        out = tmp_path / f"{revision.number}.json"
        write(path, revision.number, out)
        assert summed(out) == revision.sha256


@pytest.mark.parametrize("ask", ASK)
def test_others_are_refused_when_they_change_what_was_kept(job, tmp_path, ask):
    copy = shutil.copyfile(job[0], tmp_path / "copy.bay")
    for change in ("update revision set note = 'other'", "delete from revision", "delete from print"):
        with pytest.raises((sqlite3.Error, subprocess.CalledProcessError)):
            ask(copy, change)
    assert copy.read_bytes() == job[0].read_bytes()
