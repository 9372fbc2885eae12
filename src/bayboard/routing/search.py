"""The way of each lead from tip to tip: straight where that is free, else the shortest over the corners.

Few corners can be on a shortest path: those for which the way there and on straight to the other end is not
longer than a path that is known.  So the likeliest are tried first, then whatever could still be shorter.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.outline import Points
from bayboard.routing.excuse import Excuses, excuses, sure
from bayboard.routing.fan import Pair, Stations, allowed, fans, stations, straight, tips_alone
from bayboard.routing.floor import Floor
from bayboard.routing.shortest import Found, price, shortest
from bayboard.routing.tip import Tip
from bayboard.routing.walls import Flags

LIKELY = 24  # corners tried first from each station
ALIKE = (2e-5, 1e-3)  # share and mm within which two lengths may change places by what decides between equals


@dataclass(frozen=True, eq=False, slots=True)
class Trip:
    """A lead to be led from one tip to another."""

    lead: str
    a: Tip
    b: Tip


@dataclass(frozen=True, eq=False, slots=True)
class Path:
    """A path from where a lead may first turn to where it may last, (n, 2), and what it costs.

    The cost is its length in mm and what is paid for lying where no lead should.  `sure`: it is the
    shortest exactly.
    """

    points: Points
    cost: float
    sure: bool


def search(floor: Floor, trips: Sequence[Trip], board: BaseGeometry | None) -> list[Path | None]:
    """Return the shortest path of each trip.

    None where there is none.  `board` None: leads may leave the board.
    """
    tips = list(dict.fromkeys(tip for trip in trips for tip in (trip.a, trip.b)))
    number = {tip: k for k, tip in enumerate(tips)}
    pairs = [(number[trip.a], number[trip.b]) for trip in trips]
    known = excuses(floor, tips, board)
    alone = tips_alone(tips, known)
    lines = straight(floor, alone, list(dict.fromkeys(pairs)))
    bent = sorted({pair for pair in pairs if lines.get(pair) != 0.0})
    ways = _bent(floor, tips, known, bent) if bent else {}
    ends = alone.at[np.array(pairs, dtype=np.intp)]
    lengths = price(ends[:, 0], ends[:, 1]).tolist()
    return [ways[p] if p in ways else Path(ends[k], lengths[k], True) for k, p in enumerate(pairs)]


def _bent(
    floor: Floor, tips: Sequence[Tip], known: Sequence[Excuses], pairs: Sequence[Pair]
) -> dict[Pair, Path | None]:
    """Return the shortest path between each pair of tips over the corners, or straight for a price."""
    used = sorted({tip for pair in pairs for tip in pair})
    place = {tip: k for k, tip in enumerate(used)}
    mine = [tips[k] for k in used]
    at = stations(floor, mine, [known[k] for k in used])
    found = _over_corners(floor, at, [(place[i], place[j]) for i, j in pairs])
    ways: dict[Pair, Path | None] = {}
    for (i, j), points, cost in zip(pairs, found.paths, found.cost.tolist(), strict=True):
        ways[i, j] = None if points is None else Path(points, cost, sure(known[i]) and sure(known[j]))
    return ways


def _over_corners(floor: Floor, at: Stations, pairs: Sequence[Pair]) -> Found:
    of = {tip: at.of(tip) for pair in pairs for tip in pair}
    lines = straight(floor, at, sorted({(i, j) for a, b in pairs for i in of[a] for j in of[b]}))
    open_ = allowed(floor, at)
    over = _over(floor, at, pairs)
    first = open_ & _likeliest(np.where(open_, _least(at, pairs, over), np.inf))
    spread = fans(floor, at, first)
    found = shortest(floor, at, spread, lines, pairs)
    most = found.cost * (1.0 + ALIKE[0]) + ALIKE[1]
    second = open_ & ~first & (_least(at, pairs, over - most[:, None]) <= 0.0)
    if second.any():
        spread += fans(floor, at, second)
        found = shortest(floor, at, spread, lines, pairs)
    return found


def _over(floor: Floor, at: Stations, pairs: Sequence[Pair]) -> Points:
    """Return the length of each pair's way straight to each corner and on, (pairs, corners)."""
    away = at.at[: at.tips, None, :] - floor.corners.at
    far = np.hypot(away[..., 0], away[..., 1])
    a, b = np.array(pairs, dtype=np.intp).T
    both: Points = far[a] + far[b]
    return both


def _least(at: Stations, pairs: Sequence[Pair], values: Points) -> Points:
    """Return the least of the values, (pairs, corners), of each station's pairs, (stations, corners)."""
    least = np.full((at.tips, values.shape[1]), np.inf)
    for (a, b), row in zip(pairs, values, strict=True):
        np.minimum(least[a], row, out=least[a])
        np.minimum(least[b], row, out=least[b])
    found: Points = least[at.home]
    return found


def _likeliest(values: Points) -> Flags:
    """Return which are among the `LIKELY` smallest of their row, and finite."""
    if values.shape[1] <= LIKELY:
        return np.isfinite(values)
    edge = np.partition(values, LIKELY, axis=1)[:, LIKELY, None]
    return (values <= edge) & np.isfinite(values)
