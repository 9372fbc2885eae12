"""Convex shapes by chance, for what is measured between many of them."""

import shapely
from shapely import Polygon


def convex(rng, count, spread=120.0):
    """Return so many convex shapes up to 60 across, their corners at random, strewn over `spread`."""
    shapes = []
    while len(shapes) < count:
        hull = shapely.MultiPoint(rng.uniform(0, 60, (6, 2)) + rng.uniform(0, spread, 2)).convex_hull
        if isinstance(hull, Polygon) and hull.area > 1:
            shapes.append(hull)
    return shapes
