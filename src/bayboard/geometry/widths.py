"""How slim an outline is: its least width over all directions.

The least width of a convex ring is met square to one of its edges (Toussaint 1983, rotating calipers), and no
hollow makes an outline slimmer than the convex ring round it.
"""

import numpy as np
import shapely
from shapely import MultiPoint

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points, Ring


def least_width(outline: Ring, radius: float = 0.0) -> float:
    """Return the least distance in mm of two parallel lines that hold an outline between them.

    Convex corners are rounded by `radius`: the ring round the outline is then the one round the arcs'
    centres, grown by the radius.
    """
    arcs = [corner.centre for corner in outlines.corners(outline, radius) if corner.sweep]
    points = np.array(arcs) if arcs else np.asarray(outline, dtype=np.float64)
    return _least_width(points) + (2.0 * radius if arcs else 0.0)


def _least_width(points: Points) -> float:
    """Return the least width of the convex ring round some points, 0.0 where they lie on one line."""
    hull = shapely.convex_hull(MultiPoint(points))
    if hull.geom_type != "Polygon":
        return 0.0
    ring = shapely.get_coordinates(hull)
    edge = np.diff(ring, axis=0)
    across = np.column_stack((-edge[:, 1], edge[:, 0])) / np.hypot(edge[:, 0], edge[:, 1])[:, None]
    return float(np.ptp(ring @ across.T, axis=0).min())
