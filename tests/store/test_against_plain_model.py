"""A job file walked at random holds what plain lists and a dict hold, after every act and every reopening."""

import pytest
from tests.store.acts import act, start
from tests.store.plain_file import look

from bayboard.store.job_file import open_job_file


def walk(path, seed, count, every=1):
    """Walk a new file; compare it with the plain one after each act, or `every` so many."""
    plain, make = start(seed)
    file = make(path)
    for number in range(1, count + 1):
        kind, perform = act(seed, number, plain)
        perform(file)
        if number % 25 == 0:
            file.close()
            file = open_job_file(path)
        if number % every == 0:
            assert look(file) == plain.seen(), (seed, number, kind)
    file.close()
    with open_job_file(path) as again:
        assert look(again) == plain.seen()
        assert again.said == ()
        assert again.check_whole() == ()


@pytest.mark.parametrize("seed", range(6))
def test_a_file_walked_at_random_holds_what_plain_lists_hold(seed, tmp_path):
    walk(tmp_path / "walk.bay", f"plain {seed}", 50)


def test_a_closed_file_has_nothing_beside_it(tmp_path):
    walk(tmp_path / "walk.bay", "beside", 10)
    assert [path.name for path in tmp_path.iterdir()] == ["walk.bay"]
