"""Stretches against convex pieces, held to shapely."""

from math import cos, pi, sin

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon

from bayboard.geometry.prism import Piece, convex_pieces
from bayboard.routing.walls import crossings, holding, moved, together, walls

BOX = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]
EL = [(0.0, 0.0), (20.0, 0.0), (20.0, 8.0), (8.0, 8.0), (8.0, 20.0), (0.0, 20.0)]
RIMS = st.sampled_from([0.0, 4.0, 8.0, 10.0, 14.0, 20.0, 30.0, -5.0])
ANYWHERE = st.floats(-10, 30).map(lambda x: round(x, 3))
POINT = st.tuples(st.one_of(RIMS, ANYWHERE), st.one_of(RIMS, ANYWHERE))


def _walls(ring):
    return walls(convex_pieces(tuple(ring)))


def _meets(a, b, rows, **free):
    return len(crossings(np.array([a], float), np.array([b], float), rows, **free)[0]) > 0


@settings(derandomize=True, max_examples=300, deadline=None)
@given(a=POINT, b=POINT, ring=st.sampled_from([BOX, EL]))
def test_a_stretch_meets_a_shape_where_shapely_says_it_runs_inside(a, b, ring):
    inside = LineString([a, b]).intersection(Polygon(ring).buffer(-1e-6, join_style="mitre")).length
    if not 1e-7 < inside < 1e-4:
        assert _meets(a, b, _walls(ring)) == (inside > 1e-4)


@pytest.mark.parametrize("ring", [BOX, EL])
def test_a_stretch_along_any_edge_is_free(ring):
    rows = _walls(ring)
    for a, b in zip(ring, [*ring[1:], ring[0]], strict=True):
        assert not _meets(a, b, rows)
        assert not _meets(b, a, rows)


def test_a_stretch_along_the_seam_between_two_pieces_is_not_free():
    assert _meets((1, 1), (8, 8), _walls(EL))
    assert _meets((0, 0), (8, 8), _walls(EL))


def test_length_inside_near_an_end_can_be_excused():
    rows = _walls(BOX)
    assert not _meets((5, 5), (20, 5), rows, free=(5.0, 0.0))
    assert _meets((5, 5), (20, 5), rows, free=(4.9, 0.0))
    assert not _meets((20, 5), (5, 5), rows, free=(0.0, 5.0))


def test_each_owner_is_told_once_for_a_stretch():
    rows = together([_walls(BOX), _walls(EL)], [3, 7])
    stretch, owner = crossings(np.array([[-1.0, 4.0]]), np.array([[30.0, 4.0]]), rows)
    assert list(zip(stretch, owner, strict=True)) == [(0, 3), (0, 7)]


def test_a_piece_of_many_edges_is_cut_and_stays_whole():
    ring = np.array([(9 * cos(2 * pi * k / 60), 9 * sin(2 * pi * k / 60)) for k in range(60)])
    rows = walls([Piece(ring, np.ones(60, dtype=bool))])
    assert len(rows) > 5
    shape = Polygon(ring)
    for angle in np.linspace(0, 6, 40):
        a, b = np.array([cos(angle), sin(angle)]) * 20, np.array([cos(angle + 2.2), sin(angle + 2.2)]) * 20
        assert _meets(a, b, rows) == shapely.intersects(LineString([a, b]), shape.buffer(-1e-4))


@settings(derandomize=True, max_examples=100, deadline=None)
@given(p=POINT, ring=st.sampled_from([BOX, EL]))
def test_a_point_is_held_strictly_inside(p, ring):
    edge = Polygon(ring).boundary.distance(Point(p))
    if edge == 0 or edge > 1e-5:
        held = len(holding(np.array([p], float), _walls(ring))[0]) > 0
        assert held == (Polygon(ring).contains(Point(p)) and edge > 0)


def test_moved_walls_stand_where_the_outline_does():
    rows = moved(_walls(BOX), (100.0, 50.0), 90.0)
    assert _meets((85, 55), (105, 55), rows)
    assert not _meets((85, 55), (90, 55), rows)
    assert _meets((89, 55), (91, 55), rows)
