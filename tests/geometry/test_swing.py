"""Seats that turn about a hinge, against shapely turning and cutting the same sections one by one."""

import math
import random

import numpy as np
import pytest
import shapely
from shapely import Polygon, affinity

from bayboard.geometry.swing import carried, depths, shared_at, swept, turn_between, turned_about

BACK = ((100.0, 20.0), (140.0, 10.0), (160.0, 320.0), (120.0, 330.0), (96.0, 150.0))
HINGE = (118.0, 15.0)


def _turned(ring, hinge, angle):
    return tuple(map(tuple, turned_about(ring, hinge, angle).tolist()))


def _random_backs(count):
    dice = random.Random(7)
    for _ in range(count):
        corners = sorted(dice.uniform(0, 2 * math.pi) for _ in range(dice.randint(3, 9)))
        ring = tuple((80 * math.cos(a) + 150, dice.uniform(90, 200) * math.sin(a) + 200) for a in corners)
        if Polygon(ring).is_valid and Polygon(ring).area > 500:
            yield ring, (dice.uniform(80, 220), dice.uniform(0, 400)), dice.uniform(-170, 170)


def test_a_section_turns_as_shapely_turns_it():
    for ring, hinge, angle in _random_backs(20):
        expected = affinity.rotate(Polygon(ring), angle, origin=hinge)
        assert np.allclose(turned_about(ring, hinge, angle), expected.exterior.coords[:-1])


def test_the_turn_that_was_made_is_found_again_whatever_corner_comes_first():
    for ring, hinge, angle in _random_backs(20):
        end = _turned(ring, hinge, angle)
        found, off = carried(ring, end[2:] + end[:2], hinge, None)
        assert found == pytest.approx(angle, abs=1e-6)
        assert off == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize(
    ("angle", "steps"), [(90, 90), (-88, 88), (0.5, 1), (-1.0001, 2), (0, 0), (359.5, 360)]
)
def test_steps_are_as_few_as_a_degree_allows(angle, steps):
    assert len(swept(BACK, HINGE, angle).shapes) == steps


def test_the_turn_of_a_measured_quarter_takes_ninety_steps():
    angle = turn_between(BACK, _turned(BACK, HINGE, 90), HINGE)
    assert len(swept(BACK, HINGE, angle).shapes) == 90


def test_half_a_turn_has_no_short_way_and_a_middle_on_the_hinge_no_turn():
    assert turn_between(BACK, _turned(BACK, HINGE, 180), HINGE) is None
    square = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))
    assert carried(square, square, (1.0, 1.0), None) is None


def test_how_deep_a_block_is_swept_into_is_what_cutting_step_by_step_gives():
    # the smallest rectangle is shapely's own
    dice, met = random.Random(3), 0
    for ring, hinge, angle in _random_backs(12):
        swing = swept(ring, hinge, angle)
        z, y = dice.uniform(0, 120), dice.uniform(0, 300)
        block = np.array([z, y, z + 60, y + 80])
        deep = depths(swing, block[None, :])[0]
        for k, told in enumerate(deep, start=1):
            shape = affinity.rotate(Polygon(ring), angle * k / len(deep), origin=hinge)
            shared = shape.intersection(shapely.box(*block))
            if shared.area < 1e-3:
                assert told < 0.1
                continue
            sides = shapely.minimum_rotated_rectangle(shared).exterior.coords
            a, b = (math.dist(sides[i], sides[i + 1]) for i in (0, 1))
            met += told == pytest.approx(min(a, b), abs=1e-6)
            assert told <= min(a, b) + 1e-6  # of rectangles equally small the slimmest counts
            assert shared_at(swing, k - 1, block).equals_exact(shared, 1e-6, normalize=True)
    assert met > 300


def test_equal_blocks_are_measured_alike_and_empty_ones_are_nothing():
    swing = swept(BACK, HINGE, -88.0)
    block = [150.0, 40.0, 300.0, 200.0]
    rows = np.array([block, [0.0, np.inf, 90.0, -np.inf], block, [300.0, 40.0, 150.0, 200.0]])
    deep = depths(swing, rows)
    assert (deep[0] == deep[2]).all() and deep[0].max() > 10
    assert not deep[1].any() and not deep[3].any()
