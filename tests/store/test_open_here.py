"""A file that is open here is never opened and closed beside SQLite's back, for that lets its locks go."""

import os
import sqlite3
import threading

import pytest
from tests.store.bench import PLAIN, child, kept_job, moved, names, refusal

from bayboard.store.job_file import is_job_file, open_job_file
from bayboard.store.open_here import is_open_here

WRITING = """
import sqlite3, sys
conn = sqlite3.connect(sys.argv[1], isolation_level=None, timeout=0)
try:
    conn.execute("BEGIN IMMEDIATE")
    sys.exit(0)
except sqlite3.OperationalError:
    sys.exit(7)
"""


@pytest.fixture
def path(tmp_path):
    return kept_job(tmp_path / "van.bay")


def test_a_file_is_known_to_be_open_until_the_last_is_closed(path):
    first = open_job_file(path)
    second = open_job_file(path, look=True)
    assert is_open_here(path)
    first.close()
    assert is_open_here(path)
    second.close()
    assert not is_open_here(path)


def test_a_file_is_known_by_any_name(path, tmp_path):
    (tmp_path / "link.bay").symlink_to(path)
    with open_job_file(path):
        assert is_open_here(tmp_path / "link.bay")
    assert not is_open_here(tmp_path / "none.bay")


def test_a_file_that_was_refused_is_not_open(path):
    with open_job_file(path):
        refusal(open_job_file, path)
    assert not is_open_here(path)


def test_asking_about_an_open_file_does_not_let_its_lock_go(path):
    with open_job_file(path) as file, file._writing():
        assert is_job_file(path)
        open_job_file(path, look=True).close()
        assert child(WRITING, path).returncode == 7


@pytest.mark.parametrize("name", ["van.bay", "van.bay-journal"])
def test_a_pipe_in_the_place_of_a_file_is_not_waited_for(tmp_path, name):
    if name != "van.bay":
        kept_job(tmp_path / "van.bay")
    os.mkfifo(tmp_path / name)
    said = []
    asking = threading.Thread(target=lambda: said.append(refusal(open_job_file, tmp_path / "van.bay")))
    asking.start()
    asking.join(5)
    assert not asking.is_alive()
    assert len(said) == 1


def test_a_file_is_looked_at_while_another_program_is_in_the_middle_of_a_change(path, tmp_path):
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    other.execute("UPDATE holder SET writes = 99")
    assert "van.bay-journal" in names(tmp_path)
    with open_job_file(path, look=True) as looked:
        assert looked.said == ()
        assert looked.draft().layout == moved(3) != PLAIN
    other.execute("ROLLBACK")
    other.close()
