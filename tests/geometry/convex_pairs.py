"""Pairs of convex shapes, aimed at touching, measured by geometry/ and by another way.

The other way: the Minkowski difference of two convex shapes is the convex hull of all differences of their
corners (de Berg and others, Computational Geometry, chapter 13).  Its distance from the origin is how far
the shapes are apart; with the origin inside, the origin's depth is the shortest way to part them.  Hulls,
distances and smallest rectangles come from shapely.
"""

import math
import random
from itertools import pairwise

import numpy as np
from shapely import MultiPoint, Point, Polygon
from shapely.affinity import rotate, translate

from bayboard.geometry.crowd import crowd, gaps, overlaps
from bayboard.geometry.rims import edge_distances, rim, rim_depths
from bayboard.geometry.widths import least_width

NEAR = 1e-6  # mm
AREA = 0.01  # mm2; less is no overlap
TALL = [(0.0, 10.0)]


def pair(rng):
    """Return two convex shapes; half of them within 0.02 mm of touching."""
    one, other = _convex(rng), _convex(rng)
    angle = rng.uniform(0, 2 * math.pi)
    way = (math.cos(angle), math.sin(angle))
    touch = max(np.dot(p, way) for p in _corners(one)) - min(np.dot(p, way) for p in _corners(other))
    aim = rng.choice([0.0, rng.uniform(-0.02, 0.02), rng.uniform(-40, 60), rng.uniform(-40, 60)])
    return one, translate(other, way[0] * (touch + aim), way[1] * (touch + aim))


def _convex(rng):
    if rng.random() < 0.3:  # a box, as most gear is, often square to the axes
        w, h = rng.uniform(8, 60), rng.uniform(8, 60)
        turn = math.radians(rng.choice([0, 90, rng.uniform(0, 360)]))
        c, s = math.cos(turn), math.sin(turn)
        return Polygon([(c * x - s * y, s * x + c * y) for x, y in ((-w, -h), (w, -h), (w, h), (-w, h))])
    while True:
        spots = [(rng.uniform(-60, 60), rng.uniform(-60, 60)) for _ in range(rng.randint(3, 12))]
        hull = MultiPoint(spots).convex_hull
        if hull.geom_type == "Polygon" and hull.area > 50:
            return hull


def _corners(shape):
    return np.asarray(shape.exterior.coords)[:-1]


def differences(one, other):
    """Return a sentence for each measure of geometry/ that is not what the other way gives."""
    apart = Polygon(
        MultiPoint([q - p for p in _corners(one) for q in _corners(other)]).convex_hull.exterior.coords
    )
    origin = Point(0, 0)
    yield from _distance(one, other, apart.distance(origin))
    shared = one.intersection(other)
    yield from _penetration(one, other, shared)
    if apart.contains(origin):
        yield from _parted(one, other, shared, apart.exterior, origin)


def _distance(one, other, far):
    measured = _gap(one, other)
    if abs(measured - far) > NEAR:
        yield f"gaps: {measured} against {far}"
    if far > 0:
        a, b = _corners(one), _corners(other)
        by_edges = min(_least(a, b), _least(b, a))
        by_rims = -max(rim_depths(a, rim(b)).max(), rim_depths(b, rim(a)).max())
        for name, value in (("edge_distances", by_edges), ("rim_depths", by_rims)):
            if abs(value - far) > NEAR:
                yield f"{name}: {value} against {far}"


def _gap(one, other):
    asked = np.ones((1, 1), dtype=np.bool_)
    return float(gaps(crowd([one], TALL), crowd([other], TALL), asked, 1e6)[0, 0])


def _least(points, ring):
    return float(edge_distances(points, ring, np.roll(ring, -1, axis=0)).min())


def _deep(one, other):
    asked = np.ones((1, 1), dtype=np.bool_)
    return float(overlaps(crowd([one], TALL), crowd([other], TALL), asked, AREA)[0, 0])


def _penetration(one, other, shared):
    """Compare how deep the two lie into each other: the smaller side of the smallest rectangle."""
    measured = _deep(one, other)
    if shared.area <= AREA:
        if measured:
            yield f"overlaps: {measured} where {shared.area} mm2 are shared"
        return
    expected = _slimmest(shared)
    if abs(measured - expected) > NEAR:
        yield f"overlaps: {measured} against {expected}"


def _slimmest(shape):
    """Return the smaller side of shapely's smallest rectangle; of rectangles as small the slimmest counts."""
    least = shape.minimum_rotated_rectangle.area
    ring = list(shape.convex_hull.exterior.coords)
    found = []
    for (x0, y0), (x1, y1) in pairwise(ring):
        left, low, right, top = rotate(shape, -math.atan2(y1 - y0, x1 - x0), (0, 0), use_radians=True).bounds
        if (right - left) * (top - low) <= least * (1 + 1e-9):
            found.append(min(right - left, top - low))
    return min(found)


def _parted(one, other, shared, rim_line, origin):
    """Move one of them the shortest way out: just far enough parts them, a little less does not."""
    out = rim_line.interpolate(rim_line.project(origin))
    depth = rim_line.distance(origin)
    if shared.area > AREA and least_width(np.asarray(shared.exterior.coords)[:-1]) > depth + NEAR:
        yield f"least_width: what they share is wider than {depth}, the way out"
    gone = translate(other, -out.x, -out.y)
    if _deep(one, gone) or _gap(one, gone) > NEAR:
        yield f"moved out by {depth}: {_deep(one, gone)} deep, {_gap(one, gone)} apart"
    if _gap(one, translate(other, -0.99 * out.x, -0.99 * out.y)) > 0:
        yield f"moved out by a hundredth less than {depth}: apart already"


def differing(count, seed):
    """Return what differs, by number of the pair, of `count` pairs of a seed."""
    rng = random.Random(seed)
    found = {}
    for number in range(count):
        said = list(differences(*pair(rng)))
        if said:
            found[number] = said
    return found
