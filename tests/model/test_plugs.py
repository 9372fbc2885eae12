"""The room of a plug: a rectangle out of its port and a z range, carried with its stand-in."""

import pytest
from shapely import Polygon, box
from tests.build import card, gear, layout

from bayboard.model.placed import place


def _plug(turn=0, lift=0, **port):
    whole = {"id": "p", "kind": "power", "at": [50, 10], "z": 20, "towards": 0, "plug": 30} | port
    drawn = layout(cards={"box": card(ports=[whole])}, gear=[gear("A", 200, 200, turn=turn, lift=lift)])
    (plug,) = place(drawn, drawn.gear[0]).plugs
    return plug


@pytest.mark.parametrize(
    ("turn", "towards", "covers"),
    [
        (0, 0, box(250, 203, 280, 217)),
        (0, 90, box(243, 210, 257, 240)),
        (90, 0, box(183, 250, 197, 280)),
        (180, 0, box(120, 183, 150, 197)),
    ],
    ids=["to the right", "up", "turned a quarter", "turned round"],
)
def test_a_sideways_plug_covers_a_strip_out_of_its_port(turn, towards, covers):
    assert Polygon(_plug(turn, towards=towards).ring).normalize().equals_exact(covers.normalize(), 1e-9)


def test_a_sideways_plug_is_as_high_as_it_is_wide():
    assert _plug(lift=5, plug_wide=10).z == pytest.approx((50, 60))  # front 30, lift 5, port 20, half of 10


def test_a_plug_that_points_out_stands_on_a_square_and_ends_its_length_above_the_port():
    plug = _plug(towards="out")
    assert Polygon(plug.ring).equals(box(243, 203, 257, 217))
    assert plug.z == pytest.approx((50, 80))


def test_the_square_of_a_plug_turns_with_its_stand_in():
    ring = Polygon(_plug(45, towards="out").ring)
    assert ring.area == pytest.approx(14 * 14)
    x0, y0, x1, y1 = ring.bounds
    assert (x1 - x0, y1 - y0) == pytest.approx((14 * 2**0.5, 14 * 2**0.5))
