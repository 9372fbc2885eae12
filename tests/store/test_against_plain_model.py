"""A job file walked at random holds what plain lists and a dict hold, after every act and every reopening.

The 10 000 acts of `tests/long/job_file.py` in small.
"""

import pytest
from tests.store.acts import ACTS, start, walked
from tests.store.plain_file import MOST_STATES
from tests.store.walking import glance, glance_at, walk

from bayboard.store.job_file import open_job_file


@pytest.mark.parametrize("seed", range(3))
def test_a_file_walked_at_random_holds_what_plain_lists_hold(seed, tmp_path):
    walk(tmp_path / "walk.bay", f"plain {seed}", 75, deep=40)
    assert [path.name for path in tmp_path.glob("*.*")] == ["walk.bay"]


def test_a_walk_does_everything_that_can_be_done():
    plain = walked("plain 0", 75)
    for member in ("states", "revisions", "photos", "prints", "meta"):
        assert len(getattr(plain, member)) > 1 or member == "meta"
    assert len(ACTS) == 9


def test_the_same_walk_comes_to_the_same_file_twice():
    assert walked("plain 1", 40).seen() == walked("plain 1", 40).seen()
    assert walked("plain 1", 40).seen() != walked("plain 2", 40).seen()


def test_a_difference_in_a_single_label_is_seen(tmp_path):
    plain, make = start("one label")
    with make(tmp_path / "a.bay") as file:
        assert glance(file, 1) == glance_at(plain, 1)
        plain.states[0] = (1, "another label", plain.states[0][2])
        assert glance(file, 1) != glance_at(plain, 1)


def test_more_states_than_a_file_holds_drop_the_oldest(tmp_path):
    plain, make = start("many")
    with make(tmp_path / "a.bay") as file:
        layout = file.draft().layout
        added = [(f"Move {n}", layout) for n in range(MOST_STATES + 40)]
        file.write(layout, upto=1, add=added, at=1 + len(added))
        for label, _ in added:
            plain.push(plain.at, label, plain.draft)
        assert glance(file, 1) == glance_at(plain, 1)
    with open_job_file(tmp_path / "a.bay") as again:
        assert glance(again, 2) == glance_at(plain, 2)
