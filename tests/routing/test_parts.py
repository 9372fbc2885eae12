"""The parts of the search on their own: ends, tips, exits, floors."""

import numpy as np
import pytest
import shapely
from tests.build import card, gear, layout, rectangle
from tests.plain.bays import bay

from bayboard.model.read import from_document
from bayboard.routing.bed import Obstacle, octagon
from bayboard.routing.ends import end, ends, placed_gear
from bayboard.routing.excuse import Excuse, excuses, paid, sure
from bayboard.routing.exits import exits
from bayboard.routing.floor import floor, passing
from bayboard.routing.ground import CLEAR
from bayboard.routing.route import routes
from bayboard.routing.tip import tip

PORTS = [
    {"id": "E", "kind": "power", "at": [50, 0], "z": 12, "towards": 0, "plug": 20},
    {"id": "O", "kind": "ground", "at": [40, 0], "z": 25, "towards": "out", "plug": 30},
]
ENTRY = {"id": "E1", "name": "e", "at": [5, 6], "carries": ["power"], "run": None}


def _lay(**members):
    members.setdefault(
        "gear", [gear("A", 200, 150, "amp", turn=90, lift=3), gear("B", 0, 0, "amp") | {"at": None}]
    )
    return layout(cards={"amp": card(100, 60, ports=PORTS)}, bay={"entries": [ENTRY]}, **members)


def _box(x0, y0, x1, y1, growth=4.0, owner="X"):
    return Obstacle("gear", owner, (tuple(map(tuple, rectangle(x0, y0, x1, y1))),), (0.0, 0.0), 0.0, growth)


def test_an_end_is_where_its_port_stands():
    lay = _lay()
    found = end(lay, "A.E", placed_gear(lay))
    # front at 30, lifted 3, the port 12 over the underside; turned a quarter to the left
    assert (found.point, found.z, found.port.id, found.placed.id) == ((200, 200), 45, "E", "A")
    assert found.meets is found.port


def test_an_end_at_an_entry_has_no_height():
    lay = _lay()
    found = end(lay, "E1", placed_gear(lay))
    assert (found.point, found.z, found.meets.id) == ((5, 6), None, "E1")


@pytest.mark.parametrize("name", ["B.E", "A.Z", "Z.E", "E9"])
def test_an_end_on_the_bench_or_nowhere_is_none(name):
    lay = _lay()
    assert end(lay, name, placed_gear(lay)) is None


def test_a_lead_needs_both_ends():
    lay = _lay(leads=[{"id": "C", "from": "E1", "to": "B.E", "size": None}])
    assert ends(lay, lay.leads[0], placed_gear(lay)) is None


def test_a_tip_turns_at_the_end_of_its_plug():
    lay = _lay()
    placed = placed_gear(lay)
    sideways, out, entry = (tip(end(lay, name, placed), None) for name in ("A.E", "A.O", "E1"))
    assert (sideways.end, sideways.turns, sideways.free) == ((200, 200), (200, 220), 0)
    assert (out.end, out.turns, out.own) == ((200, 190), (200, 190), "A")
    assert out.free == pytest.approx(30, abs=1e-5)
    assert (entry.turns, entry.own, entry.entry) == ((5, 6), None, True)


def test_the_octagon_of_a_washer_touches_its_circle():
    shape = shapely.Polygon(octagon(9.0))
    assert shape.boundary.distance(shapely.Point(0, 0)) == pytest.approx(9.0)
    assert shapely.hausdorff_distance(shape.boundary, shapely.Point(0, 0)) == pytest.approx(9.0 * 1.0823922)


def test_a_stretch_passes_a_corner_or_cuts_into_it():
    corners = _box(0, 0, 10, 10, growth=0.0).shape.corners
    (right_top,) = np.flatnonzero((corners.at == (10, 10)).all(axis=1))
    seen = passing(
        corners, np.array([right_top]), np.array([[20.0, 5.0], [5.0, 20.0], [20.0, 20.0], [10.0, 50.0]])
    )
    assert seen.tolist() == [[True, True, False, True]]


def test_a_floor_of_one_box_is_the_way_round_it():
    ground = floor([_box(0, 0, 100, 50)], None)
    i, j = ground.stretches.free
    assert len(i) == 8  # the sides of the octagon, and no way across
    lengths = np.hypot(*(ground.corners.at[i] - ground.corners.at[j]).T)
    octagon_around = shapely.Polygon(ground.corners.at).length
    assert lengths.sum() == pytest.approx(octagon_around)


def test_a_floor_made_from_the_one_before_has_the_same_stretches():
    things = [
        _box(0, 0, 60, 40, owner="A"),
        _box(100, 10, 150, 90, owner="B"),
        _box(30, 80, 80, 130, owner="C"),
    ]
    before = floor(things, shapely.box(-50, -50, 300, 300))
    things[1] = things[1].put((40.0, -15.0), 30.0)
    step, anew = floor(things, before.hull, before), floor(things, before.hull)

    def pairs(ground):
        return {
            tuple(sorted(pair))
            for pair in zip(*(side.tolist() for side in ground.stretches.free), strict=True)
        }

    assert pairs(step) == pairs(anew)
    assert np.array_equal(step.corners.at, anew.corners.at)


def test_a_tip_nearer_than_half_the_diameter_is_excused_and_finds_its_exits():
    thing = _box(0, 0, 100, 50, growth=6.0)
    ground = floor([thing], None)
    near = tip_at((102.0, 25.0))
    (known,) = excuses(ground, [near], None)
    assert known[0].rows is thing.bare.rows
    assert sure(known)
    found, extra = exits(ground, np.array(near.turns), known)
    # past a corner of the box, 25 up or down for 2 across, on to where it is 6 away: 3 times as far out
    assert sorted(found.round(6).tolist()) == [[99.52, -6.0], [99.52, 56.0]]
    assert extra.tolist() == [0, 0]


def test_a_tip_in_a_thing_pays_for_the_way_out():
    ground = floor([_box(0, 0, 100, 50, growth=6.0)], None)
    (known,) = excuses(ground, [tip_at((90.0, 25.0))], None)
    assert not sure(known)
    found, extra = exits(ground, np.array([90.0, 25.0]), known)
    nearest = np.argmin(extra)
    assert found[nearest] == pytest.approx([106, 25])
    assert extra[nearest] == pytest.approx(100 * 10)


def test_nothing_is_paid_where_nothing_is_costly():
    line = np.array([[0.0, 0.0]]), np.array([[10.0, 0.0]])
    assert paid(*line, Excuse(None)).tolist() == [0]
    assert paid(*line, Excuse(None, costly=shapely.box(4, -1, 6, 1))) == pytest.approx(200)
    assert paid(*line, Excuse(None, free=1.5, costly=shapely.box(4, -1, 6, 1))) == pytest.approx(50)


def test_outlines_of_very_many_points_are_led_round_too():
    ring = [
        [float(60 * np.cos(a)), float(40 * np.sin(a))]
        for a in np.linspace(0, 2 * np.pi, 2000, endpoint=False)
    ]
    port = {"kind": "power", "z": 5, "plug": 15}
    pin = card(
        20,
        20,
        20,
        ports=[
            port | {"id": "E", "at": [10, 0], "towards": 0},
            port | {"id": "W", "at": [-10, 0], "towards": 180},
        ],
    )
    things = [
        gear("A", 100, 200, "pin"),
        gear("B", 900, 200, "pin"),
        *(gear(f"X{k}", 300 + 130 * k, 200, "round") for k in range(4)),
    ]
    lead = {"id": "C", "from": "A.E", "to": "B.W", "size": None, "od": 8}
    lay = layout(cards={"pin": pin, "round": card(outline=ring)}, gear=things, leads=[lead])
    found = routes(lay)
    # along the tops of four ellipses 40 high, 4 away: a straight line between two slopes
    assert found["C"].way == "clear"
    assert np.abs(found["C"].points[:, 1] - 200).max() == pytest.approx(44, abs=0.1)


def test_floors_are_taken_over_where_nothing_moved():
    lay = from_document(bay(2))
    (ground,) = routes(lay).grounds.values()
    assert ground.floor(CLEAR) is ground.floor(CLEAR)


def tip_at(point):
    """Return the tip of a lead that comes in there."""
    from bayboard.routing.tip import Tip

    return Tip(point, point, None, 0.0, entry=False)
