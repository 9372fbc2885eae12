"""How long a search over a folder of job files takes, against listing them by os.scandir and stat of each.

The search looks at every file's time and size as the listing does, and answers from the index.  Asked in
turn: a word of a note that every file has, one that none has, and one that a single file has.
"""

import os
import shutil
import sys
import tempfile
from itertools import cycle
from pathlib import Path

import figures

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
from tests.store.vehicles import age, vehicle

from bayboard.store.shelf import Shelf

FIGURES = ("shelf",)
FILES = 1_000
PAIRS = 31
GOAL = 5.0  # issue 3: a search of 1 000 job files against listing them
MOST_RUNS = 4
ASKED = ("owner lights", "nothing of this", "only")
NOTES = tuple(f"Shown to the owner, who wants the lights of the processor in view, {n}" for n in range(12))


def stock(folder, count):
    """Fill a folder with job files of the same size, one of them with a note of its own."""
    first = vehicle(folder, "vehicle-0000", "Ostrel crew pickup", "rear wall", NOTES)
    for number in range(1, count - 1):
        age(Path(shutil.copy(first, folder / f"vehicle-{number:04}.bay")))
    vehicle(folder, "last", "Tarn van", notes=("the only one",))


def listing(folder):
    """Return what one sees of each file in a folder."""
    with os.scandir(folder) as entries:
        return [(entry.path, entry.stat()) for entry in entries]


def measured(folder, index, pairs):
    """Return how many times as long the search takes as the listing, over interleaved pairs."""
    shelf, words = Shelf(index), cycle(ASKED)
    try:
        return figures.paired(lambda: shelf.find(next(words), [folder]), lambda: listing(folder), pairs)
    finally:
        shelf.close()


def main():
    """Measure until the machine is quiet enough, and keep the figure."""
    with tempfile.TemporaryDirectory() as own:
        folder = Path(own) / "shelf"
        folder.mkdir()
        stock(folder, FILES)
        for _ in range(MOST_RUNS):
            figure = measured(folder, Path(own) / "index", PAIRS)
            print(figure, flush=True)
            if figure["baseline_spread"] <= figures.TOO_NOISY:
                break
    rooms = ("store/found.py", "store/shelf.py", "store/shelf_index.py")
    baseline = f"os.scandir and stat of {FILES} job files"
    figures.keep("shelf", rooms, baseline=baseline, goal=GOAL, seed=None, **figure)


if __name__ == "__main__":
    main()
