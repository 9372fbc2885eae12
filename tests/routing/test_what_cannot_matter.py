"""Routes of random bays when something changes that must not matter, or only one way."""

import numpy as np
import pytest
from msgspec.structs import replace
from tests.plain.bays import bay

from bayboard.model.read import from_document
from bayboard.routing import search
from bayboard.routing.route import routes

SEEDS = range(8)


def _document(seed):
    return bay(seed, pieces=7, leads=12)


def _exact(found):
    """Return the leads whose ends are where a lead can be, so that their length is the shortest exactly."""
    return {
        n
        for n, one in found.led.items()
        if one.path is not None and one.path.sure and found[n].way == "clear"
    }


def _moved(document, dx, dy):
    """Return the document with everything that stands in bay axes moved."""
    for board in document["boards"]:
        board["outline"] = [[x + dx, y + dy] for x, y in board["outline"]]
        for cutout in board["cutouts"]:
            cutout["outline"] = [[x + dx, y + dy] for x, y in cutout["outline"]]
    for thing in (*document["gear"], *document["fixings"], *document["bay"]["entries"]):
        thing["at"] = [thing["at"][0] + dx, thing["at"][1] + dy]
    return document


@pytest.mark.parametrize("seed", SEEDS)
def test_the_order_of_the_document(seed):
    document = _document(seed)
    plain = routes(from_document(document))
    for member in ("gear", "leads", "fixings"):
        document[member].reverse()
    turned = routes(from_document(document))
    assert list(turned) == list(plain)[::-1]
    for lead in plain:
        assert turned[lead].points == pytest.approx(plain[lead].points, abs=1e-6)


@pytest.mark.parametrize("seed", SEEDS)
def test_where_the_bay_is_measured_from(seed):
    plain = routes(from_document(_document(seed)))
    moved = routes(from_document(_moved(_document(seed), -317.5, 1203.25)))
    for lead in plain:
        assert moved[lead].length == pytest.approx(plain[lead].length, abs=1e-5)


@pytest.mark.parametrize("seed", SEEDS)
def test_which_end_a_lead_is_said_to_start_from(seed):
    layout = from_document(_document(seed))
    back = tuple(replace(lead, from_=lead.to, to=lead.from_) for lead in layout.leads)
    plain, turned = routes(layout), routes(replace(layout, leads=back))
    for lead in plain:
        assert turned[lead].length == pytest.approx(plain[lead].length, abs=1e-6)


@pytest.mark.parametrize("seed", SEEDS)
def test_which_leads_are_led_together(seed):
    layout = from_document(_document(seed))
    plain = routes(layout)
    for lead in layout.leads[::3]:
        alone = routes(replace(layout, leads=(lead,)))
        assert np.array_equal(alone[lead.id].points, plain[lead.id].points)


@pytest.mark.parametrize("seed", SEEDS)
def test_how_many_corners_are_tried_first(seed, monkeypatch):
    layout = from_document(_document(seed))
    plain = routes(layout)
    for likely in (1, 1000):
        monkeypatch.setattr(search, "LIKELY", likely)
        again = routes(layout)
        assert all(np.array_equal(again[lead].points, plain[lead].points) for lead in plain)


@pytest.mark.parametrize("seed", SEEDS)
def test_less_in_the_way_makes_no_lead_longer(seed):
    layout = from_document(_document(seed))
    full = routes(layout)
    bare = routes(replace(layout, fixings=(), boards=(replace(layout.boards[0], cutouts=()),)))
    for lead in _exact(full):
        assert bare[lead].length <= full[lead].length + 1e-6


@pytest.mark.parametrize("seed", SEEDS)
def test_a_thicker_lead_is_not_shorter(seed):
    layout = from_document(_document(seed))
    thin, thick = (
        routes(replace(layout, leads=tuple(replace(lead, od=od) for lead in layout.leads)))
        for od in (4.0, 9.0)
    )
    for lead in _exact(thin) & _exact(thick):
        assert thick[lead].length >= thin[lead].length - 1e-6
