"""How much of straight stretches lies within a shape."""

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.outline import Points

FLAT = 1e-12  # mm2; two edges that turn inward by less than this run straight on


def length_within(starts: Points, ends: Points, shape: BaseGeometry) -> Points:
    """Return the mm of each stretch, (n, 2) to (n, 2), that lie within a shape, (n,).

    Of a convex polygon, and of what lies round one, by Cyrus and Beck (1978); of any other with shapely.
    """
    if isinstance(shape, Polygon):
        whole = np.hypot(*(ends - starts).T)
        if not shape.interiors and (within := _within(starts, ends, Polygon(shape.exterior))) is not None:
            return within
        if len(shape.interiors) == 1:
            outer = _within(starts, ends, Polygon(shape.exterior))
            inner = _within(starts, ends, Polygon(shape.interiors[0]))
            if outer is not None and inner is not None and np.all(outer == whole):
                return np.asarray(whole - inner)
    lines = shapely.linestrings(np.stack([starts, ends], axis=1))
    return np.asarray(shapely.length(shapely.intersection(lines, shape)))


def _within(starts: Points, ends: Points, convex: Polygon) -> Points | None:
    """Return the mm of each stretch within a polygon, None where that is not convex."""
    ring = shapely.get_coordinates(shapely.orient_polygons(convex))[:-1]
    edge = np.roll(ring, -1, axis=0) - ring
    ahead = np.roll(edge, -1, axis=0)
    if np.any(edge[:, 0] * ahead[:, 1] - edge[:, 1] * ahead[:, 0] < -FLAT):
        return None
    way = ends - starts
    out = np.column_stack((edge[:, 1], -edge[:, 0]))
    room = np.sum(out * ring, axis=1) - starts @ out.T
    rate = way @ out.T
    with np.errstate(divide="ignore", invalid="ignore"):
        at = room / rate
    into = np.where(rate < 0, at, np.where((rate == 0) & (room < 0), np.inf, -np.inf)).max(axis=1)
    leaves = np.where(rate > 0, at, np.inf).min(axis=1)
    share = np.clip(leaves, 0.0, 1.0) - np.clip(into, 0.0, 1.0)
    within: Points = np.maximum(share, 0.0) * np.hypot(way[:, 0], way[:, 1])
    within[share >= 1.0] = np.hypot(way[:, 0], way[:, 1])[share >= 1.0]
    return within
