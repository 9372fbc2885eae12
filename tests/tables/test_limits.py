"""Every limit says where it comes from; what it cites in the reference tables is there, with that status.

The tables of shared/reference are read again here, by the csv module alone.
"""

import csv
import re
from functools import cache
from pathlib import Path

import pytest

from bayboard.tables.limits import FIXED, LIMITS

REFERENCE = Path(__file__).parents[2] / "shared" / "reference"
STATUS = re.compile(r"read[1-5]|computed|memory|practice")

# limit: table, first column of its row, column of the figure, the figure, how far the limit may be off
SAME = {
    "eye_near": ("access_reach", "reading distance comfortable", "value_mm", 500, 0),
    "corridor_length": ("access_reach", "hand length P5", "value_mm", 152, 2),
    "corridor_fingers": ("access", "crush gap finger", "opening_a_mm", 25, 0),
    "bend_od": ("copper_rules", "bend_radius_power_static_inside", "value", 4, 0),
    "beside_d": ("noise", "sep_NEC_800", "value", 51, 1),
    "drop_should": ("copper_rules", "voltage_drop_critical", "value", 3, 0),
    "fuse_from_source": (
        "fuse_rules",
        "trade practice in cars: fuse within 18 in of the battery",
        "value",
        457,
        7,
    ),
    "engage_must": ("plastics_threads", "engagement_steel", "value", 1.0, 0),
    "long_time_hot": ("plastics_threads", "long_time_hot_factor", "value", 0.25, 0),
    "crash_forward": ("loads", "seat strength", "value", 20, 0),
    "crash_other": ("loads", "ambulance equipment retention", "value", 10, 0),
}
# limits that keep to another side of what they cite, and on which: checked one by one below
BESIDE = {"sight_angle", "edge_d", "pitch_d"}


@cache
def row(table, first):
    with (REFERENCE / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        found = [line for line in csv.DictReader(file) if next(iter(line.values())) == first]
    assert len(found) == 1, (table, first)
    return found[0]


def cited(known):
    return re.findall(r"(\w+)\.csv", known.source)


def test_every_citation_of_a_table_is_checked_here():
    assert {name for name, known in LIMITS.items() if cited(known)} == SAME.keys() | BESIDE
    assert not [name for name, known in FIXED.items() if cited(known)]


@pytest.mark.parametrize("name", SAME)
def test_a_limit_is_what_its_row_says(name):
    table, first, column, figure, rounded = SAME[name]
    assert cited(LIMITS[name]) == [table]
    assert float(row(table, first)[column]) == figure
    assert abs(LIMITS[name].value - figure) <= rounded


@pytest.mark.parametrize("name", SAME)
def test_a_limit_is_as_sure_as_its_row(name):
    table, first, *_ = SAME[name]
    assert STATUS.match(row(table, first)["status"])[0] == LIMITS[name].status


def test_what_may_be_read_lies_beyond_where_eyes_turn_by_themselves():
    # MIL-STD-1472 visual field, from memory: the table says so too
    turned = row("access_reach", "line of sight maximum eye rotation")
    assert (turned["value_mm"], turned["status"]) == ("35", "memory")
    assert LIMITS["sight_angle"].value > 35
    assert LIMITS["sight_angle"].status == "memory"


@pytest.mark.parametrize(
    ("name", "first", "least"),
    [("edge_d", "edge_distance_to_hole_centre", "2.0"), ("pitch_d", "hole_pitch_min", "3.0")],
)
def test_holes_may_stand_nearer_than_handbooks_ask_and_the_source_says_so(name, first, least):
    known = LIMITS[name]
    assert row("plastics_threads", first)["value"].startswith(least)
    assert known.value < float(least)
    assert known.status == "practice"
    assert f"handbooks ask {float(least):g}" in known.source


def test_every_status_is_a_word_of_the_tables():
    assert all(STATUS.fullmatch(known.status) for known in (*LIMITS.values(), *FIXED.values()))


def test_the_least_gaps_of_en_349_stand_in_the_table():
    # EN 349:1993 table 1 and ISO 13854: finger 25, hand 100, arm 120 mm; read1 (shared/reference/access.csv)
    for part, least in (("finger", 25), ("hand or fist", 100), ("arm", 120)):
        found = row("access", f"crush gap {part}")
        assert (float(found["opening_a_mm"]), found["status"]) == (least, "read1")


def test_ways_in_are_held_against_the_least_gaps_of_en_349():
    # a way for fingers is no narrower than a finger's gap, a driver's is no way for fingers, and a way is
    # measured past a whole arm; the seat's margin spares the gear, it is no gap for a hand: no rule says so
    assert LIMITS["corridor_fingers"].value >= 25
    assert LIMITS["corridor_driver"].value < 25
    assert LIMITS["corridor_most"].value >= 120
    assert LIMITS["seat_margin"].value < 25


def test_openings_of_mil_std_1472_are_marked_as_remembered():
    with (REFERENCE / "access.csv").open(encoding="utf-8", newline="") as file:
        told = [line for line in csv.DictReader(file) if not line["source"].startswith("EN 349")]
    assert len(told) > 10
    assert {line["status"] for line in told} == {"memory"}
