"""Runs side by side and crossings, worked by hand and against shapely's strips."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, union_all

from bayboard.geometry.beside import crossings, runs_beside
from bayboard.geometry.stretches import covered, stretches


def _rows(*paths):
    return stretches([np.array(path, float) for path in paths])


def _run(these, others, aside=50.0, angle=20.0):
    return [
        (run.path, run.other, run.length) for run in runs_beside(_rows(*these), _rows(*others), aside, angle)
    ]


def _angles(these, others):
    return [(c.path, c.other, pytest.approx(c.angle)) for c in crossings(_rows(*these), _rows(*others))]


@pytest.mark.parametrize(
    ("path", "length"),
    [
        ([(0, 20), (500, 20)], 500),
        ([(500, 20), (0, 20)], 500),
        ([(0, 50), (500, 50)], 500),
        ([(0, 50.001), (500, 50.001)], None),
        ([(-200, -30), (700, -30)], 500),
        ([(500, 30), (900, 30)], None),
        ([(100, -200), (100, 200)], None),
        ([(0, 10), (100, 10), (100, 60), (200, 60), (200, 10), (300, 10)], 200),
    ],
    ids=[
        "equal",
        "the other way",
        "just within",
        "just apart",
        "longer",
        "end to end",
        "square",
        "there and back",
    ],
)
def test_worked_runs_beside_a_straight_lead(path, length):
    assert _run([path], [[(0, 0), (500, 0)]]) == ([] if length is None else [(0, 0, pytest.approx(length))])


@pytest.mark.parametrize(("degrees", "counts"), [(19.99, True), (20.0, True), (20.01, False)])
def test_nearly_parallel_ends_at_the_limit(degrees, counts):
    tip = (200 * np.cos(np.radians(degrees)), 200 * np.sin(np.radians(degrees)))
    assert bool(_run([[(0, 0), tip]], [[(0, 0), (500, 0)]], aside=500)) is counts


def test_what_lies_beside_two_stretches_counts_once():
    bent = [(0, 0), (250, 0), (500, 0)]
    assert _run([[(0, 10), (500, 10)]], [bent]) == [(0, 0, pytest.approx(500))]


def test_every_pair_of_paths_is_told_apart():
    these, others = (
        [[(0, 10), (100, 10)], [(0, 400), (70, 400)]],
        [[(0, 0), (100, 0)], [(0, 390), (500, 390)]],
    )
    assert _run(these, others) == [(0, 0, pytest.approx(100)), (1, 1, pytest.approx(70))]


def test_the_mark_stands_in_the_middle_of_the_longest_run():
    (run,) = runs_beside(
        _rows([(0, 10), (100, 10), (100, 99), (130, 99), (130, 10), (150, 10)]),
        _rows([(0, 0), (500, 0)]),
        50,
        20,
    )
    assert run.at == pytest.approx((50, 10))


paths = st.lists(st.tuples(st.integers(-60, 60), st.integers(-60, 60)), min_size=2, max_size=5)


@settings(max_examples=60, derandomize=True, deadline=None)
@given(paths, paths)
def test_runs_agree_with_strips_cut_by_shapely(these, others):
    """shapely's flat-ended buffers, intersected and measured."""
    expected = 0.0
    for a, b in pairwise(these):
        strips = []
        for c, d in pairwise(others):
            if a == b or c == d:
                continue
            u, v = np.subtract(b, a), np.subtract(d, c)
            sine = abs(u[0] * v[1] - u[1] * v[0]) / (np.hypot(*u) * np.hypot(*v))
            if sine <= np.sin(np.radians(20)):
                strips.append(LineString([c, d]).buffer(25, cap_style="flat"))
        expected += LineString([a, b]).intersection(union_all(strips)).length if strips else 0.0
    found = sum(length for _, _, length in _run([these], [others], aside=25))
    assert found == pytest.approx(expected, abs=1e-3)


@pytest.mark.parametrize(
    ("path", "angle"),
    [
        ([(100, -50), (100, 50)], 90),
        ([(100, -50), (200, 50)], 45),
        ([(200, 50), (100, -50)], 45),
        ([(100, 0), (100, 50)], None),
        ([(100, 50), (100, 0), (150, 50)], 45),
        ([(0, -50), (0, 50)], None),
        ([(100, 1), (200, 50)], None),
        ([(50, 0), (100, 0)], None),
        ([(100, -50), (100, 50), (200, -50)], 45),
    ],
    ids=[
        "square",
        "slanting",
        "back",
        "starts on it",
        "via on it",
        "over its end",
        "passes",
        "along it",
        "twice",
    ],
)
def test_worked_crossings_of_a_straight_lead(path, angle):
    assert _angles([path], [[(0, 0), (500, 0)]]) == ([] if angle is None else [(0, 0, angle)])


def test_a_crossing_at_a_corner_of_either_counts():
    assert _angles([[(100, -50), (100, 50)]], [[(0, 0), (100, 0), (200, 10)]])[0][:2] == (0, 0)


def test_the_union_of_intervals_lies_apart_and_in_order():
    assert covered([(5, 6), (0, 2), (1, 3), (3, 4)]) == [(0, 4), (5, 6)]
    assert covered([]) == []
