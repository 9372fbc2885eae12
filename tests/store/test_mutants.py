"""A file that somebody bent is opened or refused in one sentence.

The 2 000 of `tests/long/damage.py` in small.
"""

import pytest
from tests.store.mutants_rows import bomb, long_value, many_rows, plain, reseal
from tests.store.mutating import KINDS, Prober, mutants
from tests.store.specimen import specimen

from bayboard.store.sealed import hash_of

QUICK = {kind: 1 for kind in KINDS if kind not in (bomb, long_value, many_rows)}
COUNT = 24


@pytest.fixture(scope="module")
def answers(tmp_path_factory):
    """What came of each mutant: (seed, kind, answer)."""
    with Prober() as prober:
        made = mutants(tmp_path_factory.mktemp("mutants"), COUNT, 7, QUICK)
        return [(seed, kind, prober.ask(path)) for seed, kind, path in made]


def test_a_bent_file_is_opened_or_refused_in_one_sentence(answers):
    assert [(seed, kind, answer["wrong"]) for seed, kind, answer in answers if answer["wrong"]] == []


def test_neither_memory_nor_time_follows_what_the_file_says(answers):
    assert max(answer["peak"] for _, _, answer in answers) < 200  # MB
    assert max(answer["seconds"] for _, _, answer in answers) < 10


def test_some_bent_files_open_and_some_do_not(answers):
    opened = sum(answer["opened"] for _, _, answer in answers)
    assert COUNT // 6 < opened < COUNT * 5 // 6


def small_bomb(rng, path):
    bomb(rng, path, sizes=(25_000_000,))


def quite_long_value(rng, path):
    long_value(rng, path, lengths=(5_000_000,))


def quite_many_rows(rng, path):
    many_rows(rng, path, counts=(1_500,))


@pytest.mark.parametrize(("kind", "count"), [(small_bomb, 1), (quite_long_value, 5), (quite_many_rows, 3)])
def test_a_size_in_the_file_takes_neither_memory_nor_time(kind, count, tmp_path):
    with Prober() as prober:
        answers = [prober.ask(path) for _, _, path in mutants(tmp_path, count, 11, {kind: 1})]
    assert [answer["wrong"] for answer in answers] == [[]] * count
    assert max(answer["peak"] for answer in answers) < 200  # MB
    assert max(answer["seconds"] for answer in answers) < 10


def test_text_that_takes_four_times_its_size_in_memory_does_not_take_it(tmp_path):
    path = tmp_path / "job.bay"
    specimen(path, rounds=1)
    text = "\U0001f600" + "a" * 19_000_000
    with plain(path) as conn:
        conn.execute("update draft set layout = ?, sha256 = ?", (text, hash_of(text.encode())))
        conn.execute("update revision set note = ? where number = 1", (text,))
        reseal(conn, "draft")
        reseal(conn, "revision")
    with Prober() as prober:
        answer = prober.ask(path)
    assert answer["wrong"] == []
    assert answer["peak"] < 200  # MB
