"""Leads led: through their `via`, or the shortest way that has room."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.routing.bed import Bed
from bayboard.routing.ground import CLEAR, ROOMS, Ground
from bayboard.routing.joined import Joined
from bayboard.routing.path import Route
from bayboard.routing.search import Path, Trip, search
from bayboard.routing.tip import tip


@dataclass(frozen=True, eq=False, slots=True)
class Led:
    """A lead with its route, and the path between its tips that the search found, None without one."""

    joined: Joined
    route: Route
    path: Path | None = None


def led(leads: Sequence[Joined], grounds: Mapping[Bed, Ground]) -> dict[str, Led]:
    """Return these leads led, by id, those of a bed all at once."""
    found = {j.lead.id: _given(j) for j in leads if j.lead.via or j.bed is None}
    left = [j for j in leads if j.lead.id not in found]
    for bed, ground in grounds.items():
        found |= _on_bed([j for j in left if j.bed == bed], ground)
    return found


def _given(joined: Joined) -> Led:
    """Return the lead through its `via`; without board and `via` it goes straight."""
    points = np.array([joined.first.point, *joined.lead.via, joined.last.point], dtype=np.float64)
    return Led(joined, joined.route(points, "given" if joined.lead.via else "straight"))


def _on_bed(leads: Sequence[Joined], ground: Ground) -> dict[str, Led]:
    found: dict[str, Led] = {}
    left = dict(zip((j.lead.id for j in leads), zip(leads, _trips(leads, ground), strict=True), strict=True))
    for room in ROOMS:
        if not left:
            break
        board = ground.surface.board if room.on_board else None
        paths = search(ground.floor(room), [trip for _, trip in left.values()], board)
        for (lead, (joined, trip)), path in zip(list(left.items()), paths, strict=True):
            if path is not None:
                found[lead] = Led(joined, joined.route(_whole(trip, path.points), room.way), path)
                del left[lead]
    for lead, (joined, trip) in left.items():
        line = np.array([trip.a.turns, trip.b.turns], dtype=np.float64)
        found[lead] = Led(joined, joined.route(_whole(trip, line), "straight"))
    return found


def _trips(leads: Sequence[Joined], ground: Ground) -> list[Trip]:
    if not leads:
        return []
    clear = ground.floor(CLEAR)
    known = {}
    for end in {end.name: end for joined in leads for end in (joined.first, joined.last)}.values():
        own = clear.numbers.get(end.placed.id) if end.placed else None
        known[end.name] = tip(end, None if own is None else clear.obstacles[own])
    return [Trip(j.lead.id, known[j.first.name], known[j.last.name]) for j in leads]


def _whole(trip: Trip, between: Points) -> Points:
    """Return the path with the plugs at both ends."""
    first = [trip.a.end] if trip.a.end != trip.a.turns else []
    last = [trip.b.end] if trip.b.end != trip.b.turns else []
    return np.array([*first, *between.tolist(), *last], dtype=np.float64)
