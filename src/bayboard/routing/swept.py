"""The ways of one lead with the stand-in at one of its ends at many places, all at once.

With that stand-in thought away, the shortest way from the other end to every corner is found once.  At each
place the lead goes out round its own stand-in and from there straight to one of those corners; the cheapest
of these ways, if it is free, is the shortest: what stands in between can only make it longer.
"""

from dataclasses import dataclass

import numpy as np
import shapely

from bayboard.geometry.outline import Points
from bayboard.model.layout import Layout, Lead
from bayboard.routing.ends import placed_gear
from bayboard.routing.excuse import Excuses, excuses, sure
from bayboard.routing.fan import allowed, fans, stations
from bayboard.routing.floor import Floor, floor
from bayboard.routing.ground import CLEAR, Ground
from bayboard.routing.joined import Joined, joined
from bayboard.routing.path import Route
from bayboard.routing.shortest import SIDE, Tree, price, tree
from bayboard.routing.tip import Tip, tip
from bayboard.routing.walls import GRAZE, Flags, Indices, crossings, holding

ROUNDS = (6, 30, 150)  # how many of the cheapest ways are tried at each place that has none yet
TIE = 1e-7  # mm; two ways that cost the same but for this are left to the search
AT_ONCE = 500_000  # ways priced together


@dataclass(frozen=True, eq=False, slots=True)
class _End:
    """One end of the lead: the floor it is on, its tip and excuses there, and the ways from it."""

    floor: Floor
    tip: Tip
    known: Excuses
    ways: Tree


class Swept:
    """A lead one of whose stand-ins is to be put at many places; nothing else moves."""

    def __init__(self, joined: Joined, near: _End, far: _End, whole: Ground, first: bool) -> None:
        self._joined, self._near, self._far, self._first = joined, near, far, first
        self._surface = whole.surface
        self._moving = np.flatnonzero(np.isfinite(near.ways.cost))
        usable = np.append(
            far.floor.usable, np.ones(len(far.ways.at) - len(far.floor.usable), dtype=np.bool_)
        )
        self._fixed = np.flatnonzero(np.isfinite(far.ways.cost) & usable)
        self._own = len(near.floor.corners.at)  # nodes of the near end before this one are its corners

    def routes(self, by: Points) -> list[Route | None]:
        """Return the route at each place, (n, 2) mm from where the stand-in is.

        None where only the search itself can tell.
        """
        found: list[Route | None] = [None] * len(by)
        step = max(AT_ONCE // max(len(self._moving) * len(self._fixed), 1), 1)
        for first in range(0, len(by), step):
            part = by[first : first + step]
            left = np.flatnonzero(self._plain(part))
            for tried in ROUNDS:
                left = self._settle(part, left, tried, first, found)
        return found

    def _plain(self, by: Points) -> Flags:
        """Return where neither tip has come too near to a thing, or off the board."""
        points = np.array(self._near.tip.turns) + by
        plain: Flags = np.asarray(shapely.distance(self._surface.board, shapely.points(points)) <= GRAZE)
        plain[holding(points, self._far.floor.rows)[0]] = False
        plain[holding(np.array(self._far.tip.turns) - by, self._near.floor.rows)[0]] = False
        return plain

    def _settle(
        self, by: Points, left: Indices, tried: int, first: int, found: list[Route | None]
    ) -> Indices:
        """Find the routes of those places `left` that the `tried` cheapest ways settle; return the rest."""
        if not len(left):
            return left
        cost = self._costs(by[left])
        tried = min(tried, cost.shape[1])
        best = np.argpartition(cost, tried - 1, axis=1)[:, :tried]
        order = np.argsort(np.take_along_axis(cost, best, axis=1), axis=1)
        best = np.take_along_axis(best, order, axis=1)
        cost = np.take_along_axis(cost, best, axis=1)
        free = np.isfinite(cost) & self._free(by[left], best)
        some = free.any(axis=1)
        chosen = free.argmax(axis=1)
        rows = np.arange(len(left))
        later = free & (np.arange(tried) > chosen[:, None])
        alike = (later & (cost <= cost[rows, chosen][:, None] + TIE)).any(axis=1)
        ways = [self._way(code) for code in best[rows, chosen][some].tolist()]
        clear = self._clear(by[left[some]], ways)
        for place, way, good in zip(left[some].tolist(), ways, clear & ~alike[some], strict=True):
            if good:
                found[first + place] = self._route(way[0] + by[place] * way[1][:, None], by[place])
        return left[~some]

    def _costs(self, by: Points) -> Points:
        """Return what each way costs at each place, (places, moving nodes times fixed nodes)."""
        near, far = self._near.ways, self._far.ways
        starts = near.at[self._moving] + by[:, None, :]
        aside = SIDE[0] * by[:, 0] + SIDE[1] * by[:, 1]
        inner = near.cost[self._moving] + near.length[self._moving] * aside[:, None]
        if self._surface.hull is not None:
            corner = self._moving < self._own
            at = starts[:, corner]
            inside = shapely.contains_xy(self._surface.hull, at[..., 0], at[..., 1])
            inner[:, corner] = np.where(inside, inner[:, corner], np.inf)
        shape = len(by), len(self._moving), len(self._fixed), 2
        one = np.broadcast_to(starts[:, :, None, :], shape).reshape(-1, 2)
        two = np.broadcast_to(far.at[self._fixed], shape).reshape(-1, 2)
        cost = price(one, two).reshape(shape[:-1]) + inner[:, :, None] + far.cost[self._fixed]
        return np.asarray(cost.reshape(len(by), -1))

    def _nodes(self, code: Indices) -> tuple[Indices, Indices]:
        return self._moving[code // len(self._fixed)], self._fixed[code % len(self._fixed)]

    def _free(self, by: Points, codes: Indices) -> Flags:
        """Return whether the stretch between the two nodes of each way is free, (places, ways)."""
        moving, fixed = (nodes.ravel() for nodes in self._nodes(codes))
        shift = np.repeat(by, codes.shape[1], axis=0)
        starts, ends = self._near.ways.at[moving], self._far.ways.at[fixed]
        free = _open(self._far, starts + shift, ends, fixed == len(self._far.floor.corners.at), at_end=True)
        free[free] = _open(
            self._near, starts[free], (ends - shift)[free], moving[free] == self._own, at_end=False
        )
        return free.reshape(codes.shape)

    def _way(self, code: int) -> tuple[Points, Points]:
        """Return the nodes of a way, those of the near end where they are now, and which of them move."""
        moving, fixed = self._nodes(np.array(code))
        near, far = self._near.ways.path(int(moving)), self._far.ways.path(int(fixed))[::-1]
        points = np.concatenate([self._near.ways.at[near], self._far.ways.at[far]])
        return points, np.repeat([1.0, 0.0], [len(near), len(far)])

    def _clear(self, by: Points, ways: list[tuple[Points, Points]]) -> Flags:
        """Return which ways are free: near the tip of what stands still, beyond of the stand-in."""
        clear = np.ones(len(ways), dtype=np.bool_)
        if not ways:
            return clear
        still = [(n, points[moves == 0.0] - by[n]) for n, (points, moves) in enumerate(ways)]
        own = [(n, points[moves == 1.0] + by[n]) for n, (points, moves) in enumerate(ways)]
        for paths, rows in ((still, self._near.floor.rows), (own, self._far.floor.rows)):
            of = np.repeat([n for n, _ in paths], [len(path) - 1 for _, path in paths])
            starts = np.concatenate([path[:-1] for _, path in paths])
            ends = np.concatenate([path[1:] for _, path in paths])
            if len(of):
                clear[of[crossings(starts, ends, rows)[0]]] = False
        for n, path in own:
            if len(path) > 2 and not shapely.contains_xy(self._surface.hull, *path[1:-1].T).all():
                clear[n] = False
        return clear

    def _route(self, between: Points, by: Points) -> Route:
        """Return the route over the points from the tip at the stand-in to the other."""
        near, far = self._near.tip, self._far.tip
        parts = [between]
        if near.end != near.turns:
            parts.insert(0, np.array([near.end]) + by)
        if far.end != far.turns:
            parts.append(np.array([far.end]))
        points = np.concatenate(parts)
        return self._joined.route(points if self._first else points[::-1].copy(), CLEAR.way)


def swept(layout: Layout, lead: Lead, gear: str) -> Swept | None:
    """Return the lead for a stand-in at just one of its ends; None where its ways are left to the search."""
    placed = placed_gear(layout)
    found = joined(layout, lead, placed)
    if found is None or found.bed is None or lead.via or gear not in found.gear:
        return None
    ends = found.first, found.last
    mine = [end.placed is not None and end.placed.id == gear for end in ends]
    if all(mine):
        return None
    whole = Ground(layout, found.bed, placed)
    clear = whole.floor(CLEAR)
    away = Ground(layout, found.bed, placed, whole, frozenset((gear,))).floor(CLEAR)
    numbers = [clear.numbers.get(end.placed.id) if end.placed else None for end in ends]
    tips = [tip(end, None if n is None else clear.obstacles[n]) for end, n in zip(ends, numbers, strict=True)]
    own = [thing for thing in clear.obstacles if thing.kind == "gear" and thing.owner == gear]
    near = _end(floor(own, None), tips[0 if mine[0] else 1], None)
    far = _end(away, tips[1 if mine[0] else 0], whole)
    return Swept(found, near, far, whole, mine[0]) if near and far else None


def _end(floor: Floor, tip: Tip, ground: Ground | None) -> _End | None:
    (known,) = excuses(floor, [tip], ground.surface.board if ground else None)
    if not sure(known):
        return None
    at = stations(floor, [tip], [known])
    return _End(floor, tip, known, tree(floor, at, fans(floor, at, allowed(floor, at))))


def _open(end: _End, starts: Points, ends: Points, tip: Flags, at_end: bool) -> Flags:
    """Return which stretches are free of what stands on the floor of an end; `tip`: which touch its tip."""
    free = np.ones(len(starts), dtype=np.bool_)
    stretch, thing = crossings(starts, ends, end.floor.rows)
    excused = tip[stretch] & np.isin(thing, list(end.known))
    free[stretch[~excused]] = False
    mine = np.flatnonzero(tip & free)
    for excuse in end.known.values():
        if excuse.rows is not None and len(mine):
            clear_of = (0.0, excuse.free) if at_end else (excuse.free, 0.0)
            free[mine[crossings(starts[mine], ends[mine], excuse.rows, clear_of)[0]]] = False
    return free
