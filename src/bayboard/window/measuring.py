"""The chalk measures of a stand-in: to its nearest neighbour on each side, else to the board's edge."""

from collections.abc import Iterable, Iterator, Set
from dataclasses import dataclass

import numpy as np
from shapely import Polygon

from bayboard.geometry.outline import Points
from bayboard.model.layout import Point
from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene

SIDES = ("left", "right", "down", "up")
_ALONG = 0.38  # share of a side where its measure to the edge stands: beside the chalk line, not on it


@dataclass(frozen=True, slots=True)
class Reach:
    """A distance from a stand-in: from `a` on its outline to `b`, in mm; `other` None is the edge."""

    side: str
    a: Point
    b: Point
    piece: str
    other: str | None

    @property
    def long(self) -> float:
        """Return the distance in mm."""
        return abs(self.b[0] - self.a[0]) + abs(self.b[1] - self.a[1])


def reaches(scene: Scene, moving: Set[str]) -> tuple[Reach, ...]:
    """Return the measures of what moves, at most one for a side, taken along x or y."""
    pieces = [scene.placed[name] for name in moving if name in scene.placed]
    others = [piece for name, piece in scene.placed.items() if name not in moving]
    found = []
    for side in SIDES:
        beside = [r for piece in pieces for other in others if (r := _between(piece, other, side))]
        found += sorted(beside, key=lambda r: r.long)[:1] or _to_edge(scene, pieces, side)
    return tuple(found)


def tightest(found: Iterable[Reach]) -> Reach | None:
    """Return the shortest of the measures, None where there is none."""
    return min(found, key=lambda r: r.long, default=None)


def _between(piece: Placed, other: Placed, side: str) -> Reach | None:
    """Return the measure between two stand-ins in the middle of what they share of the side."""
    across = 1 if side in ("left", "right") else 0
    low = max(piece.box[across], other.box[across])
    high = min(piece.box[across + 2], other.box[across + 2])
    if low >= high:
        return None
    line = (low + high) / 2
    mine, theirs = _cut(piece.ring, line, across), _cut(other.ring, line, across)
    forward = side in ("right", "up")
    if not mine or not theirs:
        return None
    start = max(mine) if forward else min(mine)
    ends = [at for at in theirs if (at >= start if forward else at <= start)]
    if len(ends) < len(theirs):
        return None
    end = min(ends) if forward else max(ends)
    return _reach(side, start, end, line, piece.id, other.id)


def _to_edge(scene: Scene, pieces: Iterable[Placed], side: str) -> list[Reach]:
    across = 1 if side in ("left", "right") else 0
    forward = side in ("right", "up")
    found = []
    for piece in pieces:
        low, high = piece.box[across], piece.box[across + 2]
        line = low + (high - low) * _ALONG
        mine = _cut(piece.ring, line, across)
        shape = scene.boards.get(piece.board.id)
        if not mine or shape is None:
            continue
        start = max(mine) if forward else min(mine)
        edge = _first_edge(shape.polygon, line, across, start, forward)
        if edge is not None:
            found.append(_reach(side, start, edge, line, piece.id, None))
    return sorted(found, key=lambda r: r.long)[:1]


def _first_edge(board: Polygon, line: float, across: int, start: float, forward: bool) -> float | None:
    """Return where a line first leaves the board beyond `start`, None when `start` is not on it."""
    crossings = sorted(at for ring in _rings(board) for at in _cut(ring, line, across))
    ahead = [at for at in crossings if (at >= start if forward else at <= start)]
    if len(ahead) % 2 == 0:
        return None
    return min(ahead) if forward else max(ahead)


def _rings(board: Polygon) -> Iterator[Points]:
    for ring in (board.exterior, *board.interiors):
        yield np.asarray(ring.coords, dtype=np.float64)[:-1, :2]


def _cut(ring: Points, line: float, across: int) -> list[float]:
    """Return where a ring crosses a line: at y = `line` (across 1) the x, at x = `line` (across 0) the y."""
    here, ahead = ring, np.roll(ring, -1, axis=0)
    a, b = here[:, across], ahead[:, across]
    hit = (a <= line) != (b <= line)
    share = (line - a[hit]) / (b[hit] - a[hit])
    along = 1 - across
    return [float(at) for at in here[hit, along] + share * (ahead[hit, along] - here[hit, along])]


def _reach(side: str, start: float, end: float, line: float, piece: str, other: str | None) -> Reach:
    if side in ("left", "right"):
        return Reach(side, (start, line), (end, line), piece, other)
    return Reach(side, (line, start), (line, end), piece, other)
