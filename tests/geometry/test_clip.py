"""How much of a stretch lies within a shape: by hand, and against shapely."""

import numpy as np
import pytest
import shapely

from bayboard.geometry.clip import length_within

BOX = shapely.box(0, 0, 10, 4)
ROUND_ABOUT = shapely.difference(shapely.box(-1000, -1000, 1000, 1000), BOX.buffer(3))
BENT = shapely.Polygon([(0, 0), (10, 0), (10, 4), (4, 4), (4, 9), (0, 9)])


def test_a_stretch_through_a_box_counts_between_its_rims():
    starts, ends = (
        np.array([[-5.0, 2.0], [3.0, 1.0], [-5.0, 9.0]]),
        np.array([[15.0, 2.0], [3.0, 3.0], [15.0, 9.0]]),
    )
    assert length_within(starts, ends, BOX).tolist() == pytest.approx([10, 2, 0])


@pytest.mark.parametrize("shape", [BOX, ROUND_ABOUT, BENT], ids=["convex", "round about", "bent"])
def test_it_agrees_with_shapely(shape):
    dice = np.random.default_rng(5)
    starts, ends = dice.uniform(-12, 22, (200, 2)), dice.uniform(-12, 22, (200, 2))
    lines = shapely.linestrings(np.stack([starts, ends], axis=1))
    expected = shapely.length(shapely.intersection(lines, shape))
    assert length_within(starts, ends, shape) == pytest.approx(expected, abs=1e-9)


def test_a_point_has_no_length():
    spot = np.array([[5.0, 2.0]])
    assert length_within(spot, spot, BOX).tolist() == [0]
