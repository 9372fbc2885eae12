"""What the rules of sight, reach and leads say: the thing, the amount, the need, in the layout's units."""

import csv
import json
import re
from pathlib import Path

import pytest
from tests.build import layout

from bayboard.rules.check import check

CASES = Path(__file__).parents[1] / "cases"


def _members(rule, case):
    with (CASES / f"{rule}.csv").open(encoding="utf-8", newline="") as file:
        return json.loads(next(row for row in csv.DictReader(file) if row["case"] == case)["members"])


def _says(rule, case, **members):
    verdict = check(layout(**_members(rule, case) | members))
    return [said.says for said in (*verdict.findings, *verdict.unchecked) if said.rule == rule]


@pytest.mark.parametrize(
    ("rule", "case", "says"),
    [
        (
            "sight",
            "a dial seen at 63.4 degrees only",
            "A's dial is seen 63° off straight at best with the seats folded. 60° can be read.",
        ),
        ("sight", "the folded seat hides it", "A's dial is hidden from everywhere with the seats folded."),
        ("sight", "a seat nobody measured folded", "Nobody measured seat S folded."),
        (
            "reach",
            "a fuse down a shaft 20 wide",
            "The way to A's fuse is 20 mm wide with the seats folded. It needs 25 mm for fingers.",
        ),
        (
            "reach",
            "a side dial walled in",
            "No way for fingers to A's dial with the seats folded: every one meets something.",
        ),
        ("beside", "side by side for 350", "S1 runs 350 mm beside power lead P1. Under 100 mm is better."),
        ("beside", "side by side for 700", "S1 runs 700 mm beside power lead P1. It must stay under 600 mm."),
        (
            "beside",
            "two entries by the same way",
            "PE and SE both come by left sill: up to 700 mm side by side.",
        ),
        (
            "crossing",
            "over it at 45 degrees",
            "S1 crosses power lead P1 at 45°. 60° or more is better, square is best.",
        ),
        ("crossing", "square over the power lead", "S1 crosses power lead P1 at 90°."),
        ("lead-path", "straight over a neighbour", "P1 runs 100 mm through B. It needs another way round."),
        (
            "lead-path",
            "two stretches off the board",
            "P1 runs 40 mm off its board. It needs another way round.",
        ),
        (
            "drilled",
            "a fixing moved away from its hole",
            "H1 is already drilled and has moved 5 mm. Put H1 back, or plan a new hole.",
        ),
        (
            "drilled",
            "a hole made in the metal alone",
            "H1 is already drilled and has moved 0.5 mm from its hole in the metal. "
            "Put H1 back, or plan a new hole.",
        ),
        (
            "drilled",
            "one screw went astray",
            "A is already drilled and has moved 1.5 mm at A#2. Put A back, or plan new holes.",
        ),
        (
            "drilled",
            "the worst of place and screws",
            "A is already drilled and has moved 3 mm. Put A back, or plan new holes.",
        ),
        (
            "drilled",
            "a stand-in only turned",
            "A is already drilled and has turned 0.2°. Put A back, or plan new holes.",
        ),
        (
            "reprint",
            "a place a hair off",
            "1 hole differs from the sheets printed as revision 3: H1. Print again.",
        ),
        (
            "reprint",
            "a stand-in moved and a fixing came",
            "3 holes differ from the sheets printed as revision 3: A#1, A#2, H1. Print again.",
        ),
        (
            "on-landing",
            "half under the board",
            "BD comes 10 mm too near the metal of landing L1. It needs a standoff of 30 mm there.",
        ),
        (
            "on-landing",
            "nobody measured the recess",
            "Nobody measured how deep landing L1 lies.",
        ),
        (
            "on-vent",
            "partly covered",
            "BD covers 40 % of vent V1 and leaves 5 mm behind it. Air needs a standoff of 11.2 mm there.",
        ),
        (
            "on-vent",
            "absurd: flat on the metal",
            "BD covers 100 % of vent V1 and leaves nothing behind it. Air needs a standoff of 16.7 mm there.",
        ),
        (
            "lining-cut",
            "a hair too thick",
            "100 sq cm of Carpet (M1) has to be cut away.",
        ),
        (
            "way-in",
            "the larger of the two counts, first or second",
            "BD is 400 mm wide at its slimmest and the way in 350 mm. 50 mm less, or two pieces, is better.",
        ),
        ("way-in", "nobody measured the way in", "Nobody measured the opening that BD goes in by."),
    ],
)
def test_a_sentence_names_the_thing_the_amount_and_the_need(rule, case, says):
    assert _says(rule, case) == [says]


def test_inches_are_said_where_inches_are_shown():
    assert _says("beside", "side by side for 350", units="in") == [
        "S1 runs 13 25/32 in beside power lead P1. Under 3 15/16 in is better."
    ]


def test_a_hair_short_never_reads_like_the_limit():
    (said,) = _says("reach", "a fuse down a shaft 20 wide", limits={"corridor_fingers": 20.001})
    found, need = re.findall(r"[\d.]+ mm", said)
    assert found != need
    (said,) = _says("sight", "a dial seen at 63.4 degrees only", limits={"sight_angle": 63.4})
    assert "63.43° off straight" in said
    assert "63.4° can be read" in said


def test_the_amount_off_never_reads_like_what_is_allowed():
    (said,) = _says("drilled", "a fixing a hair beside its hole")
    assert "has moved 0.101 mm" in said
    (said,) = _says("drilled", "a fixing a hair beside its hole", units="in")
    assert "has moved 0.004 in" in said
    (said,) = _says("drilled", "a fixing moved away from its hole", units="in")
    assert "has moved 13/64 in" in said


def test_the_mark_stands_where_the_worst_hole_is_planned():
    marks = {
        ("drilled", "one screw went astray"): (240, 220),
        ("drilled", "a stand-in only turned"): (200, 200),
        ("reprint", "a stand-in moved and a fixing came"): (161, 180),
        ("reprint", "gone to the bench, from the second board"): (160, 180),
    }
    for (rule, case), at in marks.items():
        (found,) = [f for f in check(layout(**_members(rule, case))).findings if f.rule == rule]
        assert (found.at, found.unit) == (at, {"a stand-in only turned": "deg"}.get(case, found.unit))
