"""Outlines grown by half a lead's diameter: where its centre line may not run.

Each convex corner is grown by tangents to the circle round it that turn by at most 45 degrees each (a
right angle becomes two corners, a rectangle an octagon), so that a path of straight stretches keeps clear
by the whole growth everywhere.  A shortest path bends at these corners alone.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import ceil, cos, pi

import numpy as np
import shapely

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Piece, convex_pieces, prism_on
from bayboard.model.layout import Outline
from bayboard.routing.walls import Walls, moved, walls

TANGENT = pi / 4  # the most that two neighbouring tangents turn
STRAIGHT = 1e-7  # radians; a corner that turns by less is none


@dataclass(frozen=True, eq=False, slots=True)
class Corners:
    """Corners at which a path may bend, (n, 2), each with a point of its rim on either side."""

    at: Points
    before: Points
    after: Points

    def moved(self, at: tuple[float, float], turn: float) -> "Corners":
        """Return the corners turned about the origin, then moved to `at`."""
        return Corners(*(outlines.placed(points, at, turn) for points in (self.at, self.before, self.after)))


@dataclass(frozen=True, eq=False, slots=True)
class Shape:
    """What stands in the way: its corners, and its room as convex pieces."""

    corners: Corners
    rows: Walls

    def moved(self, at: tuple[float, float], turn: float) -> "Shape":
        """Return the shape turned about the origin, then moved to `at`."""
        return Shape(self.corners.moved(at, turn), moved(self.rows, at, turn))


@lru_cache(maxsize=4096)
def grown(rings: tuple[Outline, ...], growth: float, coarse: float = 0.0) -> Shape:
    """Return the outlines grown by `growth` mm, as one shape in their own frame.

    `coarse`: mm by which outlines of very many points may be drawn larger, to have fewer.
    """
    corners: list[Corners] = []
    pieces: list[Piece] = []
    for ring in rings:
        points = _fewer(_counter_clockwise(ring), coarse)
        corners.append(_corners(points, growth + coarse))
        pieces += _pieces(points, growth + coarse)
    return Shape(together(corners), walls(pieces))


def together(parts: list[Corners]) -> Corners:
    """Return all corners in one."""
    none = [np.zeros((0, 2))]
    return Corners(
        np.concatenate([c.at for c in parts] or none),
        np.concatenate([c.before for c in parts] or none),
        np.concatenate([c.after for c in parts] or none),
    )


def polygons(shape: shapely.Geometry) -> Shape:
    """Return the polygons of a geometry, which may have holes, not grown: their corners bent outward."""
    parts = [
        p for p in shapely.get_parts(shape) if isinstance(p, shapely.Polygon) and p.area > outlines.SPECK
    ]
    rings = [_oriented(part) for part in parts]
    corners = together([_corners(ring, 0.0) for group in rings for ring in group])
    return Shape(corners, walls([piece for part in parts for piece in prism_on(part, 0.0, 1.0).pieces]))


def _oriented(polygon: shapely.Polygon) -> list[Points]:
    """Return the rings with the room on their left."""
    whole = shapely.orient_polygons(polygon)
    return [np.asarray(ring.coords)[:-1] for ring in (whole.exterior, *whole.interiors)]


def _counter_clockwise(ring: Outline) -> Points:
    points = np.asarray(ring, dtype=np.float64)
    return points if outlines.signed_area(points) > 0 else points[::-1]


def _fewer(ring: Points, coarse: float) -> Points:
    if not coarse:
        return ring
    simple = shapely.simplify(outlines.polygon(ring), coarse, preserve_topology=True)
    return np.asarray(shapely.orient_polygons(simple).exterior.coords)[:-1]


def _ways(ring: Points) -> tuple[Points, Points]:
    """Return the unit vector of the edge before each corner and of the edge after it."""
    ahead = np.roll(ring, -1, axis=0) - ring
    after = ahead / np.hypot(*ahead.T)[:, None]
    return np.roll(after, 1, axis=0), after


def _fans(ring: Points, growth: float) -> Iterator[tuple[int, Points]]:
    """Yield each convex corner's number with its grown corners in order, (k, 2)."""
    before, after = _ways(ring)
    cross = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    turn = np.arctan2(cross, np.sum(before * after, axis=1))
    for i in np.flatnonzero(turn > STRAIGHT):
        count = ceil(turn[i] / TANGENT - STRAIGHT) if growth else 1
        step = turn[i] / count
        first = np.arctan2(-before[i, 0], before[i, 1])  # the way out at right angles to the edge before
        angles = first + step * (np.arange(count) + 0.5)
        out = np.column_stack((np.cos(angles), np.sin(angles)))
        yield int(i), ring[i] + growth / cos(step / 2.0) * out


def _corners(ring: Points, growth: float) -> Corners:
    before, after = _ways(ring)
    parts = []
    for i, fan in _fans(ring, growth):
        line = np.vstack([fan[:1] - before[i], fan, fan[-1:] + after[i]])
        parts.append(Corners(fan, line[:-2], line[2:]))
    return together(parts)


def _pieces(ring: Points, growth: float) -> Sequence[Piece]:
    """Return convex pieces that together are the ring grown."""
    own = convex_pieces(tuple((float(x), float(y)) for x, y in ring))
    if not growth:
        return own
    fans = list(_fans(ring, growth))
    if len(own) == 1:
        return [_rim(np.vstack([fan for _, fan in fans]))]
    before, after = _ways(ring)
    parts = [ring]
    for i, here in enumerate(ring):
        out, there = _outward(after[i]) * growth, ring[(i + 1) % len(ring)]
        parts.append(np.array([here, here + out, there + out, there]))
    for i, fan in fans:
        first, last = ring[i] + _outward(before[i]) * growth, ring[i] + _outward(after[i]) * growth
        parts.append(np.vstack([ring[i], first, fan, last]))
    whole = shapely.union_all([outlines.polygon(part) for part in parts])
    return [piece for part in shapely.get_parts(whole) for piece in prism_on(part, 0.0, 1.0).pieces]


def _rim(ring: Points) -> Piece:
    return Piece(ring, np.ones(len(ring), dtype=np.bool_))


def _outward(way: Points) -> Points:
    return np.array([way[1], -way[0]])
