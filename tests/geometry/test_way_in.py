"""The widest way in: the same ways and things as the reach that judges it, measured to the end."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayboard.geometry.hand import Holder, hand, reached
from bayboard.geometry.prism import prism
from bayboard.geometry.way_in import widest

OUT, RIGHT = np.array([0.0, 0.0, 1.0]), np.array([1.0, 0.0, 0.0])


def _box(x0, y0, x1, y1, z0, z1):
    return Holder((prism([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], z0, z1),), ())


def _place(z=50.0, need=25.0, own=()):
    return Holder(own, (hand(np.array([0.0, 0.0, z]), OUT, RIGHT, 150.0, 0.0, need),))


def test_a_slit_is_told_as_wide_as_it_is_not_as_wide_as_is_needed():
    slit = [_box(-400, -400, -40, 400, -900, 900), _box(40, -400, 400, 400, -900, 900)]
    found = widest(reached([_place(), *slit], 150.0, 300.0), 0, 0)
    assert found.width == pytest.approx(80.0)
    assert found.way == pytest.approx(OUT)  # tilted along the slit is as wide; the first of equals is told


def test_the_way_leans_from_what_stands_over_the_place():
    roof = _box(-20, -400, 400, 400, 120, 130)
    found = widest(reached([_place(), roof], 150.0, 300.0), 0, 0)
    assert found.way[0] < -0.4


def test_nothing_wider_than_the_most_is_told_and_its_own_body_is_no_hindrance():
    own = _box(-30, -30, 30, 30, 0, 200).prisms
    assert widest(reached([_place(own=own)], 150.0, 300.0), 0, 0).width == 300.0


def test_a_place_sunk_behind_the_board_has_no_way():
    assert widest(reached([_place(z=-300.0)], 150.0, 300.0), 0, 0) is None


@settings(derandomize=True, max_examples=25, deadline=None)
@given(st.lists(st.tuples(*[st.integers(-120, 120)] * 2, st.integers(20, 160)), min_size=1, max_size=4))
def test_it_never_says_another_width_than_the_rule(boxes):
    things = [_box(x, y, x + 40, y + 40, z, z + 30) for x, y, z in boxes]
    reach = reached([_place(), *things], 150.0, 300.0)
    assert min(widest(reach, 0, 0).width, 25.0) == pytest.approx(reach.things[0].hands[0].width)
