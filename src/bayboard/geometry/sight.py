"""What can be seen: for each place to look at, the eye nearest to its facing that nothing hides.

A ray starts just off the place's own body and ends at an eye.  Eyes are tried by angle and the first
clear one ends the search; for each eye tried in vain the thing that hid it is remembered, so that after
a move only the rays that the moved thing freed or may hide are tried again.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Prism
from bayboard.geometry.solids import Indices, Solids, blockers, grouped, inside, solids, some_of, swapped

FIRST_TRY = 8  # eyes tried at once; four times as many in every further round
GROWTH = 4
HAIR = 1e-9  # degrees; what floating point leaves over


@dataclass(frozen=True, eq=False, slots=True)
class Thing:
    """Something that hides what is behind it and may have places to look at.

    `points` (n, 3) are the places, `facings` (n, 3) unit vectors.
    """

    prisms: tuple[Prism, ...]
    points: Points
    facings: Points


def thing(
    prisms: Iterable[Prism], points: Sequence[Sequence[float]] = (), facings: Sequence[Sequence[float]] = ()
) -> Thing:
    """Return a thing with places at points that face along unit vectors; nothing to look at by default."""
    where, along = (np.asarray(rows, dtype=np.float64).reshape(-1, 3) for rows in (points, facings))
    return Thing(tuple(prisms), where, along)


@dataclass(frozen=True, eq=False, slots=True)
class View:
    """One place: where its rays start and face, the eyes by angle, and how far they were tried.

    `first` is the place in `order` of the first clear eye, their number when all are hidden;
    `hidden_by[i]` is the number of a thing that hides eye `order[i]`, for all before `first`.
    `angle` is the smallest angle in degrees between facing and an unblocked line to an eye, None if
    hidden.
    """

    start: Points
    facing: Points
    order: NDArray[np.int32]
    first: int
    hidden_by: Indices
    angle: float | None = None

    def within(self, most: float) -> bool:
        """Return whether an eye sees it at `most` degrees or less."""
        return self.angle is not None and self.angle <= most + HAIR


def eye_grid(low: Sequence[float], high: Sequence[float], step: float) -> Points:
    """Return the eyes of a box, (n, 3): from each low end in steps, and each high end."""
    axes = [np.append(np.arange(a, b, step), b) for a, b in zip(low, high, strict=True)]
    return np.stack(np.meshgrid(*axes, indexing="ij"), axis=-1).reshape(-1, 3)


def eye_count(low: Sequence[float], high: Sequence[float], step: float) -> float:
    """Return about how many eyes `eye_grid` would give."""
    return float(np.prod([max(b - a, 0.0) / step + 1.0 for a, b in zip(low, high, strict=True)]))


def ray_starts(thing: Thing, off: float) -> Points:
    """Return where rays start: `off` beyond where the line along the facing leaves the thing for good."""
    rows = solids(thing.prisms)
    place, piece = (grid.ravel() for grid in np.indices((len(thing.points), len(rows))))
    start, way = thing.points[place], thing.facings[place]
    into, out = inside(start, start + way, rows, piece)
    leaves = np.zeros(len(thing.points))
    np.maximum.at(leaves, place, np.where((into < out) & np.isfinite(out), out, 0.0))
    return thing.points + (leaves + off)[:, None] * thing.facings


@dataclass(frozen=True, eq=False, slots=True)
class Sight:
    """All places of all things, looked at past all things."""

    eyes: Points
    off: float
    things: tuple[Thing, ...]
    rows: Solids
    views: tuple[tuple[View, ...], ...]  # by thing

    def moved(self, changed: Mapping[int, Thing]) -> "Sight":
        """Return the sight with some things, by number, put elsewhere; the same as looking afresh."""
        now = self
        for number, thing in changed.items():
            now = now._moved(number, thing)
        return now

    def _moved(self, number: int, thing: Thing) -> "Sight":
        new = grouped([thing.prisms], [number])
        rows = swapped(self.rows, number, new)
        views = [list(of) for of in self.views]
        views[number] = []
        places = [(t, k) for t, of in enumerate(views) for k in range(len(of))]
        again = _reconsidered([views[t][k] for t, k in places], number, new, self.eyes)
        for place, view in zip(again, _tried(list(again.values()), rows, self.eyes), strict=True):
            t, k = places[place]
            views[t][k] = view
        views[number] = _tried(_unseen(thing, self.eyes, self.off), rows, self.eyes)
        things = (*self.things[:number], thing, *self.things[number + 1 :])
        return replace(self, things=things, rows=rows, views=tuple(tuple(of) for of in views))


def looked_at(things: Iterable[Thing], eyes: Points, off: float) -> Sight:
    """Return the sight of all places of the things; rays start `off` beyond their own thing."""
    all_ = tuple(things)
    rows = grouped([thing.prisms for thing in all_])
    views = [_unseen(thing, eyes, off) for thing in all_]
    tried = iter(_tried([view for of in views for view in of], rows, eyes))
    return Sight(eyes, off, all_, rows, tuple(tuple(next(tried) for _ in of) for of in views))


def _unseen(thing: Thing, eyes: Points, off: float) -> list[View]:
    """Return the thing's views before any eye was tried."""
    if not len(thing.points):
        return []
    starts = ray_starts(thing, off)
    none = np.empty(0, dtype=np.intp)
    rows = zip(starts, thing.facings, strict=True)
    return [View(start, facing, _by_angle(start, facing, eyes), 0, none) for start, facing in rows]


def _by_angle(start: Points, facing: Points, eyes: Points) -> NDArray[np.int32]:
    return np.argsort(angles(start, facing, eyes), kind="stable").astype(np.int32)


def angles(start: Points, facing: Points, eyes: Points) -> Points:
    """Return the angle in degrees between the facing and the line to each eye, (..., eyes).

    `start` is (..., 3): one place or many.
    """
    x, y, z = np.moveaxis(eyes - start[..., None, :], -1, 0)
    a, b, c = facing
    aside = np.sqrt((b * z - c * y) ** 2 + (c * x - a * z) ** 2 + (a * y - b * x) ** 2)
    found: Points = np.degrees(np.arctan2(aside, a * x + b * y + c * z))
    return found


def _reconsidered(views: Sequence[View], number: int, new: Solids, eyes: Points) -> dict[int, View]:
    """Return the views, by place, that may change now that thing `number` stands elsewhere, as `new`.

    The eyes that it hid and hides no more are marked -1 in `hidden_by`.
    """
    parts = [np.append(np.flatnonzero(v.hidden_by == number), v.first) for v in views]
    parts = [part[part < len(view.order)] for part, view in zip(parts, views, strict=True)]
    found: dict[int, View] = {}
    for place, (view, part, by) in enumerate(
        zip(views, parts, _looked(views, parts, new, eyes), strict=True)
    ):
        before = part < view.first
        freed = part[before & (by < 0)]
        if len(freed) or (by[~before] >= 0).any():
            hidden_by = view.hidden_by.copy()
            hidden_by[freed] = -1
            found[place] = replace(view, hidden_by=hidden_by)
    return found


def _looked(
    views: Sequence[View], parts: Sequence[Indices], rows: Solids, eyes: Points, likely: Indices | None = None
) -> list[Indices]:
    """Return for each view what hides its eyes `part`, places in its order; -1 for nothing.

    Things that are `likely` to hide them are asked first: what hid one eye mostly hides the next.
    """
    if not views:
        return []
    ends = np.cumsum([len(part) for part in parts])
    starts = np.repeat([view.start for view in views], np.diff(ends, prepend=0), axis=0)
    seen = eyes[np.concatenate([view.order[part] for view, part in zip(views, parts, strict=True)])]
    by = np.full(len(seen), -1, dtype=np.intp)
    for asked in (rows,) if likely is None else (some_of(rows, likely), rows):
        left = np.flatnonzero(by < 0)
        by[left] = blockers(starts[left], seen[left], asked)
    return np.split(by, ends[:-1])


def _tried(views: Sequence[View], rows: Solids, eyes: Points) -> list[View]:
    """Return the views with eyes tried in turn until one is clear: those marked -1, then from `first` on."""
    now = list(views)
    turns = [np.append(np.flatnonzero(v.hidden_by < 0), np.arange(v.first, len(v.order))) for v in views]
    left, done, count = list(range(len(now))), 0, FIRST_TRY
    likely = np.empty(0, dtype=np.intp)
    while left:
        parts = [turns[i][done : done + count] for i in left]
        hiding = _looked([now[i] for i in left], parts, rows, eyes, likely)
        likely = np.unique(np.concatenate(hiding))
        for i, part, by in zip(left, parts, hiding, strict=True):
            now[i] = _after(now[i], part, by, eyes)
        done, count = done + count, count * GROWTH
        left = [i for i in left if now[i].first == len(now[i].order) and done < len(turns[i])]
    return now


def _after(view: View, part: Indices, by: Indices, eyes: Points) -> View:
    """Return the view after its eyes `part` were tried; `by` tells what hid each, -1 for clear."""
    clear = np.flatnonzero(by < 0)
    first = int(part[clear[0]]) if len(clear) else len(view.order)
    hidden_by = np.full(len(view.order), -1, dtype=np.intp)
    hidden_by[: len(view.hidden_by)] = view.hidden_by
    hidden_by[part] = by
    seen = angles(view.start, view.facing, eyes[view.order[first : first + 1]])
    return replace(view, first=first, hidden_by=hidden_by[:first], angle=seen.item() if len(clear) else None)
