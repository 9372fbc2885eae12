"""How much of a path lies where it must not, worked by hand and against shapely."""

from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Polygon

from bayboard.geometry.prism import prism, standing
from bayboard.geometry.solids import grouped
from bayboard.geometry.stretches import stretches
from bayboard.geometry.trespass import (
    along,
    clipped,
    inside_bodies,
    inside_circles,
    middle,
    off_board,
    on_board,
    total,
)

L = ((-50, -40), (50, -40), (50, 0), (0, 0), (0, 40), (-50, 40))
BOX = [(0, 0), (100, 0), (100, 60), (0, 60)]
BOARD = shapely.box(0, 0, 1000, 400)


def _inside(path, prisms, z=(30.0, 36.0), owners=None):
    rows = grouped([[p] for p in prisms], owners or list(range(len(prisms))))
    found = inside_bodies(stretches([np.array(path, float)]), np.array([z]), rows)
    return {f.owner: (total(f.parts), f.parts) for f in found}


def test_the_part_inside_a_body_is_told_along_the_path():
    length, parts = _inside([(-50, 30), (150, 30)], [prism(BOX, 30, 80)])[0]
    assert length == pytest.approx(100, abs=1e-5)
    assert parts[0] == pytest.approx((50, 150), abs=1e-5)


@pytest.mark.parametrize(
    ("z", "meets"),
    [((20, 30), False), ((20, 30.01), True), ((80, 86), False), ((79.99, 86), True), ((30, 30), False)],
)
def test_only_what_shares_some_height_counts(z, meets):
    assert bool(_inside([(-50, 30), (150, 30)], [prism(BOX, 30, 80)], z)) is meets


def test_a_path_along_an_edge_is_not_inside():
    assert _inside([(-50, 60), (150, 60)], [prism(BOX, 30, 80)]) == {}


def test_bodies_of_one_owner_count_once():
    wider = [prism(BOX, 30, 80), prism([(50, 0), (150, 0), (150, 60), (50, 60)], 30, 50)]
    assert _inside([(-50, 30), (250, 30)], wider, owners=[4, 4])[4][0] == pytest.approx(150, abs=1e-5)


def test_a_body_without_a_bottom_is_met():
    assert _inside([(-50, 30), (150, 30)], [prism(BOX, -np.inf, 31)])[0][0] == pytest.approx(100, abs=1e-5)


@settings(max_examples=40, derandomize=True)
@given(st.lists(st.tuples(st.floats(-90, 90), st.floats(-90, 90)), min_size=2, max_size=4), st.floats(0, 360))
def test_it_agrees_with_shapely(path, turn):
    placed = standing(L, (0, 0), turn, 0, 50)
    expected = sum(
        LineString(pair).intersection(Polygon(placed.rings[0]).buffer(-1e-6)).length
        for pair in pairwise(path)
        if pair[0] != pair[1]
    )
    assert _inside(path, [placed]).get(0, (0.0,))[0] == pytest.approx(expected, abs=1e-3)


@pytest.mark.parametrize(("off", "chord"), [(0, 18), (5, 2 * np.sqrt(56)), (9, 0), (20, 0)])
def test_the_chord_of_a_washer(off, chord):
    found = inside_circles(
        stretches([np.array([(-50.0, off), (50, off)])]), np.array([(0.0, 0.0)]), np.array([9.0])
    )
    assert sum(total(f.parts) for f in found) == pytest.approx(chord)


def test_a_path_that_ends_in_a_circle_is_inside_to_its_end():
    (found,) = inside_circles(
        stretches([np.array([(-50.0, 0), (0, 0)])]), np.array([(0.0, 0.0)]), np.array([9.0])
    )
    assert found.parts == [pytest.approx((41, 50))]


def test_parts_are_clipped_and_empty_ones_dropped():
    assert clipped([(0, 10), (20, 30)], 5, 20) == [(5, 10)]


@pytest.mark.parametrize(
    ("first", "last", "length"), [(False, False, 130), (True, False, 100), (False, True, 30), (True, True, 0)]
)
def test_off_the_board_but_for_excused_ends(first, last, length):
    path = np.array([(-30.0, 100), (50, 100), (50, -100)])
    assert off_board(path, BOARD, first, last).length == pytest.approx(length)


def test_on_its_edge_is_on_the_board():
    assert on_board((0, 100), BOARD)
    assert not on_board((-0.001, 100), BOARD)
    assert off_board(np.array([(0.0, 100), (0, 300)]), BOARD, False, False).length == 0


def test_the_mark_of_what_is_off_stands_on_its_longest_part():
    assert middle(shapely.MultiLineString([[(0, 0), (1, 0)], [(10, 0), (20, 0)]])) == (15, 0)
    assert along(np.array([(0.0, 0), (30, 40), (30, 100)]), 60) == (30, 50)
