"""The free way ahead of plugs and sides with one stand-in at many places.

Both its own looks are told and those of others that it may stand before.
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

import numpy as np

from bayboard.geometry.crowd import HAIR, Flags, filled, ranges_meet
from bayboard.geometry.outline import Points
from bayboard.geometry.solids import Indices
from bayboard.geometry.strips import free_above, free_ahead
from bayboard.rules.ahead import Free, Looks, Outward, Sideways, free
from bayboard.rules.levels import Key, Levels
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene


class Asking(NamedTuple):
    """Looks of one kind, and who asks for room along them.

    The moved stand-in's looks are those of its model, at (0, 0).  `asker` is the number of who asks, by look,
    in order; `subjects` and `needs` (mm) are by asker.
    """

    looks: Looks
    asker: Indices
    subjects: Sequence[str]
    needs: Sequence[float]


Level = Callable[[Points, float], Levels]
"""How bad it is when some mm are free and some are asked for."""


def levels_ahead(scene: Scene, places: Places, asking: Asking, level: Level) -> dict[Key, Levels]:
    """Return how bad it is at each place, by asker and what stands nearest before it.

    Others whose looks the stand-in is never before are left out, unless there is but one asker.
    """
    own = np.array([id_ == places.id for id_ in asking.looks.ids], dtype=np.bool_)
    found: dict[Key, Levels] = {}
    for rows, measure in ((own, _from_it), (~own, _before_it)):
        if rows.any():
            owners, before = measure(scene, places, _some(asking.looks, rows))
            for number in np.unique(asking.asker[rows]):
                mine = before[asking.asker[rows] == number].min(axis=0)
                told = _told(places, owners, mine, asking.needs[number], level)
                for thing, levels in told.items():
                    key = asking.subjects[number], thing
                    found[key] = np.maximum(levels, found.get(key, places.silence))
    return found


def _told(places: Places, owners: list[str], free_: Points, need: float, level: Level) -> dict[str, Levels]:
    """Return how bad it is by the thing nearest at each place, the first of equals, as `ahead.nearest`."""
    least = free_.min(axis=1, initial=np.inf)
    short = np.flatnonzero(least < need - HAIR)
    found: dict[str, Levels] = {}
    if len(short):
        first = (free_[short] <= least[short, None] + HAIR).argmax(axis=1)
        for column in np.unique(first).tolist():
            here = short[first == column]
            told = found.setdefault(owners[column], places.silence)
            told[here] = np.maximum(told[here], level(least[here], need))
    return found


def _from_it(scene: Scene, places: Places, looks: Looks) -> Free:
    """Return how far looks of the stand-in itself are free, (looks, places, things)."""
    owners, before = free(scene, _carried(looks, places.at))
    return Free(owners, before.reshape(len(looks.ids), len(places), len(owners)))


def _before_it(scene: Scene, places: Places, looks: Looks) -> Free:
    """Return how far looks of others are free, (looks, places, things)."""
    owners, still = free(scene, looks)
    column = [n for n, owner in enumerate(owners) if owner == places.id]
    still[:, column] = np.inf
    before = np.repeat(still[:, None, :], len(places), axis=1)
    if column:
        before[:, :, column[0]] = _before_bodies(places, looks)
    return Free(owners, before)


def _before_bodies(places: Places, looks: Looks) -> Points:
    """Return how far looks of others are free before the stand-in's bodies, (looks, places)."""
    bodies = places.bodies
    if isinstance(looks, Sideways):
        meet = ranges_meet(np.asarray(looks.z, dtype=np.float64).reshape(-1, 2), bodies.z)
        found = free_ahead(looks.starts, looks.ways, looks.wide, looks.far, bodies.shapes, meet)
    else:
        every = np.ones((len(looks.z), len(bodies)), dtype=np.bool_)
        found = free_above(filled(looks.rings), looks.z, bodies, every)
    return np.asarray(found.reshape(len(looks.ids), -1, len(places)).min(axis=1))


def _some(looks: Looks, rows: Flags) -> Looks:
    which = np.flatnonzero(rows).tolist()
    ids = [looks.ids[n] for n in which]
    if isinstance(looks, Sideways):
        starts, ways, wide, far = (a[which] for a in (looks.starts, looks.ways, looks.wide, looks.far))
        return Sideways(ids, starts, ways, wide, far, [looks.z[n] for n in which])
    return Outward(ids, looks.rings[which], looks.z[which])


def _carried(looks: Looks, at: Points) -> Looks:
    """Return looks carried to each of some places, all places of the first look, then of the next."""
    ids = [id_ for id_ in looks.ids for _ in at]
    if isinstance(looks, Sideways):
        starts = (looks.starts[:, None, :] + at).reshape(-1, 2)
        ways, wide, far = (np.repeat(a, len(at), axis=0) for a in (looks.ways, looks.wide, looks.far))
        return Sideways(ids, starts, ways, wide, far, [z for z in looks.z for _ in at])
    rings = (looks.rings[:, None] + at[:, None, :]).reshape(-1, *looks.rings.shape[1:])
    return Outward(ids, rings, np.repeat(looks.z, len(at)))
