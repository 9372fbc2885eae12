"""Leaders: upright from the tag, one bend, ending at the mark; their tests agree with shapely."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF
from shapely import LineString, box

from bayboard.window.draw.leaders import BENDS, clear_leader, cross, leader, meets

FEW = settings(derandomize=True, max_examples=120, deadline=None)
TAG = QRectF(300, 20, 120, 24)
pixel = st.integers(0, 400).map(float)
point = st.tuples(pixel, pixel)


@FEW
@given(st.floats(0, 900), st.floats(0, 560), st.sampled_from(BENDS))
def test_a_leader_leaves_its_tag_upright_bends_at_most_once_and_ends_at_the_mark(x, y, bend):
    line = leader(QRectF(300, 250, 200, 24), QPointF(x, y), bend)
    assert 2 <= len(line) <= 3
    assert line[-1] == (x, y)
    assert 300 <= line[0][0] <= 500
    if len(line) == 3:
        assert line[0][0] == line[1][0]


@FEW
@given(st.lists(point, min_size=2, max_size=3, unique=True), point, st.integers(1, 200), st.integers(1, 200))
def test_running_through_a_box_agrees_with_shapely(line, corner, wide, high):
    edges = (corner[0], corner[1], corner[0] + wide, corner[1] + high)
    assert meets(tuple(line), edges) == LineString(line).intersects(box(*edges))


@FEW
@given(*[st.lists(point, min_size=2, max_size=2, unique=True)] * 2)
def test_crossing_agrees_with_shapely(one, two):
    assert cross(tuple(one), tuple(two)) == LineString(one).crosses(LineString(two)) or touches_only(one, two)


def touches_only(one, two) -> bool:
    """An end that lies on the other line is told differently; it is no crossing to look at."""
    return any(
        LineString(a).distance(LineString([p, p])) < 1e-9 for a, b in ((one, two), (two, one)) for p in b
    )


def test_a_leader_bends_where_it_crosses_no_number():
    mark, number = QPointF(100, 300), QRectF(190, 150, 40, 40)
    edges = box(*number.getCoords())
    assert LineString(leader(TAG, mark, BENDS[0])).intersects(edges)
    assert not LineString(clear_leader(TAG, mark, [number], [])).intersects(edges)


def test_a_leader_bends_where_it_crosses_no_other():
    mark, other = QPointF(60, 300), ((110.0, 44.0), (250.0, 170.0))
    assert cross(leader(TAG, mark, BENDS[0]), other)
    assert not cross(clear_leader(TAG, mark, [], [other]), other)


@pytest.mark.parametrize("number", [QRectF(90, 290, 20, 20), QRectF(0, 0, 900, 900)])
def test_a_mark_that_lies_on_a_number_is_reached_all_the_same(number):
    assert clear_leader(TAG, QPointF(100, 300), [number], [])[-1] == (100.0, 300.0)
