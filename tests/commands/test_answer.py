"""An answer that nobody takes, or that cannot be written, and a person who stops a command."""

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from tests.store.bench import asked, kept_job

from bayboard.__main__ import main
from bayboard.commands import keep_command


@pytest.fixture
def path(tmp_path):
    return kept_job(tmp_path / "van.bay")


def _run(path, words, out):
    command = [sys.executable, "-m", "bayboard", words[0], str(path), *words[1:]]
    return subprocess.run(command, stdout=out, stderr=subprocess.PIPE, text=True, check=False)


@pytest.mark.parametrize("words", [["revisions", "--json"], ["check"], ["keep", "--note", "x"]])
def test_who_has_read_enough_is_told_nothing(path, words):
    read, write = os.pipe()
    os.close(read)
    try:
        ran = _run(path, words, write)
    finally:
        os.close(write)
    assert (ran.returncode, ran.stderr) == (2, "")


@pytest.mark.parametrize("words", [["revisions", "--json"], ["keep", "--note", "x"]])
def test_an_answer_for_which_there_is_no_room_is_one_sentence(path, words):
    with Path("/dev/full").open("w") as full:
        ran = _run(path, words, full)
    assert (ran.returncode, ran.stderr.count("\n")) == (2, 1)
    assert ran.stderr.startswith("bayboard: the answer cannot be written")


def test_what_was_kept_stays_kept_though_the_answer_is_lost(path):
    with Path("/dev/full").open("w") as full:
        _run(path, ["keep", "--note", "x"], full)
    assert asked(path, "SELECT number, note FROM revision WHERE number > 3") == [(4, "x")]


def test_a_command_that_is_stopped_says_so(path, capsys, monkeypatch):
    monkeypatch.setattr(keep_command, "open_job", lambda path: signal.raise_signal(signal.SIGINT))
    assert main(["keep", str(path), "--note", ""]) == 130
    assert capsys.readouterr().err == "bayboard: stopped before the end.\n"
