"""What was open before is remembered, the last first, wherever it lies."""

import json
from pathlib import Path

import pytest

from bayboard.window.last import MOST_RECENT, data_folder, last_vehicle, recent, remember, remember_paper


@pytest.fixture
def files(tmp_path):
    made = [tmp_path / f"v{number}.bay" for number in range(40)]
    for path in made:
        path.touch()
    return made


def test_nothing_was_open_at_first():
    assert recent() == () and last_vehicle() is None


def test_the_last_comes_first_and_each_once(files):
    for path in (files[0], files[1], files[2], files[0]):
        remember(path)
    assert recent() == (files[0], files[2], files[1])
    assert last_vehicle() == files[0]


def test_thirty_are_remembered(files):
    for path in files:
        remember(path)
    assert recent() == tuple(reversed(files))[:MOST_RECENT] and MOST_RECENT == 30


def test_a_file_that_is_gone_is_remembered_all_the_same(files):
    remember(files[0])
    files[0].unlink()
    assert recent() == (files[0],) and last_vehicle() is None


def test_the_paper_is_remembered_beside_it(files):
    remember(files[0])
    remember_paper("a4", 5.0)
    remember(files[1])
    assert json.loads((data_folder() / "window.json").read_text(encoding="utf-8"))["paper"] == ["a4", 5.0]


@pytest.mark.parametrize("text", ["", "[]", '{"recent": 5}', '{"recent": [1, null, ""], "last": 7}', "\x00"])
def test_a_broken_memory_is_an_empty_one(text, files):
    data_folder().mkdir(parents=True)
    (data_folder() / "window.json").write_text(text, encoding="utf-8")
    assert recent() == ()
    remember(files[0])
    assert recent() == (files[0],)


def test_what_an_older_window_remembered_counts():
    data_folder().mkdir(parents=True)
    (data_folder() / "window.json").write_text('{"last": "/shop/van.json"}', encoding="utf-8")
    assert recent() == (Path("/shop/van.json"),)
