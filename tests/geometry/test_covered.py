"""What boards cover of a region, against areas and lengths worked out by hand."""

import math

import pytest
from shapely import Point, Polygon, box

from bayboard.geometry import outline as outlines
from bayboard.geometry.covered import ARC_TRUE, area_with, cover, under

REGION = box(0, 0, 100, 50)


def test_a_rim_on_a_rim_covers_nothing():
    assert cover(REGION, box(100, 0, 200, 50), 0.01) is None
    assert cover(REGION, box(99.9999, 0, 200, 50), 0.01) is None  # 0.005 mm2
    assert cover(REGION, box(99.9, 0, 200, 50), 0.01) == (pytest.approx(0.001), pytest.approx(100.2))


def test_holes_count_in_the_rim_until_the_boards_own_edge_is_shorter():
    plate = Polygon(box(0, 0, 100, 50).exterior.coords, [box(40, 20, 60, 30).exterior.coords])
    assert cover(box(-5, -5, 105, 55), plate, 0.01).rim == 300  # 360 with the hole
    assert cover(box(0, 0, 90, 50), plate, 0.01).rim == 300  # 280 + 60 = 340
    assert cover(box(0, 0, 55, 50), plate, 0.01).rim == pytest.approx(210 + 2 * 15)  # open to the side


def test_arcs_are_drawn_truly_enough_to_tell_areas_and_lengths():
    disc = outlines.polygon(outlines.rounded([(0, 0), (200, 0), (200, 200), (0, 200)], 100, ARC_TRUE))
    covered = cover(box(0, 0, 200, 200), disc, 0.01)
    assert covered.rim == pytest.approx(200 * math.pi, abs=1e-5)
    assert covered.share * 40_000 == pytest.approx(1e4 * math.pi, abs=1e-3)


def test_what_lies_under_two_counts_once():
    covered = under(REGION, [box(0, 0, 40, 50), box(30, 0, 60, 50)])
    assert covered.area == 3000
    assert area_with(covered, REGION, []) == 3000
    assert area_with(covered, REGION, [box(50, 0, 70, 50), box(65, 0, 80, 25), box(500, 0, 600, 50)]) == 3750


def test_nothing_lies_under_nothing():
    assert under(REGION, []).area == 0
    assert area_with(under(REGION, []), REGION, [Point(50, 25).buffer(5)]) == pytest.approx(78, abs=1)
