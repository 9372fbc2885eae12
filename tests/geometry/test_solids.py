"""Lines against solids: what is met, what is grazed, where a line goes in and out."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Polygon

from bayboard.geometry.prism import prism, standing
from bayboard.geometry.solids import blocked, blockers, grouped, inside, solids, swapped

L = ((0, 0), (100, 0), (100, 40), (40, 40), (40, 100), (0, 100))
BOX = solids([prism([(0, 0), (100, 0), (100, 60), (0, 60)], 30, 80)])


def _meets(start, end, rows=BOX):
    return bool(blocked(np.array([start], float), np.array([end], float), rows)[0])


@pytest.mark.parametrize(
    ("start", "end", "met"),
    [
        ((-10, 30, 50), (110, 30, 50), True),
        ((-10, 30, 80), (110, 30, 80), False),
        ((-10, 30, 79.99), (110, 30, 79.99), True),
        ((-10, 60, 50), (110, 60, 50), False),
        ((-10, 59.99, 50), (110, 59.99, 50), True),
        ((50, 30, 90), (50, 30, 200), False),
        ((50, 30, 90), (50, 30, 70), True),
        ((50, 30, 80), (50, 30, 200), False),
        ((50, 30, 50), (50, 30, 55), True),
        ((-10, 10, 50), (10, -10, 50), False),
        ((-10, 10.01, 50), (10.01, -10, 50), True),
    ],
    ids=[
        "through",
        "along the top",
        "just under the top",
        "along a side",
        "just inside a side",
        "over it",
        "down into it",
        "up from its top",
        "inside it",
        "touching a corner",
        "cutting a corner",
    ],
)
def test_a_line_meets_a_box_only_where_it_runs_inside(start, end, met):
    assert _meets(start, end) is met


def test_a_line_along_the_seam_of_a_bent_body_is_met():
    rows = solids([prism(L, 0, 50)])
    assert _meets((-10, 40, 20), (39, 40, 20), rows)
    assert _meets((40, -10, 20), (40, 39, 20), rows)


def test_a_line_in_the_crook_of_a_bent_body_is_free():
    rows = solids([prism(L, 0, 50)])
    assert not _meets((41, 200, 20), (41, 41, 20), rows)
    assert not _meets((40, 200, 20), (40, 41, 20), rows)


def test_a_stay_without_a_bottom_is_met_at_any_depth():
    post = solids([prism([(0, 0), (10, 0), (10, 10), (0, 10)], -np.inf, 70)])
    assert _meets((-5, 5, -9000), (15, 5, -9000), post)
    assert not _meets((-5, 5, 71), (15, 5, 71), post)


def test_a_seat_is_met_within_its_x_only():
    seat = solids([prism([(100, 250), (400, 250), (400, 300), (100, 300)], 0, 500, "x")])
    assert _meets((250, 200, 200), (250, 400, 200), seat)
    assert not _meets((501, 200, 200), (501, 400, 200), seat)
    assert not _meets((250, 200, 99), (250, 400, 99), seat)


@settings(max_examples=60, derandomize=True)
@given(
    st.tuples(*[st.floats(-150, 150)] * 4),
    st.floats(0, 360),
)
def test_in_plan_it_agrees_with_shapely(ends, turn):
    placed = standing(L, (0, 0), turn, -1, 1)
    x0, y0, x1, y1 = ends
    met = _meets((x0, y0, 0), (x1, y1, 0), solids([placed]))
    well_inside = LineString([(x0, y0), (x1, y1)]).intersects(Polygon(placed.rings[0]).buffer(-1e-4))
    well_outside = LineString([(x0, y0), (x1, y1)]).distance(Polygon(placed.rings[0])) > 0
    assert met if well_inside else not (met and well_outside)


def test_in_and_out_are_told_as_shares_of_the_line():
    into, out = inside(np.array([[-50.0, 30, 50]]), np.array([[150.0, 30, 50]]), BOX, np.array([0]))
    assert (into[0], out[0]) == (pytest.approx(0.25, abs=1e-6), pytest.approx(0.75, abs=1e-6))


def test_the_blocker_is_told_by_its_owner():
    rows = grouped([[prism(L, 0, 50)], [prism([(200, 0), (210, 0), (210, 90), (200, 90)], 0, 50)]], [7, 9])
    starts = np.array([[-10.0, 20, 10], [150, 20, 10], [150, 20, 60]])
    ends = np.array([[50.0, 20, 10], [250, 20, 10], [250, 20, 60]])
    assert blockers(starts, ends, rows).tolist() == [7, 9, -1]


def test_swapping_a_thing_leaves_the_others():
    square, bar = prism([(0, 0), (10, 0), (10, 10), (0, 10)], 0, 50), prism(L, 0, 50)
    rows = grouped([[square], [square]])
    rows = swapped(rows, 0, grouped([[bar]], [0]))
    assert sorted(set(rows.owner.tolist())) == [0, 1]
    assert _meets((20, -5, 20), (20, 200, 20), rows)
    assert _meets((-5, 5, 20), (15, 5, 20), rows)


def test_rays_in_a_crowd_are_blocked_as_one_at_a_time():
    dice = np.random.default_rng(5)
    crowd = solids(
        [standing(L, tuple(dice.uniform(-300, 300, 2)), float(t), 0, 80) for t in dice.uniform(0, 360, 20)]
    )
    starts = np.column_stack((dice.uniform(-400, 400, (300, 2)), dice.uniform(0, 200, 300)))
    ends = np.column_stack((dice.uniform(-400, 400, (300, 2)), dice.uniform(0, 500, 300)))
    whole = blocked(starts, ends, crowd)
    alone = [blocked(starts[i : i + 1], ends[i : i + 1], crowd)[0] for i in range(len(starts))]
    assert whole.tolist() == alone
    assert 20 < whole.sum() < 280


@settings(max_examples=40, derandomize=True)
@given(
    st.tuples(*[st.floats(-120, 220)] * 2, st.floats(0, 120)),
    st.tuples(*[st.floats(-120, 220)] * 2, st.floats(0, 120)),
)
def test_a_ray_agrees_with_many_points_along_it(start, end):
    rows = solids([prism(L, 10, 60)])
    shares = np.linspace(0, 1, 2001)[:, None]
    points = np.array(start) + shares * (np.array(end) - np.array(start))
    within = shapely.contains_properly(Polygon(L), shapely.points(points[:, :2]))
    if (within & (points[:, 2] > 10.001) & (points[:, 2] < 59.999)).any():
        assert _meets(start, end, rows)
