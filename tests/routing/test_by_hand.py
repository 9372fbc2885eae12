"""Routes worked out by hand, one reason to turn at a time.

The plain pin is 20 x 20 with a port in the middle of each end, plug 15; leads are 8 thick unless said.
Half a right angle's tangent: 4 mm x tan 22.5 deg = 1.656854 mm.
"""

from math import hypot

import numpy as np
import pytest
from tests.build import card, gear, layout, rectangle

from bayboard.routing.route import routes

NOTCH = 4 * 0.41421356
PORT = {"kind": "power", "z": 5, "plug": 15, "ways": 9}
EAST, WEST = (
    PORT | {"id": "E", "at": [10, 0], "towards": 0},
    PORT | {"id": "W", "at": [-10, 0], "towards": 180},
)
CARDS = {
    "pin": card(20, 20, 20, ports=[EAST, WEST]),
    "wall": card(100, 100, 50),
    "flat": card(200, 100, 40, ports=[PORT | {"id": "O", "at": [0, 40], "towards": "out", "plug": 30}]),
}


def _lay(*between, lead=None, **members):
    members.setdefault("gear", [gear("A", 200, 200, "pin"), gear("B", 800, 200, "pin"), *between])
    members.setdefault(
        "leads", [{"id": "C", "from": "A.E", "to": "B.W", "size": None, "od": 8} | (lead or {})]
    )
    return layout(cards=CARDS, **members)


def _route(*between, **members):
    return routes(_lay(*between, **members))["C"]


def _near(points):
    return pytest.approx(np.array(points), abs=1e-5)


def test_a_free_lead_goes_straight_from_plug_to_plug():
    route = _route()
    assert route.points == _near([[210, 200], [225, 200], [775, 200], [790, 200]])
    assert (route.length, route.way, route.routed, route.board, route.od) == (580, "clear", True, "BD", 8)


def test_a_lead_bends_round_a_block_at_the_tangents_of_its_corners():
    route = _route(gear("X", 500, 200, "wall"))
    reach = 225 - NOTCH - 2  # from the plug's end at 225 to the tangent's corner at 450 - 1.657
    assert reach == pytest.approx(221.343146)
    assert route.length == pytest.approx(2 * 15 + 2 * hypot(225 - NOTCH, 54) + 100 + 2 * NOTCH)
    assert np.abs(route.points[2:4, 1] - 200) == _near([54, 54])


def test_of_two_ways_of_equal_length_the_lower_is_taken():
    assert (_route(gear("X", 500, 200, "wall")).points[:, 1] <= 200 + 1e-9).all()


def test_a_lead_given_by_its_via_is_exactly_that():
    route = _route(gear("X", 500, 200, "wall"), lead={"via": [[300, 350], [700, 350]]})
    assert route.points.tolist() == [[210, 200], [300, 350], [700, 350], [790, 200]]
    assert (route.way, route.routed) == ("given", False)


def test_gear_lifted_over_the_lead_is_no_obstacle():
    assert len(_route(gear("X", 500, 200, "wall", lift=8)).points) == 4
    assert len(_route(gear("X", 500, 200, "wall", lift=7.9)).points) > 4


def test_a_card_with_a_raised_solid_lets_the_lead_pass_below_it():
    high = card(100, 100, 50, solids=[{"outline": rectangle(-50, -50, 50, 50), "z": [10, 50]}])
    cards = CARDS | {"high": high}
    things = [gear("A", 200, 200, "pin"), gear("B", 800, 200, "pin"), gear("X", 500, 200, "high")]
    for od, points in ((10, 4), (10.5, 6)):
        lead = {"id": "C", "from": "A.E", "to": "B.W", "size": None, "od": od}
        assert len(routes(layout(cards=cards, gear=things, leads=[lead]))["C"].points) == points


def test_gear_whose_height_nobody_measured_is_gone_round():
    cards = CARDS | {"wall": card(100, 100, None)}
    lead = {"id": "C", "from": "A.E", "to": "B.W", "size": None, "od": 8}
    things = [gear("A", 200, 200, "pin"), gear("B", 800, 200, "pin"), gear("X", 500, 200, "wall")]
    assert len(routes(layout(cards=cards, gear=things, leads=[lead]))["C"].points) == 6


def test_a_lead_on_the_back_meets_no_gear_but_a_cut_out():
    block = gear("X", 500, 200, "wall")
    assert len(_route(block, lead={"side": "back"}).points) == 4
    hole = {"cutouts": [{"id": "K", "outline": rectangle(450, 150, 550, 250)}]}
    assert len(_route(lead={"side": "back"}, board=hole).points) == 6


def test_a_lead_keeps_half_its_diameter_off_a_washer():
    route = _route(fixings=[{"id": "X1", "at": [500, 200], "thread": "M6"}])
    # the washer of M6 is 18 wide (ISO 7093); an octagon round 9 + 4 touches at 13
    assert np.abs(route.points[2:4, 1] - 200) == _near([13, 13])
    assert route.points[2:4, 0] == _near([500 - 13 * 0.41421356, 500 + 13 * 0.41421356])


def test_a_thicker_lead_needs_a_wider_gap():
    pair = [gear("X", 500, 255, "wall"), gear("Y", 500, 145, "wall")]  # 10 apart
    assert len(_route(*pair, lead={"od": 10}).points) == 4
    assert len(_route(*pair, lead={"od": 10.001}).points) > 4


def test_the_board_ends_where_its_rounded_corner_does():
    bent = {
        "outline": [[0, 0], [1000, 0], [1000, 400], [600, 400], [600, 150], [400, 150], [400, 400], [0, 400]]
    }
    things = [gear("A", 200, 300, "pin"), gear("B", 800, 300, "pin")]
    route = _route(board=bent, gear=things)
    assert route.points == _near([[210, 300], [225, 300], [400, 150], [600, 150], [775, 300], [790, 300]])


def test_only_the_stretch_next_to_an_entry_off_the_board_may_leave_it():
    entry = {"id": "E1", "name": "e", "at": [500, -50], "carries": ["power"], "run": 0}
    bent = {"outline": [[0, 0], [400, 0], [400, 200], [600, 200], [600, 0], [1000, 0], [1000, 400], [0, 400]]}
    lead = {"id": "C", "from": "E1", "to": "B.W", "size": None, "od": 8}
    things = [gear("B", 800, 100, "pin")]
    route = _route(board=bent, bay={"entries": [entry]}, gear=things, leads=[lead])
    assert route.points == _near([[500, -50], [775, 100], [790, 100]])
    on_board = entry | {"at": [300, 100]}
    route = _route(board=bent, bay={"entries": [on_board]}, gear=things, leads=[lead])
    assert route.points == _near([[300, 100], [400, 200], [600, 200], [775, 100], [790, 100]])


def test_an_entry_in_a_cut_out_lets_the_lead_out_of_it():
    entry = {"id": "E1", "name": "e", "at": [500, 200], "carries": ["power"], "run": 0}
    hole = {"cutouts": [{"id": "K", "outline": rectangle(450, 150, 550, 250)}]}
    lead = {"id": "C", "from": "E1", "to": "B.W", "size": None, "od": 8}
    route = _route(board=hole, bay={"entries": [entry]}, leads=[lead])
    assert (len(route.points), route.way) == (3, "clear")


def test_a_port_facing_out_leaves_its_stand_in_within_the_plugs_length():
    lead = {"id": "C", "from": "F.O", "to": "B.W", "size": None, "od": 8}
    things = [gear("F", 400, 200, "flat"), gear("B", 800, 200, "pin")]
    route = _route(gear=things, leads=[lead])
    # 10 from the rim, so the lead may pass it as far aside as hypot(10, aside) = 30 allows
    aside = (30**2 - 10**2) ** 0.5
    leaves = route.points[1]
    assert leaves[1] == pytest.approx(254, abs=1e-5)
    assert leaves[0] == pytest.approx(400 + aside * 1.4, abs=1e-3)  # on to the grown rim, 4 of 10 farther
    assert route.way == "clear"


def test_a_port_deep_in_its_stand_in_leaves_it_the_nearest_way():
    deep = card(200, 100, 40, ports=[PORT | {"id": "O", "at": [0, 20], "towards": "out", "plug": 10}])
    lead = {"id": "C", "from": "F.O", "to": "B.W", "size": None, "od": 8}
    things = [gear("F", 400, 200, "deep"), gear("B", 800, 200, "pin")]
    route = routes(layout(cards=CARDS | {"deep": deep}, gear=things, leads=[lead]))["C"]
    assert route.points[:2] == _near([[400, 220], [400, 254]])


def test_a_plug_that_ends_in_its_own_stand_in_goes_on_straight_until_it_is_out():
    sunk = card(100, 60, 40, ports=[PORT | {"id": "E", "at": [20, 0], "towards": 0}])
    lead = {"id": "C", "from": "A.E", "to": "B.W", "size": None, "od": 8}
    things = [gear("A", 200, 100, "sunk"), gear("B", 800, 300, "pin")]
    route = routes(layout(cards=CARDS | {"sunk": sunk}, gear=things, leads=[lead]))["C"]
    assert route.points[:2] == _near([[220, 100], [250, 100]])


def test_without_room_for_its_thickness_a_lead_squeezes_through():
    # shut but for a gap of 5 mm in the middle; 4 are asked for
    shut = [gear(f"X{k}", 500, y, "wall") for k, y in enumerate((47, 147.5, 252.5, 353))]
    route = _route(*shut)
    assert (route.way, len(route.points)) == ("close", 4)


def test_where_the_board_is_shut_a_lead_leaves_it():
    shut = [gear(f"X{k}", 500, y, "wall") for k, y in enumerate((50, 150, 250, 350))]
    route = _route(*shut)
    assert route.way == "over the edge"
    assert np.abs(route.points[2:4, 1] - 200) == _near([204, 204])


def test_where_there_is_no_way_at_all_a_lead_goes_straight():
    places = [(x, y) for x in (100, 200, 300) for y in (100, 200, 300) if (x, y) != (200, 200)]
    ring = [gear(f"X{k}", x, y, "wall") for k, (x, y) in enumerate(places)]
    route = _route(*ring)
    assert route.way == "straight"
    assert route.points == _near([[210, 200], [225, 200], [775, 200], [790, 200]])


def test_a_lead_between_two_boards_lies_on_both():
    boards = [
        {"id": "LEFT", "outline": rectangle(0, 0, 500, 400), "thickness": 10, "standoff": 20},
        {"id": "RIGHT", "outline": rectangle(500, 100, 1000, 400), "thickness": 10, "standoff": 20},
    ]
    things = [gear("A", 400, 30, "pin"), gear("B", 700, 150, "pin", board="RIGHT")]
    lead = {"id": "C", "from": "A.E", "to": "B.W", "size": None, "od": 8}
    route = _route(boards=boards, gear=things, leads=[lead])
    assert route.points == _near([[410, 30], [425, 30], [500, 100], [675, 150], [690, 150]])
    assert route.board == "LEFT"


def test_gear_on_the_bench_leaves_its_leads_without_a_route():
    things = [gear("A", 200, 200, "pin"), gear("B", 0, 0, "pin") | {"at": None}]
    assert dict(routes(_lay(gear=things))) == {}


def test_without_boards_a_lead_between_entries_goes_straight():
    entries = [
        {"id": "E1", "name": "a", "at": [0, 0], "carries": ["power"], "run": 1},
        {"id": "E2", "name": "b", "at": [300, 400], "carries": ["power"], "run": 1},
    ]
    lead = {"id": "C", "from": "E1", "to": "E2", "size": None, "od": 8}
    route = routes(layout(bay={"entries": entries}, boards=[], leads=[lead]))["C"]
    assert (route.length, route.board, route.kind) == (500, None, "power")


def test_a_lead_is_as_thick_as_its_size_or_as_a_signal_cable():
    for lead, od in (
        ({"od": None, "size": "4 AWG"}, 10.5),
        ({"od": None, "size": "16 mm2"}, 7.2),
        ({"od": None}, 6.0),
    ):
        assert _route(lead=lead).od == od


def test_two_leads_between_the_same_ports_take_the_same_way():
    lead = {"from": "A.E", "to": "B.W", "size": None, "od": 8}
    both = routes(_lay(gear("X", 500, 200, "wall"), leads=[lead | {"id": "C"}, lead | {"id": "D"}]))
    assert np.array_equal(both["C"].points, both["D"].points)
