"""The straight stretches by which leads get from their tips onto the floor, and from tip to tip."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.routing.excuse import Excuses, paid, stretch_pays
from bayboard.routing.exits import exits
from bayboard.routing.floor import Floor, passing
from bayboard.routing.tip import Tip
from bayboard.routing.walls import Flags, Indices, crossings

Pair = tuple[int, int]


@dataclass(frozen=True, eq=False)
class Stations:
    """The tips, then the exits of those that have some: `home[k]` is the tip that station k belongs to.

    `extra[k]`: the mm paid on top for getting to exit k from its tip.
    """

    at: Points
    home: Indices
    extra: Points
    tips: int
    excuses: list[Excuses]

    def of(self, tip: int) -> list[int]:
        """Return the stations of a tip, itself first."""
        return np.flatnonzero(self.home == tip).tolist()


@dataclass(frozen=True, eq=False, slots=True)
class Fans:
    """Free stretches from station `station[k]` to corner `corner[k]`, and the mm that are paid on top."""

    station: Indices
    corner: Indices
    extra: Points

    def __add__(self, other: "Fans") -> "Fans":
        """Return both."""
        station, corner = np.append(self.station, other.station), np.append(self.corner, other.corner)
        return Fans(station, corner, np.append(self.extra, other.extra))


def stations(floor: Floor, tips: Sequence[Tip], known: Sequence[Excuses]) -> Stations:
    """Return the tips and their exits."""
    points = np.array([tip.turns for tip in tips], dtype=np.float64).reshape(-1, 2)
    leaving = [exits(floor, at, own) for at, own in zip(points, known, strict=True)]
    counts = [len(found) for found, _ in leaving]
    return Stations(
        np.concatenate([points, *(found for found, _ in leaving)]),
        np.concatenate([np.arange(len(tips)), np.repeat(np.arange(len(tips)), counts)]),
        np.concatenate([np.zeros(len(tips)), *(extra for _, extra in leaving)]),
        len(tips),
        [*known, *({} for _ in range(sum(counts)))],
    )


def tips_alone(tips: Sequence[Tip], known: Sequence[Excuses]) -> Stations:
    """Return the tips without exits."""
    points = np.array([tip.turns for tip in tips], dtype=np.float64).reshape(-1, 2)
    return Stations(points, np.arange(len(tips)), np.zeros(len(tips)), len(tips), list(known))


def allowed(floor: Floor, at: Stations) -> Flags:
    """Return from which station which corner may be made for, (stations, corners)."""
    seen = passing(floor.corners, np.arange(len(floor.home)), at.at).T
    for number, own in enumerate(at.excuses):
        for thing in own:
            seen[number, floor.home == thing] = True
    seen &= floor.usable
    return seen


def fans(floor: Floor, at: Stations, seen: Flags) -> Fans:
    """Return the stretches in `seen`, (stations, corners), that are free."""
    station, corner = np.nonzero(seen)
    starts, ends = at.at[station], floor.corners.at[corner]
    stretch, thing = crossings(starts, ends, floor.rows)
    excused = np.zeros((len(at.at), len(floor.obstacles)), dtype=np.bool_)
    for number, own in enumerate(at.excuses):
        excused[number, list(own)] = True
    free = np.ones(len(station), dtype=np.bool_)
    free[stretch[~excused[station[stretch], thing]]] = False
    extra = np.zeros(len(station))
    for number in np.unique(station).tolist():
        part = slice(*np.searchsorted(station, [number, number + 1]).tolist())
        for excuse in at.excuses[number].values():
            if excuse.rows is not None:
                hit, _ = crossings(starts[part], ends[part], excuse.rows, (excuse.free, 0.0))
                free[part.start + hit] = False
            elif excuse.costly is not None:
                extra[part] += paid(starts[part], ends[part], excuse)
    return Fans(station[free], corner[free], extra[free])


def straight(floor: Floor, at: Stations, pairs: Sequence[Pair]) -> dict[Pair, float]:
    """Return the pairs of stations between which a straight stretch is free, with the mm paid on top."""
    one, two = np.array(pairs, dtype=np.intp).reshape(-1, 2).T
    met: list[list[int]] = [[] for _ in pairs]
    for stretch, thing in zip(*crossings(at.at[one], at.at[two], floor.rows), strict=True):
        met[stretch].append(int(thing))
    found: dict[Pair, float] = {}
    for (i, j), things in zip(pairs, met, strict=True):
        extra: float | None = 0.0
        if things or at.excuses[i] or at.excuses[j]:
            extra = stretch_pays(floor, at.at[i], at.at[j], at.excuses[i], at.excuses[j], things)
        if extra is not None:
            found[i, j] = extra
    return found
