"""Bodies as prisms: a plan shape between two heights, or a seat's (z, y) section between two x.

A ray or a corridor's axis is carried into the prism's own axes (a, b across, h along), cut where it passes
the two end planes, and each part is looked at in two dimensions.
"""

import math
from itertools import pairwise

from shapely import LineString, Point


class Prism:
    """A shape in two axes between `low` and `high` on the third; `along` is "z" or "x"."""

    def __init__(self, shape, low, high, along="z"):
        self.shape, self.low, self.high, self.along = shape, low, high, along

    def local(self, point):
        """Return a bay point as (a, b, h)."""
        x, y, z = point
        return (x, y, z) if self.along == "z" else (z, y, x)


def _mix(p, q, t):
    return tuple(a + (b - a) * t for a, b in zip(p, q, strict=True))


def _within(prism, p, q):
    """Return the part (t0, t1) of p to q between the end planes, None when there is none."""
    rise = q[2] - p[2]
    if rise == 0:
        return (0.0, 1.0) if prism.low < p[2] < prism.high else None
    ends = sorted(((prism.low - p[2]) / rise, (prism.high - p[2]) / rise))
    low, high = max(0.0, ends[0]), min(1.0, ends[1])
    return (low, high) if low < high else None


def blocks(prism, start, end):
    """Return whether the straight line between two bay points passes through the inside."""
    p, q = prism.local(start), prism.local(end)
    part = _within(prism, p, q)
    if part is None:
        return False
    a, b = _mix(p, q, part[0]), _mix(p, q, part[1])
    if math.hypot(b[0] - a[0], b[1] - a[1]) < 1e-12:
        return prism.shape.contains(Point(a[:2]))
    return prism.shape.relate_pattern(LineString([a[:2], b[:2]]), "T********")


def way_out(prism, start, towards):
    """Return how far along `towards` the line leaves the prism for the last time, 0 if never in it."""
    far = tuple(a + 1e5 * d for a, d in zip(start, towards, strict=True))
    p, q = prism.local(start), prism.local(far)
    part = _within(prism, p, q)
    if part is None:
        return 0.0
    a, b = _mix(p, q, part[0]), _mix(p, q, part[1])
    if math.hypot(b[0] - a[0], b[1] - a[1]) < 1e-9:
        return part[1] * 1e5 if prism.shape.covers(Point(a[:2])) else 0.0
    shared = prism.shape.intersection(LineString([a[:2], b[:2]]))
    if shared.is_empty:
        return 0.0
    spots = [c for piece in getattr(shared, "geoms", [shared]) for c in piece.coords]
    return max(math.dist(p[:2], spot) for spot in spots)


def distance(prism, start, end):
    """Return the distance from the straight line between two bay points to the prism, 0 when it enters."""
    p, q = prism.local(start), prism.local(end)
    rise = q[2] - p[2]
    cuts = [0.0, 1.0]
    if rise:
        cuts += [t for t in ((prism.low - p[2]) / rise, (prism.high - p[2]) / rise) if 0 < t < 1]
    cuts.sort()
    return min(_part(prism, _mix(p, q, s), _mix(p, q, t)) for s, t in pairwise(cuts))


def _part(prism, p, q):
    middle = (p[2] + q[2]) / 2
    if prism.low <= middle <= prism.high:
        flat = Point(p[:2]) if math.dist(p[:2], q[:2]) < 1e-12 else LineString([p[:2], q[:2]])
        return prism.shape.distance(flat)
    return _to_face(prism.shape, prism.low if middle < prism.low else prism.high, p, q)


def _to_face(shape, height, p, q):
    """Return the distance from a line on one side of an end plane to the flat end face."""
    least = min(math.hypot(shape.distance(Point(e[:2])), e[2] - height) for e in (p, q))
    for ring in (shape.exterior, *shape.interiors):
        corners = [(x, y, height) for x, y in ring.coords]
        for a, b in pairwise(corners):
            least = min(least, line_to_line(p, q, a, b))
    return least


def line_to_line(p, q, a, b):
    """Return the distance of two straight pieces in space (Ericson, Real-Time Collision Detection, 5.1.9)."""
    d1, d2 = _minus(q, p), _minus(b, a)
    r = _minus(p, a)
    aa, ee, f = _dot(d1, d1), _dot(d2, d2), _dot(d2, r)
    c, bb = _dot(d1, r), _dot(d1, d2)
    bottom = aa * ee - bb * bb
    s = min(1.0, max(0.0, (bb * f - c * ee) / bottom)) if bottom > 1e-12 * aa * ee else 0.0
    t = (bb * s + f) / ee
    if t < 0:
        t, s = 0.0, min(1.0, max(0.0, -c / aa))
    elif t > 1:
        t, s = 1.0, min(1.0, max(0.0, (bb - c) / aa))
    return math.dist(_mix(p, q, s), _mix(a, b, t))


def _minus(p, q):
    return tuple(a - b for a, b in zip(p, q, strict=True))


def _dot(p, q):
    return sum(a * b for a, b in zip(p, q, strict=True))
