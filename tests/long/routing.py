"""Routes: how a re-route compares with routing anew, in time and in what comes out; and a second router."""

from itertools import cycle
from random import Random

import figures
import numpy as np
from tests.plain.bays import bay
from tests.plain.router import PlainRouter

from bayboard.edits.move_gear import MoveGear
from bayboard.edits.turn_gear import TurnGear
from bayboard.model.read import from_document
from bayboard.routing.reroute import reroute
from bayboard.routing.route import routes

FIGURES = ("re-route at 40", "re-routes that differ", "routes over the shortest")
ROOMS = (
    "routing",
    "geometry/outline.py",
    "geometry/prism.py",
    "model/placed.py",
    "tables/wire.py",
    "tables/threads.py",
)
SEED = 3
DRAGS, STEPS = 12, 10
WALKS = 60
BAYS = 60
OD = 6.0


def main():
    """Measure and keep the three figures."""
    figures.keep(FIGURES[0], ROOMS, baseline="all leads anew", goal=0.25, seed=SEED, **_time())
    differ, leads = _differ()
    figures.keep(FIGURES[1], ROOMS, baseline="all leads anew", goal=0.0, value=differ, count=leads, seed=0)
    worst, leads = _over()
    figures.keep(
        FIGURES[2],
        ROOMS,
        baseline="networkx and shapely",
        goal=1.001,
        value=round(worst, 9),
        count=leads,
        seed=0,
    )


def _time():
    """Return the figures of a drag of stand-in after stand-in: one step each, next to routing anew."""
    layout = from_document(bay(SEED, pieces=40, leads=120, wide=2400, high=900, ods=(6.0, 10.5)))
    random, steps, now = Random(SEED), [], layout
    for _ in range(DRAGS):
        gear = random.choice(layout.gear).id
        for _ in range(STEPS):
            now = MoveGear((gear,), random.uniform(-4, 4), random.uniform(-4, 4)).apply(now)
            steps.append(now)
    ahead, anew = cycle(steps), cycle(steps)
    before, known = layout, routes(layout)

    def step():
        nonlocal before, known
        after = next(ahead)
        known, before = reroute(after, before, known), after

    return figures.paired(step, lambda: routes(next(anew)), pairs=DRAGS * STEPS - 1)


def _differ():
    """Return how many leads of how many another way came out of a re-route, over random walks."""
    differ = leads = 0
    for seed in range(WALKS):
        random = Random(seed)
        layout = from_document(bay(seed, pieces=10, leads=25, wide=1219, high=406, ods=(6.0, 10.5)))
        known, gear = routes(layout), random.choice(layout.gear).id
        for step in range(15):
            if step % 5 == 0:
                gear = random.choice(layout.gear).id
            after = _edit(random, gear, layout).apply(layout)
            known, anew = reroute(after, layout, known), routes(after)
            leads += len(anew)
            differ += sum(not np.array_equal(known[lead].points, anew[lead].points) for lead in anew)
            layout = after
    return differ, leads


def _edit(random, gear, layout):
    what = random.random()
    if what < 0.15:
        return TurnGear((gear,), random.choice([90, 37.5]))
    if what < 0.25:
        both = (gear, random.choice(layout.gear).id)
        return MoveGear(both, random.uniform(-60, 60), random.uniform(-60, 60))
    return MoveGear((gear,), random.uniform(-8, 8), random.uniform(-8, 8))


def _over():
    """Return the worst ratio of a route's length to the plain router's, and how many were compared."""
    worst, leads = 0.0, 0
    for seed in range(BAYS):
        layout = from_document(bay(seed, ods=(OD,)))
        plain, found = PlainRouter(layout, OD), routes(layout)
        for lead in layout.leads:
            shortest = plain.length(lead)
            if shortest is not None:
                worst, leads = max(worst, found[lead.id].length / shortest), leads + 1
    return worst, leads


if __name__ == "__main__":
    main()
