"""Rows read off the pages: the same as SQLite reads, and still there when no way leads to them."""

import random
import sqlite3

import pytest
from tests.store.bench import JPEG, asked, by_hand, kept_job, moved, refusal

from bayboard.store.job_file import Damaged, PrintLine, open_job_file, rescue
from bayboard.store.leaves import Leaves
from bayboard.store.schema import PAGE


@pytest.fixture
def path(tmp_path):
    return kept_job(tmp_path / "van.bay", revisions=40, photos=[JPEG * 100])


def root_of(path, table):
    ((page,),) = asked(path, f"SELECT rootpage FROM sqlite_master WHERE name = '{table}'")
    return page


def wiped(path, page):
    """Fill a page with zeros, as a bad sector reads."""
    with path.open("r+b") as file:
        file.seek((page - 1) * PAGE)
        file.write(bytes(PAGE))


def test_sqlite_reads_the_same_rows(tmp_path):
    path = tmp_path / "plain.db"
    rng = random.Random(7)
    by_hand(path, f"PRAGMA page_size = {PAGE}", "CREATE TABLE t (a, b, c)")
    conn = sqlite3.connect(path)
    rows = [
        (
            rng.choice([None, 0, 1, -1, 127, -128, 40_000, -(2**40), 2**63 - 1]),
            "x" * size,
            bytes([7]) * (size // 3),
        )
        for size in (0, 1, 100, PAGE - 40, PAGE - 30, PAGE, PAGE * 3, 70_000)
    ]
    with conn:
        conn.executemany("INSERT INTO t VALUES (?, ?, ?)", rows)
    there = [(n, list(row)) for n, *row in conn.execute("SELECT rowid, a, b, c FROM t")]
    conn.close()
    with Leaves(path) as leaves:
        assert sorted(row for row in leaves.rows(3) if row[0] <= len(rows)) == there


def test_noise_is_no_row_and_ends(tmp_path):
    path = tmp_path / "noise"
    rng = random.Random(8)
    path.write_bytes(b"".join(b"\x0d" + rng.randbytes(PAGE - 1) for _ in range(60)))
    with Leaves(path) as leaves:
        for columns in range(1, 10):
            assert all(len(row[1]) == columns for row in leaves.rows(columns))


@pytest.mark.parametrize("table", ["revision", "sqlite_autoindex_photo_1", "photo", "state", "meta", "print"])
def test_a_wiped_page_costs_only_its_own_rows(path, tmp_path, table):
    wiped(path, root_of(path, table))
    said = rescue(path, tmp_path / "out.bay")
    with open_job_file(tmp_path / "out.bay") as file:
        assert file.check_whole() == ()
        assert file.draft().layout == moved(40), said
        assert [file.revision(n) for n in range(1, 41)] == [moved(n) for n in range(1, 41)]
        if table != "photo":
            assert [file.photo(name) for name in file.photos()] == [JPEG * 100]


def test_a_wiped_first_page_costs_nothing_that_has_its_hash(path, tmp_path):
    wiped(path, 1)
    refusal(open_job_file, path)
    assert "40 revisions" in rescue(path, tmp_path / "out.bay")[0]
    with open_job_file(tmp_path / "out.bay") as file:
        assert file.draft().layout == moved(40)
        assert file.photo(file.photos()[0]) == JPEG * 100


def test_prints_are_read_off_the_pages_too(path, tmp_path):
    line = PrintLine(revision="1", paper="a4", face="front", sheets=("drill",), words="oak tin", pages=1)
    with open_job_file(path) as file:
        for _ in range(60):
            file.log_print(line, moved(40))
        lines = file.prints()
    wiped(path, root_of(path, "print"))
    rescue(path, tmp_path / "out.bay")
    with open_job_file(tmp_path / "out.bay") as file:
        assert set(file.prints()) <= set(lines)
        assert len(file.prints()) > 20


def test_of_noise_nothing_is_rescued(path, tmp_path):
    path.write_bytes(random.Random(9).randbytes(100_000))
    assert isinstance(refusal(rescue, path, tmp_path / "out.bay"), Damaged)
