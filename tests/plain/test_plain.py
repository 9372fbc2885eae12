"""The second opinion is held to the cases worked by hand, and the random layouts to what they are for."""

import csv
import json
import math
import random
from collections import Counter
from itertools import groupby
from pathlib import Path

import pytest
from shapely import Point, Polygon
from tests.build import document
from tests.plain.prisms import Prism, blocks, distance
from tests.plain.random_layouts import random_document
from tests.plain.recheck import RULES, recheck
from tests.plain.shapes import furthest_outside, rounded, short_side

from bayboard.model.read import from_document

CASES = Path(__file__).parents[1] / "cases"
CHORDS = {"on-vent": 2e-5, "lining-cut": 2e-5, "way-in": 2e-5}  # share by which drawn arcs are off


@pytest.mark.parametrize("rule", RULES)
def test_the_plain_recheck_says_what_was_worked_out_by_hand(rule):
    with (CASES / f"{rule}.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    for case, group in groupby(rows, key=lambda row: row["case"]):
        told = list(group)
        found, unchecked = recheck(document(**json.loads(told[0]["members"])), {}, [rule])
        asked = sorted(row["subjects"] for row in told if row["severity"] == "unchecked")
        assert sorted(" ".join(subjects) for _, subjects in unchecked) == asked, case
        spoken = sorted(
            (r["severity"], r["subjects"], r["measure"])
            for r in told
            if r["severity"] in ("must", "should", "note")
        )
        said = sorted((f["severity"], " ".join(f["subjects"]), f["measure"]) for f in found)
        assert [row[:2] for row in said] == [row[:2] for row in spoken], case
        for (*_, measure), (*_, worked) in zip(said, spoken, strict=True):
            if worked not in ("", "null"):
                assert measure == pytest.approx(float(worked), abs=1e-4, rel=CHORDS.get(rule, 0)), case


def test_random_documents_are_legal_and_always_the_same():
    for seed in range(0, 200, 5):
        doc = random_document(seed)
        from_document(doc)
        assert json.dumps(doc) == json.dumps(random_document(seed))


def test_every_rule_speaks_in_at_least_one_random_document_in_ten():
    count, spoke = 60, Counter()
    for seed in range(0, 3 * count, 3):
        found, _ = recheck(random_document(seed), {})
        spoke.update({f["rule"] for f in found})
    assert min(spoke[rule] for rule in RULES) >= count / 10, spoke


def test_a_line_to_a_prism_is_as_far_as_many_points_of_it_are():
    rng = random.Random(5)
    shape = Polygon([(0, 0), (40, 0), (40, 10), (15, 10), (15, 30), (0, 30)])
    for _ in range(60):
        prism = Prism(shape, 5, 25, rng.choice(["z", "x"]))
        p, q = ([rng.uniform(-60, 80) for _ in range(3)] for _ in range(2))
        spots = [
            prism.local([a + (b - a) * k / 4000 for a, b in zip(p, q, strict=True)]) for k in range(4001)
        ]
        sampled = min(
            math.hypot(shape.distance(Point(a, b)), max(prism.low - h, h - prism.high, 0))
            for a, b, h in spots
        )
        assert distance(prism, p, q) == pytest.approx(sampled, abs=0.05)
        if sampled > 0.05:
            assert not blocks(prism, p, q)


def test_a_rounded_square_loses_what_geometry_says():
    ring = rounded([[0, 0], [0, 100], [100, 100], [100, 0]], 20)
    assert Polygon(ring).area == pytest.approx(100**2 - (4 - math.pi) * 20**2, abs=0.02)
    assert furthest_outside([(0.0, 0.0), (100.0, 0.0), (100.0, 100.0)], Polygon(ring)) == pytest.approx(
        20 * (math.sqrt(2) - 1), abs=1e-3
    )


def test_the_smallest_rectangle_round_a_turned_box_is_the_box():
    for turn in (0, 17, 45, 90):
        c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
        box = Polygon([(c * x - s * y, s * x + c * y) for x, y in ((0, 0), (30, 0), (30, 7), (0, 7))])
        assert short_side(box) == pytest.approx(7)
