"""A lead with a stand-in of it at many places goes where the search leads it at each of them."""

import random

import numpy as np
import pytest
from tests.build import card, gear, layout
from tests.plain.random_layouts import random_document

from bayboard.edits.move_gear import MoveGear
from bayboard.model.read import from_document
from bayboard.routing.route import routes
from bayboard.routing.swept import swept

PORT = {"id": "P", "kind": "power"}


def _ported(towards, at, plug=20):
    return card(100, 60, ports=[PORT | {"at": at, "z": 5, "towards": towards, "plug": plug}])


def _bay(towards, at, **more):
    entry = {"id": "E", "name": "Battery", "carries": ["power"], "run": 1, "at": [900, 200]}
    lead = {"id": "W", "from": "A.P", "to": "E", "size": "4 AWG", "od": 10}
    cards = {"amp": _ported(towards, at), "box": card()}
    stand_ins = [gear("A", 300, 200, "amp"), gear("B", 600, 200)]
    return layout(cards=cards, gear=stand_ins, bay={"entries": [entry]}, leads=[lead], **more)


def _by(bay, lead, name, moves):
    """Return how the sweep and the search lead a lead at each place, the sweep's None where it is silent."""
    found = swept(bay, lead, name).routes(np.array(moves, dtype=float))
    return [
        (ours, routes(MoveGear((name,), *map(float, by)).apply(bay))[lead.id])
        for ours, by in zip(found, moves, strict=True)
    ]


def _same(ours, theirs):
    return (
        ours.way == theirs.way
        and ours.kind == theirs.kind
        and np.allclose(ours.points, theirs.points, atol=1e-6)
    )


@pytest.mark.parametrize(
    ("towards", "at"), [(0, [50, 0]), (180, [-50, 0]), (90, [0, 30]), ("out", [10, 10]), ("out", [-49, 0])]
)
def test_a_lead_goes_where_it_is_led_whichever_way_its_plug_points(towards, at):
    bay = _bay(towards, at)
    both = _by(bay, bay.leads[0], "A", [(0, 0), (30, 0), (-40, 60), (0, -70), (60, 60), (-80, 0)])
    told = [(ours, theirs) for ours, theirs in both if ours is not None]
    assert len(told) >= 5
    assert all(_same(ours, theirs) for ours, theirs in told)


def test_a_place_where_the_tip_comes_too_near_to_another_thing_is_left_to_the_search():
    bay = _bay(0, [50, 0])
    assert swept(bay, bay.leads[0], "A").routes(np.array([(190.0, 0.0)])) == [None]


def test_a_place_off_the_board_is_left_to_the_search():
    bay = _bay(180, [-50, 0])
    assert swept(bay, bay.leads[0], "A").routes(np.array([(-260.0, 0.0)])) == [None]


def test_a_lead_is_swept_only_with_one_stand_in_of_its_own():
    bay = _bay(0, [50, 0])
    assert swept(bay, bay.leads[0], "B") is None
    assert swept(bay, bay.leads[0], "E") is None


@pytest.mark.parametrize("seed", [1, 4, 9, 5003, 5009, 5020])
def test_leads_of_random_layouts_go_where_they_are_led(seed):
    bay, dice = from_document(random_document(seed)), random.Random(seed)
    for lead in bay.leads:
        for name in {end.partition(".")[0] for end in (lead.from_, lead.to) if "." in end}:
            if lead.via or swept(bay, lead, name) is None:
                continue
            moves = [(dice.randint(-80, 80) / 2, dice.randint(-80, 80) / 2) for _ in range(4)]
            for ours, theirs in _by(bay, lead, name, moves):
                assert ours is None or _same(ours, theirs)
