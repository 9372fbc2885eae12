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
from bayboard.routing.fan import Excuses, Fans, excuses, fans, straight
from bayboard.routing.floor import Floor
from bayboard.routing.tip import Tip
from bayboard.routing.walls import Indices, crossings

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
    known = excuses(floor, tips, board)
    a = np.array([number[trip.a] for trip in trips], dtype=np.intp)
    b = np.array([number[trip.b] for trip in trips], dtype=np.intp)
    points = np.array([tip.turns for tip in tips], dtype=np.float64).reshape(-1, 2)
    directly = _directly(floor, tips, a, b, known)
    found: list[Points | None] = [points[[a[k], b[k]]] for k in range(len(trips))]
    bent = [k for k, extra in enumerate(directly) if extra != 0.0]
    if bent:
        paths = _bent(floor, tips, known, a[bent], b[bent], [directly[k] for k in bent])
        for k, path in zip(bent, paths, strict=True):
            found[k] = path
    return found


def _directly(
    floor: Floor, tips: Sequence[Tip], a: Indices, b: Indices, known: Sequence[Excuses]
) -> list[float | None]:
    """Return what each trip pays on top for going straight, None where it cannot."""
    points = np.array([tip.turns for tip in tips], dtype=np.float64).reshape(-1, 2)
    met: list[list[int]] = [[] for _ in a]
    for stretch, thing in zip(*crossings(points[a], points[b], floor.rows), strict=True):
        met[stretch].append(int(thing))
    return [
        straight(floor, tips[i], tips[j], known[i], known[j], things)
        if things or known[i] or known[j]
        else 0.0
        for i, j, things in zip(a.tolist(), b.tolist(), met, strict=True)
    ]


def price(starts: Points, ends: Points) -> Points:
    """Return what each stretch costs: its length in mm, and the little that decides between equals."""
    length = np.hypot(ends[:, 0] - starts[:, 0], ends[:, 1] - starts[:, 1])
    middle = (starts + ends) / 2.0
    cost: Points = length * (1.0 + SIDE[0] * middle[:, 0] + SIDE[1] * middle[:, 1]) + BEND
    return cost


def _bent(
    floor: Floor,
    tips: Sequence[Tip],
    known: Sequence[Excuses],
    a: Indices,
    b: Indices,
    directly: Sequence[float | None],
) -> list[Points | None]:
    """Return the shortest path of each trip from tip a to tip b, over the corners or straight."""
    used, both = np.unique(np.concatenate([a, b]), return_inverse=True)
    start, stop = both[: len(a)], both[len(a) :]
    spread = fans(floor, [tips[k] for k in used], [known[k] for k in used])
    points = np.array([tips[k].turns for k in used])
    lines = {(int(i), int(j)): extra for i, j, extra in zip(start, stop, directly, strict=True)}
    graph = _graph(floor, points, spread, {ij: extra for ij, extra in lines.items() if extra is not None})
    starts, row = np.unique(start, return_inverse=True)
    count = len(floor.home)
    _, back = dijkstra(graph, indices=count + starts, return_predecessors=True)
    everywhere = np.vstack([floor.corners.at, points, points])
    last = count + len(used) + stop
    return [_path(everywhere, back[r], int(end)) for r, end in zip(row, last, strict=True)]


def _graph(floor: Floor, points: Points, spread: Fans, lines: Mapping[tuple[int, int], float]) -> csr_matrix:
    """Return the costs: corners first, then each tip as a start, then each tip as an end."""
    corners = floor.corners.at
    i, j = (np.concatenate(both) for both in zip(floor.stretches.free, spread.between, strict=True))
    count, tips = len(corners), len(points)
    first, last = np.array(list(lines), dtype=np.intp).reshape(-1, 2).T
    between = price(corners[i], corners[j])
    fan = price(points[spread.tip], corners[spread.corner]) + spread.extra
    line = price(points[first], points[last]) + np.array(list(lines.values()), dtype=np.float64)
    one = np.concatenate([i, j, count + spread.tip, spread.corner, count + first])
    two = np.concatenate([j, i, spread.corner, count + tips + spread.tip, count + tips + last])
    costs = np.concatenate([between, between, fan, fan, line])
    return csr_matrix((costs, (one, two)), shape=(count + 2 * tips,) * 2)


def _path(points: Points, back: Indices, last: int) -> Points | None:
    nodes = [last]
    while back[nodes[-1]] >= 0:
        nodes.append(int(back[nodes[-1]]))
    return points[nodes[::-1]] if len(nodes) > 1 else None
