"""Drills of the holes against two tables read by themselves: threads.csv and plastics_threads.csv."""

import csv
from pathlib import Path

import pytest
from tests.build import card, gear, layout

from bayboard.mechanics.holes import holes

REFERENCE = Path(__file__).resolve().parents[2] / "shared" / "reference"


def _rows(name):
    with (REFERENCE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


THREADS = {row["thread"]: row for row in _rows("threads.csv")}


def _made(thread):
    """Return the tapped and the clear hole that a layout with that thread asks for."""
    cards = {"box": card(screws=[{"at": [0, 0], "thread": thread}])}
    fixing = {"id": "H1", "at": [500, 200], "thread": thread}
    return holes(layout(cards=cards, gear=[gear("A", 200, 200)], fixings=[fixing]))


@pytest.mark.parametrize("thread", THREADS)
def test_holes_take_the_drills_of_the_thread_table(thread):
    # threads.csv: tap drills ISO 2306 and ASME B1.1, clearance ISO 273 medium and ASME B18.2.8 normal
    tap, clear = _made(thread)
    assert (tap.make, tap.drill) == ("tap", float(THREADS[thread]["tap_drill_mm"]))
    assert (clear.make, clear.drill) == ("clear", float(THREADS[thread]["clear_medium_mm"]))


@pytest.mark.parametrize("thread", THREADS)
def test_a_tap_drill_suits_a_plastic_board(thread):
    # plastics_threads.csv, tap_drill_in_PE: d - 0.8 P to d - P (practice, from memory); drills step by 0.1 mm
    told = {row["key"]: row["value"] for row in _rows("plastics_threads.csv")}["tap_drill_in_PE"]
    assert told == "d - 0.8*P to d - P"
    d, pitch = float(THREADS[thread]["major_d_mm"]), float(THREADS[thread]["pitch_mm"])
    tap, _ = _made(thread)
    assert d - pitch - 0.1 <= tap.drill <= d - 0.8 * pitch + 0.1
