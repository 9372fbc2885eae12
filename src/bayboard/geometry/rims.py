"""How far inside or outside a shape: points by their depth, outlines by the point that is farthest out.

A rim knows its rounded corners as true arcs, so that its distances are exact.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points, Ring

NEAR_ENOUGH = 1e-5  # mm; how closely the farthest point of a line is found
ARC_FINE = 1e-5  # mm; how closely an arc is drawn whose farthest point is looked for
_SHORTEST = 1e-18  # mm2; keeps the share along an edge of no length finite


@dataclass(frozen=True, eq=False, slots=True)
class Rim:
    """The edges of a shape with rounded corners and holes.

    `shape` is the polygon with its arcs drawn; `heads`, `tails` (n, 2) are its straight edges,
    `centres` (m, 2), `radii` (m,) and unit `middles` (m, 2) with `opening` (m,), the cosine of half
    the sweep, its arcs.
    """

    shape: Polygon
    heads: Points
    tails: Points
    centres: Points
    radii: Points
    middles: Points
    opening: Points


def rim(outline: Ring, radius: float = 0.0, holes: Sequence[Ring] = ()) -> Rim:
    """Return the rim of an outline whose convex corners are rounded by `radius`, less its holes."""
    around = outlines.corners(outline, radius)
    loops = [np.asarray(hole, dtype=np.float64) for hole in holes]
    heads = np.vstack([[corner.end for corner in around], *loops])
    nexts = [corner.start for corner in (*around[1:], around[0])]
    tails = np.vstack([nexts, *(np.roll(loop, -1, axis=0) for loop in loops)])
    arcs = [corner for corner in around if corner.sweep]
    centres = np.array([arc.centre for arc in arcs]).reshape(-1, 2)
    ways = np.array([(arc.start + arc.end) / 2.0 for arc in arcs]).reshape(-1, 2) - centres
    return Rim(
        outlines.with_holes(outlines.rounded(outline, radius), holes),
        heads,
        tails,
        centres,
        np.array([arc.radius for arc in arcs]),
        ways / np.hypot(ways[:, 0], ways[:, 1])[:, None],
        np.cos(np.radians([abs(arc.sweep) / 2.0 for arc in arcs])),
    )


def depths(points: Points, shapes: Sequence[BaseGeometry]) -> Points:
    """Return the depth of each point in each shape in mm, (points, shapes); negative outside."""
    rows = np.empty(len(shapes), dtype=np.object_)
    rows[:] = shapes
    at = np.asarray(points, dtype=np.float64).reshape(-1, 2)
    x, y = at[:, 0, None], at[:, 1, None]
    away = shapely.distance(shapely.boundary(rows)[None, :], shapely.points(x, y))
    return np.asarray(np.where(shapely.intersects_xy(rows[None, :], x, y), away, -away))


def rim_depths(points: Points, of: Rim) -> Points:
    """Return the depth of each point inside a rim in mm, (points,); negative outside and in a hole."""
    at = np.asarray(points, dtype=np.float64).reshape(-1, 2)
    straight = edge_distances(at, of.heads, of.tails).min(axis=1)
    over = _over_arcs(at, of)
    nearest = np.abs(over).min(axis=1, initial=np.inf)
    shapely.prepare(of.shape)
    inside = shapely.contains_xy(of.shape, at[:, 0], at[:, 1])
    by_arc = nearest < straight
    if by_arc.any():
        chosen = over[by_arc, np.abs(over[by_arc]).argmin(axis=1)]
        inside[by_arc] = chosen < 0.0
    away = np.minimum(straight, nearest)
    return np.asarray(np.where(inside, away, -away))


def farthest_out(rings: Sequence[Points], of: Rim) -> Points:
    """Return for each ring the largest distance in mm of any point of its line outside `of`, (rings,).

    0.0 where the whole line lies inside; exact to `NEAR_ENOUGH`.  A hole is outside, so the
    farthest point may be in the middle of an edge.
    """
    found = np.zeros(len(rings))
    shapely.prepare(of.shape)
    lines = np.array([shapely.linearrings(ring) for ring in rings], dtype=np.object_)
    off = np.flatnonzero(~shapely.covers(of.shape, lines))
    starts, ends, owner = _stretches(np.asarray(shapely.difference(lines[off], of.shape)))
    if len(starts):
        _search(starts, ends, off[owner], of, found)
    return found


def distances(points: Points, others: Points) -> Points:
    """Return the distance in mm of each point from each of `others`, (points, others)."""
    return np.asarray(np.hypot(points[:, None, 0] - others[:, 0], points[:, None, 1] - others[:, 1]))


def edge_distances(points: Points, heads: Points, tails: Points) -> Points:
    """Return the distance of each point from each edge, (points, edges)."""
    along = tails - heads
    to = points[:, None, :] - heads
    length = np.maximum(np.sum(along * along, axis=1), _SHORTEST)
    share = np.clip(np.sum(to * along, axis=2) / length, 0.0, 1.0)
    off = to - share[:, :, None] * along
    return np.asarray(np.sqrt(np.sum(off * off, axis=2)))


def _over_arcs(points: Points, of: Rim) -> Points:
    """Return how far each point is beyond each arc, (points, arcs); inf out of the arc's own wedge."""
    to = points[:, None, :] - of.centres
    far = np.sqrt(np.sum(to * to, axis=2))
    ahead = np.sum(to * of.middles, axis=2)
    return np.where(ahead >= far * of.opening, far - of.radii, np.inf)


def _outside(points: Points, of: Rim) -> Points:
    """Return the distance of each point outside from each edge and each rounded corner, (points, both)."""
    over = _over_arcs(points, of)
    corners = np.where(
        over >= -2.0 * outlines.ARC_OFF, np.maximum(over, 0.0), np.inf
    )  # a line cut at a drawn arc
    return np.hstack([edge_distances(points, of.heads, of.tails), corners])


def _stretches(lines: NDArray[np.object_]) -> tuple[Points, Points, NDArray[np.intp]]:
    """Return both ends of every straight stretch of some lines, and the index of its line."""
    parts, line = shapely.get_parts(lines, return_index=True)
    points, part = shapely.get_coordinates(parts, return_index=True)
    joined = np.flatnonzero(part[1:] == part[:-1])
    return points[joined], points[joined + 1], line[part[joined]]


def _search(starts: Points, ends: Points, owner: NDArray[np.intp], of: Rim, best: Points) -> None:
    """Raise `best[owner]` to the largest distance of any point of its stretches from the rim.

    Halves the stretches.  The distance from one edge or rounded corner is convex along a stretch,
    so no point of it is farther from that edge than the farther end: a stretch that has an edge near
    both ends is settled.
    """
    from_start, from_end = _outside(starts, of), _outside(ends, of)
    np.maximum.at(best, owner, np.maximum(from_start.min(axis=1), from_end.min(axis=1)))
    while True:
        live = np.maximum(from_start, from_end).min(axis=1) > best[owner] + NEAR_ENOUGH
        if not live.any():
            return
        starts, ends, owner = starts[live], ends[live], owner[live]
        middles = (starts + ends) / 2.0
        from_middle = _outside(middles, of)
        np.maximum.at(best, owner, from_middle.min(axis=1))
        from_start = np.vstack([from_start[live], from_middle])
        from_end = np.vstack([from_middle, from_end[live]])
        starts, ends = np.vstack([starts, middles]), np.vstack([middles, ends])
        owner = np.concatenate([owner, owner])
