"""Stations: cased crosses on the seams, with one number on both sheets that share it.

Two to a seam, near its ends, for a long lever; moved along the seam so that they stay clear of holes and
sawn edges.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot

import numpy as np
import shapely
from numpy.typing import NDArray

from bayboard.model.layout import Point
from bayboard.paper.curves import circle, line
from bayboard.paper.face import Face
from bayboard.paper.marks import DRILLED, MEASURED, Stroke, Trace
from bayboard.paper.tiles import Seam

HOLE_CLEAR = 11.0  # mm; from a station's middle to a hole's edge
EDGE_CLEAR = 7.0  # mm; from a station's middle to a sawn edge
END_CLEAR = 14.0  # mm; from a station's middle to where other seams meet this one
ENDS = (0.12, 0.88)  # of a seam's length
TWO_APART = 40.0  # mm; nearer together two stations are no better than one
RING, EYE, ARM = 3.2, 1.4, 6.0  # mm
CASING = 0.6  # mm; white on either side of the lines
_STEP = 2.0  # mm


@dataclass(frozen=True, slots=True)
class Station:
    """A numbered cross on a seam, in the face's mm."""

    number: int
    at: Point
    seam: Seam


def stations(face: Face, seams: Sequence[Seam], first: int = 1) -> tuple[Station, ...]:
    """Return the stations of all seams, numbered in taping order from `first`."""
    spots = [(at, seam) for seam in seams for at in _spots(face, seam)]
    return tuple(Station(first + i, at, seam) for i, (at, seam) in enumerate(spots))


def cross(at: Point) -> tuple[Stroke, ...]:
    """Return a station's cased cross on the page."""
    x, y = at
    arms: tuple[Trace, ...] = (line((x - ARM, y), (x + ARM, y)), line((x, y - ARM), (x, y + ARM)))
    rings = (circle(at, RING), circle(at, EYE))
    casing = Stroke((rings[0], *arms), 2 * CASING, white=True)
    return (casing, Stroke((rings[0],), DRILLED), Stroke((rings[1], *arms), MEASURED))


def _spots(face: Face, seam: Seam) -> Iterator[Point]:
    """Return one or two places on a seam: the best tried first, then whatever is least in the way."""
    length = hypot(seam.b[0] - seam.a[0], seam.b[1] - seam.a[1])
    ends = min(END_CLEAR, length / 2)
    along = np.arange(ends, length - ends + 1e-9, _STEP)
    t = (along / length)[:, None]
    points = np.array(seam.a) * (1 - t) + np.array(seam.b) * t
    good = _best_rank(face, points)
    first, last = (float(along[good][np.argmin(np.abs(along[good] - share * length))]) for share in ENDS)
    spots = (first, last) if last - first >= TWO_APART else ((first + last) / 2,)
    if len(spots) == 1:
        spots = (float(along[good][np.argmin(np.abs(along[good] - spots[0]))]),)
    for s in spots:
        yield (
            seam.a[0] + (seam.b[0] - seam.a[0]) * s / length,
            seam.a[1] + (seam.b[1] - seam.a[1]) * s / length,
        )


def _best_rank(face: Face, points: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Return which places are as good as any: on the board, else off it, else anywhere; clear of holes."""
    spots = shapely.points(points)
    solid, rim, whole = face.solid, face.solid.boundary, shapely.Polygon(face.solid.exterior)
    for shape in (solid, rim, whole):
        shapely.prepare(shape)
    off_edge = ~shapely.dwithin(rim, spots, EDGE_CLEAR)
    on = shapely.contains(solid, spots)
    beside = ~shapely.contains(whole, spots)
    off_holes = _hole_clearance(face, points) >= HOLE_CLEAR
    for good in (on & off_edge & off_holes, beside & off_edge & off_holes, on & off_holes, off_holes):
        if good.any():
            return np.asarray(good)
    clear = _hole_clearance(face, points)
    return np.asarray(clear >= clear.max())


def _hole_clearance(face: Face, points: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return each point's distance to the nearest hole's edge."""
    discs = np.array([(x, y, h.radius) for h in face.holes for x, y in h.discs])
    if not len(discs):
        return np.full(len(points), np.inf)
    off = (
        np.hypot(points[:, None, 0] - discs[None, :, 0], points[:, None, 1] - discs[None, :, 1])
        - discs[None, :, 2]
    )
    return np.asarray(off.min(axis=1))
