"""Crosses near the corners of a board, to prove with one tape that the taped template is square."""

from dataclasses import dataclass
from math import hypot

import shapely

from bayboard.model.layout import Point
from bayboard.paper.curves import circle, line
from bayboard.paper.face import Face
from bayboard.paper.marks import MEASURED, Stroke

INSETS = (10.0, 15.0, 20.0, 30.0, 40.0)  # mm; further in where corners are round or a hole is in the way
ARM, EYE = 4.0, 1.5  # mm
EDGE_CLEAR, HOLE_CLEAR = 4.5, 8.0  # mm; from a cross's middle


@dataclass(frozen=True, slots=True)
class Crosses:
    """Four crosses of a rectangle in the face's mm, counter-clockwise from lower left; their diagonal."""

    points: tuple[Point, ...]
    diagonal: float


def corner_crosses(face: Face) -> Crosses | None:
    """Return the crosses, None where a corner of the board's box is not board: it is no rectangle then."""
    x0, y0, x1, y1 = face.box
    for inset in INSETS:
        a, b, c, d = x0 + inset, y0 + inset, x1 - inset, y1 - inset
        points = ((a, b), (c, b), (c, d), (a, d))
        if c - a > 4 * ARM and d - b > 4 * ARM and all(_good(face, p) for p in points):
            return Crosses(points, hypot(c - a, d - b))
    return None


def cross(at: Point) -> Stroke:
    """Return a corner cross on the page."""
    x, y = at
    return Stroke(
        (circle(at, EYE), line((x - ARM, y), (x + ARM, y)), line((x, y - ARM), (x, y + ARM))), MEASURED
    )


def _good(face: Face, at: Point) -> bool:
    spot = shapely.Point(at)
    if not face.solid.contains(spot) or face.solid.boundary.distance(spot) < EDGE_CLEAR:
        return False
    return all(hypot(x - at[0], y - at[1]) >= h.radius + HOLE_CLEAR for h in face.holes for x, y in h.discs)
