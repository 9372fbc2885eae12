"""How a card is cut: which corner goes, and that nothing else changes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from bayboard.window.draw.cut import CLIPPED, CLIPPED_SHARE, centre_ticks, clipped, lower_edge, polygon_path

RECTANGLE = [(-100.0, -60.0), (100.0, -60.0), (100.0, 60.0), (-100.0, 60.0)]


def test_the_upper_left_corner_goes_and_no_other():
    ring, tip = clipped(RECTANGLE)
    assert tip == (-100.0, 60.0)
    assert len(ring) == 5
    assert set(RECTANGLE) - set(ring) == {tip}


@settings(derandomize=True, max_examples=50, deadline=None)
@given(st.floats(5, 600), st.floats(5, 600), st.booleans())
def test_what_is_cut_off_is_one_small_triangle(wide, high, reverse):
    outline = [(-wide / 2, -high / 2), (wide / 2, -high / 2), (wide / 2, high / 2), (-wide / 2, high / 2)]
    ring, _ = clipped(outline[::-1] if reverse else outline)
    leg = min(CLIPPED, CLIPPED_SHARE * min(wide, high))
    assert Polygon(outline).area - Polygon(ring).area == pytest.approx(leg * leg / 2, rel=1e-6)
    assert Polygon(outline).buffer(1e-9).covers(Polygon(ring))


def test_a_round_card_is_left_whole_for_want_of_a_corner():
    round_card = [
        (-6.0, 0.0),
        (-4.2, -4.2),
        (0.0, -6.0),
        (4.2, -4.2),
        (6.0, 0.0),
        (4.2, 4.2),
        (0.0, 6.0),
        (-4.2, 4.2),
    ]
    ring, _ = clipped(round_card)
    assert len(ring) in (8, 9)
    assert Polygon(ring).is_valid


def test_a_corner_that_points_inwards_is_not_cut():
    notched = [(-50.0, -50.0), (50.0, -50.0), (50.0, 50.0), (-20.0, 50.0), (-20.0, 20.0), (-50.0, 20.0)]
    ring, tip = clipped(notched)
    assert tip != (-20.0, 20.0)
    assert Polygon(notched).buffer(1e-9).covers(Polygon(ring))


@pytest.mark.parametrize("reverse", [False, True])
def test_the_cut_shows_along_edges_that_look_down(reverse):
    ring = [(0.0, 0.0), (100.0, 0.0), (100.0, 50.0), (0.0, 50.0)]  # pixels, y down
    strip = lower_edge(ring[::-1] if reverse else ring).boundingRect()
    assert (strip.top(), strip.bottom()) == (48.0, 50.0)
    assert (strip.left(), strip.right()) == (0.0, 100.0)


def test_centre_ticks_stand_on_the_middle_of_each_side_and_point_inwards():
    for (ax, ay), (bx, by) in centre_ticks(RECTANGLE, 1.0):
        assert ax == 0.0 or ay == 0.0
        assert abs(bx) <= abs(ax)
        assert abs(by) <= abs(ay)


def test_a_ring_of_pixels_is_a_closed_path():
    path = polygon_path([(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)])
    assert path.elementAt(path.elementCount() - 1).x == 0.0
    assert path.boundingRect().width() == 10.0
