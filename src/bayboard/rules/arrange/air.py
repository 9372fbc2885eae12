"""A stand-in has less air round it than its card asks for.

Why: a box that cannot shed its heat throttles, cuts out on a hot day, and ages early.
Quiet: on each side that asks for air nothing solid stands nearer than asked; leads do not count.
Speaks: a body, a stay or the seat that stands up is nearer; gives the distance from that side's edge of the
outline's box to the nearest, a must under half of what is asked.
"""

from collections.abc import Iterator
from functools import partial

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.outline import Points
from bayboard.geometry.sides import seen_side
from bayboard.rules.ahead import called
from bayboard.rules.ahead_at import Asking, levels_ahead
from bayboard.rules.airing import AirSide, Stuffy, air_sides, asks, looked, stuffy
from bayboard.rules.finding import Finding, Said
from bayboard.rules.levels import MUST, SHOULD, SILENT, Key, Levels
from bayboard.rules.meetings import body_members
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed, no_section, unknown_bodies
from bayboard.rules.words import amount_and_need
from bayboard.tables.limits import limit

RULE = "air"
WIDE = True  # whoever leaves may bare the next solid behind

_WHERE = {"left": "to its left", "right": "to its right", "up": "above it", "down": "below it"}


def look(scene: Scene, _about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each side with less air than asked; always for all sides."""
    asking = [placed for placed in scene.placed.values() if asks(placed)]
    yield from _unlooked(scene, bool(asking))
    for found in stuffy(scene, [side for placed in asking for side in air_sides(placed)]):
        yield _finding(scene, found)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    standing = (places.model if id_ == places.id else placed for id_, placed in scene.placed.items())
    sides = [side for placed in standing if key is None or placed.id == key[0] for side in air_sides(placed)]
    share = limit(scene.layout, "air_must_share")
    found: dict[Key, Levels] = {}
    for group, rows, looks in looked(sides):
        asking = Asking(looks, np.array(rows), [s.placed.id for s in group], [s.asked for s in group])
        for subjects, told in levels_ahead(scene, places, asking, partial(_levels, share)).items():
            found[subjects] = np.maximum(told, found.get(subjects, SILENT))
    return found


def _levels(share: float, free: Points, asked: float) -> Levels:
    return np.where(free < share * asked - HAIR, MUST, SHOULD).astype(np.int8)


def _unlooked(scene: Scene, asked: bool) -> Iterator[Said]:
    for placed in scene.placed.values():
        body = (*body_members(placed), "outline") if asks(placed) else body_members(placed)
        yield from guessed(RULE, placed, (*dict.fromkeys(body), "air") if asked else ("air",))
    if asked:
        yield from unknown_bodies(RULE, scene)
        for seat in scene.layout.bay.seats:
            if seat.up is None:
                yield no_section(RULE, seat.id, "up")


def _finding(scene: Scene, found: Stuffy) -> Finding:
    side, share = found.side, limit(scene.layout, "air_must_share")
    must = found.free < share * side.asked - HAIR
    free, need = amount_and_need(found.free, side.asked, scene.layout.units)
    has = f"{free} of air" if found.free > HAIR else "no air"
    wish = f"It needs {need}" if must else f"{need} is better"
    return Finding(
        rule=RULE,
        severity="must" if must else "should",
        subjects=(side.placed.id, found.solid),
        measure=found.free,
        limit=side.asked,
        unit="mm",
        at=found.at,
        says=f"{side.placed.id} has {has} {_where(side)} before {called(scene, found.solid)}. {wish}.",
    )


def _where(side: AirSide) -> str:
    """Return where a side is, as one sees it on the wall."""
    return "in front" if side.facing == "out" else _WHERE[seen_side(side.facing, side.placed.gear.turn)]
