"""Outlines grown by tangents: never nearer than the growth, and never much farther."""

from math import cos, pi, radians

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon
from tests.plain.router import swollen

from bayboard.routing.grown import grown, polygons

BOX = ((-50.0, -30.0), (50.0, -30.0), (50.0, 30.0), (-50.0, 30.0))
EL = ((0.0, 0.0), (90.0, 0.0), (90.0, 40.0), (40.0, 40.0), (40.0, 80.0), (0.0, 80.0))
ARROW = ((0.0, 0.0), (80.0, 30.0), (0.0, 60.0), (20.0, 30.0))


def _room(shape):
    return shapely.union_all([Polygon(corners).buffer(0) for corners in shape.rows.corners])


@pytest.mark.parametrize("ring", [BOX, EL, ARROW, EL[::-1]])
@pytest.mark.parametrize("growth", [2.0, 6.0])
def test_the_pieces_are_what_plain_tangents_make(ring, growth):
    room, plain = _room(grown((ring,), growth)), swollen(Polygon(ring), growth)
    assert room.symmetric_difference(plain).area < 1e-6


@pytest.mark.parametrize("ring", [BOX, EL, ARROW])
def test_grown_lies_between_the_round_offset_and_a_twelfth_more(ring):
    room = _room(grown((ring,), 6.0))
    assert room.buffer(1e-6).covers(Polygon(ring).buffer(6.0, quad_segs=64))
    # tangents that turn 45 degrees meet at 1 / cos 22.5 deg = 1.0824 of the radius
    assert Polygon(ring).buffer(6.0 / cos(radians(22.5)) + 1e-2, quad_segs=64).covers(room)


def test_a_rectangle_becomes_an_octagon_and_a_reflex_corner_gives_none():
    assert len(grown((BOX,), 4.0).corners.at) == 8
    assert len(grown((EL,), 4.0).corners.at) == 10


def test_the_neighbours_of_a_corner_lie_along_the_rim():
    corners = grown((BOX,), 4.0).corners
    rim = swollen(Polygon(BOX), 4.0).boundary
    for side in (corners.before, corners.after):
        half = (corners.at + side) / 2
        assert max(rim.distance(shapely.Point(p)) for p in half) < 1e-9


@settings(derandomize=True, max_examples=60, deadline=None)
@given(
    angles=st.lists(st.integers(0, 359), min_size=3, max_size=12, unique=True),
    growth=st.sampled_from([0.5, 3.0, 11.0]),
)
def test_any_convex_outline_keeps_its_distance(angles, growth):
    ring = tuple((60 * cos(radians(a)), 40 * np.sin(radians(a))) for a in sorted(angles))
    bare = Polygon(ring)
    if bare.area > 1:
        room = _room(grown((ring,), growth))
        assert room.boundary.distance(bare) >= growth - 1e-6
        assert shapely.hausdorff_distance(room, bare) <= growth / cos(pi / 8) + 1e-6


def test_very_many_points_may_be_drawn_with_fewer_but_never_nearer():
    ring = tuple((100 * cos(2 * pi * k / 1000), 70 * np.sin(2 * pi * k / 1000)) for k in range(1000))
    exact, coarse = grown((ring,), 5.0), grown((ring,), 5.0, 0.25)
    assert len(coarse.corners.at) < len(exact.corners.at) / 5
    assert _room(coarse).boundary.distance(Polygon(ring)) >= 5.0 - 1e-6
    assert shapely.hausdorff_distance(_room(coarse), _room(exact)) < 0.6


def test_polygons_give_the_outward_corners_of_rings_and_holes():
    frame = Polygon(BOX, [[(-20, -10), (20, -10), (20, 10), (-20, 10)]])
    shape = polygons(frame)
    # the room's corners point outward at its rim; round the hole they point into it
    assert len(shape.corners.at) == 4
    assert _room(shape).symmetric_difference(frame).area < 1e-9
