"""The seat that stands up meets a stand-in, a plug or a lead.

Why: a seat back that touches the gear rubs, rattles, and loads the board every time somebody sits down.
Quiet: the seat, with its give taken off, stays the margin away, or is not in front of it at all.
Speaks: the room between seat and front is under the margin; gives that room, negative where it digs in.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.outline import Points
from bayboard.geometry.sections import padded, probed_rooms, rooms
from bayboard.model.layout import Seat
from bayboard.rules.cables import known_od, no_size
from bayboard.rules.finding import Finding, Said
from bayboard.rules.fronts import Front, fronts_of, gear_fronts, lead_fronts, on_front
from bayboard.rules.levels import MUST, SHOULD, SILENT, Key, Levels
from bayboard.rules.meetings import body_members
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed, no_height, no_section
from bayboard.rules.words import amount_and_need
from bayboard.tables.limits import limit

RULE = "seat-depth"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each front that a seat comes too near."""
    seats = scene.layout.bay.seats
    if not seats:
        return
    yield from _unlooked(scene, about)
    standing = [*gear_fronts(scene, about), *lead_fronts(scene, about)]
    if standing:
        rings = padded([front.ring for front in standing])
        for seat in seats:
            yield from _judged(scene, seat, standing, rings)


def _unlooked(scene: Scene, about: frozenset[str] | None) -> Iterator[Said]:
    for id_, placed in scene.placed.items():
        if about is None or id_ in about:
            if not placed.bodies:
                yield no_height(RULE, id_)
            yield from guessed(RULE, placed, (*body_members(placed), "ports"))
    for lead in scene.layout.leads:
        if on_front(scene, lead, about) and known_od(scene, lead) is None:
            yield no_size(RULE, lead)
    for seat in scene.layout.bay.seats:
        if seat.up is None and about is None:
            yield no_section(RULE, seat.id, "up")


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    margin = limit(scene.layout, "seat_margin")
    found: dict[Key, Levels] = {}
    for seat in scene.layout.bay.seats:
        for front in fronts_of(places.model):
            subjects = front.subject, seat.id
            if key in (None, subjects):
                room = _rooms(scene, seat, places.rings(front.ring), np.full(len(places), front.z))
                levels = SHOULD * (room < margin - HAIR).astype(np.int8)
                levels[(room < -HAIR) & (levels > SILENT)] = MUST
                found[subjects] = np.maximum(levels, found.get(subjects, SILENT))
    return found


def _rooms(scene: Scene, seat: Seat, rings: Points, z: Points) -> Points:
    """Return the room between a seat that stands up and fronts, mm: rings (n, points, 2) at heights `z`."""
    if seat.probes:
        reach = limit(scene.layout, "probe_reach")
        least = probed_rooms(rings, seat.x, seat.up, seat.probes, reach)
    else:
        least = rooms(rings, seat.x, seat.up)
    return np.asarray(least - seat.give - z)


def _judged(scene: Scene, seat: Seat, fronts: list[Front], rings: Points) -> Iterator[Finding]:
    room = _rooms(scene, seat, rings, np.array([front.z for front in fronts]))
    margin = limit(scene.layout, "seat_margin")
    worst: dict[str, int] = {}
    for i in map(int, np.flatnonzero(room < margin - HAIR)):
        subject = fronts[i].subject
        if room[i] < room[worst.setdefault(subject, i)]:
            worst[subject] = i
    for k in worst.values():
        yield _finding(scene, seat, fronts[k], float(room[k]), margin)


def _finding(scene: Scene, seat: Seat, front: Front, room: float, margin: float) -> Finding:
    must = room < -HAIR
    shown, wanted = amount_and_need(abs(room), margin, scene.layout.units)
    if must:
        says = f"{front.name} stands {shown} into seat {seat.id}. It needs {wanted} of room before the seat."
    else:
        fact = f"clears seat {seat.id} by {shown}" if room > HAIR else f"touches seat {seat.id}"
        says = f"{front.name} {fact}. {wanted} is comfortable."
    low, high = front.ring.min(axis=0), front.ring.max(axis=0)
    x = (max(low[0], seat.x[0]) + min(high[0], seat.x[1])) / 2.0
    return Finding(
        rule=RULE,
        severity="must" if must else "should",
        subjects=(front.subject, seat.id),
        measure=room,
        limit=margin,
        unit="mm",
        at=(float(x), float(low[1] + high[1]) / 2.0),
        says=says,
    )
