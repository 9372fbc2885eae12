"""The quick twin of tests/long/shelf.py: a search is not much more than looking at each file."""

import importlib.util
import sys
from pathlib import Path

LONG = Path(__file__).resolve().parents[1] / "long"


def _long():
    """Return the long run's own means of measuring."""
    sys.path.insert(0, str(LONG))
    try:
        spec = importlib.util.spec_from_file_location("long_shelf", LONG / "shelf.py")
        script = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(script)
    finally:
        sys.path.remove(str(LONG))
    return script


def test_a_search_takes_at_most_five_times_a_listing(tmp_path):
    long = _long()
    folder = tmp_path / "shelf"
    folder.mkdir()
    long.stock(folder, 250)
    figure = min(
        (long.measured(folder, tmp_path / "index", 15) for _ in range(3)), key=lambda figure: figure["value"]
    )
    assert figure["value"] <= long.GOAL, figure


def test_the_search_that_is_measured_finds(tmp_path):
    long = _long()
    folder = tmp_path / "shelf"
    folder.mkdir()
    long.stock(folder, 5)
    shelf = long.Shelf(tmp_path / "index")
    assert [len(shelf.find(words, [folder])) for words in long.ASKED] == [4, 0, 1]
    shelf.close()
