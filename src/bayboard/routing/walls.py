"""Convex pieces in rows, so that many straight stretches are tested against them at once.

Everything is in plan, mm.  A piece is a list of half-planes n · p ≤ d; its rim lies `GRAZE` inside the
true rim and its seams `SEAM` outside, so that a stretch along a rim is free and one along a seam is not.
Where seams meet the rim a piece sticks out by about `SEAM`: hence `LEAST`.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from bayboard.geometry.outline import Points, unit
from bayboard.geometry.prism import Piece

Flags = NDArray[np.bool_]
Indices = NDArray[np.intp]
Pairs = tuple[Indices, Indices]

GRAZE = 1e-6  # mm; a stretch that enters a piece by less than this only grazes it
SEAM = 1e-9  # mm
LEAST = 1e-5  # mm; a stretch that is inside for less than this is not
EDGES = 8  # of a row; pieces with more are cut
AT_ONCE = 1_000_000  # pairs of stretches and pieces looked at together


@dataclass(frozen=True, eq=False, slots=True)
class Walls:
    """Pieces in rows; `owner[i]` is the number of the thing that piece i is a part of."""

    corners: Points  # (m, EDGES, 2), the last repeated where there are fewer
    normals: Points  # (m, EDGES, 2), zero where there are fewer
    offsets: Points  # (m, EDGES), inf where there are fewer
    owner: Indices  # (m,)
    box: Points  # (m, 4), x0, y0, x1, y1

    def __len__(self) -> int:
        """Return how many pieces there are."""
        return len(self.owner)


def walls(pieces: Sequence[Piece]) -> Walls:
    """Return the pieces as rows of one owner, number 0."""
    small = [part for piece in pieces for part in _cut(piece)]
    corners = np.zeros((len(small), EDGES, 2))
    normals = np.zeros((len(small), EDGES, 2))
    offsets = np.full((len(small), EDGES), np.inf)
    for i, piece in enumerate(small):
        count = len(piece.points)
        corners[i, :count], corners[i, count:] = piece.points, piece.points[-1]
        edge = np.roll(piece.points, -1, axis=0) - piece.points
        normals[i, :count] = np.column_stack((edge[:, 1], -edge[:, 0])) / np.hypot(*edge.T)[:, None]
        offset = np.sum(normals[i, :count] * piece.points, axis=1)
        offsets[i, :count] = offset + np.where(piece.outer, -GRAZE, SEAM)
    return Walls(corners, normals, offsets, np.zeros(len(small), dtype=np.intp), _boxes(corners))


def _cut(piece: Piece) -> Iterator[Piece]:
    """Yield the piece in parts of at most `EDGES` edges."""
    count = len(piece.points)
    if count <= EDGES:
        yield piece
        return
    half = count // 2
    yield from _cut(Piece(piece.points[: half + 1], np.append(piece.outer[:half], False)))
    back = np.vstack([piece.points[half:], piece.points[:1]])
    yield from _cut(Piece(back, np.append(piece.outer[half:], False)))


def _boxes(corners: Points) -> Points:
    return np.concatenate([corners.min(axis=1), corners.max(axis=1)], axis=1)


def moved(rows: Walls, at: tuple[float, float], turn: float) -> Walls:
    """Return the pieces turned about the origin, then moved to `at`."""
    c, s = unit(turn)
    normals = _turned(rows.normals, c, s)
    corners = _turned(rows.corners, c, s) + np.asarray(at)
    offsets = rows.offsets + normals[..., 0] * at[0] + normals[..., 1] * at[1]
    return Walls(corners, normals, offsets, rows.owner, _boxes(corners))


def _turned(points: Points, c: float, s: float) -> Points:
    x, y = points[..., 0], points[..., 1]
    return np.stack((x * c - y * s, x * s + y * c), axis=-1)


def together(parts: Sequence[Walls], numbers: Sequence[int] | None = None) -> Walls:
    """Return all pieces in one; each part is an owner, numbered in order or as `numbers` says."""
    known = range(len(parts)) if numbers is None else numbers
    if not parts:
        return walls(())
    return Walls(
        np.concatenate([part.corners for part in parts]),
        np.concatenate([part.normals for part in parts]),
        np.concatenate([part.offsets for part in parts]),
        np.repeat(np.asarray(known, dtype=np.intp), [len(part) for part in parts]),
        np.concatenate([part.box for part in parts]),
    )


def crossings(
    starts: Points,
    ends: Points,
    rows: Walls,
    free: tuple[float, float] = (0.0, 0.0),
) -> Pairs:
    """Return each pair (stretch, owner) once where the stretch runs inside a piece of the owner.

    `free`: mm at the start and at the end of each stretch that are not looked at.
    """
    found: list[Indices] = []
    step = max(AT_ONCE // max(len(rows), 1), 1)
    owners = int(rows.owner.max()) + 1 if len(rows) else 1
    for first in range(0, len(starts) if len(rows) else 0, step):
        part = slice(first, first + step)
        stretch, row = _near(starts[part], ends[part], rows)
        into, out = spans(starts[part], ends[part], rows, stretch, row)
        length = np.hypot(*(ends[part] - starts[part]).T)[stretch]
        into, out = np.clip(into, 0.0, 1.0) * length, np.clip(out, 0.0, 1.0) * length
        inside = np.minimum(out, length - free[1]) - np.maximum(into, free[0])
        hit = inside > LEAST
        found.append((stretch[hit] + first) * owners + rows.owner[row[hit]])
    return _apart(np.concatenate(found) if found else np.zeros(0, dtype=np.intp), owners)


def _near(starts: Points, ends: Points, rows: Walls) -> Pairs:
    """Return the pairs (stretch, row) whose boxes meet and whose line does not pass the box by."""
    low, high = np.minimum(starts, ends), np.maximum(starts, ends)
    x0, y0, x1, y1 = np.ascontiguousarray(rows.box.T)
    meets = low[:, :1] < x1
    meets &= high[:, :1] > x0
    meets &= low[:, 1:] < y1
    meets &= high[:, 1:] > y0
    stretch, row = np.nonzero(meets)
    way = ends[stretch] - starts[stretch]
    middle = (rows.box[row, :2] + rows.box[row, 2:]) / 2.0 - starts[stretch]
    half = (rows.box[row, 2:] - rows.box[row, :2]) / 2.0
    aside = np.abs(way[:, 0] * middle[:, 1] - way[:, 1] * middle[:, 0])
    touched = aside <= np.abs(way[:, 0]) * half[:, 1] + np.abs(way[:, 1]) * half[:, 0]
    return stretch[touched], row[touched]


def spans(starts: Points, ends: Points, rows: Walls, stretch: Indices, row: Indices) -> tuple[Points, Points]:
    """Return where each stretch enters and leaves its piece, in shares of it (Cyrus and Beck 1978)."""
    start, way = starts[stretch], ends[stretch] - starts[stretch]
    nx, ny = rows.normals[row, :, 0], rows.normals[row, :, 1]
    room = rows.offsets[row] - nx * start[:, :1] - ny * start[:, 1:]
    rate = nx * way[:, :1] + ny * way[:, 1:]
    with np.errstate(divide="ignore", invalid="ignore"):
        at = room / rate
    into = np.where(rate < 0, at, np.where((rate == 0) & (room < 0), np.inf, -np.inf)).max(axis=1)
    out = np.where(rate > 0, at, np.inf).min(axis=1)
    return into, out


def holding(points: Points, rows: Walls) -> Pairs:
    """Return each pair (point, owner) once where the point lies inside a piece of the owner."""
    x0, y0, x1, y1 = np.ascontiguousarray(rows.box.T)
    x, y = points[:, :1], points[:, 1:]
    point, row = np.nonzero((x > x0) & (x < x1) & (y > y0) & (y < y1))
    normals, at = rows.normals[row], points[point]
    room = rows.offsets[row] - normals[..., 0] * at[:, :1] - normals[..., 1] * at[:, 1:]
    inside = np.all(room > 0, axis=1)
    owners = int(rows.owner.max()) + 1 if len(rows) else 1
    return _apart(point[inside] * owners + rows.owner[row[inside]], owners)


def _apart(codes: Indices, owners: int) -> Pairs:
    """Return the two numbers in each code, every code once, in order."""
    codes = np.sort(codes)
    once = codes[np.diff(codes, prepend=-1) > 0]
    return once // owners, once % owners
