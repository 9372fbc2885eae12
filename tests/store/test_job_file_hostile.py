"""A job file from elsewhere is hostile until it is read: it runs nothing, finds nothing and fills nothing."""

import sqlite3
import time
import zlib

import pytest
from tests.store.bench import asked, by_hand, kept_job, moved, names, refusal

from bayboard.store import states
from bayboard.store.job_file import Damaged, examine, open_job_file, rescue
from bayboard.store.sealed import hash_of, seal


@pytest.fixture
def path(tmp_path):
    return kept_job(tmp_path / "van.bay")


@pytest.mark.parametrize(
    "statement",
    [
        "CREATE TABLE more (a)",
        "CREATE VIEW more AS SELECT load_extension('evil')",
        "CREATE INDEX more ON revision (note)",
        "CREATE TRIGGER more AFTER UPDATE ON holder BEGIN DELETE FROM photo; END",
        "CREATE VIRTUAL TABLE more USING fts5(a)",
        "DROP TRIGGER revision_stays",
        "ALTER TABLE revision ADD COLUMN more TEXT",
        "ALTER TABLE meta RENAME TO other",
    ],
)
def test_a_table_trigger_or_index_more_or_less_is_refused(path, statement):
    by_hand(path, statement)
    before = path.read_bytes()
    assert isinstance(refusal(open_job_file, path), Damaged)
    assert "something that Bayboard does not write" in examine(path)[0]
    assert path.read_bytes() == before


def test_a_view_that_never_ends_in_the_place_of_a_table_is_not_asked(path):
    by_hand(
        path,
        "PRAGMA foreign_keys = OFF",
        "DROP TABLE revision",
        "CREATE VIEW revision AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n)"
        " SELECT i AS number, '' AS kept, '' AS note, NULL AS picture FROM n",
        "PRAGMA user_version = 2",
    )
    begun = time.monotonic()
    assert refusal(open_job_file, path).kept == ()
    assert time.monotonic() - begun < 5


def test_a_question_that_never_ends_is_ended(path):
    with open_job_file(path) as file:
        endless = "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT max(i) FROM n"
        assert isinstance(refusal(file._base.all, endless), Damaged)


def test_rows_without_end_do_not_fill_the_memory(path):
    with open_job_file(path) as file:
        many = (
            "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT zeroblob(1000000) FROM n"
        )
        assert isinstance(refusal(file._base.all, many), Damaged)


@pytest.mark.parametrize(
    "pragma, value",
    [
        ("trusted_schema", 0),
        ("cell_size_check", 1),
        ("mmap_size", 0),
        ("foreign_keys", 1),
        ("synchronous", 3),  # FULL and the folder: https://www.sqlite.org/pragma.html#pragma_synchronous
        ("query_only", 0),
    ],
)
def test_a_connection_is_held_to_what_the_file_needs(path, pragma, value):
    with open_job_file(path) as file:
        assert file._base.one(f"PRAGMA {pragma}") == (value,)
    with open_job_file(path, look=True) as file:
        assert file._base.one("PRAGMA query_only") == (1,)


def test_no_other_file_is_attached(path):
    with open_job_file(path) as file, pytest.raises(sqlite3.OperationalError, match="too many attached"):
        file._base.conn.execute("ATTACH ':memory:' AS other")


def test_a_step_that_unpacks_without_end_is_damaged(path):
    bomb = zlib.compress(bytes(30_000_000))
    told = (1, "", hash_of(bytes(30_000_000)))
    conn = sqlite3.connect(path)
    with conn:
        conn.execute(
            "UPDATE state SET sha256 = ?, seal = ?, layout = ? WHERE number = 1",
            (told[2], seal("state", *told), bomb),
        )
    conn.close()
    with open_job_file(path) as file:
        assert isinstance(refusal(file.state, 1), Damaged)


def test_a_layout_that_is_none_under_a_right_seal_gives_way_to_a_step(path):
    text = '{"bayboard": 1, "vehicle": {"name": ""}}'
    told = (None, "2026-11-25T15:43:41Z", hash_of(text.encode()), 4, None)
    conn = sqlite3.connect(path)
    with conn:
        conn.execute(
            "UPDATE draft SET parent = ?, changed = ?, sha256 = ?, at = ?, picture_sha256 = ?, seal = ?,"
            " layout = ?",
            (*told, seal("draft", *told), text),
        )
    conn.close()
    with open_job_file(path) as file:
        assert file.said != ()
        assert file.draft().layout == file.state(4)


def test_a_journal_that_names_another_file_is_refused_and_that_file_stays(path, tmp_path):
    # the end of such a journal, from the SQLite file format, section 3: name, its length, sum, magic
    victim = tmp_path / "precious.txt"
    victim.write_text("mine", encoding="utf-8")
    magic, name = bytes.fromhex("d9d505f920a163d7"), str(victim).encode()
    end = name + len(name).to_bytes(4, "big") + sum(name).to_bytes(4, "big") + magic
    path.with_name("van.bay-journal").write_bytes(magic + bytes(504) + bytes(4) + end)
    assert "beside it is not Bayboard's" in str(refusal(open_job_file, path))
    assert victim.read_text(encoding="utf-8") == "mine"


def test_a_log_beside_the_file_is_refused(path):
    path.with_name("van.bay-wal").write_bytes(b"x" * 100)
    assert "Move it away" in str(refusal(open_job_file, path))


def test_a_file_left_with_a_write_ahead_log_is_set_right_and_said(path, tmp_path):
    by_hand(path, "PRAGMA journal_mode = WAL")
    assert "a form of its own" in str(refusal(open_job_file, path, look=True))
    with open_job_file(path) as file:
        assert "it is set right" in file.said[0]
    assert asked(path, "PRAGMA journal_mode") == [("delete",)]
    with open_job_file(path, look=True) as file:
        assert file.said == ()
    assert names(tmp_path) == ["van.bay"]


@pytest.mark.parametrize("at", [-1, 99, 2**63 - 1])
def test_a_draft_that_stands_at_no_step_has_no_steps_and_can_be_worked_on(path, at):
    (row,) = asked(path, "SELECT parent, changed, sha256, ?, picture_sha256 FROM draft".replace("?", str(at)))
    by_hand(path, f"UPDATE draft SET at = {at}, seal = '{seal('draft', *row)}'")
    with open_job_file(path) as file:
        assert (file.draft().states, file.draft().at) == ((), 0)
        file.write(moved(7), upto=0, add=[("", moved(6)), ("Move", moved(7))], at=2)
        assert [mark.number for mark in file.draft().states] == [1, 2]


def test_a_number_at_the_end_of_all_numbers_is_one_sentence(path):
    conn = sqlite3.connect(path)
    number = 2**63 - 1
    sha, layout = conn.execute("SELECT sha256, layout FROM revision WHERE number = 3").fetchone()
    told = (number, None, "2026-11-25T15:43:41Z", "last", sha, None)
    with conn:
        conn.execute(
            "INSERT INTO revision VALUES (?, ?, ?, ?, ?, ?, ?, NULL, ?)",
            (*told, seal("revision", *told), layout),
        )
    conn.close()
    with open_job_file(path) as file:
        refusal(file.keep, "one more")
        assert len(file.check_whole()) > 0


def test_a_hostile_file_is_rescued_by_its_hashes_alone(path, tmp_path):
    by_hand(path, "CREATE TRIGGER more AFTER UPDATE ON holder BEGIN DELETE FROM photo; END")
    assert rescue(path, tmp_path / "whole.bay")[0].startswith("Rescued: the draft, 3 revisions")
    with open_job_file(tmp_path / "whole.bay") as file:
        assert file.check_whole() == ()


def test_unpacking_takes_what_packing_made():
    assert states.unpacked(states.packed(b"a layout" * 100)) == b"a layout" * 100
    assert states.unpacked(b"no") is None
    assert states.unpacked(states.packed(b"a layout" * 100)[:-3]) is None
