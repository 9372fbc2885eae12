"""The free width of a straight way in, against worked figures and against fine sampling."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from bayboard.geometry.corridor import free_width, free_widths, plan_distance, ways
from bayboard.geometry.prism import prism, prism_on, standing

L = ((0, 0), (100, 0), (100, 40), (40, 40), (40, 100), (0, 100))
BOX = prism([(0, 0), (100, 0), (100, 60), (0, 60)], 30, 80)
OUT = (0.0, 0.0, 1.0)


@pytest.mark.parametrize(
    ("start", "way", "wide"),
    [
        ((120, 30, 0), OUT, 40),
        ((103, 64, 0), OUT, 10),
        ((50, 30, 95), OUT, 30),
        ((50, 30, 0), OUT, 0),
        ((103, 30, 84), OUT, 10),
        ((120, 30, 90), (1.0, 0.0, 0.0), 2 * np.hypot(20, 10)),
        ((-20, 70, 50), (1.0, 0.0, 0.0), 20),
        ((-200, 70, 50), (1.0, 0.0, 0.0), 2 * np.hypot(50, 10)),
    ],
    ids=[
        "beside",
        "off a corner",
        "over it",
        "through it",
        "off an upper edge",
        "away from it",
        "along a side",
        "short of it",
    ],
)
def test_worked_widths(start, way, wide):
    assert free_width(start, way, 150, [BOX]) == pytest.approx(wide)


def test_a_way_alone_is_as_wide_as_can_be():
    assert free_width((0, 0, 0), OUT, 150, []) == np.inf


def test_a_stay_without_a_bottom_counts_beside_a_deep_way():
    post = prism([(0, 0), (10, 0), (10, 10), (0, 10)], -np.inf, 70)
    assert free_width((30, 5, -5000), OUT, 150, [post]) == pytest.approx(40, abs=1e-9)


def test_a_way_through_a_cut_out_is_as_wide_as_the_cut_out():
    board = prism_on(shapely.box(0, 0, 200, 200).difference(shapely.box(80, 80, 120, 140)), 0, 12)
    assert free_width((100, 110, -20), OUT, 150, [board]) == pytest.approx(40)


@settings(max_examples=60, derandomize=True)
@given(
    start=st.tuples(st.floats(-150, 250), st.floats(-150, 250), st.floats(-100, 150)),
    tip=st.tuples(*[st.floats(-1, 1)] * 3).filter(lambda v: np.hypot(*v[:2]) + abs(v[2]) > 0.1),
    turn=st.floats(0, 360),
    along=st.sampled_from(["z", "x"]),
)
def test_it_agrees_with_fine_sampling(start, tip, turn, along):
    thing = standing(L, (10, 20), turn, 5, 60, along)
    way = np.array(tip) / np.linalg.norm(tip)
    points = np.array(start) + np.linspace(0, 150, 3001)[:, None] * way
    if along == "x":
        points = points[:, ::-1]
    aside = shapely.distance(shapely.points(points[:, :2]), Polygon(thing.rings[0]))
    over = np.maximum(np.maximum(5 - points[:, 2], points[:, 2] - 60), 0)
    sampled = 2 * np.hypot(aside, over).min()
    found = free_width(start, way, 150, [thing])
    assert found <= sampled + 1e-9
    assert found == pytest.approx(sampled, abs=0.06)  # samples stand 0.05 apart


def test_many_ways_at_once_are_as_one_by_one_and_capped():
    dice = np.random.default_rng(8)
    things = [
        standing(L, tuple(dice.uniform(-300, 300, 2)), float(t), 0, 80) for t in dice.uniform(0, 360, 9)
    ]
    starts = np.column_stack((dice.uniform(-300, 300, (40, 2)), dice.uniform(0, 90, 40)))
    ends = starts + 150 * np.array(OUT)
    counted = dice.random((40, 9)) < 0.7
    found = free_widths(starts, ends, things, counted, np.full(40, 60.0))
    for row, start in enumerate(starts):
        alone = free_width(start, OUT, 150, [t for t, c in zip(things, counted[row], strict=True) if c])
        assert found[row] == pytest.approx(min(alone, 60.0), abs=1e-9)


@settings(max_examples=40, derandomize=True)
@given(st.floats(-50, 150), st.floats(-50, 150))
def test_plan_distance_agrees_with_shapely(x, y):
    holed = shapely.box(0, 0, 100, 100).difference(shapely.box(20, 20, 60, 40))
    rings = [np.asarray(r.coords)[:-1] for r in (holed.exterior, *holed.interiors)]
    assert plan_distance(np.array([[x, y]]), rings)[0] == pytest.approx(
        holed.distance(shapely.Point(x, y)), abs=1e-9
    )


def test_the_first_tilted_way_leans_to_the_first_side():
    found = ways(np.array(OUT), np.array([0.0, 1.0, 0.0]), (15.0, 30.0, 45.0), 12)
    assert len(found) == 37
    assert found[1] == pytest.approx([0, np.sin(np.radians(15)), np.cos(np.radians(15))])
    assert np.linalg.norm(found, axis=1) == pytest.approx(1)
    assert found[25:] @ np.array(OUT) == pytest.approx(np.cos(np.radians(45)))
