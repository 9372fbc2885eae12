"""Where outlines come near their limits: corner arcs that meet, holes that only touch."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box
from tests.build import rectangle

from bayboard.geometry import outline as outlines

few = settings(derandomize=True, max_examples=100)


@few
@given(st.floats(1, 500), st.floats(0, 360), st.floats(-1000, 1000))
def test_a_board_rounded_to_a_stadium_stays_simple(high, turn, away):
    ring = outlines.placed(rectangle(0, 0, 2 * high, high), (away, 5.0), turn)
    rounded = outlines.rounded(ring, outlines.shortest_edge(ring) / 2)
    assert Polygon(rounded).is_valid
    # a stadium: a rectangle h wide and h high between two half circles of radius h/2
    assert Polygon(rounded).area == pytest.approx(high**2 + 3.141592653589793 * (high / 2) ** 2, rel=1e-2)


@few
@given(st.floats(0.1, 500), st.floats(0, 360))
def test_a_square_rounded_all_round_is_a_circle(side, turn):
    ring = outlines.placed(rectangle(-side / 2, -side / 2, side / 2, side / 2), (0.0, 0.0), turn)
    rounded = Polygon(outlines.rounded(ring, outlines.shortest_edge(ring) / 2))
    assert rounded.is_valid
    circle = Polygon(ring).centroid.buffer(side / 2, 64)  # its chords are off by at most 0.02
    assert rounded.boundary.hausdorff_distance(circle.boundary) < 0.05


def test_holes_that_touch_leave_one_piece():
    left = outlines.with_holes(rectangle(0, 0, 9, 9), [rectangle(1, 1, 3, 3), rectangle(3, 1, 5, 3)])
    assert left.equals(box(0, 0, 9, 9) - box(1, 1, 5, 3))


@few
@given(st.floats(1e-12, 1e-8))
def test_a_speck_that_rounding_leaves_is_no_piece(gap):
    left = outlines.with_holes(rectangle(0, 0, 9, 9), [[(0, 0), (4, 0), (4, 9), (gap, 9), (0, 9 - gap)]])
    assert left.area == pytest.approx(45)


@few
@given(st.integers(3, 30), st.floats(0.01, 1000), st.booleans())
def test_a_regular_ring_has_no_fault_either_way_round(count, radius, clockwise):
    turns = [360.0 * n / count for n in range(count)]
    ring = [(radius * outlines.unit(t)[0], radius * outlines.unit(t)[1]) for t in turns]
    assert outlines.fault(ring[::-1] if clockwise else ring) is None


@few
@given(st.floats(-1000, 1000), st.floats(-1000, 1000), st.floats(0.1, 0.9), st.floats(0, 360))
def test_a_spike_is_found_at_any_slant(x, y, back, turn):
    # out to a tip and back along the same line
    tip = (300.0, 100.0)
    ring = [(0.0, 0.0), tip, (tip[0] * back, tip[1] * back), (-50.0, 200.0)]
    placed = [(float(px), float(py)) for px, py in outlines.placed(ring, (x, y), turn)]
    assert "back along itself" in (outlines.fault(placed) or "")
