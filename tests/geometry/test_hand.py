"""How wide the way in is: the straight way first, then the tilted ones; moved is as measured afresh."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayboard.geometry.corridor import free_width
from bayboard.geometry.hand import Holder, hand, reached
from bayboard.geometry.prism import prism, standing

OUT, RIGHT = np.array([0.0, 0.0, 1.0]), np.array([1.0, 0.0, 0.0])
L = ((-50, -40), (50, -40), (50, 0), (0, 0), (0, 40), (-50, 40))


def _box(x0, y0, x1, y1, z0, z1):
    return prism([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], z0, z1)


def _shaft(half):
    return Holder(
        (
            _box(-100, -100, -half, 100, 0, 999),
            _box(half, -100, 100, 100, 0, 999),
            _box(-half, -100, half, -half, 0, 999),
            _box(-half, half, half, 100, 0, 999),
        ),
        (),
    )


def _one(need=25.0, facing=OUT, first=RIGHT, floor=0.0, z=50.0):
    return Holder((), (hand(np.array([0.0, 0.0, z]), facing, first, 150.0, floor, need),))


@pytest.mark.parametrize(("half", "enough"), [(12.5, True), (12.4999, False), (3.0, False)])
def test_a_shaft_is_as_wide_as_its_walls_are_apart(half, enough):
    (found,) = reached([_one(), _shaft(half)], 150.0, 300.0).things[0].hands
    assert found.enough is enough
    assert found.width == pytest.approx(min(2 * half, 25.0))


def test_no_more_than_the_most_is_told():
    (found,) = reached([_one(need=400.0)], 150.0, 300.0).things[0].hands
    assert (found.width, found.enough) == (300.0, False)


def test_its_own_body_is_not_in_the_way():
    own = Holder((_box(-30, -30, 30, 30, 0, 200),), _one().hands)
    assert reached([own], 150.0, 300.0).things[0].hands[0].enough


def test_ways_behind_the_floor_do_not_count():
    sideways = hand(np.array([0.0, 0.0, 5.0]), RIGHT, OUT, 150.0, 0.0, 25.0)
    assert (sideways.start[2] + 150.0 * sideways.ways[:, 2]).min() >= -1e-9
    assert len(sideways.ways) == 1 + 3 * 7


def test_no_way_at_all_is_nothing_wide():
    sunk = hand(np.array([0.0, 0.0, -300.0]), RIGHT, OUT, 150.0, 0.0, 25.0)
    (found,) = reached([Holder((), (sunk,))], 150.0, 300.0).things[0].hands
    assert (found.width, found.enough) == (0.0, False)


def test_the_widest_of_all_ways_counts():
    roof = Holder((prism([(60, -200), (300, -200), (300, 10), (60, 10)], -500, 500, "x"),), ())
    (found,) = reached([_one(), roof], 150.0, 300.0).things[0].hands
    every = [2 * free_width(found.start, way, 150, roof.prisms) / 2 for way in found.ways]
    assert found.width == pytest.approx(min(max(every), 25.0))
    assert 0 < found.width < 25


def _crowd(places):
    return [
        Holder(
            (standing(L, (x, y), turn, 30, 80),),
            (
                hand(np.array([x - 20, y - 10, 70.0]), OUT, RIGHT, 150.0, 30.0, 12.0),
                hand(np.array([x - 50, y, 50.0]), -RIGHT, OUT, 150.0, 30.0, 25.0),
            ),
        )
        for x, y, turn in places
    ] + [Holder((prism([(100, -200), (300, -200), (300, 20), (100, 20)], -300, 100, "x"),), ())]


def _widths(reach):
    return [[(h.width, h.straight) for h in thing.hands] for thing in reach.things]


places = st.tuples(st.floats(-200, 200), st.floats(-80, 80), st.sampled_from([0, 90, 33.0]))


@settings(max_examples=25, derandomize=True, deadline=None)
@given(
    st.lists(places, min_size=4, max_size=4),
    st.lists(st.tuples(st.integers(0, 3), places), min_size=1, max_size=5),
)
def test_after_any_moves_the_reach_is_as_measured_afresh(at, moves):
    reach = reached(_crowd(at), 150.0, 300.0)
    for which, place in moves:
        at = [*at[:which], place, *at[which + 1 :]]
        reach = reach.moved({which: _crowd(at)[which]})
        assert _widths(reach) == _widths(reached(_crowd(at), 150.0, 300.0))
