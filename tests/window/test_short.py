"""The few words of a tag: measure and need, in the units shown, whatever the sign and the severity."""

import csv
import json
from pathlib import Path

import pytest
from tests.build import gear, layout

from bayboard.rules.check import check
from bayboard.window.folds import seat_of
from bayboard.window.short import few_words

CASES = Path(__file__).parents[1] / "cases"


def _tags(rule, case, units):
    with (CASES / f"{rule}.csv").open(encoding="utf-8", newline="") as file:
        members = json.loads(next(row for row in csv.DictReader(file) if row["case"] == case)["members"])
    found = check(layout(**members)).findings
    return [few_words(f, units) for f in found if f.rule == rule]


@pytest.mark.parametrize(
    ("rule", "case", "units", "tag"),
    [
        ("on-landing", "half under the board", "mm", "10 mm into the metal"),
        ("on-vent", "partly covered", "mm", "39 sq cm of air, needs 50 sq cm"),
        ("on-vent", "partly covered", "in", "6 sq in of air, needs 7.8 sq in"),
        ("on-vent", "a hair short", "mm", "60 sq cm of air, needs 60.001 sq cm"),
        ("lining-cut", "a hair too thick", "mm", "100 sq cm of lining to cut"),
        ("way-in", "absurd", "mm", "390 mm too wide to go in"),
        ("air", "a hair under half", "mm", "24.9 mm of air, needs 50 mm"),
        ("air", "half of it is left", "mm", "25 mm of air, 50 mm is better"),
        ("air", "touching", "in", "no air, needs 1 31/32 in"),
        ("warm-stack", "one over the other", "mm", "a hotter box 40 mm below"),
        ("heat-rise", "two add up", "mm", "about 24 °C warmer than the air"),
        ("seat-swing", "it swings into A", "mm", "the seat sweeps 5 mm into it"),
        ("on-stay", "lined", "mm", "1 mm into what stays"),
        ("drilled", "a fixing moved away from its hole", "mm", "moved 5 mm since it was drilled"),
        ("reprint", "all gone", "mm", "holes to print again: 3"),
        ("on-stay", "a hand hole too narrow", "mm", "way in 20 mm, needs 25 mm"),
        ("reach", "a side dial walled in", "mm", "no way in, needs 25 mm"),
        ("on-stay", "never to be covered", "mm", "covers what must stay free"),
    ],
)
def test_a_tag_tells_measure_and_need(rule, case, units, tag):
    assert _tags(rule, case, units) == [tag]


@pytest.mark.parametrize(
    ("seats", "lean", "told"),
    [
        (1, 0, " left under the seat"),
        (1, 80, " left under the lid"),
        (2, 0, " mm under seat S1"),
        (2, -80, " mm under lid S1"),
    ],
)
def test_a_tag_says_which_seat_it_is_and_that_a_lid_is_one(seats, lean, told):
    up = [[85, 0], [300, 0], [300, 400], [85, 400]]
    there = [{"id": f"S{n + 1}", "x": [0, 1000], "up": up, "folded": None} for n in range(seats)]
    made = layout(bay={"seats": there, "lean": lean}, gear=[gear("A", 200, 200)])
    found = next(f for f in check(made).findings if f.rule == "seat-depth" and f.subjects[-1] == "S1")
    assert told in few_words(found, "mm", seat_of(made, found))
