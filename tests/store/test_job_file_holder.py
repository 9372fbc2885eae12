"""Who holds a job file: one program at a time works in it, the others may look."""

import datetime
import os
import platform
import socket

import pytest
from tests.store.bench import PLAIN, asked, by_hand, child, kept_job, killed, moved, refusal, write_moves

from bayboard.store import holder
from bayboard.store.job_file import Changed, Held, make_job_file, open_job_file

HOLDING = """
import sys
from pathlib import Path
from bayboard.store.job_file import open_job_file
file = open_job_file(Path(sys.argv[1]))
print("held", flush=True)
sys.stdin.read()
file.close()
"""


@pytest.fixture
def path(tmp_path):
    return kept_job(tmp_path / "van.bay")


@pytest.fixture
def other(path):
    """Another program that has the file open until it is told to close it."""
    running = child(HOLDING, path, wait=False)
    yield running
    killed(running)


def test_the_second_opener_is_told_who_holds_it_and_since_when(path, other):
    held = refusal(open_job_file, path)
    assert isinstance(held, Held)
    assert held.holder.host == platform.node() == socket.gethostname()
    since = datetime.datetime.fromisoformat(held.holder.since).astimezone().strftime("%H:%M")
    assert str(held).endswith(
        f"it is open since {since} on {held.holder.host} by {held.holder.name}."
        " Look at it, or close it there."
    )


def test_the_second_opener_may_look(path, other):
    with open_job_file(path, look=True) as looked:
        assert looked.draft().layout == moved(3)


def test_a_file_that_was_closed_is_held_by_nobody(path, other):
    other.communicate()
    assert asked(path, "SELECT token, user, host, pid, since FROM holder") == [(None,) * 5]
    open_job_file(path).close()


def test_a_file_of_a_program_that_was_killed_is_taken_over_without_a_word(path, other):
    killed(other)
    with open_job_file(path) as file:
        assert file.said == ()
        assert file.check_due
        file.keep("after the crash")
        assert not file.check_due


def test_a_program_that_ended_holds_nothing_though_its_parent_has_not_asked_after_it(path, other):
    other.kill()
    other.stdout.read()  # its end closes the pipe; nobody has waited for it yet
    with open_job_file(path) as file:
        assert file.said == ()


def test_a_number_that_another_program_has_by_now_is_not_mistaken_for_the_holder(path):
    by_hand(
        path,
        f"UPDATE holder SET token = 't', user = 'u', host = '{platform.node()}', pid = {os.getppid()},"
        " started = 1.0, since = '2026-11-25T10:00:00Z'",
    )
    open_job_file(path).close()


def test_a_file_held_on_another_computer_is_taken_only_on_purpose(path):
    by_hand(
        path,
        "UPDATE holder SET token = 't', user = 'ann', host = 'SHOP-PC', pid = 1, started = 1.0,"
        " since = '2026-01-02T10:00:00Z'",
    )
    assert "2026-01-02" in str(refusal(open_job_file, path))
    with open_job_file(path, take=True) as file:
        file.keep("taken over")


def test_one_program_does_not_open_a_file_twice(path):
    with open_job_file(path):
        assert isinstance(refusal(open_job_file, path), Held)
    open_job_file(path).close()


def test_whose_file_was_taken_over_notices_before_anything_is_written(path):
    first = open_job_file(path)
    with open_job_file(path, take=True) as second:
        write_moves(second, 1, 4)
        assert isinstance(refusal(first.keep, "over it"), Changed)
        first.close()
        second.keep("mine")
    with open_job_file(path) as file:
        assert (file.draft().layout, file.revisions()[-1].note) == (moved(4), "mine")


def test_a_change_by_any_other_program_is_noticed(path):
    with open_job_file(path) as file:
        by_hand(path, "UPDATE holder SET writes = writes + 1")
        assert "changed" in str(refusal(file.keep, "over it"))


def test_names_from_the_file_are_shown_short_and_plain(path):
    by_hand(
        path,
        "UPDATE holder SET token = 't', user = 'a' || char(10, 27) || hex(zeroblob(500)),"
        " host = x'00' || 'PC',"
        " pid = -5, started = 1e300, since = 'yesterday'",
    )
    said = str(refusal(open_job_file, path))
    assert said.isprintable()
    assert len(said) < 200 + len(str(path))


def test_a_user_without_a_name_is_somebody(tmp_path, monkeypatch):
    def nobody():
        raise KeyError("uid")

    monkeypatch.setattr(holder.getpass, "getuser", nobody)
    with make_job_file(tmp_path / "van.bay", PLAIN):
        assert refusal(open_job_file, tmp_path / "van.bay").holder.name == "somebody"
