"""The smaller side of the smallest rectangle round shapes, against shapely's own rectangles."""

from itertools import pairwise

import numpy as np
import pytest
import shapely
from shapely import LineString, Point, Polygon
from tests.convex import convex

from bayboard.geometry.slim import smaller_sides


def _rectangle_sides(shape, edge):
    """Return the sides of the rectangle round a shape that lies along one of its edges."""
    (x0, y0), (x1, y1) = edge
    x_low, y_low, x_high, y_high = shapely.affinity.rotate(
        shape, -np.degrees(np.arctan2(y1 - y0, x1 - x0))
    ).bounds
    return x_high - x_low, y_high - y_low


def test_the_smaller_side_is_that_of_the_smallest_rectangle_shapely_finds():
    rng = np.random.default_rng(2)
    shapes = convex(rng, 300)
    for shape, measured in zip(shapes, smaller_sides(shapes), strict=True):
        sides = [_rectangle_sides(shape, edge) for edge in pairwise(shape.exterior.coords)]
        least = shapely.oriented_envelope(shape).area
        smallest = [min(pair) for pair in sides if np.prod(pair) <= least * (1 + 1e-9)]
        assert measured == pytest.approx(min(smallest), rel=1e-9)


def test_round_a_triangle_the_slimmest_of_the_equal_rectangles_counts():
    # legs 30 and 40, area 600: 30 x 40 along a leg, 50 x 24 along the hypotenuse
    assert smaller_sides([Polygon([(0, 0), (30, 0), (0, 40)])]) == pytest.approx([24.0])


def test_two_parts_are_measured_by_one_rectangle_round_both():
    parts = shapely.union_all([shapely.box(0, 0, 10, 4), shapely.box(50, 0, 60, 4)])
    assert smaller_sides([parts]) == pytest.approx([4.0])


def test_lines_points_and_slivers_have_no_side():
    nothing = [Polygon(), Point(0, 0), LineString([(0, 0), (9, 9)]), shapely.box(0, 0, 1, 1e-7)]
    assert smaller_sides(nothing).tolist() == [0, 0, 0, 0]
    assert smaller_sides([]).tolist() == []
