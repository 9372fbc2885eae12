"""The way out of a plug against rays cast one by one, and the band of a lead against its area."""

import numpy as np
import pytest
import shapely
from shapely import LineString, Polygon
from tests.build import rectangle

from bayboard.geometry.crowd import filled
from bayboard.geometry.strips import band, free_ahead, share_area, strips

EAST = np.array([[1.0, 0.0]])


def _free(solid, start=(0.0, 0.0), way=EAST, wide=14.0, far=100.0):
    found = free_ahead(
        np.array([start]),
        way,
        np.array([wide]),
        np.array([far]),
        filled([np.array(solid)]),
        np.ones((1, 1), bool),
    )
    return found[0, 0]


@pytest.mark.parametrize(
    ("solid", "free"),
    [
        (rectangle(30, -50, 60, 50), 30),
        (rectangle(-30, -50, 60, 50), 0),
        (rectangle(-60, -50, 0, 50), np.inf),
        (rectangle(30, 7, 60, 50), np.inf),
        (rectangle(30, 6.9, 60, 50), 30),
        (rectangle(100, -50, 160, 50), np.inf),
        ([(20, 0), (60, 40), (60, -40)], 20),
        ([(20, 37), (20, 50), (60, 50), (60, -3)], 50),
    ],
    ids=["ahead", "around the port", "behind", "beside", "a hair in", "beyond", "a tip", "a slanted edge"],
)
def test_the_free_way_out_of_a_plug(solid, free):
    assert _free(solid) == pytest.approx(free)


def test_a_solid_bent_round_the_port_counts_where_it_comes_next():
    hook = [(-40, -40), (50, -40), (50, 40), (40, 40), (40, -30), (-40, -30)]
    assert _free(hook) == pytest.approx(40)


def test_random_solids_are_met_where_rays_meet_them():
    rng = np.random.default_rng(11)
    for _ in range(50):
        turn = rng.uniform(0, 2 * np.pi)
        way = np.array([np.cos(turn), np.sin(turn)])
        aside = np.array([-way[1], way[0]])
        solid = shapely.MultiPoint(rng.uniform(-80, 80, (5, 2))).convex_hull
        if not isinstance(solid, Polygon):
            continue
        rays = [LineString([aside * t, aside * t + way * 150]) for t in np.linspace(-6.999, 6.999, 401)]
        met = [p for ray in rays if not (p := ray.intersection(solid)).is_empty]
        near = min((float((shapely.get_coordinates(p) @ way).min()) for p in met), default=np.inf)
        found = _free(np.array(solid.exterior.coords)[:-1], way=way[None], far=150.0)
        if np.isfinite(near):
            assert found <= near + 1e-9
            assert found == pytest.approx(near, abs=1.0)  # between two rays a tip may come nearer
        else:
            assert found == np.inf or found > 0


def test_turning_everything_changes_nothing():
    solid = np.array([(20.0, 37), (20, 50), (60, 50), (60, -3)])
    for turn in np.radians(np.arange(0, 360, 15)):
        c, s = np.cos(turn), np.sin(turn)
        assert _free(solid @ np.array([[c, s], [-s, c]]), way=np.array([[c, s]])) == pytest.approx(50)


def test_a_strip_starts_at_the_middle_of_its_near_side():
    ring = strips(np.array([[10.0, 5.0]]), EAST, np.array([14.0]), np.array([30.0]))[0]
    assert Polygon(ring).equals(shapely.box(10, -2, 40, 12))


def test_many_strips_and_solids_at_once_are_as_each_alone():
    rng = np.random.default_rng(12)
    starts, turn = rng.uniform(0, 300, (12, 2)), rng.uniform(0, 6.3, 12)
    ways, wide = np.column_stack((np.cos(turn), np.sin(turn))), rng.uniform(5, 30, 12)
    corners = rng.uniform(0, 300, (8, 2))
    solids = [np.array(rectangle(x, y, x + 60, y + 40)) for x, y in corners]
    together = free_ahead(starts, ways, wide, np.full(12, 100.0), filled(solids), np.ones((12, 8), bool))
    alone = [[_free(s, starts[i], ways[i : i + 1], wide[i]) for s in solids] for i in range(12)]
    assert np.array_equal(together, np.array(alone))
    assert np.isfinite(together).sum() > 5


def test_areas_are_shared_by_more_than_a_touch():
    shapes = filled([np.array(rectangle(0, 0, 10, 10))])
    others = filled([np.array(rectangle(x, 0, x + 10, 10)) for x in (10, 9.9, 40)])
    assert share_area(shapes, others, np.ones((1, 3), bool)).tolist() == [[False, True, False]]


def test_a_band_is_as_wide_as_its_lead_and_ends_flat():
    (ring,) = band(np.array([[0.0, 0.0], [100.0, 0.0]]), 6.0)
    assert Polygon(ring).equals(shapely.box(0, -3, 100, 3))


def test_the_band_of_a_bent_lead_covers_its_length_times_its_width():
    (ring,) = band(np.array([[0.0, 0.0], [100.0, 0.0], [100.0, 80.0]]), 6.0)
    # the bend: a square of 3 x 3 inside is covered twice, a quarter disc outside is added
    assert Polygon(ring).area == pytest.approx(180 * 6 - 9 + np.pi * 9 / 4, abs=0.01)


def test_a_lead_without_length_covers_nothing():
    assert band(np.array([[5.0, 5.0], [5.0, 5.0]]), 6.0) == []
