"""A writer that is killed leaves all that it had confirmed; the 500 of `tests/long/kills.py` in small."""

import struct
from random import Random

import pytest
from tests.store.killing import MAGIC, Victims, as_text, journal, journal_of, table, tear, understood

KILLS = 7


@pytest.fixture(scope="module")
def deaths(tmp_path_factory):
    """A few kills, one after the other in one file."""
    victims = Victims(tmp_path_factory.mktemp("kills"), seed=2)
    return [victims.kill() for _ in range(KILLS)]


def test_whatever_was_confirmed_is_there_after_a_kill(deaths):
    assert [death for death in deaths if death.wrong] == []


def test_some_of_the_kills_fall_inside_a_transaction(deaths):
    assert sum(death.begun for death in deaths) >= KILLS // 4


def test_an_act_that_has_not_ended_counts_as_under_way():
    assert understood(["begin edit 5", "end 5 0.01", "begin keep 6"], 4) == ("keep", 5, 6)
    assert understood(["begin edit 5", "end 5 0.01"], 4) == ("between two", 5, 5)
    assert understood([], 4) == ("start", 4, 4)


def test_a_journal_is_told_from_one_that_is_not_complete(tmp_path):
    path = tmp_path / "a.bay"
    assert journal(path) == (False, False)
    beside = tmp_path / "a.bay-journal"
    beside.write_bytes(bytes(512))
    assert journal(path) == (True, False)
    beside.write_bytes(bytes.fromhex("d9d505f920a163d7") + bytes(504))
    assert journal(path) == (True, True)


def test_pages_are_torn_only_where_the_journal_can_give_them_back(tmp_path):
    path, page = tmp_path / "a.bay", 1024
    before = bytes([1]) * page + bytes([2]) * page + bytes([3]) * page
    after = before[: 2 * page] + bytes([9]) * page
    path.write_bytes(after)
    head = MAGIC + struct.pack(">IIIII", 1, 0, 3, 512, page)
    journal_of(path).write_bytes(
        head.ljust(512, b"\0") + struct.pack(">I", 3) + before[2 * page :] + bytes(4)
    )
    tear(path, Random(1))
    assert path.read_bytes()[: 2 * page] == before[: 2 * page]
    assert path.read_bytes() != after


def test_the_table_adds_up(deaths):
    rows = table(deaths)
    assert [sum(row[n] for row in rows[1:-1]) for n in range(1, 7)] == list(rows[-1][1:])
    assert as_text(rows).count("\n") == len(rows)
