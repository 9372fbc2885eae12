"""Where a line is stopped: by hand on boxes, and never another answer than whether it is blocked."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayboard.geometry.prism import prism
from bayboard.geometry.solids import blocked, solids
from bayboard.geometry.stopped import stopped

mm = st.integers(-60, 60)
points = st.tuples(mm, mm, mm)


def _box(x0, y0, x1, y1, z0, z1, along="z"):
    return prism([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], z0, z1, along)


ROWS = solids([_box(40, -50, 60, 50, 0, 20), _box(20, -50, 30, 50, 0, 20), _box(0, 30, 20, 50, -30, 30, "x")])


def test_the_first_thing_on_the_way_stops_the_line():
    found = stopped(np.array([0.0, 0.0, 10.0]), np.array([100.0, 0.0, 10.0]), ROWS)
    assert found.owner == 1
    assert found.at == pytest.approx([20.0, 0.0, 10.0], abs=1e-5)


def test_a_line_that_starts_inside_is_stopped_where_it_starts():
    found = stopped(np.array([50.0, 0.0, 10.0]), np.array([50.0, 0.0, 90.0]), ROWS)
    assert found.at == pytest.approx([50.0, 0.0, 10.0])


@settings(derandomize=True, max_examples=60, deadline=None)
@given(points, points)
def test_what_is_stopped_is_what_is_blocked(start, end):
    a, b = np.array(start, float), np.array(end, float)
    found = stopped(a, b, ROWS)
    assert (found is not None) == bool(blocked(a[None], b[None], ROWS)[0])
    if found is not None:  # and the way there is free
        assert not blocked(a[None], found.at[None], ROWS)[0] or np.allclose(found.at, a, atol=1e-4)
