"""Prisms: convex pieces that together are the outline, wherever it is turned to."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from bayboard.geometry.prism import convex_pieces, prism, prism_on, standing

L = ((0, 0), (100, 0), (100, 40), (40, 40), (40, 100), (0, 100))
U = ((0, 0), (90, 0), (90, 60), (60, 60), (60, 20), (30, 20), (30, 60), (0, 60))
COMB = (
    (0, 0),
    (70, 0),
    (70, 50),
    (60, 50),
    (60, 10),
    (40, 10),
    (40, 50),
    (30, 50),
    (30, 10),
    (10, 10),
    (10, 50),
    (0, 50),
)
OUTLINES = pytest.mark.parametrize(
    "outline", [L, L[::-1], U, COMB, ((0, 0), (50, 0), (20, 30))], ids=["L", "LR", "U", "comb", "triangle"]
)


def _is_convex(points):
    edge = np.roll(points, -1, axis=0) - points
    after = np.roll(edge, -1, axis=0)
    return np.all(edge[:, 0] * after[:, 1] - edge[:, 1] * after[:, 0] >= -1e-9)


@OUTLINES
def test_every_piece_is_convex_and_runs_counter_clockwise(outline):
    assert all(_is_convex(piece.points) for piece in convex_pieces(outline))


@OUTLINES
def test_the_pieces_are_the_whole_and_do_not_overlap(outline):
    pieces = [Polygon(piece.points) for piece in convex_pieces(outline)]
    assert sum(p.area for p in pieces) == pytest.approx(Polygon(outline).area)
    assert shapely.union_all(pieces).symmetric_difference(Polygon(outline)).area == pytest.approx(0, abs=1e-9)


@OUTLINES
def test_outer_edges_are_the_rim_and_seams_are_not(outline):
    rim = Polygon(outline).exterior
    for piece in convex_pieces(outline):
        middles = (piece.points + np.roll(piece.points, -1, axis=0)) / 2
        on_rim = shapely.distance(shapely.points(middles), rim) < 1e-9
        assert on_rim.tolist() == piece.outer.tolist()


def test_a_convex_outline_stays_whole():
    (piece,) = convex_pieces(((0, 0), (50, 0), (50, 30), (0, 30)))
    assert piece.outer.all()


def test_few_pieces_are_made_of_many_triangles():
    assert len(convex_pieces(L)) == 2
    assert len(convex_pieces(U)) == 3


@settings(max_examples=30, derandomize=True)
@given(turn=st.floats(0, 360), x=st.floats(-500, 500), y=st.floats(-500, 500))
def test_a_placed_prism_stands_where_its_outline_is(turn, x, y):
    placed = standing(L, (x, y), turn, 5, 60)
    whole = shapely.union_all([Polygon(piece.points) for piece in placed.pieces])
    assert whole.symmetric_difference(Polygon(placed.rings[0])).area == pytest.approx(0, abs=1e-6)


def test_a_prism_on_a_polygon_with_a_hole_leaves_the_hole_free():
    board = shapely.box(0, 0, 100, 100).difference(shapely.box(20, 20, 40, 40))
    pieces = [Polygon(piece.points) for piece in prism_on(board, 0, 10).pieces]
    assert shapely.union_all(pieces).symmetric_difference(board).area == pytest.approx(0, abs=1e-9)


def test_a_box_along_x_is_told_in_bay_axes():
    seat = prism([(100, 250), (400, 250), (400, 300)], -20, 900, "x")
    assert (seat.low_corner.tolist(), seat.high_corner.tolist()) == ([-20, 250, 100], [900, 300, 400])
