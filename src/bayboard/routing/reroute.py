"""The routes of a layout of which only places of gear differ from one whose routes are known.

A lead keeps its path when it can be no other: its ends stand where they stood, nothing that moved lies on
it now, and no way over the place that something left can be shorter.
"""

from collections.abc import Mapping, Sequence

import numpy as np

from bayboard.model.layout import Gear, Layout
from bayboard.routing.bed import Bed, Obstacle
from bayboard.routing.ends import placed_gear
from bayboard.routing.ground import CLEAR, Ground
from bayboard.routing.joined import joined
from bayboard.routing.led import Led, led
from bayboard.routing.route import Route, Routes, routes
from bayboard.routing.search import ALIKE
from bayboard.routing.walls import Flags, crossings, together
from bayboard.tables.limits import limit


def reroute(layout: Layout, before: Layout, known: Mapping[str, Route]) -> Routes:
    """Return what `routes(layout)` would; `known` are the routes of `before`.

    Quick when only places of gear differ and `known` came from here or from `routes`.
    """
    moved = _moved(before, layout) if isinstance(known, Routes) else None
    if moved is None or not isinstance(known, Routes):
        return routes(layout)
    if not moved:
        return known
    placed = placed_gear(layout)
    grounds = {bed: Ground(layout, bed, placed, old) for bed, old in known.grounds.items()}
    stale = _stale(known, grounds, moved)
    again = [joined(layout, one.joined.lead, placed) for name, one in known.led.items() if name in stale]
    found = led([j for j in again if j is not None], grounds)
    return Routes({name: found.get(name, one) for name, one in known.led.items()}, grounds)


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


def _stale(known: Routes, grounds: Mapping[Bed, Ground], moved: frozenset[str]) -> set[str]:
    """Return the leads that may take another path than they did."""
    stale = {name for name, one in known.led.items() if not moved.isdisjoint(one.joined.gear)}
    for bed, ground in grounds.items():
        old = known.grounds[bed]
        movers = [t for t in old.floors()[CLEAR.way].obstacles if t.kind == "gear" and t.owner in moved]
        leads = {n: one for n, one in known.led.items() if one.joined.bed == bed and one.route.routed}
        if movers:
            stale |= {n for n, one in leads.items() if one.route.way != CLEAR.way}
            some = [one for n, one in leads.items() if n not in stale]
            hit = _lies_on(some, [ground.now(thing) for thing in movers])
            hit |= _longer(some, [old.now(thing) for thing in movers])
            stale |= {one.joined.lead.id for one, again in zip(some, hit, strict=True) if again}
    return stale


def _lies_on(leads: Sequence[Led], things: Sequence[Obstacle]) -> Flags:
    """Return whether each lead's path enters one of the things, (n,)."""
    if not leads:
        return np.zeros(0, dtype=np.bool_)
    paths = [one.path for one in leads]
    owner = np.repeat(np.arange(len(paths)), [len(path) - 1 for path in paths])
    starts = np.concatenate([path[:-1] for path in paths])
    ends = np.concatenate([path[1:] for path in paths])
    found = np.zeros(len(leads), dtype=np.bool_)
    found[owner[crossings(starts, ends, together([thing.shape.rows for thing in things]))[0]]] = True
    return found


def _longer(leads: Sequence[Led], things: Sequence[Obstacle]) -> Flags:
    """Return whether each lead's path costs more than some way over the place of a thing may, (n,)."""
    ends = np.array([one.path[[0, -1]] for one in leads]).reshape(-1, 2, 2)
    cost = np.array([one.cost for one in leads])
    least = np.hypot(ends[:, 1, 0] - ends[:, 0, 0], ends[:, 1, 1] - ends[:, 0, 1])
    shortest = cost <= least * (1.0 + ALIKE[0]) + ALIKE[1]  # nothing is shorter than straight
    found = np.zeros(len(leads), dtype=np.bool_)
    for thing in things:
        box = thing.shape.rows.box
        low, high = box[:, :2].min(axis=0), box[:, 2:].max(axis=0)
        away = np.maximum(np.maximum(low - ends, ends - high), 0.0)
        over = np.hypot(away[..., 0], away[..., 1]).sum(axis=1)
        found |= np.maximum(over, least) < cost * (1.0 + ALIKE[0]) + ALIKE[1]
    return np.asarray(found & ~shortest)
