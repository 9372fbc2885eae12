"""A file that somebody bent is opened or refused in one sentence.

The 2 000 of `tests/long/damage.py` in small.
"""

import pytest
from tests.store.mutating import KINDS, Prober, mutants

QUICK = {kind: 1 for kind in KINDS if kind.__name__ not in ("long_value", "many_rows", "bomb")}
COUNT = 32


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


@pytest.mark.parametrize("kind", ["long_value", "many_rows", "bomb"])
def test_a_size_in_the_file_takes_neither_memory_nor_time(kind, tmp_path):
    (chosen,) = [found for found in KINDS if found.__name__ == kind]
    with Prober() as prober:
        answers = [prober.ask(path) for _, _, path in mutants(tmp_path, 2, 11, {chosen: 1})]
    assert [answer["wrong"] for answer in answers] == [[], []]
    assert max(answer["peak"] for answer in answers) < 200  # MB
    assert max(answer["seconds"] for answer in answers) < 10
