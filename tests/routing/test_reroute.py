"""Re-routing after gear moved gives exactly what routing anew does."""

from random import Random

import numpy as np
import pytest
from msgspec.structs import replace
from tests.plain.bays import bay

from bayboard.edits.move_gear import MoveGear
from bayboard.edits.set_gear_lift import SetGearLift
from bayboard.edits.set_taped import SetTaped
from bayboard.edits.to_bench import ToBench
from bayboard.edits.turn_gear import TurnGear
from bayboard.model.read import from_document
from bayboard.routing.reroute import reroute
from bayboard.routing.route import routes


def _same(a, b):
    assert list(a) == list(b)
    for lead in a:
        assert a[lead].way == b[lead].way, lead
        assert np.array_equal(a[lead].points, b[lead].points), lead


def _some_edit(random, gear, layout):
    """Mostly a small move, as in a drag; at times a turn, a leap, two pieces, or something else."""
    what, other = random.random(), random.choice(layout.gear).id
    if what < 0.1:
        return TurnGear((gear,), random.choice([90, -37.5]))
    if what < 0.2:
        return MoveGear((gear, other), random.uniform(-60, 60), random.uniform(-60, 60))
    if what < 0.25:
        return random.choice([ToBench((other,)), SetGearLift(other, 30), SetTaped((other,), True)])
    return MoveGear((gear,), random.uniform(-8, 8), random.uniform(-8, 8))


@pytest.mark.parametrize("seed", range(6))
def test_a_walk_of_moves_gives_the_routes_of_each_layout_anew(seed):
    random = Random(seed)
    layout = from_document(bay(seed, pieces=9, leads=18, ods=(6.0, 10.5)))
    known = routes(layout)
    gear = random.choice(layout.gear).id
    for step in range(12):
        if step % 4 == 0:
            gear = random.choice(layout.gear).id
        after = _some_edit(random, gear, layout).apply(layout)
        found = reroute(after, layout, known)
        _same(routes(after), found)
        layout, known = after, found


def test_a_lead_that_nothing_touches_keeps_its_very_route():
    layout = from_document(bay(1, leads=20))
    known = routes(layout)
    gear = layout.gear[0].id
    after = MoveGear((gear,), 0.5, 0).apply(layout)
    found = reroute(after, layout, known)
    kept = {lead.id for lead in layout.leads if found[lead.id] is known[lead.id]}
    joined = {lead.id for lead in layout.leads if f"{gear}." in f"{lead.from_} {lead.to}"}
    assert len(kept) >= 10
    assert joined.isdisjoint(kept)


def test_what_routes_do_not_depend_on_costs_nothing():
    layout = from_document(bay(1))
    known = routes(layout)
    assert reroute(replace(layout, units="in"), layout, known) is known


def test_routes_known_from_elsewhere_serve_too():
    layout = from_document(bay(1))
    after = MoveGear((layout.gear[0].id,), 3, 3).apply(layout)
    _same(routes(after), reroute(after, layout, dict(routes(layout))))


def test_a_changed_lead_is_led_anew():
    layout = from_document(bay(1))
    known = routes(layout)
    thick = replace(layout, leads=tuple(replace(lead, od=16.5) for lead in layout.leads))
    _same(routes(thick), reroute(thick, layout, known))
