"""How slim shapes are: the smaller side of the rectangle of least area round each, many at once.

Among rectangles of equal area, as round a triangle, the slimmest counts.  One side of the rectangle lies
along an edge of the convex hull (Freeman and Shapira 1975).
"""

from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import GeometryType
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.outline import SPECK, Points

SAME_AREA = 1e-9  # share by which areas of equal rectangles may differ by rounding
AT_ONCE = 2_000_000  # figures held at a time


def smaller_sides(shapes: Sequence[BaseGeometry] | NDArray[np.object_]) -> Points:
    """Return the smaller side in mm of the rectangle of least area round each shape's solid parts, (n,).

    0.0 for a shape without any: lines, points and slivers do not count.
    """
    found = np.zeros(len(shapes))
    parts, owner = shapely.get_parts(np.asarray(shapes, dtype=np.object_), return_index=True)
    solid = (shapely.get_type_id(parts) == GeometryType.POLYGON) & (shapely.area(parts) > SPECK)
    points, part = shapely.get_coordinates(parts[solid], return_index=True)
    if not len(points):
        return found
    which, row = np.unique(owner[solid][part], return_inverse=True)
    spots = np.asarray(shapely.points(points), dtype=np.object_)
    hulls = np.asarray(shapely.convex_hull(shapely.multipoints(spots, indices=row)), dtype=np.object_)
    rings = _padded(hulls)
    step = max(AT_ONCE // rings.shape[1] ** 2, 1)
    for first in range(0, len(rings), step):
        found[which[first : first + step]] = _sides(rings[first : first + step])
    return found


def _padded(hulls: NDArray[np.object_]) -> Points:
    """Return the closed rings of hulls as one array (hulls, most points, 2), last points repeated."""
    points, hull = shapely.get_coordinates(hulls, return_index=True)
    count = np.bincount(hull)
    end = np.cumsum(count)
    column = np.minimum(np.arange(count.max())[None, :], count[:, None] - 1)
    return np.asarray(points[(end - count)[:, None] + column])


def _sides(rings: Points) -> Points:
    edge = np.diff(rings, axis=1)
    length = np.hypot(edge[..., 0], edge[..., 1])
    along = edge / np.where(length > 0.0, length, 1.0)[..., None]
    across = np.stack((-along[..., 1], along[..., 0]), axis=-1)
    sides = np.stack([np.ptp(rings @ np.swapaxes(way, 1, 2), axis=1) for way in (along, across)], axis=-1)
    area = np.where(length > 0.0, sides.prod(axis=-1), np.inf)
    smallest = area <= area.min(axis=1, keepdims=True) * (1.0 + SAME_AREA)
    return np.asarray(np.where(smallest, sides.min(axis=-1), np.inf).min(axis=1))
