"""The least width of outlines, against known shapes and against looking in many directions."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import MultiPoint

from bayboard.geometry import outline as outlines
from bayboard.geometry.widths import least_width

ANGLES = np.radians(np.arange(0, 180, 0.1))
WAYS = np.column_stack((np.cos(ANGLES), np.sin(ANGLES)))


def _looked(ring):
    """Return the least width over all the directions looked in, and how much a true one may be under it."""
    wide = np.ptp(np.asarray(ring) @ WAYS.T, axis=0)
    return wide.min(), np.ptp(ring, axis=0).sum() * math.radians(0.1)


@pytest.mark.parametrize(
    ("ring", "radius", "wide"),
    [
        ([(0, 0), (300, 0), (300, 100), (0, 100)], 0, 100),
        ([(0, 0), (300, 0), (300, 100), (0, 100)], 40, 100),
        ([(0, 0), (200, 0), (200, 200), (0, 200)], 100, 200),  # a circle
        ([(0, 0), (10, 0), (5, 5 * math.sqrt(3))], 0, 5 * math.sqrt(3)),  # its height
        ([(0, 0), (10, 0), (5, 5 * math.sqrt(3))], 1, 5 * math.sqrt(3) - 1),  # its height, less 3 r, and 2 r
    ],
)
def test_known_shapes_have_their_known_width(ring, radius, wide):
    assert least_width(ring, radius) == pytest.approx(wide, abs=1e-9)


points = st.lists(st.tuples(st.integers(-50, 50), st.integers(-50, 50)), min_size=3, max_size=9, unique=True)


@settings(max_examples=40, derandomize=True, deadline=None)
@given(points, st.floats(0, 360))
def test_no_direction_is_slimmer_and_one_is_as_slim(corners, turn):
    hull = MultiPoint(corners).convex_hull
    if hull.geom_type != "Polygon":
        return
    ring = outlines.turned(list(hull.exterior.coords)[:-1], turn)
    seen, slack = _looked(ring)
    assert seen - slack <= least_width(ring) <= seen + 1e-9


@settings(max_examples=20, derandomize=True, deadline=None)
@given(points, st.floats(0.05, 1.0))
def test_rounding_counts_as_the_drawn_arcs_do(corners, share):
    hull = MultiPoint(corners).convex_hull
    if hull.geom_type != "Polygon":
        return
    ring = list(hull.exterior.coords)[:-1]
    bends = outlines.corners(ring, 1.0)
    edges = [math.dist(a, b) for a, b in zip(ring, ring[1:] + ring[:1], strict=True)]
    reach = [math.tan(math.radians(abs(c.sweep)) / 2) for c in bends]
    most = min(edge / (reach[i] + reach[(i + 1) % len(ring)]) for i, edge in enumerate(edges))
    radius = share * most
    seen, slack = _looked(outlines.rounded(ring, radius))
    assert seen - slack - 1e-9 <= least_width(ring, radius) <= seen + 2 * outlines.ARC_OFF
