"""The way of each lead from tip to tip: straight where that is free, else the shortest over the corners.

Few corners can be on a shortest path: those for which the way there and on straight to the other end is not
longer than a path that is known.  So the likeliest are tried first, then whatever could still be shorter.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.outline import Points
from bayboard.routing.excuse import Excuses, excuses
from bayboard.routing.fan import Fans, Pair, Stations, allowed, fans, pay, stations, straight
from bayboard.routing.floor import Floor
from bayboard.routing.shortest import Found, shortest
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


def search(floor: Floor, trips: Sequence[Trip], board: BaseGeometry | None) -> list[Points | None]:
    """Return the shortest path of each trip from where it may first turn to where it may last, (n, 2).

    None where there is none.  `board` None: leads may leave the board.
    """
    tips = list(dict.fromkeys(tip for trip in trips for tip in (trip.a, trip.b)))
    number = {tip: k for k, tip in enumerate(tips)}
    pairs = [(number[trip.a], number[trip.b]) for trip in trips]
    known = excuses(floor, tips, board)
    alone = Stations(np.array([tip.turns for tip in tips]), np.arange(len(tips)), len(tips), known)
    lines = straight(floor, alone, list(dict.fromkeys(pairs)))
    bent = sorted({pair for pair in pairs if lines.get(pair) != 0.0})
    paths = _bent(floor, tips, known, bent) if bent else {}
    return [paths[i, j] if (i, j) in paths else alone.at[[i, j]] for i, j in pairs]


def _bent(
    floor: Floor, tips: Sequence[Tip], known: Sequence[Excuses], pairs: Sequence[Pair]
) -> dict[Pair, Points | None]:
    """Return the shortest path between each pair of tips over the corners, or straight for a price."""
    used = sorted({tip for pair in pairs for tip in pair})
    place = {tip: k for k, tip in enumerate(used)}
    mine = [tips[k] for k in used]
    at = stations(floor, mine, [known[k] for k in used])
    ends = [(place[i], place[j]) for i, j in pairs]
    return dict(zip(pairs, _over_corners(floor, mine, at, ends).paths, strict=True))


def _over_corners(floor: Floor, tips: Sequence[Tip], at: Stations, pairs: Sequence[Pair]) -> Found:
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
    return _paying(floor, tips, at, pairs, found, spread, lines, open_)


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


def _paying(
    floor: Floor,
    tips: Sequence[Tip],
    at: Stations,
    pairs: Sequence[Pair],
    found: Found,
    spread: Fans,
    lines: Mapping[Pair, float],
    open_: Flags,
) -> Found:
    """Return what was found; where nothing was, tips too deep in their own stand-in come out, and pay."""
    lost = [pair for pair, cost in zip(pairs, found.cost, strict=True) if not np.isfinite(cost)]
    blind = pay(floor, tips, at, spread, sorted({tip for pair in lost for tip in pair}))
    if not blind:
        return found
    out = np.zeros_like(open_)
    out[blind] = open_[blind]
    return shortest(floor, at, spread + fans(floor, at, out), lines, pairs)
