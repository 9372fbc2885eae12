"""Routes against a router written a second time over shapely and networkx (tests/plain/router.py)."""

import pytest
import shapely
from shapely import LineString

from bayboard.model.read import from_document
from bayboard.routing.route import routes
from tests.plain.bays import bay
from tests.plain.router import PlainRouter

OD = 6.0


def _sideways(lead):
    return not (lead.from_.endswith(".O") or lead.to.endswith(".O"))


@pytest.mark.parametrize("seed", range(20))
def test_no_route_is_longer_than_the_shortest_there_is(seed):
    layout = from_document(bay(seed, ods=(OD,)))
    plain, found = PlainRouter(layout, OD), routes(layout)
    compared = 0
    for lead in filter(_sideways, layout.leads):
        shortest = plain.length(lead)
        if shortest is not None and found[lead.id].way == "clear":
            assert found[lead.id].length <= 1.001 * shortest, lead.id
            assert found[lead.id].length >= shortest - 1e-6, lead.id
            compared += 1
    assert compared >= 3


@pytest.mark.parametrize("seed", range(20))
def test_between_its_outer_bends_a_route_keeps_half_its_diameter_off_everything(seed):
    layout = from_document(bay(seed, ods=(OD,)))
    plain = PlainRouter(layout, OD)
    bare = shapely.union_all(plain.bares)
    for route in routes(layout).values():
        middle = route.points[2:-2]
        if route.way == "clear" and len(middle) > 1:
            assert LineString(middle).distance(bare) >= OD / 2 - 1e-5, route.lead
