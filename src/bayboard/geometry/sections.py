"""Seat sections against stand-ins: the range a clipped outline spans, and the least z of a seat over it.

A section is a closed polygon of (z, y); the surface that faces the wall is its least z at each y.
Everything is exact at corners and clips.
"""

from collections.abc import Sequence
from functools import lru_cache

import numpy as np
import shapely
from shapely import Point, Polygon
from shapely.geometry.base import BaseGeometry

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR, filled, solid_parts
from bayboard.geometry.outline import SPECK, Points, Ring

NO_ROOM = np.inf  # mm; nothing of the seat is there
FAR = 1e6  # mm; beyond anything a layout may hold
ROUND = 512  # edges in a quarter of a probe's circle: 75 mm are met to 0.0001 mm
Corners = tuple[tuple[float, float], ...]
Probe = tuple[float, float, float]


def padded(rings: Sequence[Points]) -> Points:
    """Return rings of unlike length as one array (rings, most points, 2), last points repeated."""
    most = max((len(ring) for ring in rings), default=0)
    rows = np.empty((len(rings), most, 2))
    for row, ring in zip(rows, rings, strict=True):
        row[: len(ring)], row[len(ring) :] = ring, ring[-1]
    return rows


def spans(rings: Points, low: Points, high: Points, across: int = 0) -> Points:
    """Return the range that each ring spans between `low` and `high`, (rings, 2).

    `rings` is (n, points, 2) or (1, points, 2), `low` and `high` are (n,) and cut axis `across`
    (0 x, 1 y); the range is along the other axis.  (inf, -inf) where the ring shares no width
    with the cut.
    """
    own, other = rings[..., across], rings[..., 1 - across]
    low, high = np.broadcast_arrays(np.asarray(low)[:, None], np.asarray(high)[:, None])
    values = [np.broadcast_to(other, (len(low), other.shape[1]))]
    valid = [(own >= low) & (own <= high)]
    after, other_after = np.roll(own, -1, axis=1), np.roll(other, -1, axis=1)
    for cut in (low, high):
        crossed = (own < cut) != (after < cut)
        share = (cut - own) / np.where(after == own, 1.0, after - own)
        values.append(other + share * (other_after - other))
        valid.append(crossed)
    value, ok = np.hstack(values), np.hstack(valid)
    width = np.minimum(high[:, 0], own.max(axis=1)) - np.maximum(low[:, 0], own.min(axis=1))
    ok &= (width > HAIR)[:, None]
    least = np.where(ok, value, np.inf).min(axis=1)
    most = np.where(ok, value, -np.inf).max(axis=1)
    return np.column_stack((least, most))


def least_z(section: Ring | Points, ranges: Points) -> Points:
    """Return the least z of a (z, y) section over each y range of (n, 2), (n,); inf where it is not there."""
    ring = np.asarray(section, dtype=np.float64)[None]
    low, high = np.where(np.isfinite(ranges), ranges, 0.0).T
    return spans(ring, low, high, across=1)[:, 0]


def rooms(rings: Points, x: tuple[float, float], section: Ring | Points | None) -> Points:
    """Return the least z of a seat over each outline, (rings,); inf where the seat is not there.

    Each outline is clipped to the seat's `x`; its y range is looked at whole.
    """
    if section is None:
        return np.full(len(rings), NO_ROOM)
    count = len(rings)
    return least_z(section, spans(rings, np.full(count, x[0]), np.full(count, x[1])))


def probed_rooms(
    rings: Sequence[Points] | Points,
    x: tuple[float, float],
    section: Ring | Points | None,
    probes: Sequence[Probe],
    reach: float,
) -> Points:
    """Return the least z of a seat over each outline where putty was pressed at `probes`, (rings,).

    Points within `reach` in plan of a probe take the z of the nearest; the rest takes the
    section's least z over its own y range.  inf where there is nothing of the seat.
    """
    inside = shapely.intersection(filled(rings), shapely.box(x[0], -FAR, x[1], FAR))
    # a rim that only touches the seat's side is not under it
    inside[shapely.area(inside) <= HAIR] = Polygon()
    found = np.full(len(rings), NO_ROOM)
    at = np.asarray(probes, dtype=np.float64)
    centres = [Point(centre) for centre in at[:, :2]]
    for i, (centre, z) in enumerate(zip(centres, at[:, 2], strict=True)):
        near = (
            shapely.distance(shapely.intersection(inside, _cell(i, at[:, :2], reach)), centre) <= reach + HAIR
        )
        found[near] = np.minimum(found[near], z)
    if section is None:
        return found
    discs = shapely.union_all(shapely.buffer(centres, reach, quad_segs=ROUND))
    shapely.prepare(discs)
    meets = np.flatnonzero(shapely.intersects(discs, inside))  # most of many places lie apart
    inside[meets] = shapely.difference(inside[meets], discs)
    parts, ring = shapely.get_parts(inside, return_index=True)
    solid = shapely.area(parts) > SPECK
    ranges = np.tile([np.inf, -np.inf], (len(rings), 1))
    np.minimum.at(ranges[:, 0], ring[solid], shapely.bounds(parts[solid])[:, 1])
    np.maximum.at(ranges[:, 1], ring[solid], shapely.bounds(parts[solid])[:, 3])
    there = np.isfinite(ranges[:, 0])
    found[there] = np.minimum(found[there], least_z(section, ranges[there]))
    return found


def _cell(i: int, centres: Points, reach: float) -> BaseGeometry:
    """Return the square of `reach` round a centre cut down to the points that have no nearer one."""
    here = centres[i]
    cell: BaseGeometry = shapely.box(*(here - reach), *(here + reach))
    for other in centres:
        apart = other - here
        length = float(np.hypot(*apart))
        if HAIR < length < 4.0 * reach:
            cell = cell.intersection(_nearer(here, apart / length, length / 2.0, 4.0 * reach))
    return cell


def _nearer(here: Points, way: Points, half: float, far: float) -> Polygon:
    """Return a square of side 2 x `far` that ends `half` beyond `here` along `way`."""
    aside = np.array([-way[1], way[0]]) * far
    front, behind = here + way * half, here + way * (half - 2.0 * far)
    return outlines.polygon(np.array([front - aside, front + aside, behind + aside, behind - aside]))


@lru_cache(maxsize=4096)
def bands(section: Corners, low: float, high: float) -> tuple[tuple[float, float], ...]:
    """Return the y ranges in which a (z, y) section takes up room between two heights."""
    parts = _cut(section, low, high)
    return tuple((float(y0), float(y1)) for _, y0, _, y1 in (part.bounds for part in parts))


def rooms_beyond(rings: Points, z: float, x: tuple[float, float], section: Corners) -> Points:
    """Return the least z, not below `z`, of a seat over each outline, (rings,); inf where it is not there."""
    found = np.full(len(rings), NO_ROOM)
    for part in _cut(section, z, FAR):
        found = np.minimum(found, rooms(rings, x, shapely.get_coordinates(part.exterior)[:-1]))
    return found


@lru_cache(maxsize=4096)
def _cut(section: Corners, low: float, high: float) -> tuple[Polygon, ...]:
    """Return the parts of a (z, y) section between two heights."""
    return tuple(
        solid_parts(shapely.intersection(outlines.polygon(section), shapely.box(low, -FAR, high, FAR)))
    )
