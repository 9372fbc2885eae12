"""The routes of a layout of which only places of gear differ from one whose routes are known.

A lead whose ends stand where they stood needs no search when nothing that moved lies on its path and no way
over the place that something left can be shorter; or when nothing lies on the path it would take if
what moved were not there at all, which is found once for all steps of a drag.
"""

from collections.abc import Generator, Mapping, Sequence
from typing import TypeVar

import numpy as np

from bayboard.model.layout import Gear, Layout
from bayboard.routing.bed import Bed, Obstacle
from bayboard.routing.ends import placed_gear
from bayboard.routing.ground import CLEAR, Ground
from bayboard.routing.joined import Joined, joined
from bayboard.routing.led import Led, led
from bayboard.routing.route import Route, Routes, routes
from bayboard.routing.search import ALIKE, Path
from bayboard.routing.walls import Flags, crossings, together
from bayboard.tables.limits import limit

T = TypeVar("T")
InParts = Generator[None, None, T]
AT_ONCE = 8  # leads led together; fewer cost more each


def reroute(layout: Layout, before: Layout, known: Mapping[str, Route]) -> Routes:
    """Return what `routes(layout)` would; `known` are the routes of `before`.

    Quick when only places of gear differ and `known` came from here or from `routes`.
    """
    parts = rerouting(layout, before, known)
    while True:
        try:
            next(parts)
        except StopIteration as end:
            found: Routes = end.value
            return found


def rerouting(layout: Layout, before: Layout, known: Mapping[str, Route]) -> InParts[Routes]:
    """Return what `reroute` does, in parts of a few milliseconds each."""
    moved = _moved(before, layout) if isinstance(known, Routes) else None
    if moved is None or not isinstance(known, Routes):
        return routes(layout)
    if not moved:
        return known
    return (yield from _again(layout, known, moved))


def _again(layout: Layout, known: Routes, moved: frozenset[str]) -> InParts[Routes]:
    placed = placed_gear(layout)
    grounds = {bed: Ground(layout, bed, placed, old) for bed, old in known.grounds.items()}
    without = dict(known.without) if known.lifted == moved else {}
    settled = {n: one for n, one in known.led.items() if moved.isdisjoint(one.joined.gear)}
    for bed, ground in grounds.items():
        movers = [t for t in ground.floors()[CLEAR.way].obstacles if t.kind == "gear" and t.owner in moved]
        leads = {n: one for n, one in settled.items() if one.joined.bed == bed and one.route.routed}
        if not movers or not leads:
            continue
        exact = {n: o.path for n, o in leads.items() if o.path and o.path.sure and o.route.way == CLEAR.way}
        were = [known.grounds[bed].now(thing) for thing in movers]
        freed = [n for n, may in zip(exact, _longer(list(exact.values()), were), strict=True) if may]
        new = [leads[n].joined for n in freed if n not in without]
        yield
        if new:
            without |= yield from _led_in_parts(new, {bed: Ground(layout, bed, placed, ground, moved)})
        best = {n: leads[n] for n in exact} | {n: _same(leads[n], without[n]) for n in freed}
        hit = _lies_on(list(best.values()), [ground.now(thing) for thing in movers])
        free = {n: one for (n, one), again in zip(best.items(), hit, strict=True) if not again}
        settled = {n: one for n, one in settled.items() if n not in leads} | free
    stale = [joined(layout, one.joined.lead, placed) for n, one in known.led.items() if n not in settled]
    found = settled | (yield from _led_in_parts([j for j in stale if j is not None], grounds))
    kept = {n: _same(one, found[n]) for n, one in known.led.items() if moved.isdisjoint(one.joined.gear)}
    return Routes({name: kept.get(name, found[name]) for name in known.led}, grounds, moved, without)


def _led_in_parts(leads: Sequence[Joined], grounds: Mapping[Bed, Ground]) -> InParts[dict[str, Led]]:
    """Return what `led` does, bed by bed and at most `AT_ONCE` leads together."""
    found = led([j for j in leads if j.bed not in grounds], {})
    for bed, ground in grounds.items():
        mine = [j for j in leads if j.bed == bed]
        for first in range(0, len(mine), AT_ONCE):
            found |= led(mine[first : first + AT_ONCE], {bed: ground})
            yield
    return found


def _same(one: Led, other: Led) -> Led:
    """Return `one` where both take the same path, so that nobody takes it for changed, else the other."""
    return one if np.array_equal(one.route.points, other.route.points) else other


def _moved(before: Layout, after: Layout) -> frozenset[str] | None:
    """Return the ids of gear that stands elsewhere, None when anything else that routes depend on differs."""
    members = ("boards", "cards", "leads", "fixings")
    same = all(getattr(before, m) is getattr(after, m) for m in members)
    entries = before.bay.entries is after.bay.entries
    if not same or not entries or limit(before, "lead_od") != limit(after, "lead_od"):
        return None
    if len(before.gear) != len(after.gear):
        return None
    pairs = [(a, b) for a, b in zip(before.gear, after.gear, strict=True) if a is not b]
    if any(_stands(a) != _stands(b) or (a.at is None) != (b.at is None) for a, b in pairs):
        return None
    return frozenset(a.id for a, b in pairs if (a.at, a.turn) != (b.at, b.turn))


def _stands(gear: Gear) -> tuple[str, str, str | None, float]:
    return gear.id, gear.card, gear.board, gear.lift


def _lies_on(leads: Sequence[Led], things: Sequence[Obstacle]) -> Flags:
    """Return whether the path of each lead between its tips enters one of the things, (n,)."""
    found = np.zeros(len(leads), dtype=np.bool_)
    paths = [one.path.points for one in leads if one.path is not None]
    if paths:
        owner = np.repeat(np.arange(len(paths)), [len(path) - 1 for path in paths])
        starts = np.concatenate([path[:-1] for path in paths])
        ends = np.concatenate([path[1:] for path in paths])
        found[owner[crossings(starts, ends, together([thing.shape.rows for thing in things]))[0]]] = True
    return found


def _longer(paths: Sequence[Path], things: Sequence[Obstacle]) -> Flags:
    """Return whether each path is longer than some way over the place of a thing may be, (n,)."""
    ends = np.array([path.points[[0, -1]] for path in paths]).reshape(-1, 2, 2)
    cost = np.array([path.cost for path in paths])
    least = np.hypot(ends[:, 1, 0] - ends[:, 0, 0], ends[:, 1, 1] - ends[:, 0, 1])
    bent = np.array([len(path.points) > 2 for path in paths], dtype=np.bool_)  # straight is shortest
    found = np.zeros(len(paths), dtype=np.bool_)
    for thing in things:
        box = thing.shape.rows.box
        low, high = box[:, :2].min(axis=0), box[:, 2:].max(axis=0)
        away = np.maximum(np.maximum(low - ends, ends - high), 0.0)
        over = np.hypot(away[..., 0], away[..., 1]).sum(axis=1)
        found |= np.maximum(over, least) < cost * (1.0 + ALIKE[0]) + ALIKE[1]
    return np.asarray(found & bent)
