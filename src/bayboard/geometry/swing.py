"""Seats that turn about a hinge: how far, whether they arrive, how deep they sweep into what stands there.

Everything lies in the section plane, points (z, y) in mm with z to the right; angles in degrees,
counter-clockwise.  Rows of rectangles are looked at against all steps of a swing at once.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import ceil

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR, Shapes, boxes_apart, filled
from bayboard.geometry.outline import Points, Ring
from bayboard.geometry.slim import smaller_sides

Corners = tuple[tuple[float, float], ...]
Spot = tuple[float, float]

HALF = 180.0  # deg
STEP = 1.0  # deg; the largest step of a swing
FUZZ = 1e-6  # deg; what measured corners leave over of a whole number of steps


@dataclass(frozen=True, eq=False)
class Swing:
    """A section at the equal steps of a swing, the start left out: `shapes` (n,), their boxes, all in one."""

    shapes: Shapes
    boxes: Points  # (n, 4)
    whole: BaseGeometry


def turn_between(start: Ring, end: Ring, hinge: Spot) -> float | None:
    """Return the short turn about a hinge that carries the middle of one section to that of another.

    In (-180, 180]; None where a middle lies on the hinge or straight across from the other, so that no
    way is the short one.
    """
    a, b = (np.array(outlines.polygon(ring).centroid.coords[0]) - hinge for ring in (start, end))
    if min(np.hypot(*a), np.hypot(*b)) <= outlines.SAME:
        return None
    angle = float(np.degrees(np.arctan2(a[0] * b[1] - a[1] * b[0], a @ b)))
    return None if abs(angle) >= HALF - FUZZ else angle


def turned_about(section: Ring, hinge: Spot, angle: float) -> Points:
    """Return a section turned about a hinge, (points, 2)."""
    about = np.asarray(section, dtype=np.float64) - hinge
    return outlines.placed(about, hinge, angle)


def corners_off(a: Ring | Points, b: Ring | Points) -> float:
    """Return the largest distance of a corner of one ring to the nearest corner of the other, both ways."""
    one, other = (np.asarray(ring, dtype=np.float64) for ring in (a, b))
    nearest = [min(np.hypot(*(other - corner).T)) for corner in one]
    nearest += [min(np.hypot(*(one - corner).T)) for corner in other]
    return float(max(nearest))


@lru_cache(maxsize=256)
def carried(up: Corners, folded: Corners, hinge: Spot, angle: float | None) -> tuple[float, float] | None:
    """Return the turn about a hinge from up to folded, and how far corners end from those of *folded*, mm.

    `angle` None: the short turn; None where there is none.
    """
    turn = turn_between(up, folded, hinge) if angle is None else angle
    return None if turn is None else (turn, corners_off(turned_about(up, hinge, turn), folded))


@lru_cache(maxsize=256)
def swept(section: Corners, hinge: Spot, angle: float) -> Swing:
    """Return a section at each of the fewest equal steps of at most 1 degree that make `angle`."""
    count = ceil(abs(angle) / STEP - FUZZ)
    rings = [turned_about(section, hinge, angle * k / count) for k in range(1, count + 1)]
    shapes = filled(np.array(rings).reshape(count, len(section), 2))
    return Swing(shapes, shapely.bounds(shapes).reshape(-1, 4), shapely.union_all(shapes))


def depths(swing: Swing, blocks: Points) -> Points:
    """Return how deep each rectangle (z0, y0, z1, y1) of (n, 4) is swept into, at each step, (n, steps), mm.

    The smaller side of the smallest rectangle round what they share; 0.0 where they share nothing.  A
    rectangle with an end at or before its start is nothing.
    """
    found = np.zeros((len(blocks), len(swing.shapes)))
    kinds, of_block = np.unique(blocks, axis=0, return_inverse=True)
    there = np.flatnonzero((kinds[:, 2] > kinds[:, 0]) & (kinds[:, 3] > kinds[:, 1]))
    there = there[shapely.intersects(shapely.box(*kinds[there].T), swing.whole)]
    k, j = np.nonzero(boxes_apart(kinds[there][:, None], swing.boxes[None, :]) < -HAIR)
    shared = shapely.intersection(shapely.box(*kinds[there][k].T), swing.shapes[j])
    of_kind = np.zeros((len(kinds), len(swing.shapes)))
    of_kind[there[k], j] = smaller_sides(shared)
    found[:] = of_kind[of_block.reshape(-1)]
    return found


def shared_at(swing: Swing, step: int, block: Points) -> Polygon:
    """Return what a rectangle and the section at a step (from 0) share."""
    shared: Polygon = shapely.intersection(shapely.box(*block), swing.shapes[step])
    return shared
