"""Bodies in rows: how far apart in plan, how deep into each other, where their heights meet.

A moved stand-in at many places is a crowd of its own; the measures are taken between all rows of two crowds
at once: box cull first, exact polygons for the pairs that remain.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import SPECK, Points
from bayboard.geometry.slim import smaller_sides

Flags = NDArray[np.bool_]
Shapes = NDArray[np.object_]
Indices = NDArray[np.intp]

HAIR = 1e-9  # mm; what floating point leaves over: less than this is nothing


@dataclass(frozen=True, eq=False)
class Crowd:
    """Prisms in rows: plan polygons (n,) and their heights (n, 2) over z = 0."""

    shapes: Shapes
    z: Points

    def __len__(self) -> int:
        """Return how many rows there are."""
        return len(self.shapes)

    @cached_property
    def boxes(self) -> Points:
        """Return (x0, y0, x1, y1) of each row, (n, 4)."""
        return np.asarray(shapely.bounds(self.shapes), dtype=np.float64)


def crowd(shapes: Sequence[Polygon], z: Sequence[tuple[float, float]]) -> Crowd:
    """Return the crowd of polygons and their heights."""
    rows = np.empty(len(shapes), dtype=np.object_)
    rows[:] = shapes
    return Crowd(rows, np.asarray(z, dtype=np.float64).reshape(-1, 2))


def filled(rings: Sequence[Points] | Points) -> Shapes:
    """Return the polygons of some rings, (n,)."""
    if isinstance(rings, np.ndarray):
        return np.asarray(shapely.polygons(rings), dtype=np.object_)
    shapes = np.empty(len(rings), dtype=np.object_)
    shapes[:] = [outlines.polygon(ring) for ring in rings]
    return shapes


def heights_meet(a: Crowd, b: Crowd) -> Flags:
    """Return whether the z ranges of each pair share more than nothing, (len(a), len(b))."""
    return ranges_meet(a.z, b.z)


def ranges_meet(a: Points, b: Points) -> Flags:
    """Return whether each two ranges of (n, 2) and (m, 2) share more than nothing, (n, m)."""
    shared = np.minimum(a[:, None, 1], b[None, :, 1]) - np.maximum(a[:, None, 0], b[None, :, 0])
    return np.asarray(shared > HAIR)


def box_gaps(a: Crowd, b: Crowd) -> Points:
    """Return the larger of the gaps of each pair's boxes along x and y, negative where both overlap."""
    return boxes_apart(a.boxes[:, None], b.boxes[None, :])


def boxes_apart(a: Points, b: Points) -> Points:
    """Return the larger of the gaps along x and y of boxes (..., 4), negative where they overlap."""
    along_x = np.maximum(a[..., 0] - b[..., 2], b[..., 0] - a[..., 2])
    along_y = np.maximum(a[..., 1] - b[..., 3], b[..., 1] - a[..., 3])
    return np.asarray(np.maximum(along_x, along_y))


def gaps(a: Crowd, b: Crowd, where: Flags, within: float) -> Points:
    """Return the plan distance in mm of each pair that `where` asks about, (len(a), len(b)).

    0.0 where they touch or overlap; inf where not asked, where their heights do not meet or they
    are farther apart than `within`.
    """
    found = np.full((len(a), len(b)), np.inf)
    i, j = np.nonzero(where & heights_meet(a, b) & (box_gaps(a, b) <= within))
    found[i, j] = shapely.distance(a.shapes[i], b.shapes[j])
    found[found > within] = np.inf
    return found


def overlaps(a: Crowd, b: Crowd, where: Flags, area: float) -> Points:
    """Return how deep each pair that `where` asks about lies into each other in mm, (len(a), len(b)).

    The smaller side of the smallest rectangle round the plan area they share; 0.0 where not asked,
    where their heights do not meet or that area is not over `area` mm2.
    """
    found = np.zeros((len(a), len(b)))
    i, j, shared = _shared(a, b, where, area)
    found[i, j] = smaller_sides(shared)
    return found


def overlapping(a: Crowd, b: Crowd, where: Flags, area: float) -> Flags:
    """Return which pairs `overlaps` would find to lie into each other, (len(a), len(b))."""
    found = np.zeros((len(a), len(b)), dtype=np.bool_)
    i, j, _ = _shared(a, b, where, area)
    found[i, j] = True
    return found


def _shared(a: Crowd, b: Crowd, where: Flags, area: float) -> tuple[Indices, Indices, Shapes]:
    i, j = np.nonzero(where & heights_meet(a, b) & (box_gaps(a, b) < -HAIR))
    shared = np.asarray(shapely.intersection(a.shapes[i], b.shapes[j]), dtype=np.object_)
    deep = np.asarray(shapely.area(shared) > area)
    return i[deep], j[deep], shared[deep]


def solid_parts(shape: BaseGeometry) -> list[Polygon]:
    """Return the polygons of a shape, without lines, points and slivers."""
    parts = shapely.get_parts(shape)
    return [part for part in parts if isinstance(part, Polygon) and part.area > SPECK]


def middle_between(a: Polygon, b: Polygon) -> tuple[float, float]:
    """Return the middle of where two shapes are nearest: half way along facing edges, or between corners."""
    half = shapely.distance(a, b) / 2.0
    grown = shapely.buffer(
        [a, b], half + 0.05 + half / 100.0, quad_segs=16
    )  # a little more than half, arcs inscribed
    middle = shapely.intersection(grown[0], grown[1]).centroid
    return float(middle.x), float(middle.y)
