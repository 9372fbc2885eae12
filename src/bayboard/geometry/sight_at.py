"""Places to look at while their own stand-in is at many places, or another that may hide them.

Moving a thing one way is moving the rays the other way, so nothing is built anew for a place.
"""

from collections.abc import Callable

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.geometry.sight import FIRST_TRY, GROWTH, HAIR, Thing, angles, ray_starts
from bayboard.geometry.solids import Flags, Indices, Solids, blocked, solids

Hidden = Callable[[Indices, Indices], Flags]
"""Whether the ray of each row, a place, to each eye is hidden."""


def seen_from(thing: Thing, shifts: Points, rest: Solids, eyes: Points, off: float, most: float) -> Flags:
    """Return at which shifts of a thing, (n, 2), its first place is seen at `most` degrees or less, (n,).

    `rest` is what else may hide it; the thing hides its own places, too.
    """
    own = solids(thing.prisms)
    by = _in_space(shifts)
    starts = ray_starts(thing, off)[:1] + by

    def _hidden(place: Indices, eye: Indices) -> Flags:
        start, end = starts[place], eyes[eye]
        return blocked(start, end, rest) | blocked(start - by[place], end - by[place], own)

    return _any_clear(angles(starts, thing.facings[0], eyes), _hidden, most)


def seen_past(
    thing: Thing, shifts: Points, moving: Solids, rest: Solids, eyes: Points, off: float, most: float
) -> Flags:
    """Return at which shifts of others, (n, 2), the thing's first place is seen as in `seen_from`, (n,).

    `rest` is all that stays, the thing itself among it.
    """
    start, facing = ray_starts(thing, off)[0], thing.facings[0]
    angle = angles(start, facing, eyes)
    near = np.flatnonzero(angle <= most + HAIR)
    near = near[~blocked(np.repeat(start[None], len(near), axis=0), eyes[near], rest)]
    by = _in_space(shifts)

    def _hidden(place: Indices, eye: Indices) -> Flags:
        return blocked(start - by[place], eyes[near[eye]] - by[place], moving)

    return _any_clear(np.repeat(angle[None, near], len(shifts), axis=0), _hidden, most)


def _in_space(shifts: Points) -> Points:
    return np.column_stack((shifts, np.zeros(len(shifts))))


def _any_clear(angle: Points, hidden: Hidden, most: float) -> Flags:
    """Return whether any eye at `most` degrees or less is clear, by rows of angles (rows, eyes).

    Eyes are tried by angle, a few at a time.
    """
    rows, count = angle.shape
    order = np.argsort(angle, axis=1, kind="stable")
    within = (angle <= most + HAIR).sum(axis=1)
    clear = np.zeros(rows, dtype=np.bool_)
    first, tried = 0, FIRST_TRY
    while first < count:
        turn = np.arange(first, min(first + tried, count))
        row, column = np.nonzero(~clear[:, None] & (turn[None, :] < within[:, None]))
        if not len(row):
            break
        free = ~hidden(row, order[row, turn[column]])
        clear[row[free]] = True
        first, tried = first + tried, tried * GROWTH
    return clear
