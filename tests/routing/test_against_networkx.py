"""Routes against a router written a second time over shapely and networkx (tests/plain/router.py)."""

from functools import cache

import pytest
from shapely import LineString
from tests.plain.bays import bay
from tests.plain.router import PlainRouter

from bayboard.model.read import from_document
from bayboard.routing.route import routes

OD = 6.0


@cache
def _both(seed):
    layout = from_document(bay(seed, leads=9, ods=(OD,)))
    return layout, PlainRouter(layout, OD), routes(layout)


@pytest.mark.parametrize("seed", range(20))
def test_no_route_is_longer_than_the_shortest_there_is(seed):
    layout, plain, found = _both(seed)
    compared = 0
    for lead in layout.leads:
        shortest = plain.length(lead)
        if shortest is not None:
            assert found[lead.id].way == "clear"
            assert found[lead.id].length <= 1.001 * shortest, lead.id
            compared += 1
    assert compared >= 3


@pytest.mark.parametrize("seed", range(20))
def test_a_route_that_calls_itself_clear_keeps_half_its_diameter_off_everything(seed):
    layout, plain, found = _both(seed)
    for lead in layout.leads:
        route = found[lead.id]
        ends = [plain.tip(lead.from_), plain.tip(lead.to)]
        if plain.nowhere(lead):
            continue
        stubs = [0 if at == turns else 1 for at, turns, *_ in ends]
        path = route.points[stubs[0] : len(route.points) - stubs[1]]
        first, last = ((turns, *own) for _, turns, _, *own in ends)
        tips = [[] for _ in path[1:]]
        tips[0].append(first)
        tips[-1].append(last)
        for a, b, near in zip(path[:-1], path[1:], tips, strict=True):
            assert LineString([a, b]).intersection(plain.solid_from(*near)).length < 1e-5, lead.id
