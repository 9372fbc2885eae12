"""The shortest paths over a floor, all at once.

Equally long ways are told apart by a price far below anything that shows: a little for each bend, and a
little for running to one side rather than the other.  So the path does not depend on the order in which
things were looked at.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import dijkstra
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.outline import Points
from bayboard.routing.excuse import Excuses, excuses
from bayboard.routing.fan import Fans, Pair, Stations, fans, stations, straight
from bayboard.routing.floor import Floor
from bayboard.routing.tip import Tip
from bayboard.routing.walls import Indices

BEND = 1e-6  # mm a bend costs
SIDE = (0.618e-10, 1e-10)  # mm a mm of lead costs for each mm it lies to the right, or up


@dataclass(frozen=True, eq=False, slots=True)
class Trip:
    """A lead to be led from one tip to another."""

    lead: str
    a: Tip
    b: Tip


def search(floor: Floor, trips: Sequence[Trip], board: BaseGeometry | None) -> list[Points | None]:
    """Return the shortest path of each trip from where it may first turn to where it may last, (n, 2).

    None where there is none.
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
    asked = [(place[i], place[j]) for i, j in pairs]
    at = stations(floor, [tips[k] for k in used], [known[k] for k in used])
    spread = fans(floor, [tips[k] for k in used], at)
    of = {tip: at.of(tip) for tip in range(len(used))}
    lines = straight(floor, at, sorted({(i, j) for a, b in asked for i in of[a] for j in of[b]}))
    graph = _graph(floor, at, spread, lines)
    starts, row = np.unique([a for a, _ in asked], return_inverse=True)
    count, end = len(floor.home), len(floor.home) + len(at.at)
    _, back = dijkstra(graph, indices=count + starts, return_predecessors=True)
    everywhere = np.vstack([floor.corners.at, at.at, at.at[: at.tips]])
    ends = [end + b for _, b in asked]
    return {p: _path(everywhere, back[r], e) for p, r, e in zip(pairs, row, ends, strict=True)}


def _graph(floor: Floor, at: Stations, spread: Fans, lines: Mapping[Pair, float]) -> csr_matrix:
    """Return the costs: corners first, then the stations as starts, then the tips as ends.

    An exit is one point, passed either way.
    """
    corners, (i, j) = floor.corners.at, floor.stretches.free
    count, end = len(corners), len(corners) + len(at.at)
    leaving = np.arange(at.tips, len(at.at))
    first, last = np.array(list(lines), dtype=np.intp).reshape(-1, 2).T
    home = at.home[leaving]
    between = price(corners[i], corners[j])
    fan = price(at.at[spread.station], corners[spread.corner]) + spread.extra
    out = price(at.at[home], at.at[leaving])
    line = price(at.at[first], at.at[last]) + np.array(list(lines.values()), dtype=np.float64)
    into = np.where(np.arange(len(at.at)) < at.tips, end, count) + np.arange(len(at.at))
    one = [i, j, count + spread.station, spread.corner, count + home, count + leaving, count + first]
    two = [j, i, spread.corner, into[spread.station], count + leaving, end + home, into[last]]
    costs = np.concatenate([between, between, fan, fan, out, out, line])
    return csr_matrix((costs, (np.concatenate(one), np.concatenate(two))), shape=(end + at.tips,) * 2)


def price(starts: Points, ends: Points) -> Points:
    """Return what each stretch costs: its length in mm, and the little that decides between equals."""
    length = np.hypot(ends[:, 0] - starts[:, 0], ends[:, 1] - starts[:, 1])
    middle = (starts + ends) / 2.0
    cost: Points = length * (1.0 + SIDE[0] * middle[:, 0] + SIDE[1] * middle[:, 1]) + BEND
    return cost


def _path(points: Points, back: Indices, last: int) -> Points | None:
    nodes = [last]
    while back[nodes[-1]] >= 0:
        nodes.append(int(back[nodes[-1]]))
    return points[nodes[::-1]] if len(nodes) > 1 else None
