"""Solids with straight sides: a plan polygon carried along an axis, cut into convex pieces once.

A prism stands along z on a polygon in (x, y), as gear and stays do, or along x on a section in (z, y), as
a seat does.  Its polygon may be bent inward and have holes.  Lengths in mm, bay axes.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points

Axis = Literal["z", "x"]
Corners = tuple[tuple[float, float], ...]

STRAIGHT = 1e-9  # sine of a turn below which two edges count as one line
SAME = 1e-9  # mm; points nearer than this are one


class Piece(NamedTuple):
    """A convex part of a polygon: `points` (k, 2) counter-clockwise.

    `outer[i]` tells whether the edge from point i to the next lies on the polygon's own rim;
    the others are seams between pieces.
    """

    points: Points
    outer: NDArray[np.bool_]


@dataclass(frozen=True, eq=False, slots=True)
class Prism:
    """A solid: `rings` (outline, then holes) from `low` to `high` along `along`.

    `low_corner` and `high_corner` are those of its box, (x, y, z).
    """

    rings: tuple[Points, ...]
    pieces: tuple[Piece, ...]
    low: float
    high: float
    along: Axis
    low_corner: Points
    high_corner: Points


def prism_of(
    rings: tuple[Points, ...], pieces: tuple[Piece, ...], low: float, high: float, along: Axis = "z"
) -> Prism:
    """Return the prism on rings already cut into pieces."""
    low_corner = np.append(rings[0].min(axis=0), low)
    high_corner = np.append(rings[0].max(axis=0), high)
    if along == "x":
        low_corner, high_corner = low_corner[::-1], high_corner[::-1]
    return Prism(rings, pieces, low, high, along, low_corner, high_corner)


def prism(outline: Iterable[Sequence[float]], low: float, high: float, along: Axis = "z") -> Prism:
    """Return the prism on a ring of points that stands where it is given."""
    return standing(_corners(outline), (0.0, 0.0), 0.0, low, high, along)


def prism_on(polygon: Polygon, low: float, high: float) -> Prism:
    """Return the prism along z on a polygon that may have holes."""
    rings = tuple(np.asarray(r.coords)[:-1] for r in (polygon.exterior, *polygon.interiors))
    return prism_of(rings, _cut(polygon), low, high)


def standing(
    outline: Corners,
    at: tuple[float, float],
    turn: float,
    low: float,
    high: float,
    along: Axis = "z",
) -> Prism:
    """Return the prism on an outline turned about its origin and moved to `at`."""
    pieces = tuple(Piece(outlines.placed(p.points, at, turn), p.outer) for p in convex_pieces(outline))
    return prism_of((outlines.placed(outline, at, turn),), pieces, low, high, along)


@lru_cache(maxsize=4096)
def convex_pieces(outline: Corners) -> tuple[Piece, ...]:
    """Return the convex parts of a simple ring; together they are all of it."""
    ring = np.asarray(outline, dtype=np.float64)
    if outlines.signed_area(ring) < 0:
        ring = ring[::-1]
    if _convex(ring):
        return (Piece(ring, np.ones(len(ring), dtype=np.bool_)),)
    return _cut(Polygon(ring))


def _corners(outline: Iterable[Sequence[float]]) -> Corners:
    return tuple((float(x), float(y)) for x, y in outline)


def _convex(ring: Points) -> bool:
    edge = np.roll(ring, -1, axis=0) - ring
    after = np.roll(edge, -1, axis=0)
    cross = edge[:, 0] * after[:, 1] - edge[:, 1] * after[:, 0]
    scale = np.hypot(*edge.T) * np.hypot(*after.T)
    return bool(np.all(cross >= -STRAIGHT * scale))


def _cut(polygon: Polygon) -> tuple[Piece, ...]:
    """Return the polygon in convex pieces: triangles, joined over their seams while convex."""
    triangles = shapely.get_parts(shapely.constrained_delaunay_triangles(polygon))
    rim = np.vstack([np.asarray(r.coords)[:-1] for r in (polygon.exterior, *polygon.interiors)])
    number = {_key(point): i for i, point in enumerate(rim)}
    loops = [[number[_key(p)] for p in np.asarray(t.exterior.coords)[:-1]] for t in triangles]
    loops = [
        loop if outlines.signed_area(rim[loop]) > 0 else loop[::-1]
        for loop in loops
        if abs(outlines.signed_area(rim[loop])) > 0
    ]
    edges = _rim_edges([len(r.coords) - 1 for r in (polygon.exterior, *polygon.interiors)])
    return tuple(_piece(rim, loop, edges) for loop in _joined(rim, loops))


def _key(point: Points) -> tuple[float, float]:
    return float(point[0]), float(point[1])


def _rim_edges(lengths: Sequence[int]) -> frozenset[tuple[int, int]]:
    edges, first = set(), 0
    for length in lengths:
        for i in range(length):
            a, b = first + i, first + (i + 1) % length
            edges |= {(a, b), (b, a)}
        first += length
    return frozenset(edges)


def _piece(rim: Points, loop: list[int], edges: frozenset[tuple[int, int]]) -> Piece:
    outer = [(a, b) in edges for a, b in zip(loop, [*loop[1:], loop[0]], strict=True)]
    return Piece(rim[loop], np.array(outer, dtype=np.bool_))


def _joined(rim: Points, loops: list[list[int]]) -> list[list[int]]:
    """Return the loops joined over shared edges wherever the whole stays convex."""
    home = {edge: k for k, loop in enumerate(loops) for edge in _edges(loop)}
    for a, b in [edge for edge in home if edge[0] < edge[1] and edge[::-1] in home]:
        left, right = home[a, b], home[b, a]
        if left == right:
            continue
        whole = _over(loops[left], loops[right], a, b)
        if len(set(whole)) == len(whole) and _convex(rim[whole]):
            loops[left], loops[right] = whole, []
            home |= dict.fromkeys(_edges(whole), left)
    return [loop for loop in loops if loop]


def _edges(loop: list[int]) -> list[tuple[int, int]]:
    return list(zip(loop, [*loop[1:], loop[0]], strict=True))


def _over(left: list[int], right: list[int], a: int, b: int) -> list[int]:
    """Return the loop round both, without their shared edge a → b (b → a in `right`)."""
    i, j = left.index(b), right.index(a)
    return left[i:] + left[:i] + (right[j:] + right[:j])[1:-1]
