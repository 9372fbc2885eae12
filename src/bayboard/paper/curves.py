"""Lines, circles and rounded rings as traces, and the carrying of them to another place.

A circle is drawn in Bezier pieces of at most 45 degrees, finer when large, so that it lies within
0.8 um of the true arc.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import atan2, ceil, cos, degrees, radians, sin, tan

import numpy as np

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.model.layout import Point
from bayboard.paper.marks import Step, Trace

Box = tuple[float, float, float, float]  # x0, y0, x1, y1

PIECE = 45.0  # degrees; an arc piece of radius LARGE is then 0.8 um off
LARGE = 160.0  # mm; above it pieces are half as long, which is 64 times closer


def line(a: Point, b: Point) -> Trace:
    """Return the straight line from a to b."""
    return Trace(a, (b,))


def polyline(points: Iterable[Point], closed: bool = False) -> Trace:
    """Return the line through the points."""
    first, *rest = points
    return Trace(first, tuple(rest), closed)


def rectangle(box: Box) -> Trace:
    """Return the closed rectangle."""
    x0, y0, x1, y1 = box
    return Trace((x0, y0), ((x1, y0), (x1, y1), (x0, y1)), closed=True)


def grown(box: Box, by: float) -> Box:
    """Return the box with every side moved out by `by` mm."""
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def arc_steps(centre: Point, radius: float, start: float, sweep: float) -> tuple[Step, ...]:
    """Return curve steps along an arc from angle `start` by `sweep`, degrees counter-clockwise.

    Handles lie 4/3 tan(piece/4) radii along the tangents (the usual cubic through both ends whose
    middle lies on the arc).
    """
    pieces = max(1, ceil(abs(sweep) / (PIECE if radius <= LARGE else PIECE / 2) - 1e-9))
    step = sweep / pieces
    k = 4.0 / 3.0 * tan(radians(step) / 4.0)
    knots = [(cos(radians(start + i * step)), sin(radians(start + i * step))) for i in range(pieces + 1)]
    x, y = centre
    return tuple(
        (
            x + radius * (c0 - k * s0),
            y + radius * (s0 + k * c0),
            x + radius * (c1 + k * s1),
            y + radius * (s1 - k * c1),
            x + radius * c1,
            y + radius * s1,
        )
        for (c0, s0), (c1, s1) in pairwise(knots)
    )


@lru_cache(maxsize=2)
def _unit_circle(fine: bool) -> tuple[Step, ...]:
    radius = LARGE * 2 if fine else 1.0
    return tuple(tuple(v / radius for v in step) for step in arc_steps((0.0, 0.0), radius, 0.0, 360.0))


def circle(centre: Point, radius: float) -> Trace:
    """Return the closed circle."""
    x, y = centre
    steps = tuple(
        (x + radius * a, y + radius * b, x + radius * c, y + radius * d, x + radius * e, y + radius * f)
        for a, b, c, d, e, f in _unit_circle(radius > LARGE)
    )
    return Trace((x + radius, y), steps, closed=True)


def ring(points: Sequence[Point] | Points, radius: float = 0.0) -> Trace:
    """Return the closed ring of an outline, its convex corners rounded by true arcs."""
    start: Point | None = None
    steps: list[Step] = []
    for corner in outlines.corners(points, radius):
        here = (float(corner.start[0]), float(corner.start[1]))
        if start is None:
            start = here
        else:
            steps.append(here)
        if corner.sweep:
            centre = (float(corner.centre[0]), float(corner.centre[1]))
            steps += arc_steps(centre, corner.radius, _angle(centre, here), corner.sweep)
    assert start is not None
    return Trace(start, tuple(steps), closed=True)


def _angle(centre: Point, point: Point) -> float:
    return degrees(atan2(point[1] - centre[1], point[0] - centre[0]))


@dataclass(frozen=True, slots=True)
class Carry:
    """A move in the plane: x' = a x + c y + e, y' = b x + d y + f."""

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    @classmethod
    def to(cls, at: Point, turn: float = 0.0) -> "Carry":
        """Return the turn about the origin by `turn` degrees, then the move to `at`."""
        c, s = outlines.unit(turn)
        return cls(c, s, -s, c, at[0], at[1])

    @classmethod
    def mirror(cls, total: float) -> "Carry":
        """Return the mirroring x' = total - x."""
        return cls(a=-1.0, e=total)

    @property
    def turn(self) -> float:
        """Return the angle of the carried +x axis, degrees in [0, 360)."""
        return degrees(atan2(self.b, self.a)) % 360.0

    def then(self, after: "Carry") -> "Carry":
        """Return this carry followed by another."""
        a, b = after._way(self.a, self.b)
        c, d = after._way(self.c, self.d)
        e, f = after.point((self.e, self.f))
        return Carry(a, b, c, d, e, f)

    def _way(self, x: float, y: float) -> Point:
        return self.a * x + self.c * y, self.b * x + self.d * y

    def point(self, p: Point) -> Point:
        """Return the point carried."""
        x, y = p
        return self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f

    def points(self, xy: Points) -> Points:
        """Return points carried, shape (n, 2)."""
        x, y = xy[:, 0], xy[:, 1]
        return np.column_stack((self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f))

    def trace(self, t: Trace) -> Trace:
        """Return the trace carried."""
        return Trace(self.point(t.start), tuple(self._step(s) for s in t.steps), t.closed)

    def _step(self, step: Step) -> Step:
        if len(step) == 2:
            return self.point((step[0], step[1]))
        x1, y1, x2, y2, x3, y3 = step
        return (*self.point((x1, y1)), *self.point((x2, y2)), *self.point((x3, y3)))

    def box(self, b: Box) -> Box:
        """Return the box of a carried box; exact for quarter turns and mirrors."""
        (x0, y0), (x1, y1) = self.point((b[0], b[1])), self.point((b[2], b[3]))
        return min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)
