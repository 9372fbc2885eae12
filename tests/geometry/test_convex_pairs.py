"""Distance and penetration of convex shapes are what their Minkowski difference says.  10 000: tests/long."""

import numpy as np
from shapely import box
from shapely.affinity import translate
from tests.geometry import convex_pairs
from tests.geometry.convex_pairs import differences, differing


def test_three_hundred_pairs_agree():
    assert differing(300, seed=7) == {}


def test_the_comparison_sees_a_wrong_measure(monkeypatch):
    one, other = box(0, 0, 10, 10), box(8, 2, 20, 30)
    assert list(differences(one, other)) == []
    monkeypatch.setattr(convex_pairs, "overlaps", lambda *_: np.full((1, 1), 2.001))
    assert list(differences(one, other))
    monkeypatch.setattr(convex_pairs, "gaps", lambda *_: np.full((1, 1), 0.001))
    assert list(differences(one, translate(other, 5, 0)))
