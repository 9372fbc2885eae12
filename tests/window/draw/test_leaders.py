"""Leaders: upright from the tag, one bend, ending at the mark; what they meet is checked against shapely."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, box

from bayboard.window.draw.leaders import AIR, INWARD, clear_way, meets, more_ways, ways

FEW = settings(derandomize=True, max_examples=80, deadline=None)
TAG = np.array([[300.0, 20.0, 420.0, 44.0]])
NONE = np.empty((0, 4))
pixel = st.integers(0, 400).map(float)
edges = st.tuples(pixel, pixel, st.integers(1, 90), st.integers(1, 60)).map(
    lambda b: (b[0], b[1], b[0] + b[2], b[1] + b[3])
)


@FEW
@given(st.floats(0, 900), st.floats(60, 560), st.sampled_from([ways, more_ways]))
def test_a_leader_leaves_its_tag_upright_bends_once_and_ends_at_the_mark(x, y, found):
    for line in found(TAG, (x, y))[0]:
        assert tuple(line[2]) == (x, y)
        assert line[0, 0] == line[1, 0]
        assert TAG[0, 0] + INWARD <= line[0, 0] <= TAG[0, 2] - INWARD
        assert line[0, 1] == TAG[0, 3]  # the mark lies below


def test_a_leader_leaves_on_the_side_of_its_mark():
    low = np.array([[300.0, 400.0, 420.0, 424.0]])
    assert (ways(low, (350.0, 100.0))[0, :, 0, 1] == 400.0).all()


@FEW
@given(st.lists(edges, max_size=6), st.tuples(pixel, st.integers(60, 400).map(float)))
def test_what_is_found_clear_is_clear_for_shapely_too(boxes, mark):
    found = clear_way(TAG, mark, np.array(boxes).reshape(-1, 4), [])
    solid = [box(*b) for b in boxes if not (b[0] <= mark[0] <= b[2] and b[1] <= mark[1] <= b[3])]
    if found is not None:
        assert not any(LineString(found[1]).intersects(b) for b in solid)
        return
    grown = [b.buffer(AIR, join_style="mitre") for b in solid]
    lines = [LineString(line) for many in (ways, more_ways) for line in many(TAG, mark)[0]]
    assert all(any(line.intersects(b) for b in grown) for line in lines)


@FEW
@given(
    st.tuples(pixel, st.integers(60, 400).map(float)),
    st.lists(st.tuples(pixel, pixel), min_size=2, max_size=3),
)
def test_no_leader_crosses_another_by_shapelys_measure(mark, other):
    found = clear_way(TAG, mark, NONE, [tuple(other)])
    if found is not None:
        assert not LineString(found[1]).crosses(LineString(other))


def test_the_first_tag_with_a_clear_leader_is_taken():
    tags = np.array([[300.0, 20.0, 420.0, 44.0], [500.0, 20.0, 620.0, 44.0]])
    wall = np.array([[250.0, 60.0, 450.0, 80.0]])
    assert clear_way(tags, (560.0, 300.0), wall, [])[0] == 1
    assert clear_way(tags, (560.0, 300.0), NONE, [])[0] == 0


def test_a_leader_straight_down_has_no_bend():
    assert clear_way(TAG, (350.0, 300.0), NONE, []) == (0, ((350.0, 44.0), (350.0, 300.0)))


@pytest.mark.parametrize("number", [(340.0, 290.0, 360.0, 310.0), (0.0, 0.0, 900.0, 900.0)])
def test_a_mark_that_lies_on_a_number_is_reached_all_the_same(number):
    assert clear_way(TAG, (350.0, 300.0), np.array([number]), [])[1][-1] == (350.0, 300.0)


def test_where_nothing_is_clear_there_is_no_leader():
    shut = np.array([[-900.0, 100.0, 1900.0, 120.0]])
    assert clear_way(TAG, (350.0, 300.0), shut, []) is None
    assert clear_way(NONE, (350.0, 300.0), NONE, []) is None


def test_a_stretch_is_told_from_one_beside_it():
    line = clear_way(TAG, (100.0, 300.0), np.array([[190.0, 150.0, 230.0, 190.0]]), [])[1]
    assert all(LineString(s).distance(box(190, 150, 230, 190)) > 0 for s in pairwise(line))


@FEW
@given(st.lists(st.tuples(pixel, pixel), min_size=2, max_size=3, unique=True), edges)
def test_running_through_a_box_agrees_with_shapely(line, known):
    assert meets(tuple(line), known) == LineString(line).intersects(box(*known))
