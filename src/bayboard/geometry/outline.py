"""Outlines: closed rings of points as polygons, turned, placed and rounded.

All functions take plain (x, y) sequences in mm and give shapely polygons or numpy arrays of shape (n, 2),
float64.  A ring is not repeated at its end.
"""

from collections.abc import Sequence
from math import ceil, cos, pi, radians, sin, tan

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

Ring = Sequence[tuple[float, float]]
Points = NDArray[np.float64]

SAME = 1e-6  # mm; points nearer than this are one, as typed values are rounded to it
_BACK = 1e-9  # sine of the angle under which an edge lies on the one before it
SPECK = 1e-6  # mm2; area that outlines which only touch may share by rounding
ARC_OFF = 0.001  # mm; the farthest a drawn corner arc may lie from the true one
_QUARTERS = {0: (1.0, 0.0), 90: (0.0, 1.0), 180: (-1.0, 0.0), 270: (0.0, -1.0)}


def unit(turn: float) -> tuple[float, float]:
    """Return (cos, sin) of `turn` degrees, exact at whole quarter turns."""
    exact = _QUARTERS.get(turn % 360.0)  # type: ignore[call-overload]
    if exact is not None:
        return exact  # type: ignore[no-any-return]
    return cos(radians(turn)), sin(radians(turn))


def turned(points: Ring | Points, turn: float) -> Points:
    """Return the points turned about the origin by `turn` degrees, shape (n, 2)."""
    c, s = unit(turn)
    xy = np.asarray(points, dtype=np.float64).reshape(-1, 2)
    x, y = xy[:, 0], xy[:, 1]
    return np.column_stack((x * c - y * s, x * s + y * c))


def placed(points: Ring | Points, at: tuple[float, float], turn: float) -> Points:
    """Return the points turned about the origin, then moved to `at`, shape (n, 2)."""
    return turned(points, turn) + np.asarray(at, dtype=np.float64)


def polygon(points: Ring | Points) -> Polygon:
    """Return the polygon of a ring."""
    return Polygon(np.asarray(points, dtype=np.float64))


def box(points: Ring | Points) -> tuple[float, float, float, float]:
    """Return (x0, y0, x1, y1) of the points."""
    xy = np.asarray(points, dtype=np.float64).reshape(-1, 2)
    low, high = xy.min(axis=0), xy.max(axis=0)
    return float(low[0]), float(low[1]), float(high[0]), float(high[1])


def signed_area(points: Ring | Points) -> float:
    """Return the area of a ring, negative when it runs clockwise."""
    xy = np.asarray(points, dtype=np.float64)
    x, y = xy[:, 0], xy[:, 1]
    return float(0.5 * np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y))


def shortest_edge(points: Ring | Points) -> float:
    """Return the length of the shortest edge of a ring."""
    xy = np.asarray(points, dtype=np.float64)
    return float(np.min(np.hypot(*(np.roll(xy, -1, axis=0) - xy).T)))


class Corner:
    """A corner of a rounded ring: a plain point, or an arc from `start` to `end`.

    `sweep` is in degrees, counter-clockwise positive; it is 0 for a plain point, where
    `start`, `end` and `centre` are all that point.
    """

    __slots__ = ("centre", "end", "radius", "start", "sweep")

    def __init__(self, start: Points, end: Points, centre: Points, radius: float, sweep: float) -> None:
        self.start = start
        self.end = end
        self.centre = centre
        self.radius = radius
        self.sweep = sweep

    def points(self, off: float = ARC_OFF) -> Points:
        """Return the arc as points on it; between them the straight line is at most `off` inside it."""
        if not self.sweep:
            return self.start[None, :]
        step = 2.0 * np.arccos(max(1.0 - off / self.radius, 0.0))
        count = max(2, ceil(radians(abs(self.sweep)) / step) + 1)
        first = np.arctan2(*(self.start - self.centre)[::-1])
        angles = first + np.linspace(0.0, radians(self.sweep), count)
        ring = self.centre + self.radius * np.column_stack((np.cos(angles), np.sin(angles)))
        ring[0], ring[-1] = self.start, self.end
        return ring


def corners(points: Ring | Points, radius: float) -> list[Corner]:
    """Return the corners of a ring in its own order, the convex ones rounded by `radius`."""
    xy = np.asarray(points, dtype=np.float64)
    turn_sign = 1.0 if signed_area(xy) > 0 else -1.0
    found = []
    for i, here in enumerate(xy):
        before, after = xy[i - 1], xy[(i + 1) % len(xy)]
        d0 = (here - before) / np.hypot(*(here - before))
        d1 = (after - here) / np.hypot(*(after - here))
        bend = float(np.arctan2(d0[0] * d1[1] - d0[1] * d1[0], d0 @ d1))
        if radius <= 0 or bend * turn_sign <= 1e-9:
            found.append(Corner(here, here, here, 0.0, 0.0))
            continue
        reach = radius * tan(abs(bend) / 2)
        start, end = here - d0 * reach, here + d1 * reach
        inward = np.array([-d0[1], d0[0]]) * (1.0 if bend > 0 else -1.0)
        found.append(Corner(start, end, start + inward * radius, radius, bend * 180.0 / pi))
    return found


def rounded(points: Ring | Points, radius: float, off: float = ARC_OFF) -> Points:
    """Return the ring with convex corners rounded, arcs drawn within `off` mm, shape (n, 2)."""
    if radius <= 0:
        return np.asarray(points, dtype=np.float64)
    ring = np.vstack([corner.points(off) for corner in corners(points, radius)])
    # where two arcs meet, rounding would cross their ends by a hair
    apart: NDArray[np.bool_] = np.hypot(*(ring - np.roll(ring, 1, axis=0)).T) > SAME
    kept: Points = ring[apart]
    return kept


def with_holes(ring: Ring | Points, holes: Sequence[Ring | Points]) -> Polygon:
    """Return the polygon of `ring` less `holes`; raise `ValueError` when they leave none or several.

    Pieces under `SPECK` are rounding, not pieces.
    """
    whole = polygon(ring)
    cut = whole.difference(shapely.union_all([polygon(h) for h in holes])) if holes else whole
    pieces = [part for part in shapely.get_parts(cut) if isinstance(part, Polygon) and part.area > SPECK]
    if len(pieces) != 1:
        raise ValueError(f"the holes leave {len(pieces) or 'no'} pieces of the ring")
    return pieces[0]


def fault(points: Ring) -> str | None:
    """Return what is wrong with a ring in a few words, None when it is simple.

    Wrong are: fewer than 3 points, a point repeated (nearer than `SAME`), edges that run back along
    themselves, cross or touch, no width.
    """
    xy = np.asarray(points, dtype=np.float64).reshape(-1, 2)
    if len(xy) < 3:
        return f"has {len(xy) or 'no'} point{'' if len(xy) == 1 else 's'}; it needs 3"
    ahead = np.roll(xy, -1, axis=0) - xy
    lengths = np.hypot(ahead[:, 0], ahead[:, 1])
    if lengths.min() <= SAME:
        which = int(np.argmin(lengths))
        if which == len(xy) - 1:
            return "repeats its first point at the end"
        return f"has the same point twice in a row, at {_spelled(xy[which])}"
    return _spike(xy, ahead / lengths[:, None]) or _crossing(xy) or _width(xy, float(lengths.sum()))


def _spike(xy: Points, ways: Points) -> str | None:
    """Return the fault where an edge turns back on the one before it; `ways` are the edges' unit vectors."""
    before = np.roll(ways, 1, axis=0)
    cross = before[:, 0] * ways[:, 1] - before[:, 1] * ways[:, 0]
    back = (np.abs(cross) <= _BACK) & ((before * ways).sum(axis=1) < 0)
    return f"runs back along itself at {_spelled(xy[int(np.argmax(back))])}" if back.any() else None


def _crossing(xy: Points) -> str | None:
    shape = Polygon(xy)
    if shape.is_valid:
        return None
    where = shapely.is_valid_reason(shape).partition("[")[2].rstrip("]").split()
    at = f" at {_spelled([float(v) for v in where])}" if len(where) == 2 else ""
    return f"crosses or touches itself{at}"


def _width(xy: Points, around: float) -> str | None:
    return "has no width" if abs(signed_area(xy)) <= SAME * around / 2 else None


def _spelled(point: Sequence[float] | Points) -> str:
    return f"({point[0]:g}, {point[1]:g})"
