"""Many prisms as arrays, so that rows of segments are tested against them at once."""

from collections.abc import Sequence
from dataclasses import dataclass, fields, replace

import numpy as np
from numpy.typing import NDArray

from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Piece, Prism

Flags = NDArray[np.bool_]
Indices = NDArray[np.intp]

GRAZE = 1e-6  # mm; a line that enters a solid by less than this only grazes it
AT_ONCE = 2_000_000  # figures held at a time while pairs of lines and pieces are tested


@dataclass(frozen=True, eq=False, slots=True)
class Solids:
    """Convex pieces of prisms in rows, each a list of half-planes n · p ≤ d and a low and high end.

    `owner[i]` is the index of the prism that piece i belongs to.  Rim planes lie `GRAZE` inside
    the true rim and seams the same outside, so that a line along a rim is free and one along a
    seam is not.
    """

    normals: Points  # (m, k, 2)
    offsets: Points  # (m, k)
    ends: Points  # (m, 2), low and high along the prism's axis
    sideways: Flags  # (m,), along x
    owner: Indices  # (m,)
    low: Points  # (m, 3), corners of the pieces' boxes
    high: Points  # (m, 3)

    def __len__(self) -> int:
        """Return how many pieces there are."""
        return len(self.owner)


_MEMBERS = tuple(field.name for field in fields(Solids))


def solids(prisms: Sequence[Prism]) -> Solids:
    """Return the prisms' pieces in rows."""
    rows = [(k, p, piece) for k, p in enumerate(prisms) for piece in p.pieces]
    most = max((len(piece.points) for _, _, piece in rows), default=1)
    normals = np.zeros((len(rows), most, 2))
    offsets = np.full((len(rows), most), np.inf)
    low, high = np.zeros((len(rows), 3)), np.zeros((len(rows), 3))
    for i, (_, p, piece) in enumerate(rows):
        count = len(piece.points)
        normals[i, :count], offsets[i, :count] = _planes(piece)
        low[i], high[i] = _box(p, piece)
    return Solids(
        normals,
        offsets,
        np.array([(p.low, p.high) for _, p, _ in rows]).reshape(-1, 2),
        np.array([p.along == "x" for _, p, _ in rows], dtype=np.bool_),
        np.array([k for k, _, _ in rows], dtype=np.intp),
        low,
        high,
    )


def _planes(piece: Piece) -> tuple[Points, Points]:
    edge = np.roll(piece.points, -1, axis=0) - piece.points
    normal = np.column_stack((edge[:, 1], -edge[:, 0])) / np.hypot(edge[:, 0], edge[:, 1])[:, None]
    offset = np.sum(normal * piece.points, axis=1)
    return normal, offset + np.where(piece.outer, -GRAZE, GRAZE)


def _box(p: Prism, piece: Piece) -> tuple[Points, Points]:
    (a0, b0), (a1, b1) = piece.points.min(axis=0), piece.points.max(axis=0)
    if p.along == "x":
        return np.array([p.low, b0, a0]), np.array([p.high, b1, a1])
    return np.array([a0, b0, p.low]), np.array([a1, b1, p.high])


def grouped(groups: Sequence[Sequence[Prism]], owners: Sequence[int] | None = None) -> Solids:
    """Return the pieces of groups of prisms, each owned by its group's number, or by `owners`."""
    names = range(len(groups)) if owners is None else owners
    rows = solids([p for group in groups for p in group])
    of_prism = [name for name, group in zip(names, groups, strict=True) for _ in group]
    return replace(rows, owner=np.asarray(of_prism, dtype=np.intp)[rows.owner])


def swapped(rows: Solids, owner: int, new: Solids) -> Solids:
    """Return the rows with those of `owner` taken out and `new` put at the end."""
    stay = rows.owner != owner
    most = max(rows.normals.shape[1], new.normals.shape[1])
    parts = [(_widened(part, most), which) for part, which in ((rows, stay), (new, slice(None)))]
    return Solids(
        *(np.concatenate([getattr(part, name)[which] for part, which in parts]) for name in _MEMBERS)
    )


def _widened(rows: Solids, most: int) -> Solids:
    """Return the rows with room for `most` planes each; the added ones hold everywhere."""
    lack = most - rows.normals.shape[1]
    if not lack:
        return rows
    normals = np.pad(rows.normals, ((0, 0), (0, lack), (0, 0)))
    return replace(
        rows, normals=normals, offsets=np.pad(rows.offsets, ((0, 0), (0, lack)), constant_values=np.inf)
    )


def some_of(rows: Solids, owners: Indices) -> Solids:
    """Return the rows of some owners."""
    stay = np.isin(rows.owner, owners)
    return Solids(*(getattr(rows, name)[stay] for name in _MEMBERS))


def near(starts: Points, ends: Points, rows: Solids) -> tuple[Indices, Indices]:
    """Return the pairs (segment, piece) whose boxes meet; in plan alone when the segments are (n, 2)."""
    low, high = np.minimum(starts, ends), np.maximum(starts, ends)
    meet = np.ones((len(starts), len(rows)), dtype=np.bool_)
    for axis in range(starts.shape[1]):
        meet &= low[:, None, axis] <= rows.high[None, :, axis]
        meet &= high[:, None, axis] >= rows.low[None, :, axis]
    segment, piece = np.nonzero(meet)
    return segment, piece


def inside(starts: Points, ends: Points, rows: Solids, piece: Indices) -> tuple[Points, Points]:
    """Return where along each segment it enters and leaves its piece, as shares of its length.

    Row i of `starts` and `ends` is paired with piece `piece[i]`.  Not limited to 0 … 1; a line
    that never meets its piece enters after it leaves.
    """
    into, out = np.empty(len(piece)), np.empty(len(piece))
    step = max(AT_ONCE // rows.normals.shape[1], 1)
    for first in range(0, len(piece), step):
        part = slice(first, first + step)
        into[part], out[part] = _inside(starts[part], ends[part], rows, piece[part])
    return into, out


def _inside(starts: Points, ends: Points, rows: Solids, piece: Indices) -> tuple[Points, Points]:
    flat = rows.sideways[piece][:, None]
    start = np.where(flat, starts[:, ::-1], starts)
    way = np.where(flat, ends[:, ::-1], ends) - start
    across, up = rows.normals[piece, :, 0], rows.normals[piece, :, 1]
    room = rows.offsets[piece] - (across * start[:, :1] + up * start[:, 1:2])
    rate = across * way[:, :1] + up * way[:, 1:2]
    low = start[:, 2] - (rows.ends[piece, 0] + GRAZE)
    high = (rows.ends[piece, 1] - GRAZE) - start[:, 2]
    room = np.column_stack((room, low, high))
    rate = np.column_stack((rate, -way[:, 2], way[:, 2]))
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        at = room / rate
    into = np.where(rate < 0, at, np.where((rate == 0) & (room < 0), np.inf, -np.inf)).max(axis=1)
    out = np.where(rate > 0, at, np.inf).min(axis=1)
    return into, out


def meets(starts: Points, ends: Points, rows: Solids, piece: Indices) -> Flags:
    """Return whether each segment runs inside its piece for some length."""
    into, out = inside(starts, ends, rows, piece)
    found: Flags = np.maximum(into, 0.0) < np.minimum(out, 1.0)
    return found


def _through_box(starts: Points, ends: Points, rows: Solids, piece: Indices) -> Flags:
    """Return whether each segment meets its piece's box: cheaper than the piece, and mostly it does not."""
    way = ends - starts
    level = way == 0.0
    rate = np.where(level, 1.0, way)
    with np.errstate(over="ignore"):
        one, other = (rows.low[piece] - starts) / rate, (rows.high[piece] - starts) / rate
    into = np.where(level, 0.0, np.minimum(one, other)).max(axis=1)
    out = np.where(level, 1.0, np.maximum(one, other)).min(axis=1)
    return np.asarray(np.maximum(into, 0.0) <= np.minimum(out, 1.0) + GRAZE)


def blockers(starts: Points, ends: Points, rows: Solids) -> Indices:
    """Return the owner of a piece that each segment meets, (n,); -1 where it meets none."""
    found = np.full(len(starts), -1, dtype=np.intp)
    step = max(AT_ONCE // max(len(rows), 1), 1)
    for first in range(0, len(starts), step):
        part = slice(first, first + step)
        segment, piece = near(starts[part], ends[part], rows)
        through = _through_box(starts[part][segment], ends[part][segment], rows, piece)
        segment, piece = segment[through], piece[through]
        hit = meets(starts[part][segment], ends[part][segment], rows, piece)
        found[part][segment[hit]] = rows.owner[piece[hit]]
    return found


def blocked(starts: Points, ends: Points, rows: Solids) -> Flags:
    """Return whether each segment meets any piece, (n,)."""
    return blockers(starts, ends, rows) >= 0
