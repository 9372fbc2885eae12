"""The path of every lead: as given, or the shortest way round whatever stands on its bed."""

from collections.abc import Iterator, Mapping, Sequence

import numpy as np
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.outline import Points
from bayboard.model.layout import Board, Layout, Lead
from bayboard.model.placed import Placed, board_of
from bayboard.routing.bed import Bed, Obstacle, Rim, hull, in_the_way, surface
from bayboard.routing.ends import End, ends, placed_gear
from bayboard.routing.floor import Floor, floor
from bayboard.routing.kind import kind
from bayboard.routing.path import Route, Way
from bayboard.routing.search import Trip, search
from bayboard.routing.tip import tip
from bayboard.tables.limits import limit
from bayboard.tables.reference import lead_od

__all__ = ["Ground", "Joined", "Route", "Routes", "board_under", "diameter", "led", "routes"]

ROOM: tuple[tuple[Way, float, bool], ...] = (
    ("clear", 0.5, True),
    ("touching", 0.0, True),
    ("over the edge", 0.5, False),
)
"""How much room is asked for, most first: its name, growth in diameters, on the board or not."""


def diameter(layout: Layout, lead: Lead) -> float:
    """Return a lead's outside diameter in mm; limit `lead_od` where neither it nor a size is known."""
    known = lead_od(lead.size, lead.od)
    return limit(layout, "lead_od") if known is None else known


def board_under(layout: Layout, first: End, last: End) -> Board | None:
    """Return the board a lead lies on: that of `from`, else of `to`, else the first; None without boards."""
    for end in (first, last):
        if end.placed is not None:
            return end.placed.board
    return board_of(layout, None)


class Joined:
    """A lead with both its ends; `bed` None: there is no board."""

    __slots__ = ("bed", "board", "first", "last", "lead", "od")

    def __init__(self, layout: Layout, lead: Lead, first: End, last: End) -> None:
        self.lead, self.first, self.last = lead, first, last
        self.od = diameter(layout, lead)
        self.board = board_under(layout, first, last)
        self.bed: Bed | None = None
        if self.board is not None:
            boards = [self.board.id, *(end.placed.board.id for end in (first, last) if end.placed)]
            self.bed = Bed(tuple(dict.fromkeys(boards)), lead.side, self.od)

    def route(self, points: Points, way: Way) -> Route:
        """Return the lead's route over these points."""
        carries = kind(self.first.meets, self.last.meets)
        board = self.board.id if self.board else None
        return Route(self.lead.id, carries, board, points, self.od, way != "given", way)


class Ground:
    """A bed of a layout with its floors, each made when first asked for.

    `before`: the ground of the same bed in a layout of which only places of gear differ; what stands where it
    stood is taken over.
    """

    def __init__(
        self, layout: Layout, bed: Bed, placed: Mapping[str, Placed], before: "Ground | None" = None
    ) -> None:
        self._layout, self.bed, self._placed = layout, bed, placed
        self.before = before
        self.surface: BaseGeometry = before.surface if before else surface(layout, bed)
        self._floors: dict[Way, Floor] = {}

    def floor(self, way: Way, growth: float, on_board: bool) -> Floor:
        """Return the floor with obstacles grown by `growth` of the diameter."""
        made = self._floors.get(way)
        if made is None:
            old = self.before.made(way) if self.before else None
            made = self._moved(old) if old else self._new(growth * self.bed.od, on_board)
            self._floors[way] = made
        return made

    def made(self, way: Way) -> Floor | None:
        """Return the floor if it was made."""
        return self._floors.get(way)

    def _new(self, growth: float, on_board: bool) -> Floor:
        found = in_the_way(self._layout, self.bed, self._placed, growth)
        if on_board:
            return floor([*found, Rim(self.surface)], hull(self.surface))
        return floor(found, None)

    def _moved(self, old: Floor) -> Floor:
        return floor([self._now(o) for o in old.obstacles], old.hull, old)

    def _now(self, thing: Obstacle) -> Obstacle:
        placed = self._placed.get(thing.owner) if thing.kind == "gear" else None
        return thing if placed is None else thing.put(placed.at, placed.gear.turn)


class Routes(Mapping[str, Route]):
    """The route of each lead that has one, by lead id, in document order; `grounds` are kept for the next."""

    def __init__(self, found: Mapping[str, Route], grounds: Mapping[Bed, Ground]) -> None:
        self._found, self.grounds = found, grounds

    def __getitem__(self, lead: str) -> Route:
        """Return the route of a lead; raise `KeyError` where it has none."""
        return self._found[lead]

    def __iter__(self) -> Iterator[str]:
        """Yield the ids of leads that have a route."""
        return iter(self._found)

    def __len__(self) -> int:
        """Return how many leads have a route."""
        return len(self._found)


def joined(layout: Layout, placed: Mapping[str, Placed]) -> list[Joined]:
    """Return the leads both of whose ends have a place, in document order."""
    both = ((lead, ends(layout, lead, placed)) for lead in layout.leads)
    return [Joined(layout, lead, *found) for lead, found in both if found is not None]


def routes(layout: Layout) -> Mapping[str, Route]:
    """Return the route of every lead both of whose ends have a place, by lead id.

    A lead with an empty `via` takes the exact shortest way round: out of a plug straight for the
    plug's length, then in straight stretches that keep half its diameter off all that stands at its
    height on its bed, off cut-outs and washers, and on the board but for the stretch next to an entry
    that lies off it.
    """
    placed = placed_gear(layout)
    leads = joined(layout, placed)
    grounds = {
        bed: Ground(layout, bed, placed)
        for bed in dict.fromkeys(j.bed for j in leads if not j.lead.via)
        if bed
    }
    found = led(leads, grounds)
    return Routes({j.lead.id: found[j.lead.id] for j in leads}, grounds)


def led(leads: Sequence[Joined], grounds: Mapping[Bed, Ground]) -> dict[str, Route]:
    """Return the routes of these leads by id, those of a bed all at once."""
    found = {j.lead.id: _given(j) for j in leads if j.lead.via or j.bed is None}
    for bed in dict.fromkeys(j.bed for j in leads if not j.lead.via):
        if bed is not None:
            found |= _led([j for j in leads if j.bed == bed and not j.lead.via], grounds[bed])
    return found


def _given(joined: Joined) -> Route:
    """Return the route through the lead's `via`; without board and `via` it goes straight."""
    points = np.array([joined.first.point, *joined.lead.via, joined.last.point], dtype=np.float64)
    return joined.route(points, "given" if joined.lead.via else "straight")


def _led(leads: Sequence[Joined], ground: Ground) -> dict[str, Route]:
    found: dict[str, Route] = {}
    for way, growth, on_board in ROOM:
        left = [j for j in leads if j.lead.id not in found]
        if not left:
            break
        trips = _trips(left, ground)
        paths = search(ground.floor(way, growth, on_board), trips, ground.surface if on_board else None)
        for j, trip, path in zip(left, trips, paths, strict=True):
            if path is not None:
                found[j.lead.id] = j.route(_whole(trip, path), way)
    for j in leads:
        if j.lead.id not in found:
            (trip,) = _trips([j], ground)
            found[j.lead.id] = j.route(_whole(trip, np.array([trip.a.turns, trip.b.turns])), "straight")
    return found


def _trips(leads: Sequence[Joined], ground: Ground) -> list[Trip]:
    way, growth, on_board = ROOM[0]
    clear = ground.floor(way, growth, on_board)
    known = {}
    for j in leads:
        for end in (j.first, j.last):
            own = clear.numbers.get(end.placed.id) if end.placed else None
            known[end.name] = tip(end, None if own is None else clear.obstacles[own])
    return [Trip(j.lead.id, known[j.first.name], known[j.last.name]) for j in leads]


def _whole(trip: Trip, path: Points) -> Points:
    """Return the path with the plugs at both ends."""
    first = [trip.a.end] if trip.a.end != trip.a.turns else []
    last = [trip.b.end] if trip.b.end != trip.b.turns else []
    return np.array([*first, *path.tolist(), *last], dtype=np.float64)
