"""What is to be said of a job file is said beside a command's answer, whichever command opens it."""

import json

import pytest
from tests.store.bench import asked, by_hand, child, kept_job, killed, names
from tests.store.test_job_file_crash import HALF_WRITTEN

from bayboard.__main__ import main
from bayboard.store import holder
from bayboard.store.opening import CUT_SHORT

READING = (
    ["check"],
    ["check", "--json"],
    ["revisions"],
    ["compare", "1", "draft"],
    ["convert", "out.json"],
    ["convert", "out.bay"],
)
WRITING = (
    ["keep", "--note", "x"],
    ["restore", "1"],
    ["print", "--paper", "a4", "--only", "cards", "--out", "o.pdf"],
)


@pytest.fixture
def path(tmp_path, monkeypatch):
    """A job file of three revisions in the folder that is worked in."""
    monkeypatch.chdir(tmp_path)
    return kept_job(tmp_path / "van.bay")


def _run(capsys, words):
    capsys.readouterr()
    code = main([words[0], "van.bay", *words[1:]])
    return code, capsys.readouterr()


@pytest.mark.parametrize("words", [*READING, *WRITING], ids=" ".join)
def test_a_draft_that_another_stands_in_for_is_told(path, capsys, words):
    by_hand(path, 'UPDATE draft SET layout = replace(layout, \'"name": "\', \'"name": "Z\')')
    code, told = _run(capsys, words)
    assert (code, told.err.count("\n")) == (0, 1)
    assert told.err.startswith("bayboard: van.bay: The draft is damaged; this is")


@pytest.mark.parametrize("words", [*READING, *WRITING], ids=" ".join)
def test_a_change_that_a_crash_cut_short_is_taken_back_and_told(path, tmp_path, capsys, words):
    killed(child(HALF_WRITTEN, path, wait=False))
    code, told = _run(capsys, words)
    assert (code, told.err) == (0, f"bayboard: van.bay: {CUT_SHORT}\n")
    assert "van.bay-journal" not in names(tmp_path)
    assert asked(path, "SELECT note FROM revision WHERE number = 4") == [("confirmed",)]


@pytest.mark.parametrize("words", [*READING, *WRITING], ids=" ".join)
def test_of_a_whole_file_nothing_is_told(path, capsys, words):
    code, told = _run(capsys, words)
    assert (code, told.err) == (0, "")


def test_the_answer_in_json_stays_json(path, capsys):
    by_hand(path, 'UPDATE draft SET layout = replace(layout, \'"name": "\', \'"name": "Z\')')
    _, told = _run(capsys, ["revisions", "--json"])
    assert len(json.loads(told.out)["revisions"]) == 3


def test_a_file_that_somebody_elsewhere_holds_is_not_taken_from_them(path, capsys, monkeypatch):
    killed(child(HALF_WRITTEN, path, wait=False))
    monkeypatch.setattr(holder, "host", lambda: "another computer")
    code, told = _run(capsys, ["check"])
    assert (code, told.err.count("\n")) == (2, 1)
    assert "it is open since" in told.err
    assert asked(path, "SELECT token IS NOT NULL FROM holder") == [(1,)]


@pytest.mark.parametrize("read", ["spare.bay", "spare.bay@1", "spare.json"])
def test_a_journal_of_a_file_that_is_gone_is_not_played_back_into_a_new_one(path, tmp_path, capsys, read):
    assert main(["convert", "van.bay", "spare.bay"]) == main(["convert", "van.bay", "spare.json"]) == 0
    killed(child(HALF_WRITTEN, path, wait=False))
    path.unlink()
    before = names(tmp_path)
    capsys.readouterr()
    assert main(["convert", read, "van.bay"]) == 2
    assert "van.bay-journal: this belongs to a job file that is gone" in capsys.readouterr().err
    assert names(tmp_path) == before


@pytest.mark.parametrize("read", ["spare.bay", "spare.json"])
def test_a_file_that_a_crash_left_is_set_aside_whole(path, tmp_path, capsys, read):
    assert main(["convert", "van.bay", "spare.bay"]) == main(["convert", "van.bay", "spare.json"]) == 0
    killed(child(HALF_WRITTEN, path, wait=False))
    capsys.readouterr()
    assert main(["convert", read, "van.bay"]) == 0
    assert "with its 4 revisions" in capsys.readouterr().out
    assert "van.bay-journal" not in names(tmp_path)
    assert main(["check", "van.bay"]) == 0
