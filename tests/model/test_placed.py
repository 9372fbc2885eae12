"""A stand-in on its board: the card's frame in bay axes."""

import pytest
from tests.build import card, gear, layout, rectangle

from bayboard.model.placed import place


def _placed(cards=None, **members):
    made = layout(gear=[gear("A", 200, 100, **members)], cards=cards or {})
    found = place(made, made.gear[0])
    assert found is not None
    return found


def test_gear_on_the_bench_has_no_place():
    made = layout(gear=[{"id": "A", "card": "box", "at": None}])
    assert place(made, made.gear[0]) is None


def test_gear_without_a_board_counts_as_on_the_bench():
    made = layout(boards=[], gear=[gear("A", 0, 0)])
    assert place(made, made.gear[0]) is None


def test_the_box_turns_with_the_gear():
    assert _placed(turn=90).box == pytest.approx((170, 50, 230, 150))


def test_the_body_stands_on_the_boards_front_plus_lift():
    (body,) = _placed(lift=5).bodies
    assert body.z == (35, 85)


def test_solids_replace_the_body():
    solids = [{"outline": rectangle(-50, -30, 0, 30), "z": [10, 20]}]
    (body,) = _placed(cards={"box": card(solids=solids)}).bodies
    assert (body.z, body.polygon.bounds) == ((40, 50), (150, 70, 200, 130))


def test_an_unknown_height_leaves_no_body():
    found = _placed(cards={"box": card(deep=None)})
    assert (found.bodies, found.top) == ((), None)


def test_a_direction_turns_with_the_gear_and_out_stays_out():
    found = _placed(turn=90)
    assert found.way(0) == pytest.approx((0, 1, 0))
    assert found.way("out") == (0, 0, 1)


def test_a_port_stands_over_the_underside():
    port = {"id": "p", "kind": "power", "at": [50, 0], "z": 10, "towards": 0, "plug": 20}
    found = _placed(cards={"box": card(ports=[port])}, turn=180)
    assert found.port_at(found.card.ports[0]) == pytest.approx((150, 100, 40))
