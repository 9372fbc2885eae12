"""The sides of a box, turned and moved, by hand."""

import pytest

from bayboard.geometry.sides import SIDES, box_ring, edge, seen_side

BOX = (-50.0, -30.0, 50.0, 30.0)


@pytest.mark.parametrize(
    ("side", "turn", "middle", "way", "wide"),
    [
        ("right", 0, (250, 200), (1, 0), 60),
        ("left", 0, (150, 200), (-1, 0), 60),
        ("up", 0, (200, 230), (0, 1), 100),
        ("down", 0, (200, 170), (0, -1), 100),
        ("right", 90, (200, 250), (0, 1), 60),
        ("up", 180, (200, 170), (0, -1), 100),
        ("down", 270, (170, 200), (-1, 0), 100),
        ("right", 30, (200 + 25 * 3**0.5, 225), (3**0.5 / 2, 0.5), 60),
    ],
)
def test_a_side_goes_with_its_box(side, turn, middle, way, wide):
    found = edge(BOX, side, (200.0, 200.0), turn)
    assert found.middle == pytest.approx(middle)
    assert found.way == pytest.approx(way)
    assert found.wide == wide


def test_every_side_lies_half_way_along_an_edge_of_the_box():
    ring = box_ring(BOX, (7.0, 9.0), 33.0)
    middles = (ring + ring.take(range(1, 5), axis=0, mode="wrap")) / 2
    for side in SIDES:
        assert min(abs(middles - edge(BOX, side, (7.0, 9.0), 33.0).middle).max(axis=1)) < 1e-9


@pytest.mark.parametrize(
    ("side", "turn", "seen"),
    [
        ("left", 0, "left"),
        ("left", 180, "right"),
        ("up", 90, "left"),
        ("right", 44, "right"),
        ("right", 46, "up"),
        ("down", -90, "left"),
        ("down", 720, "down"),
    ],
)
def test_a_side_is_called_as_it_is_seen(side, turn, seen):
    assert seen_side(side, turn) == seen
