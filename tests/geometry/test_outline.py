"""Outlines: turned exactly, rounded within a micrometre, faults named."""

from math import pi

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon
from tests.build import rectangle

from bayboard.geometry import outline

SQUARE = [(0, 0), (100, 0), (100, 100), (0, 100)]
ELL = [(0, 0), (300, 0), (300, 100), (100, 100), (100, 200), (0, 200)]

small = settings(derandomize=True, max_examples=60, deadline=None)


@pytest.mark.parametrize("turn", [0, 90, 180, 270, 360, -90])
def test_a_quarter_turn_is_exact(turn):
    c, s = outline.unit(turn)
    assert {abs(c), abs(s)} == {0.0, 1.0}


@small
@given(st.floats(-720, 720), st.floats(-500, 500), st.floats(-500, 500))
def test_placing_keeps_area_and_moves_the_middle(turn, x, y):
    ring = outline.placed(ELL, (x, y), turn)
    assert Polygon(ring).area == pytest.approx(Polygon(ELL).area)
    assert outline.signed_area(ring) == pytest.approx(outline.signed_area(ELL))


@pytest.mark.parametrize("ring", [SQUARE, SQUARE[::-1]], ids=["counter-clockwise", "clockwise"])
def test_rounding_a_square_takes_off_four_corners(ring):
    area = Polygon(outline.rounded(ring, 20)).area
    exact = 100 * 100 - (4 - pi) * 20**2  # a square less four corners of radius 20: plane geometry
    assert area == pytest.approx(exact, abs=0.1)


def test_only_convex_corners_are_rounded():
    kinds = [corner.sweep for corner in outline.corners(ELL, 10)]
    assert [round(sweep) for sweep in kinds] == [90, 90, 90, 0, 90, 90]


def test_an_arc_lies_within_a_micrometre_of_its_circle():
    corner = outline.corners(SQUARE, 30)[1]
    points = corner.points()
    middles = (points[1:] + points[:-1]) / 2
    off = np.hypot(*(middles - corner.centre).T) - 30
    assert np.abs(off).max() <= outline.ARC_OFF


def test_an_arc_starts_and_ends_on_the_edges():
    corner = outline.corners(SQUARE, 30)[1]
    assert corner.points()[[0, -1]] == pytest.approx(np.array([[70, 0], [100, 30]]))


def test_holes_are_taken_out():
    assert outline.with_holes(SQUARE, [rectangle(10, 10, 30, 30)]).area == pytest.approx(9600)


def test_holes_that_cut_a_ring_in_two_are_refused():
    with pytest.raises(ValueError, match="2 pieces"):
        outline.with_holes(SQUARE, [rectangle(40, -1, 60, 101)])


FAULTS = {
    "two points": ([(0, 0), (1, 0)], "needs 3"),
    "closed by hand": ([*SQUARE, (0, 0)], "first point"),
    "a point twice": ([(0, 0), (0, 0), (1, 0), (1, 1)], "twice"),
    "no area": ([(0, 0), (50, 0), (100, 0)], "no area|back along itself"),
    "a bow-tie": ([(0, 0), (100, 100), (100, 0), (0, 100)], "no area|crosses"),
    "a lopsided bow-tie": ([(0, 0), (100, 100), (100, 0), (0, 50)], "crosses"),
    "a spike": (
        [(0, 0), (100, 0), (100, 100), (100, 150), (100, 100), (0, 100)],
        "crosses|touches|back along itself",
    ),
    "a pinch": (
        [(0, 0), (50, 50), (100, 0), (100, 100), (50, 50), (0, 100)],
        "crosses|touches|back along itself",
    ),
}


@pytest.mark.parametrize(("ring", "says"), FAULTS.values(), ids=FAULTS)
def test_a_faulty_outline_is_named(ring, says):
    import re

    assert re.search(says, outline.fault(ring) or "")


@pytest.mark.parametrize("ring", [SQUARE, SQUARE[::-1], ELL])
def test_a_simple_outline_has_no_fault(ring):
    assert outline.fault(ring) is None
