"""What a lead may pass nearer than elsewhere, on the stretch next to its tip.

That is whatever is nearer to the tip than half the lead's diameter anyway, and the stand-in that the lead
comes out of.  A tip that lies where no lead can be pays for every mm it takes to get out, so that the rules
find as little as possible.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.clip import length_within
from bayboard.geometry.outline import Points
from bayboard.routing.bed import RIM, Obstacle
from bayboard.routing.floor import Floor
from bayboard.routing.tip import Tip
from bayboard.routing.walls import GRAZE, Walls, crossings, holding

SUNK = 100.0  # mm of detour that are taken to spare one mm inside a thing or off the board


@dataclass(frozen=True, eq=False, slots=True)
class Excuse:
    """How stretches from a tip are tested against one obstacle instead of the usual way.

    `rows` None: they are not.  `free`: mm from the tip that do not count.  `costly`: where every mm
    beyond those is paid for.  `holds`: the tip lies within what the obstacle is grown to.
    """

    rows: Walls | None
    free: float = 0.0
    costly: BaseGeometry | None = None
    holds: bool = False


Excuses = dict[int, Excuse]  # by the obstacle's number


def sure(known: Excuses) -> bool:
    """Return whether the shortest path from a tip with these excuses is exact.

    It is not where something is paid for, or where two things at once are nearer than half the diameter:
    then a corner that comes to stand near by may open a way that is no longer.
    """
    held = [excuse for excuse in known.values() if excuse.holds]
    return len(held) <= 1 and all(excuse.costly is None for excuse in known.values())


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
    if not inside or (free > 0 and thing.polygon.boundary.distance(shapely.Point(tip.turns)) <= free):
        return Excuse(thing.bare.rows, free, holds=True)
    if thing.kind == "cut-out" and tip.entry:
        return Excuse(None)
    return Excuse(None, free, thing.polygon, holds=True)


def paid(starts: Points, ends: Points, excuse: Excuse) -> Points:
    """Return the mm paid for the length of each stretch in the costly place, (n,)."""
    if excuse.costly is None:
        return np.zeros(len(starts))
    price: Points = SUNK * np.maximum(length_within(starts, ends, excuse.costly) - excuse.free, 0.0)
    return price


def stretch_pays(
    floor: Floor, a: Points, b: Points, at_a: Excuses, at_b: Excuses, met: Sequence[int]
) -> float | None:
    """Return the mm paid on top for the straight stretch from a to b, None where it is not free.

    `met`: the obstacles, by number, that it meets in the usual test.
    """
    if any(thing not in at_a and thing not in at_b for thing in met):
        return None
    extra = 0.0
    for thing in at_a.keys() | at_b.keys():
        both = [own[thing] for own in (at_a, at_b) if thing in own]
        if all(excuse.rows is not None for excuse in both):
            rows = floor.obstacles[thing].shape.rows
            rows = next((e.rows for e in both if e.rows is not None and e.rows is not rows), rows)
            if len(crossings(a[None], b[None], rows, (_free(at_a, thing), _free(at_b, thing)))[0]):
                return None
        extra += sum(float(paid(a[None], b[None], excuse)[0]) for excuse in both)
    return extra


def _free(own: Mapping[int, Excuse], thing: int) -> float:
    return own[thing].free if thing in own else 0.0
