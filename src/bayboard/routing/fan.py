"""The straight stretches from the tips of leads to the corners they see, and to each other.

Only here things may be passed nearer than elsewhere: what is nearer to a tip than half the lead's
diameter anyway, and the stand-in that a lead comes out of.  A tip that lies where no lead can be costs
as much as it takes to get out the nearest way, so that the rules have as little as possible to find.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.outline import Points
from bayboard.routing.bed import RIM, Obstacle
from bayboard.routing.floor import Floor, passing
from bayboard.routing.tip import Tip
from bayboard.routing.walls import GRAZE, Flags, Indices, Walls, crossings, holding

SUNK = 100.0  # mm of detour that are taken to spare one mm inside a thing or off the board


@dataclass(frozen=True, eq=False, slots=True)
class Excuse:
    """How stretches from a tip are tested against one obstacle instead of the usual way.

    `rows` None: they are not.  `free`: mm from the tip that do not count.  `costly`: where every mm
    beyond those is paid for.
    """

    rows: Walls | None
    free: float = 0.0
    costly: BaseGeometry | None = None


Excuses = dict[int, Excuse]  # by the obstacle's number


@dataclass(frozen=True, eq=False, slots=True)
class Fans:
    """Free stretches from tip `tip[k]` to corner `corner[k]`, and the mm that are paid on top.

    `between`: free stretches from corner to corner that only a path through an excuse needs, for it may
    turn either way at the corners of what it came through.
    """

    tip: Indices
    corner: Indices
    extra: Points
    between: tuple[Indices, Indices]


def excuses(floor: Floor, tips: Sequence[Tip], board: BaseGeometry | None) -> list[Excuses]:
    """Return the excuses of each tip; `board` None: leads may leave the board anyway."""
    points = np.array([tip.turns for tip in tips], dtype=np.float64).reshape(-1, 2)
    found: list[Excuses] = [{} for _ in tips]
    for number, tip in enumerate(tips):
        own = floor.numbers.get(tip.own) if tip.own is not None and tip.free > 0 else None
        if own is not None:
            found[number][own] = Excuse(floor.obstacles[own].shape.rows, tip.free)
    for number, thing in zip(*(side.tolist() for side in holding(points, floor.rows)), strict=True):
        found[number][thing] = _near(floor.obstacles[thing], tips[number])
    if board is not None:
        for number in np.flatnonzero(shapely.distance(board, shapely.points(points)) > GRAZE).tolist():
            rim = floor.numbers[RIM]
            costly = None if tips[number].entry else floor.obstacles[rim].polygon
            found[number][rim] = Excuse(None, costly=costly)
    return found


def _near(thing: Obstacle, tip: Tip) -> Excuse:
    """Return the excuse for a thing that a tip is nearer to than half the lead's diameter."""
    free = tip.free if thing.owner == tip.own else 0.0
    inside = len(holding(np.array([tip.turns]), thing.bare.rows)[0]) > 0
    if free > 0 or not inside:
        return Excuse(thing.bare.rows, free)
    if thing.kind == "cut-out" and tip.entry:
        return Excuse(None)
    return Excuse(None, costly=thing.polygon)


def fans(floor: Floor, tips: Sequence[Tip], known: Sequence[Excuses]) -> Fans:
    """Return the free stretches of all tips; `known` their excuses, changed for tips that see no corner."""
    through = np.zeros(len(floor.obstacles), dtype=np.bool_)
    through[[thing for own in known for thing in own]] = True
    tried = _fans(floor, tips, known, through, np.ones(len(tips), dtype=np.bool_))
    blind = np.ones(len(tips), dtype=np.bool_)
    blind[tried.tip] = False
    for number in np.flatnonzero(blind).tolist():
        blind[number] = _pays(floor, tips[number], known[number])
    if not blind.any():
        return tried
    again = _fans(floor, tips, known, through, blind)
    tip, corner = np.append(tried.tip, again.tip), np.append(tried.corner, again.corner)
    return Fans(tip, corner, np.append(tried.extra, again.extra), tried.between)


def _pays(floor: Floor, tip: Tip, known: Excuses) -> bool:
    """Return whether the tip is too deep in its own stand-in; from now on it may leave that, and pays."""
    own = floor.numbers.get(tip.own) if tip.own is not None else None
    excuse = known.get(own) if own is not None else None
    if own is None or excuse is None or excuse.rows is None:
        return False
    known[own] = replace(excuse, rows=None, costly=floor.obstacles[own].polygon)
    return True


def _fans(floor: Floor, tips: Sequence[Tip], known: Sequence[Excuses], through: Flags, which: Flags) -> Fans:
    points = np.array([t.turns for t in tips], dtype=np.float64).reshape(-1, 2)
    turning = through[floor.home]
    seen = passing(floor.corners, np.arange(len(floor.home)), points).T | turning
    tip, corner = np.nonzero(seen & floor.usable & which[:, None])
    starts, ends = points[tip], floor.corners.at[corner]
    stretch, thing = crossings(starts, ends, floor.rows)
    excused = np.zeros((len(tips), len(floor.obstacles)), dtype=np.bool_)
    for number, own in enumerate(known):
        excused[number, list(own)] = True
    free = np.ones(len(tip), dtype=np.bool_)
    free[stretch[~excused[tip[stretch], thing]]] = False
    extra = np.zeros(len(tip))
    for number in np.flatnonzero(which).tolist():
        part = slice(*np.searchsorted(tip, [number, number + 1]))
        for excuse in known[number].values():
            if excuse.rows is not None:
                hit, _ = crossings(starts[part], ends[part], excuse.rows, (excuse.free, 0.0))
                free[part.start + hit] = False
            elif excuse.costly is not None:
                extra[part] += paid(starts[part], ends[part], excuse)
    return Fans(tip[free], corner[free], extra[free], _between(floor, turning))


def _between(floor: Floor, turning: Flags) -> tuple[Indices, Indices]:
    """Return the free stretches to the corners `turning` at which a path may turn either way there."""
    mine, usable = np.flatnonzero(turning & floor.usable), np.flatnonzero(floor.usable)
    at = floor.corners.at
    there = passing(floor.corners, usable, at[mine]).T | turning[usable]
    here = passing(floor.corners, mine, at[usable])
    a, b = np.nonzero(there & ~(here & passing(floor.corners, usable, at[mine]).T))
    i, j = mine[a], usable[b]
    once = ~turning[j] | (i < j)
    i, j = i[once], j[once]
    free = np.ones(len(i), dtype=np.bool_)
    free[crossings(at[i], at[j], floor.rows)[0]] = False
    return i[free], j[free]


def paid(starts: Points, ends: Points, excuse: Excuse) -> Points:
    """Return the mm paid for the length of each stretch in the costly place, (n,)."""
    lines = shapely.linestrings(np.stack([starts, ends], axis=1))
    inside = shapely.length(shapely.intersection(lines, excuse.costly))
    price: Points = SUNK * np.maximum(inside - excuse.free, 0.0)
    return price


def straight(
    floor: Floor, a: Tip, b: Tip, at_a: Excuses, at_b: Excuses, things: Sequence[int]
) -> float | None:
    """Return the mm paid on top for the straight stretch from a to b, None where it is not free.

    `things`: the obstacles, by number, that it meets in the usual test.
    """
    starts, ends = np.array([a.turns]), np.array([b.turns])
    if any(thing not in at_a and thing not in at_b for thing in things):
        return None
    extra = 0.0
    for thing in at_a.keys() | at_b.keys():
        both = [own[thing] for own in (at_a, at_b) if thing in own]
        if all(excuse.rows is not None for excuse in both):
            rows = floor.obstacles[thing].shape.rows
            rows = next((e.rows for e in both if e.rows is not None and e.rows is not rows), rows)
            free = (at_a[thing].free if thing in at_a else 0.0, at_b[thing].free if thing in at_b else 0.0)
            if len(crossings(starts, ends, rows, free)[0]):
                return None
        extra += sum(float(paid(starts, ends, e)[0]) for e in both if e.costly is not None)
    return extra
