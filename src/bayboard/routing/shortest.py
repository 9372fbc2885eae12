"""The shortest paths over known stretches, all at once.

Equally long ways are told apart by a price far below anything that shows: a little for each bend, and a
little for running to one side rather than the other.  So the path does not depend on the order in which
things were looked at.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import dijkstra

from bayboard.geometry.outline import Points
from bayboard.routing.fan import Fans, Pair, Stations
from bayboard.routing.floor import Floor
from bayboard.routing.walls import Indices

BEND = 1e-6  # mm a bend costs
SIDE = (0.618e-10, 1e-10)  # mm a mm of lead costs for each mm it lies to the right, or up


@dataclass(frozen=True, eq=False, slots=True)
class Found:
    """For each pair of tips what its shortest path costs, inf where there is none, and its points."""

    cost: Points
    paths: list[Points | None]


@dataclass(frozen=True, eq=False, slots=True)
class Tree:
    """The shortest paths from a tip to every node: the corners, the tip, its exits.

    `cost` is inf and `length` 0 where a node is not reached; `back` is the node before, -1 at the tip.
    """

    at: Points
    cost: Points
    length: Points
    back: Indices

    def path(self, node: int) -> list[int]:
        """Return the nodes on the way to one, from the tip on."""
        nodes = [node]
        while self.back[nodes[-1]] >= 0:
            nodes.append(int(self.back[nodes[-1]]))
        return nodes[::-1]


def price(starts: Points, ends: Points) -> Points:
    """Return what each stretch costs: its length in mm, and the little that decides between equals."""
    length = np.hypot(ends[:, 0] - starts[:, 0], ends[:, 1] - starts[:, 1])
    middle = (starts + ends) / 2.0
    cost: Points = length * (1.0 + SIDE[0] * middle[:, 0] + SIDE[1] * middle[:, 1]) + BEND
    return cost


def shortest(
    floor: Floor, at: Stations, spread: Fans, lines: Mapping[Pair, float], pairs: Sequence[Pair]
) -> Found:
    """Return the shortest path from tip to tip of each pair.

    `spread`: stretches between stations and corners; `lines`: those between stations, with their extra.
    """
    graph = _graph(floor, at, spread, lines)
    starts, row = np.unique([a for a, _ in pairs], return_inverse=True)
    count, end = len(floor.home), len(floor.home) + len(at.at)
    cost, back = dijkstra(graph, indices=count + starts, return_predecessors=True)
    everywhere = np.vstack([floor.corners.at, at.at, at.at])
    ends = [end + b for _, b in pairs]
    paths = [_path(everywhere, back[r], e) for r, e in zip(row, ends, strict=True)]
    return Found(np.asarray(cost)[row, ends], paths)


def tree(floor: Floor, at: Stations, spread: Fans) -> Tree:
    """Return the shortest paths from the only tip of `at`."""
    nodes = np.vstack([floor.corners.at, at.at])
    start = len(floor.corners.at)
    cost, back = dijkstra(_graph(floor, at, spread, {}), indices=np.array([start]), return_predecessors=True)
    cost, back = np.asarray(cost)[0, : len(nodes)], np.where(back < 0, -1, back)[0, : len(nodes)]
    length = np.zeros(len(nodes))
    for node in np.argsort(cost).tolist():
        before = back[node]
        if before >= 0:
            length[node] = length[before] + float(np.hypot(*(nodes[node] - nodes[before])))
    return Tree(nodes, cost, length, back.astype(np.intp))


def _graph(floor: Floor, at: Stations, spread: Fans, lines: Mapping[Pair, float]) -> csr_matrix:
    """Return the costs: corners first, then the stations on the way out of their tip, then on the way in.

    So no path goes through an exit but that of the tip it belongs to.
    """
    corners, (i, j) = floor.corners.at, floor.stretches.free
    out, into = len(corners), len(corners) + len(at.at)
    leaving = np.arange(at.tips, len(at.at))
    home = at.home[leaving]
    first, last = np.array(list(lines), dtype=np.intp).reshape(-1, 2).T
    between = price(corners[i], corners[j])
    fan = price(at.at[spread.station], corners[spread.corner]) + spread.extra
    exit_ = price(at.at[home], at.at[leaving]) + at.extra[leaving]
    line = price(at.at[first], at.at[last]) + np.array(list(lines.values()), dtype=np.float64)
    one = [i, j, out + spread.station, spread.corner, out + home, into + leaving, out + first]
    two = [j, i, spread.corner, into + spread.station, out + leaving, into + home, into + last]
    costs = np.concatenate([between, between, fan, fan, exit_, exit_, line])
    return csr_matrix((costs, (np.concatenate(one), np.concatenate(two))), shape=(into + len(at.at),) * 2)


def _path(points: Points, back: Indices, last: int) -> Points | None:
    nodes = [last]
    while back[nodes[-1]] >= 0:
        nodes.append(int(back[nodes[-1]]))
    return points[nodes[::-1]] if len(nodes) > 1 else None
