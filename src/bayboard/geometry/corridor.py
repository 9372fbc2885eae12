"""Free corridors: how wide a round-ended straight way in is before it meets something.

The distance from a straight axis to a solid is exact: it is met at an end of the axis (against a face or
rim), between the axis and an edge of the solid, or it is zero because the axis runs into the solid.
"""

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Prism, prism_of
from bayboard.geometry.solids import Flags, Solids, blocked, solids

PARALLEL = 1e-12  # squared sine below which two lines count as parallel
BOTTOM = -1e6  # mm; where a solid without a bottom is cut off, far below anything measured


def ways(facing: Points, first: Points, tilts: Sequence[float], count: int) -> Points:
    """Return `facing`, then `count` directions for each tilt from it in degrees, (1 + tilts x count, 3).

    The first of each round leans towards `first`, a unit vector at right angles to `facing`; the
    others follow counter-clockwise about `facing`.
    """
    turn = 2.0 * np.pi * np.arange(count) / count
    aside = np.outer(np.cos(turn), first) + np.outer(np.sin(turn), np.cross(facing, first))
    rings = [np.cos(t) * facing + np.sin(t) * aside for t in np.radians(np.asarray(tilts, dtype=np.float64))]
    return np.vstack([facing, *rings])


def free_width(start: Sequence[float], way: Sequence[float], length: float, things: Sequence[Prism]) -> float:
    """Return the free diameter in mm of a corridor from `start` along the unit vector `way`; inf if alone."""
    starts = np.asarray(start, dtype=np.float64)[None, :]
    ends = starts + length * np.asarray(way, dtype=np.float64)
    return float(min((2.0 * axis_distance(starts, ends, p)[0] for p in things), default=np.inf))


def free_widths(
    starts: Points, ends: Points, things: Sequence[Prism], counted: Flags, most: Points
) -> Points:
    """Return the free diameter of each axis in mm, (n,), never more than its `most`.

    `counted` (n, things) tells which things stand in the way of which axis.
    """
    widest = most.copy()
    close = counted & (2.0 * box_distances(starts, ends, things) < most[:, None])
    for k in np.flatnonzero(close.any(axis=0)).tolist():
        rows = np.flatnonzero(close[:, k])
        found = 2.0 * axis_distance(starts[rows], ends[rows], things[k])
        widest[rows] = np.minimum(widest[rows], found)
    return widest


def box_distances(starts: Points, ends: Points, things: Sequence[Prism]) -> Points:
    """Return a distance of each segment from each thing that the true one is not below, (n, things)."""
    low = np.array([thing.low_corner for thing in things]).reshape(-1, 3)
    high = np.array([thing.high_corner for thing in things]).reshape(-1, 3)
    least, most = np.minimum(starts, ends), np.maximum(starts, ends)
    squares = np.zeros((len(starts), len(things)))
    for axis in range(3):
        gap = np.maximum(low[:, axis] - most[:, None, axis], least[:, None, axis] - high[:, axis])
        squares += np.maximum(gap, 0.0) ** 2
    found: Points = np.sqrt(squares)
    return found


def axis_distance(starts: Points, ends: Points, p: Prism) -> Points:
    """Return the distance in mm of each axis from a solid, (n,); 0 where they meet."""
    if p.along == "x":
        starts, ends = starts[:, ::-1], ends[:, ::-1]
    skin = _skin(p)
    tips = np.vstack((starts, ends))
    over = np.maximum(np.maximum(skin.low - tips[:, 2], tips[:, 2] - p.high), 0.0)
    at_tips = np.hypot(_rim_distance(tips[:, :2], *skin.rim), over)
    nearest = np.minimum(at_tips[: len(starts)], at_tips[len(starts) :])
    nearest = np.minimum(nearest, _edge_distance(starts, ends, *skin.edges))
    nearest[blocked(starts, ends, skin.rows)] = 0.0
    return nearest


class _Skin(NamedTuple):
    """What a prism stood along z is met at: its pieces, its edges and its rim in plan, from … to."""

    rows: Solids
    edges: tuple[Points, Points]
    rim: tuple[Points, Points]
    low: float


@lru_cache(maxsize=1024)
def _skin(p: Prism) -> _Skin:
    """Return the prism's skin; kept, as a drag asks for the same ones again and again."""
    low = max(p.low, BOTTOM)
    head = np.vstack(p.rings)
    tail = np.vstack([np.roll(ring, -1, axis=0) for ring in p.rings])
    top, bottom, top_tail, bottom_tail = (
        np.column_stack((ring, np.full(len(ring), z))) for ring in (head, tail) for z in (p.high, low)
    )
    edges = np.vstack((top, bottom, top)), np.vstack((top_tail, bottom_tail, bottom))
    rows = solids([prism_of(p.rings, p.pieces, p.low, p.high)])
    return _Skin(rows, edges, (head, tail), low)


def plan_distance(points: Points, rings: Sequence[Points]) -> Points:
    """Return the distance of each point from a polygon, (n,); 0 inside."""
    return _rim_distance(points, np.vstack(rings), np.vstack([np.roll(ring, -1, axis=0) for ring in rings]))


def _rim_distance(points: Points, head: Points, tail: Points) -> Points:
    edge = tail - head
    to = points[:, None, :] - head
    share = np.clip(np.sum(to * edge, axis=2) / np.sum(edge * edge, axis=1), 0.0, 1.0)
    off = to - share[:, :, None] * edge
    away = norms(off).min(axis=1)
    spans = (head[:, 1] > points[:, None, 1]) != (tail[:, 1] > points[:, None, 1])
    rise = np.where(edge[:, 1] == 0.0, 1.0, edge[:, 1])
    crossing = head[:, 0] + to[:, :, 1] * edge[:, 0] / rise
    odd = np.sum(spans & (points[:, None, 0] < crossing), axis=1) % 2 == 1
    return np.where(odd, 0.0, away)


def _edge_distance(starts: Points, ends: Points, heads: Points, tails: Points) -> Points:
    """Return the least distance of each segment from any edge, (n,)."""
    u, v = (ends - starts)[:, None, :], (tails - heads)[None, :, :]
    w = starts[:, None, :] - heads[None, :, :]
    a, e = _not_zero(np.sum(u * u, axis=2)), _not_zero(np.sum(v * v, axis=2))
    b, c, f = np.sum(u * v, axis=2), np.sum(u * w, axis=2), np.sum(v * w, axis=2)
    spread = a * e - b * b
    level = spread <= PARALLEL * a * e
    s = np.clip(np.where(level, 0.0, b * f - c * e) / np.where(level, 1.0, spread), 0.0, 1.0)
    t = np.clip((b * s + f) / e, 0.0, 1.0)
    s = np.clip((b * t - c) / a, 0.0, 1.0)
    off = w + s[:, :, None] * u - t[:, :, None] * v
    nearest: Points = norms(off).min(axis=1)
    return nearest


def norms(vectors: Points) -> Points:
    """Return the lengths of vectors that lie along the last axis."""
    lengths: Points = np.sqrt(np.sum(vectors * vectors, axis=-1))
    return lengths


def _not_zero(squares: Points) -> Points:
    """Return the squared lengths with 1 for nothing: whatever divides by it is 0 already."""
    return np.where(squares == 0.0, 1.0, squares)
