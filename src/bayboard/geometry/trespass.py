"""How much of a path lies where it must not: inside bodies, openings or washers, or off its board."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np
import shapely
from shapely import LineString, MultiLineString
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.outline import Points
from bayboard.geometry.solids import Indices, Solids, inside, near
from bayboard.geometry.stretches import HAIR, Stretches, covered

ON_EDGE = 1e-6  # mm; nearer to an edge than this is on it


class Inside(NamedTuple):
    """A path, by number, that lies inside a thing, by its owner's number: where along it, from … to in mm."""

    path: int
    owner: int
    parts: list[tuple[float, float]]


def inside_bodies(rows: Stretches, z: Points, bodies: Solids) -> Iterator[Inside]:
    """Yield which paths lie inside which bodies, where both share some height.

    `z` (paths, 2) is the lowest and highest z of each path; bodies are met in plan.
    """
    stretch, piece = near(rows.start, rows.end, bodies)
    low = np.maximum(z[rows.path[stretch], 0], bodies.ends[piece, 0])
    high = np.minimum(z[rows.path[stretch], 1], bodies.ends[piece, 1])
    meet = high - low > HAIR
    stretch, piece = stretch[meet], piece[meet]
    level = (np.maximum(low, high - 1.0)[meet] + high[meet]) / 2.0  # a height that both surely share
    start = np.column_stack((rows.start[stretch], level))
    end = np.column_stack((rows.end[stretch], level))
    into, out = (np.clip(share, 0.0, 1.0) for share in inside(start, end, bodies, piece))
    yield from _gathered(rows, stretch, bodies.owner[piece], into, out)


def inside_circles(rows: Stretches, centres: Points, radii: Points) -> Iterator[Inside]:
    """Yield which paths lie inside which circles; the owner is the circle's number."""
    stretch, circle = (grid.ravel() for grid in np.indices((len(rows.length), len(radii))))
    way, unit_length = rows.way[stretch], rows.length[stretch]
    to = centres[circle] - rows.start[stretch]
    middle = (to[:, 0] * way[:, 0] + to[:, 1] * way[:, 1]) / unit_length**2
    off = (to[:, 0] * way[:, 1] - to[:, 1] * way[:, 0]) / unit_length
    half = np.sqrt(np.maximum(radii[circle] ** 2 - off**2, 0.0)) / unit_length
    into, out = np.clip(middle - half, 0.0, 1.0), np.clip(middle + half, 0.0, 1.0)
    yield from _gathered(rows, stretch, circle, into, out)


def _gathered(
    rows: Stretches, stretch: Indices, owner: Indices, into: Points, out: Points
) -> Iterator[Inside]:
    """Yield the parts by path and owner, those that overlap as one."""
    found: dict[tuple[int, int], list[tuple[float, float]]] = {}
    for k in np.flatnonzero(into < out).tolist():
        row = int(stretch[k])
        begins, length = float(rows.begins[row]), float(rows.length[row])
        part = begins + float(into[k]) * length, begins + float(out[k]) * length
        found.setdefault((int(rows.path[row]), int(owner[k])), []).append(part)
    for (path, whose), parts in found.items():
        yield Inside(path, whose, covered(parts))


def clipped(parts: Sequence[tuple[float, float]], low: float, high: float) -> list[tuple[float, float]]:
    """Return the parts that lie between `low` and `high`."""
    cut = [(max(a, low), min(b, high)) for a, b in parts]
    return [(a, b) for a, b in cut if a < b]


def total(parts: Sequence[tuple[float, float]]) -> float:
    """Return the length of parts that lie apart."""
    return float(sum(b - a for a, b in parts))


def along(path: Points, distance: float) -> tuple[float, float]:
    """Return the point of a path `distance` mm from its start."""
    x, y = LineString(path).interpolate(distance).coords[0]
    return x, y


def off_board(path: Points, board: BaseGeometry, skip_first: bool, skip_last: bool) -> BaseGeometry:
    """Return what of a path lies off the board, without its first or last stretch where asked.

    Each stretch is cut for itself: what runs out and back on one line counts both ways.
    """
    rest = path[int(skip_first) : len(path) - int(skip_last)]
    if len(rest) <= 1 or board.covers(LineString(rest)):
        return LineString()
    off = shapely.difference(shapely.linestrings(np.stack((rest[:-1], rest[1:]), axis=1)), board)
    parts = shapely.get_parts(off)
    return MultiLineString(parts[shapely.length(parts) > 0].tolist())


def middle(lines: BaseGeometry) -> tuple[float, float]:
    """Return the middle of the longest of several lines."""
    x, y = (
        max(shapely.get_parts(lines), key=lambda part: part.length)
        .interpolate(0.5, normalized=True)
        .coords[0]
    )
    return x, y


def on_board(point: tuple[float, float], board: BaseGeometry) -> bool:
    """Return whether a point lies on the board or its edge."""
    return bool(shapely.distance(shapely.Point(point), board) <= ON_EDGE)
