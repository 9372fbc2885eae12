"""The sentences of the arrange and fix rules: the thing, the amount, the need, in the layout's units."""

import csv
import json
from pathlib import Path

import pytest
from tests.build import layout

from bayboard.rules.check import check
from bayboard.rules.words import amount, amount_and_need

CASES = Path(__file__).parents[1] / "cases"


def _said(rule, case, units):
    with (CASES / f"{rule}.csv").open(encoding="utf-8", newline="") as file:
        members = next(row["members"] for row in csv.DictReader(file) if row["case"] == case)
    verdict = check(layout(**json.loads(members) | {"units": units}))
    return [said.says for said in (*verdict.findings, *verdict.unchecked) if said.rule == rule]


@pytest.mark.parametrize(
    ("rule", "case", "units", "says"),
    [
        ("overlap", "one on top of the other", "mm", "A lies 60 mm into B. Each needs a place of its own."),
        ("gap", "a hair under six", "mm", "A stands 5.9 mm off B. It needs 6 mm."),
        ("gap", "a hair under fifteen", "in", "A stands 0.587 in off B. 0.591 in is better."),
        ("gap", "touching", "mm", "A touches B. It needs 6 mm."),
        ("off-board", "a hair off", "mm", "A reaches 0.02 mm beyond its board. Wholly on it is better."),
        ("off-board", "a screw over a cut-out", "mm", "A#1 has no board to go into."),
        ("off-wall", "absurd", "mm", "BD reaches 2000 mm beyond the wall. It needs to end on it."),
        ("seat-depth", "touching", "mm", "A touches seat S1. 10 mm is comfortable."),
        ("seat-depth", "give in use", "in", "A clears seat S1 by 5/16 in. 25/64 in is comfortable."),
        ("plug-room", "a hair short", "mm", "The plug at A.p has 29.9 mm before B. It needs 30 mm."),
        (
            "plug-room",
            "a bend of the usual six",
            "mm",
            "The plug at A.p has 40 mm before B. It needs 54 mm with the bend of its lead.",
        ),
        (
            "on-stay",
            "a hair high",
            "mm",
            "BD comes 0.1 mm too near Bracket (ST). It needs a standoff of 20.1 mm there.",
        ),
        ("on-stay", "never to be covered", "mm", "BD covers Bracket (ST), which has to stay free."),
        (
            "insert-landing",
            "a flange nobody lists",
            "mm",
            "H1 is 9.3 mm inside the edge of its landing."
            " Its insert flange needs about 9.4 mm to sit square.",
        ),
        (
            "no-drill",
            "absurd",
            "mm",
            "H1 drills 50 mm inside the no-drill region Harness (N1). Nothing may be drilled there.",
        ),
        ("hole-edge", "off the board", "mm", "H1 is off its board by 5 mm. A 6.6 mm hole needs 9.9 mm."),
        (
            "hole-hole",
            "a hair short",
            "in",
            "H1 and H2 are 0.516 in apart, centre to centre. They need 0.52 in.",
        ),
        ("gap", "a card of unknown height", "mm", "Nobody measured the height of B."),
        ("insert-landing", "a bay without landings", "mm", "Nobody measured the metal behind H1."),
        ("hole-edge", "a guessed screw", "mm", "The screws of A are guesses."),
    ],
)
def test_a_sentence_names_the_thing_the_amount_and_the_need(rule, case, units, says):
    assert _said(rule, case, units) == [says]


@pytest.mark.parametrize("units", ["mm", "in"])
def test_only_nothing_reads_nothing(units):
    assert amount(0.0, units) == f"0 {units}"
    assert amount(0.0003, units) != f"0 {units}"
    assert amount_and_need(0.0003, 10.0, units)[0] != f"0 {units}"


@pytest.mark.parametrize("units", ["mm", "in"])
def test_short_of_the_need_never_reads_like_the_need(units):
    shown, wanted = amount_and_need(9.9999, 10.0, units)
    assert shown != wanted
