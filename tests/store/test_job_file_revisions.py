"""Revisions: kept for good, byte for byte, also against other programs."""

import hashlib
import sqlite3
import subprocess

import pytest
from tests.store.bench import PLAIN, PNG, asked, by_hand, kept_job, moved, refusal, write_moves

from bayboard.model.write import write
from bayboard.store.job_file import make_job_file, open_job_file


@pytest.fixture
def file(tmp_path):
    with open_job_file(kept_job(tmp_path / "van.bay")) as opened:
        yield opened


def test_a_revision_has_number_parent_note_time_and_hash(file):
    revision = file.revisions()[1]
    assert (revision.number, revision.parent, revision.note) == (2, 1, "note 2")
    assert revision.kept.endswith("Z")
    assert revision.sha256 == hashlib.sha256(write(moved(2)).encode("utf-8")).hexdigest()


def test_a_revision_comes_back_byte_for_byte_with_its_picture(file):
    assert file.revision_text(2) == write(moved(2))
    assert file.revision(2) == moved(2)
    assert file.picture(2) == PNG + b"\2"


def test_a_revision_without_a_picture_has_none(tmp_path):
    with make_job_file(tmp_path / "bare.bay", PLAIN) as file:
        file.keep("bare")
        assert file.picture(1) is None


def test_a_note_is_one_line_whatever_was_typed(file):
    assert file.keep(" left\nsocket \t moved\x00 ").note == "left socket moved"


def test_a_number_that_was_never_kept_is_refused(file):
    assert str(refusal(file.revision, 9)).endswith("there is no revision 9. The newest is 3.")


def test_restoring_keeps_the_present_draft_first_in_one_step(file):
    write_moves(file, 1, 4)
    kept = file.restore(1, moved(1), "Go back to revision 1", keep_first="before going back", upto=5)
    draft = file.draft()
    assert (kept.number, kept.parent, kept.note) == (4, 3, "before going back")
    assert file.revision(4) == moved(4)
    assert (draft.layout, draft.parent, draft.states[-1].label) == (moved(1), 1, "Go back to revision 1")
    assert draft.at == draft.states[-1].number == 6


def test_restoring_may_keep_nothing(file):
    assert file.restore(2, moved(2), "Go back", keep_first=None, upto=4) is None
    assert len(file.revisions()) == 3
    assert file.keep("on from 2").parent == 2


def test_restoring_a_revision_that_is_not_there_changes_nothing(file):
    refusal(file.restore, 8, moved(8), "Go back", keep_first="no", upto=4)
    assert len(file.revisions()) == 3
    assert file.draft().layout == moved(3)


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE revision SET note = 'other' WHERE number = 2",
        "UPDATE OR REPLACE revision SET number = 9 WHERE number = 2",
        "DELETE FROM revision WHERE number = 3",
        "DELETE FROM revision",
        "INSERT OR REPLACE INTO revision SELECT * FROM revision WHERE number = 2",
        "REPLACE INTO revision SELECT 2, NULL, kept, 'x', sha256, NULL, seal, NULL, layout FROM revision",
        "UPDATE print SET pages = 9",
        "DELETE FROM print",
    ],
)
def test_no_program_changes_what_was_kept_or_logged(tmp_path, statement):
    path = kept_job(tmp_path / "van.bay")
    by_hand(path, "INSERT INTO print VALUES (1, '', '', '', '', '', '', 1, '')")
    with pytest.raises(sqlite3.IntegrityError, match="stay as they were"):
        by_hand(path, statement)


def test_the_sqlite3_command_reads_the_file_and_what_it_writes_has_the_kept_hash(file, tmp_path):
    out = tmp_path / "out.json"
    file.close()
    question = (
        f"PRAGMA integrity_check; SELECT writefile('{out}', layout) > 0 FROM revision WHERE number = 3;"
    )
    said = subprocess.run(
        ["sqlite3", "-readonly", str(file.path), question], capture_output=True, text=True, check=True
    ).stdout
    assert said.split() == ["ok", "1"]
    summed = subprocess.run(["sha256sum", str(out)], capture_output=True, text=True, check=True).stdout
    ((sha,),) = asked(file.path, "SELECT sha256 FROM revision WHERE number = 3")
    assert summed.split()[0] == sha
    assert out.read_text("utf-8") == write(moved(3))
