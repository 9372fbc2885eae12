"""Depths and farthest points against the closed formula of a rounded box, and against dense sampling."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.build import rectangle

from bayboard.geometry.rims import depths, farthest_out, rim, rim_depths

WIDE, HIGH, ROUND = 1000.0, 400.0, 50.0


def _rounded_box_depth(x, y):
    """Return the depth in a rounded box: the usual signed distance formula, from memory."""
    across, along = abs(x - WIDE / 2) - WIDE / 2 + ROUND, abs(y - HIGH / 2) - HIGH / 2 + ROUND
    return ROUND - np.hypot(max(across, 0), max(along, 0)) - min(max(across, along), 0)


def near_rim(far):
    at_rim = st.builds(
        lambda edge, off: edge + off, st.sampled_from([0.0, 50.0, far - 50, far]), st.floats(-1, 1)
    )
    return st.one_of(at_rim, st.floats(-200, far + 200))


@settings(max_examples=200, derandomize=True, deadline=None)
@given(x=near_rim(WIDE), y=near_rim(HIGH))
def test_the_depth_in_a_rounded_board_is_exact(x, y):
    board = rim(rectangle(0, 0, WIDE, HIGH), ROUND)
    assert rim_depths(np.array([[x, y]]), board)[0] == pytest.approx(_rounded_box_depth(x, y), abs=1e-9)


def test_depth_is_the_same_whichever_way_the_outline_runs():
    points = np.random.default_rng(1).uniform(-100, 1100, (200, 2))
    ring = rectangle(0, 0, WIDE, HIGH)
    assert rim_depths(points, rim(ring, ROUND)) == pytest.approx(rim_depths(points, rim(ring[::-1], ROUND)))


def test_a_corner_that_turns_inward_is_not_rounded():
    board = rim([(0, 0), (400, 0), (400, 200), (200, 200), (200, 400), (0, 400)], 30)
    assert rim_depths(np.array([[190.0, 190.0]]), board)[0] == pytest.approx(np.hypot(10, 10))


def test_corners_whose_arcs_meet_leave_no_edge_between():
    disc = rim(rectangle(0, 0, 100, 100), 50)  # a whole circle
    points = np.random.default_rng(2).uniform(-20, 120, (300, 2))
    expected = 50 - np.hypot(*(points - 50).T)
    assert rim_depths(points, disc) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(
    ("at", "deep"),
    [((500, 200), -20), ((480, 200), 0), ((470, 200), 10), ((500, 225), 5)],
    ids=["inside the hole", "on its edge", "beside it", "over it"],
)
def test_a_hole_is_outside(at, deep):
    board = rim(rectangle(0, 0, WIDE, HIGH), 0, [rectangle(480, 180, 520, 220)])
    assert rim_depths(np.array([at], dtype=float), board)[0] == pytest.approx(deep)


def test_depths_agree_with_shapely_inside_outside_and_on_the_rim():
    rng = np.random.default_rng(3)
    shapes = [shapely.MultiPoint(rng.uniform(0, 300, (8, 2))).convex_hull for _ in range(10)]
    points = np.vstack([rng.uniform(-50, 350, (60, 2)), *[s.exterior.coords[:-1] for s in shapes]])
    found = depths(points, shapes)
    for j, shape in enumerate(shapes):
        for i, point in enumerate(map(shapely.Point, points)):
            away = shape.exterior.distance(point)
            assert found[i, j] == pytest.approx(away if shape.covers(point) else -away)


def test_no_points_and_no_shapes_have_no_depths():
    assert depths(np.empty((0, 2)), [shapely.box(0, 0, 1, 1)]).shape == (0, 1)
    assert depths(np.array([[0.0, 0.0]]), []).shape == (1, 0)
    assert rim_depths(np.empty((0, 2)), rim(rectangle(0, 0, 1, 1))).shape == (0,)


def _sampled(ring, of, step=0.2):
    line = shapely.linearrings(ring)
    points = shapely.line_interpolate_point(line, np.arange(0.0, line.length, step))
    return shapely.distance(points, of.shape).max()


def test_the_farthest_point_of_random_outlines_is_found():
    rng = np.random.default_rng(4)
    holes = [rectangle(300, 100, 380, 160), [(600, 90), (700, 200), (640, 330), (560, 210)]]
    board = rim(rectangle(0, 0, WIDE, HIGH), ROUND, holes)
    rings = []
    for _ in range(40):
        middle, turn = rng.uniform((0, 0), (WIDE, HIGH)), rng.uniform(0, 6.3)
        c, s = np.cos(turn), np.sin(turn)
        corners = np.array(rectangle(-rng.uniform(5, 150), -40, 90, rng.uniform(5, 90)))
        rings.append(corners @ np.array([[c, s], [-s, c]]) + middle)
    found = farthest_out(rings, board)
    for ring, far in zip(rings, found, strict=True):
        assert far == pytest.approx(_sampled(ring, board), abs=0.11)  # half a step short at most
    assert 10 < np.count_nonzero(found > 0.01) < 40


def test_the_farthest_point_may_lie_in_the_middle_of_an_edge():
    board = rim(rectangle(0, 0, WIDE, HIGH), 0, [rectangle(180, 100, 220, 300)])
    assert farthest_out([np.array(rectangle(150, 170, 250, 230))], board)[0] == pytest.approx(20, abs=1e-5)


def test_beyond_a_rounded_corner_the_distance_is_to_the_true_arc():
    board = rim(rectangle(0, 0, WIDE, HIGH), ROUND)
    assert farthest_out([np.array(rectangle(0, 0, 100, 60))], board)[0] == pytest.approx(
        ROUND * 2**0.5 - ROUND, abs=1e-9
    )


def test_rows_of_outlines_are_measured_each_on_its_own():
    board = rim(rectangle(0, 0, WIDE, HIGH))
    rings = [np.array(rectangle(x, 10, x + 50, 60)) for x in (-30, 100, 975, -5)]
    assert farthest_out(rings, board).tolist() == pytest.approx([30, 0, 25, 5])
    assert farthest_out([], board).shape == (0,)


def test_a_hole_inside_a_rounded_corner_is_measured_by_its_own_edges():
    board = rim(rectangle(0, 0, WIDE, HIGH), ROUND, [rectangle(25, 25, 45, 45)])
    across = np.array(
        [(30, 35), (300, 35), (300, 200), (30, 200)]
    )  # a corner in the hole, running out at x 45
    assert farthest_out([across], board)[0] == pytest.approx(10, abs=1e-4)  # (35, 35), its middle
