"""Bodies in rows against shapely's own rectangle, and against distances worked edge by edge."""

import numpy as np
import pytest
import shapely
from tests.convex import convex

from bayboard.geometry.crowd import (
    box_gaps,
    crowd,
    gaps,
    heights_meet,
    middle_between,
    overlaps,
)
from bayboard.geometry.slim import smaller_sides

ANY_Z = (0.0, 10.0)


def _all(a, b):
    return np.ones((len(a), len(b)), dtype=bool)


def _edge_by_edge(a, b):
    """Return the distance of two disjoint polygons: least from a corner to an edge."""

    def corners_to_edges(p, q):
        points, ring = np.array(p.exterior.coords)[:-1], np.array(q.exterior.coords)
        head, way = ring[:-1], np.diff(ring, axis=0)
        to = points[:, None] - head
        share = np.clip((to * way).sum(2) / (way * way).sum(1), 0, 1)
        return np.hypot(*np.moveaxis(to - share[..., None] * way, 2, 0)).min()

    return min(corners_to_edges(a, b), corners_to_edges(b, a))


def test_gaps_are_the_distances_of_corners_from_edges():
    rng = np.random.default_rng(1)
    shapes = convex(rng, 30, spread=400)
    rows = crowd(shapes, [ANY_Z] * 30)
    found = gaps(rows, rows, _all(rows, rows), within=1e6)
    for i, a in enumerate(shapes):
        for j, b in enumerate(shapes):
            expected = 0.0 if a.intersects(b) else _edge_by_edge(a, b)
            assert found[i, j] == pytest.approx(expected, abs=1e-9)


def test_gaps_beyond_the_limit_are_not_told():
    rows = crowd(
        [shapely.box(0, 0, 10, 10), shapely.box(15, 0, 20, 10), shapely.box(40, 0, 50, 10)], [ANY_Z] * 3
    )
    assert gaps(rows, rows, _all(rows, rows), within=15.0)[0].tolist() == [0.0, 5.0, np.inf]


def test_a_pair_not_asked_about_has_no_gap():
    rows = crowd([shapely.box(0, 0, 10, 10)] * 2, [ANY_Z] * 2)
    assert np.isinf(gaps(rows, rows, ~_all(rows, rows), within=15.0)).all()


@pytest.mark.parametrize(
    ("low", "meets"),
    [(9.9, True), (10.0, False), (10.0 - 1e-12, False), (11.0, False)],
    ids=["a hair shared", "face to face", "less than floating point tells", "apart"],
)
def test_heights_meet_when_they_share_more_than_nothing(low, meets):
    a = crowd([shapely.box(0, 0, 1, 1)], [(0.0, 10.0)])
    b = crowd([shapely.box(0, 0, 1, 1)], [(low, 20.0)])
    assert heights_meet(a, b).tolist() == [[meets]]


def test_a_stay_without_a_bottom_meets_whatever_is_below_its_top():
    stay = crowd([shapely.box(0, 0, 1, 1)], [(-np.inf, 30.0)])
    gear = crowd([shapely.box(0, 0, 1, 1)] * 2, [(-500.0, -400.0), (30.0, 40.0)])
    assert heights_meet(stay, gear).tolist() == [[True, False]]


def test_overlaps_of_random_shapes_are_those_of_their_shared_area():
    rng = np.random.default_rng(3)
    a, b = convex(rng, 15), convex(rng, 15)
    found = overlaps(crowd(a, [ANY_Z] * 15), crowd(b, [ANY_Z] * 15), np.ones((15, 15), dtype=bool), 0.01)
    for i, one in enumerate(a):
        for j, other in enumerate(b):
            shared = one.intersection(other)
            assert found[i, j] == (smaller_sides([shared])[0] if shared.area > 0.01 else 0.0)
    assert 20 < np.count_nonzero(found) < 225


def test_edges_shared_after_any_turn_are_no_overlap():
    for turn in range(0, 360, 3):
        both = [
            shapely.affinity.rotate(shapely.box(x, 0, x + 50, 30), turn, origin=(500, 200)) for x in (0, 50)
        ]
        rows = crowd(both, [ANY_Z] * 2)
        assert overlaps(rows, rows, _all(rows, rows), 0.01)[0, 1] == 0.0
        assert gaps(rows, rows, _all(rows, rows), 10.0)[0, 1] == pytest.approx(0.0, abs=1e-9)


def test_the_measures_do_not_depend_on_which_crowd_comes_first():
    rng = np.random.default_rng(4)
    a, b = (crowd(convex(rng, 12), [ANY_Z] * 12) for _ in range(2))
    asked = np.ones((12, 12), dtype=bool)
    assert np.array_equal(gaps(a, b, asked, 50.0), gaps(b, a, asked, 50.0).T)
    assert np.allclose(overlaps(a, b, asked, 0.01), overlaps(b, a, asked, 0.01).T)


def test_box_gaps_are_never_over_the_true_distance():
    rng = np.random.default_rng(5)
    rows = crowd(convex(rng, 20, spread=300), [ANY_Z] * 20)
    assert (box_gaps(rows, rows) <= gaps(rows, rows, _all(rows, rows), 1e6) + 1e-9).all()


@pytest.mark.parametrize("apart", [0.0, 6.0, 500.0])
def test_the_middle_of_facing_edges_is_half_way_along_them(apart):
    found = middle_between(shapely.box(0, 0, 10, 100), shapely.box(10 + apart, 20, 30 + apart, 60))
    assert found == pytest.approx((10 + apart / 2, 40), abs=2.0)


def test_an_empty_crowd_meets_nothing():
    nothing, one = crowd([], []), crowd([shapely.box(0, 0, 1, 1)], [ANY_Z])
    assert gaps(nothing, one, _all(nothing, one), 10.0).shape == (0, 1)
    assert overlaps(one, nothing, _all(one, nothing), 0.01).shape == (1, 0)
