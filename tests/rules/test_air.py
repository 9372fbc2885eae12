"""What air, warm-stack, heat-rise and seat-swing say, and where they set their mark."""

import re

import numpy as np
import pytest
from tests.build import card, gear, layout, rectangle
from tests.rules.test_words import _members

from bayboard.rules.arrange import air
from bayboard.rules.check import check
from bayboard.rules.levels import LEVEL
from bayboard.rules.places import places_of
from bayboard.rules.scene import Scene


def _found(rule, case, **members):
    return [f for f in check(layout(**_members(rule, case) | members)).findings if f.rule == rule]


@pytest.mark.parametrize(
    ("rule", "case", "says"),
    [
        ("air", "a hair under half", "A has 24.9 mm of air to its right before B. It needs 50 mm."),
        ("air", "half of it is left", "A has 25 mm of air to its right before B. 50 mm is better."),
        ("air", "touching", "A has no air to its right before B. It needs 50 mm."),
        (
            "air",
            "a quarter turn carries its right up",
            "A has 40 mm of air above it before B. 50 mm is better.",
        ),
        ("air", "a stay", "A has 40 mm of air to its right before Bracket (ST). 50 mm is better."),
        ("air", "the seat across", "A has 20 mm of air above it before seat S1. 30 mm is better."),
        ("air", "out under a shelf", "A has 15 mm of air in front before B. 20 mm is better."),
        (
            "warm-stack",
            "one over the other",
            "U (30 W) hangs 40 mm over L (40 W) and breathes its warm air. Side by side both run cooler.",
        ),
        (
            "warm-stack",
            "touching",
            "U (30 W) stands right on L (40 W) and breathes its warm air. Side by side both run cooler.",
        ),
        (
            "heat-rise",
            "two add up",
            "50 W on BD warms its faces by about 24 °C over the air. Leave a way in and out for air.",
        ),
        (
            "seat-swing",
            "it swings into A",
            "Seat S1 sweeps 5 mm into A as it folds. It needs a free way.",
        ),
    ],
)
def test_a_sentence_names_the_thing_the_amount_and_the_need(rule, case, says):
    (found,) = _found(rule, case)
    assert found.says.removesuffix(", too close to call.").rstrip(".") + "." == says


@pytest.mark.parametrize(
    ("case", "says"),
    [
        ("nobody measured the hinge", "Nobody measured the hinge of seat S1."),
        ("nobody measured it folded", "Nobody measured seat S1 folded."),
        (
            "folded a hair more off",
            "Swung about its hinge, seat S1 ends 15.1 mm off where it was measured folded.",
        ),
    ],
)
def test_what_is_missing_of_a_seat_is_named(case, says):
    verdict = check(layout(**_members("seat-swing", case)))
    assert [u.says for u in verdict.unchecked if u.rule == "seat-swing"] == [says]


def test_half_a_turn_could_go_either_way():
    (seat,) = _members("seat-swing", "it swings into A")["bay"]["seats"]
    seat |= {"swing": None, "folded": [[400 - z, -y] for z, y in seat["up"]]}
    (line,) = [u for u in check(layout(bay={"seats": [seat]})).unchecked if u.rule == "seat-swing"]
    assert line.says == "Nobody said which way seat S1 swings."


@pytest.mark.parametrize(
    ("rule", "case", "at"),
    [
        ("air", "a hair short", (250 + 24.95, 200)),
        ("air", "out under a shelf", (200, 200)),
        ("warm-stack", "one over the other", (200, 150)),
        ("seat-swing", "it swings into A", (200, 30)),
    ],
)
def test_the_mark_stands_where_the_lack_is(rule, case, at):
    (found,) = _found(rule, case)
    assert found.at == pytest.approx(at, abs=1e-6)


def test_a_hair_less_air_never_reads_like_what_is_asked():
    (found,) = _found("air", "out to the seat, a hair short", limits={})
    short, need = re.findall(r"[\d.]+ mm", found.says)
    assert short != need


@pytest.mark.parametrize(
    ("tape", "share", "doubt"), [(9.9, 0.5, False), (10, 0.5, True), (4.9, 0.7, False), (5, 0.7, True)]
)
def test_air_before_what_was_measured_in_the_bay_may_be_too_close_to_call(tape, share, doubt):
    bay = _members("air", "a stay")["bay"] | {"tape": tape}  # 40 of 50 mm; a must under 25, or under 35
    (found,) = _found("air", "a stay", bay=bay, limits={"air_must_share": share})
    assert found.says.endswith(", too close to call.") is doubt
    (found,) = _found("air", "half of it is left", bay={"tape": 30})
    assert "too close" not in found.says


def test_one_thing_on_two_sides_is_told_twice_and_counted_by_the_worse():
    bent = [[290, 170], [320, 170], [320, 290], [170, 290], [170, 240], [290, 240]]
    stay = {"id": "ST", "name": "Bracket", "outline": bent, "height": 100}
    cards = {"box": card(air={"right": 50, "up": 30})}
    given = layout(bay={"stays": [stay]}, gear=[gear("A", 200, 200)], cards=cards)
    scene = Scene(given)
    ways = np.array([[200.0, 200.0], [200.0, 209.0], [225.0, 200.0], [200.0, 190.0], [200.0, 100.0]])
    levels = air.at_places(scene, places_of(scene.placed["A"], ways), ("A", "ST"))["A", "ST"]
    for (x, y), level in zip(ways.tolist(), levels, strict=True):
        moved = layout(bay={"stays": [stay]}, gear=[gear("A", x, y)], cards=cards)
        said = [LEVEL[f.severity] for f in check(moved).findings if f.rule == "air"]
        assert level == max(said, default=0), (x, y)
    assert set(levels.tolist()) == {LEVEL["must"], LEVEL["should"], 0}


def test_who_leaves_bares_the_next_behind():
    cards = {"box": card(), "warm": card(air={"right": 60})}
    near = [gear("A", 200, 200, "warm"), gear("B", 320, 200), gear("C", 340, 255)]
    assert [f.subjects for f in check(layout(gear=near, cards=cards)).findings if f.rule == "air"] == [
        ("A", "B")
    ]
    near[1] = gear("B", 700, 200)
    assert [f.subjects for f in check(layout(gear=near, cards=cards)).findings if f.rule == "air"] == [
        ("A", "C")
    ]


def test_a_wide_stay_and_a_rectangle_alike_block_a_side():
    stay = {"id": "ST", "name": "Bracket", "outline": rectangle(290, -50, 310, 450), "height": 100}
    cards = {"box": card(air={"right": 50})}
    (found,) = [
        f
        for f in check(layout(bay={"stays": [stay]}, gear=[gear("A", 200, 200)], cards=cards)).findings
        if f.rule == "air"
    ]
    assert (found.subjects, found.measure) == (("A", "ST"), pytest.approx(40))
