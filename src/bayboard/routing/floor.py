"""The corners a path may bend at, and which of them see each other: a lean visibility graph.

Only stretches that touch the rim at both corners without cutting into it can be part of a shortest path,
so only those are looked at (de Berg et al., Computational Geometry, chapter 15).  Which thing blocks
which stretch is kept, so that a floor on which one thing moved is made from the one before.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from shapely import Polygon

from bayboard.geometry.outline import Points
from bayboard.routing.bed import RIM, Obstacle
from bayboard.routing.grown import Corners, together
from bayboard.routing.walls import Flags, Indices, Pairs, Walls, crossings
from bayboard.routing.walls import together as all_rows

LEVEL = 1e-9  # sine under which a stretch runs along a rim rather than into it
AT_ONCE = 2_000_000  # pairs of corners looked at together


@dataclass(frozen=True, eq=False)
class Stretches:
    """Straight stretches from corner i to corner j, and the pairs (stretch, obstacle) that meet."""

    i: Indices
    j: Indices
    hits: Pairs

    @cached_property
    def free(self) -> tuple[Indices, Indices]:
        """Return both corners of each stretch that meets nothing."""
        open_ = np.ones(len(self.i), dtype=np.bool_)
        open_[self.hits[0]] = False
        return self.i[open_], self.j[open_]


@dataclass(frozen=True, eq=False)
class Floor:
    """Obstacles in a fixed order with their corners and what these see of each other.

    `home[k]` is the number of corner k's obstacle; `usable[k]` tells whether it lies within `hull`.
    """

    obstacles: tuple[Obstacle, ...]
    hull: Polygon | None
    corners: Corners
    home: Indices
    usable: Flags
    rows: Walls
    stretches: Stretches

    @cached_property
    def numbers(self) -> dict[str, int]:
        """Return the number of each obstacle by its owner's id."""
        return {obstacle.owner: number for number, obstacle in enumerate(self.obstacles)}

    @cached_property
    def off_board(self) -> Points:
        """Return the corners that lie off the board, (k, 2); none where leads may leave it."""
        rim = self.numbers.get(RIM)
        if rim is None:
            return self.corners.at[:0]
        beyond, (x, y) = self.obstacles[rim].polygon, self.corners.at.T
        shapely.prepare(beyond)
        return np.asarray(self.corners.at[shapely.contains_xy(beyond, x, y)])


def floor(obstacles: Sequence[Obstacle], hull: Polygon | None, before: Floor | None = None) -> Floor:
    """Return the floor of the obstacles; `hull` None: paths may leave the board.

    `before`: a floor of the same owners in the same order; what is still the same object is kept.
    """
    corners = together([o.shape.corners for o in obstacles])
    home = np.repeat(np.arange(len(obstacles)), [len(o.shape.corners.at) for o in obstacles])
    rows = all_rows([o.shape.rows for o in obstacles])
    usable = np.ones(len(home), dtype=np.bool_)
    if hull is not None:
        usable = shapely.contains_xy(hull, corners.at[:, 0], corners.at[:, 1])
    if before is None:
        i, j = _all_pairs(corners, usable)
        stretches = Stretches(i, j, crossings(corners.at[i], corners.at[j], rows))
    else:
        changed = [k for k, (a, b) in enumerate(zip(before.obstacles, obstacles, strict=True)) if a is not b]
        stretches = _changed(before.stretches, corners, home, usable, rows, obstacles, changed)
    return Floor(tuple(obstacles), hull, corners, home, usable, rows, stretches)


def _all_pairs(corners: Corners, usable: Flags) -> tuple[Indices, Indices]:
    which = np.flatnonzero(usable)
    parts = list(_seeing(corners, which, which))
    i = np.concatenate([a for a, _ in parts] or [which[:0]])
    j = np.concatenate([b for _, b in parts] or [which[:0]])
    once = i < j
    return i[once], j[once]


def _seeing(corners: Corners, one: Indices, other: Indices) -> Iterator[tuple[Indices, Indices]]:
    """Yield the pairs of corners whose stretch cuts into the rim at neither."""
    step = max(AT_ONCE // max(len(other), 1), 1)
    for first in range(0, len(one), step):
        part = one[first : first + step]
        a, b = np.nonzero(
            passing(corners, part, corners.at[other]) & passing(corners, other, corners.at[part]).T
        )
        yield part[a], other[b]


def passing(corners: Corners, which: Indices, points: Points) -> Flags:
    """Return whether the line through each corner and each point leaves the rim there on one side.

    Shape (len(which), len(points)).
    """
    at = corners.at[which]
    way_x = at[:, 0, None] - points[:, 0]
    way_y = at[:, 1, None] - points[:, 1]
    slack = LEVEL * np.hypot(way_x, way_y)
    sides = []
    for neighbour in (corners.before[which], corners.after[which]):
        rim = neighbour - at
        rim /= np.hypot(rim[:, 0], rim[:, 1])[:, None]
        sides.append(way_x * rim[:, 1, None] - way_y * rim[:, 0, None])
    left, right = sides
    found: Flags = ((left >= -slack) & (right >= -slack)) | ((left <= slack) & (right <= slack))
    return found


def _changed(
    before: Stretches,
    corners: Corners,
    home: Indices,
    usable: Flags,
    rows: Walls,
    obstacles: Sequence[Obstacle],
    changed: Sequence[int],
) -> Stretches:
    """Return the stretches where only the obstacles numbered `changed` stand elsewhere."""
    is_changed = np.zeros(len(obstacles), dtype=np.bool_)
    is_changed[changed] = True
    kept = ~(is_changed[home[before.i]] | is_changed[home[before.j]])
    place = np.cumsum(kept) - 1
    still = kept[before.hits[0]] & ~is_changed[before.hits[1]]
    old_hits = place[before.hits[0][still]], before.hits[1][still]
    i, j = before.i[kept], before.j[kept]
    theirs = all_rows([obstacles[k].shape.rows for k in changed], changed)
    new_hits = crossings(corners.at[i], corners.at[j], theirs)
    a, b = _pairs_of(corners, home, usable, is_changed)
    own_hits = crossings(corners.at[a], corners.at[b], rows)
    return Stretches(
        np.concatenate([i, a]),
        np.concatenate([j, b]),
        (
            np.concatenate([old_hits[0], new_hits[0], own_hits[0] + len(i)]),
            np.concatenate([old_hits[1], new_hits[1], own_hits[1]]),
        ),
    )


def _pairs_of(corners: Corners, home: Indices, usable: Flags, is_changed: Flags) -> tuple[Indices, Indices]:
    """Return each pair of usable corners once of which at least one belongs to a changed obstacle."""
    mine = np.flatnonzero(usable & is_changed[home])
    parts = list(_seeing(corners, mine, np.flatnonzero(usable)))
    a = np.concatenate([p for p, _ in parts] or [mine[:0]])
    b = np.concatenate([p for _, p in parts] or [mine[:0]])
    once = ~is_changed[home[b]] | (a < b)
    return a[once], b[once]
