"""Paths as rows of straight stretches, so that all are measured against all at once."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.geometry.solids import Flags, Indices

HAIR = 1e-9  # mm or degrees; what floating point leaves over, and a stretch that short is none


@dataclass(frozen=True, eq=False, slots=True)
class Stretches:
    """Straight stretches of paths, in the order of the paths; (x, y) in mm.

    `path[i]` is the number of the path that stretch i belongs to, `begins[i]` how far along that
    path it starts; `opens` and `closes` mark the first and the last stretch of a path.
    """

    start: Points  # (n, 2)
    way: Points  # (n, 2), from start to end
    length: Points  # (n,)
    begins: Points  # (n,)
    path: Indices  # (n,)
    opens: Flags  # (n,)
    closes: Flags  # (n,)

    @property
    def end(self) -> Points:
        """Return where the stretches end, (n, 2)."""
        return self.start + self.way

    def at(self, row: int, share: float) -> tuple[float, float]:
        """Return the point of stretch `row` at a share of its length."""
        x, y = self.start[row] + share * self.way[row]
        return float(x), float(y)


def stretches(paths: Sequence[Points]) -> Stretches:
    """Return the stretches of paths given as points (k, 2); a path without length has none."""
    counts = np.array([len(path) for path in paths], dtype=np.intp)
    points = np.vstack([np.empty((0, 2)), *paths])
    number = np.repeat(np.arange(len(paths)), counts)
    inner = number[1:] == number[:-1]
    start, way, path = points[:-1][inner], np.diff(points, axis=0)[inner], number[:-1][inner]
    length = np.hypot(way[:, 0], way[:, 1])
    real = length > HAIR
    start, way, length, path = start[real], way[real], length[real], path[real]
    new = np.diff(path, prepend=-1) != 0
    begins = _along(length, new)
    return Stretches(start, way, length, begins, path, new, np.append(new[1:], True)[: len(path)])


def _along(length: Points, new: Flags) -> Points:
    """Return how far along its own path each stretch begins, summed path by path."""
    begins = np.zeros(len(length))
    for row in np.flatnonzero(~new):
        begins[row] = begins[row - 1] + length[row - 1]
    return begins


def covered(intervals: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return the union of intervals as intervals that lie apart, in order."""
    whole: list[tuple[float, float]] = []
    for low, high in sorted(intervals):
        if whole and low <= whole[-1][1]:
            whole[-1] = (whole[-1][0], max(whole[-1][1], high))
        else:
            whole.append((low, high))
    return whole


def boxes_meet(a: Stretches, b: Stretches, margin: float) -> tuple[Indices, Indices]:
    """Return the pairs of stretches whose boxes come within `margin` of each other."""
    low_a, high_a = np.minimum(a.start, a.end), np.maximum(a.start, a.end)
    low_b, high_b = np.minimum(b.start, b.end) - margin, np.maximum(b.start, b.end) + margin
    meet = np.ones((len(low_a), len(low_b)), dtype=np.bool_)
    for axis in (0, 1):
        meet &= low_a[:, None, axis] <= high_b[None, :, axis]
        meet &= high_a[:, None, axis] >= low_b[None, :, axis]
    rows, columns = np.nonzero(meet)
    return rows, columns
