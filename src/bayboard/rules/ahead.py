"""The free way straight ahead of plugs and sides: what stands there first, and how far away.

Each look is a row: where it starts, which way it goes, how wide and how far.  A stand-in at many places is
many rows; all are measured at once.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from bayboard.geometry.crowd import HAIR, Crowd, Flags, crowd, filled, ranges_meet
from bayboard.geometry.outline import Points
from bayboard.geometry.sections import bands, rooms_beyond
from bayboard.geometry.strips import free_above, free_ahead
from bayboard.model.placed import Body
from bayboard.rules.scene import Scene

Range = tuple[float, float]


class Sideways(NamedTuple):
    """Looks along the board, in rows: strips `wide` across, at heights `z`, `far` mm long.

    `ids` are the stand-ins whose looks they are: nobody meets his own body.
    """

    ids: Sequence[str]
    starts: Points  # (n, 2)
    ways: Points  # (n, 2)
    wide: Points  # (n,)
    far: Points  # (n,)
    z: Sequence[Range]


class Outward(NamedTuple):
    """Looks out of the board, in rows: plan rings, each from its height `z` on; `ids` as in `Sideways`."""

    ids: Sequence[str]
    rings: Points  # (n, 4, 2)
    z: Points  # (n,)


Looks = Sideways | Outward


class Free(NamedTuple):
    """How far each look is free before each thing, mm; inf where the thing is not ahead.

    Things stand in document order: stand-ins, stays, seats.
    """

    owners: list[str]
    before: Points  # (looks, owners)


@dataclass(frozen=True, eq=False)
class Looked:
    """Looks with the bodies that stand before them and how far they are free."""

    looks: Looks
    bodies: Sequence[Body]
    free: Free


def free(scene: Scene, looks: Looks) -> Free:
    """Return how far looks are free; seats stand up, their give left out."""
    return look_ahead(scene, looks).free


def kept_free(scene: Scene, whose: str, looks: Looks) -> Free:
    """Return how far the looks of a rule are free; only what moved since the scene before is measured."""
    name = f"{whose} {type(looks).__name__}"
    kept: Looked = scene.kept(name, lambda before: look_ahead(scene, looks, before))
    return kept.free


def look_ahead(scene: Scene, looks: Looks, before: Looked | None = None) -> Looked:
    """Return how far looks are free; what is as it was `before`, in the same bay, is not measured again."""
    owners, bodies = _standing(scene)
    anew = np.ones((len(looks.ids), len(bodies) + 1), dtype=np.bool_)  # the last column: the seats
    if before is not None and _alike(looks, bodies, before):
        here = [body is not was for body, was in zip(bodies, before.bodies, strict=True)]
        anew = _moved(looks, before.looks)[:, None] | np.array([*here, False], dtype=np.bool_)
    others = np.array(looks.ids, dtype=np.str_)[:, None] != np.array(owners, dtype=np.str_)
    rows = crowd([body.polygon for body in bodies], [body.z for body in bodies])
    asked, seated_anew = others & anew[:, :-1], anew[:, -1]
    if isinstance(looks, Sideways):
        seats, standing, seated = _sideways(scene, looks, rows, asked, seated_anew)
    else:
        seats, standing, seated = _outward(scene, looks, rows, asked, seated_anew)
    found = np.hstack([standing, seated])
    if before is not None and not anew.all():
        fresh = np.hstack([anew[:, :-1], np.repeat(anew[:, -1:], len(seats), axis=1)])
        found = np.where(fresh, found, before.free.before)
    return Looked(looks, bodies, Free(owners + seats, found))


def _alike(looks: Looks, bodies: Sequence[Body], before: Looked) -> bool:
    """Return whether looks and bodies are as many as before, in the same order, at the same heights."""
    was = before.looks
    if type(looks) is not type(was) or looks.ids != was.ids or len(bodies) != len(before.bodies):
        return False
    return isinstance(looks, Outward) or looks.z == was.z


def _moved(looks: Looks, was: Looks) -> Flags:
    """Return which looks are not what they were; `looks` and `was` are alike."""
    pairs = [(np.asarray(a), np.asarray(b)) for a, b in zip(looks[1:], was[1:], strict=True)]
    rows = [np.any((a != b).reshape(len(looks.ids), -1), axis=1) for a, b in pairs]
    return np.asarray(np.logical_or.reduce(rows))


def _sideways(
    scene: Scene, looks: Sideways, rows: Crowd, asked: Flags, anew: Flags
) -> tuple[list[str], Points, Points]:
    """Return the seats there are at these heights, and how far strips are free before bodies and seats."""
    meet = asked & ranges_meet(np.asarray(looks.z, dtype=np.float64).reshape(-1, 2), rows.z)
    seats, shapes, level = _seats_across(scene, looks.z)
    strip = looks.starts, looks.ways, looks.wide, looks.far
    seated = free_ahead(*strip, filled(shapes), level & anew[:, None])
    return seats, free_ahead(*strip, rows.shapes, meet), seated


def _outward(
    scene: Scene, looks: Outward, rows: Crowd, asked: Flags, anew: Flags
) -> tuple[list[str], Points, Points]:
    """Return the seats, and how far the way out of the board is free before bodies and seats."""
    standing = free_above(filled(looks.rings), looks.z, rows, asked)
    seats = [(seat, seat.up) for seat in scene.layout.bay.seats if seat.up is not None]
    seated = np.full((len(looks.z), len(seats)), np.inf)
    for j, (seat, up) in enumerate(seats):
        for z in np.unique(looks.z[anew]):
            level = anew & (looks.z == z)
            seated[level, j] = rooms_beyond(looks.rings[level], float(z), seat.x, up) - z
    return [seat.id for seat, _ in seats], standing, seated


def nearest(free: Free, needs: Points) -> Iterator[tuple[int, str, float]]:
    """Yield (look, thing, mm free) of each look with less free than it needs, and what stands nearest.

    Of things equally near the first counts.
    """
    least = free.before.min(axis=1, initial=np.inf)
    for i in np.flatnonzero(least < needs - HAIR):
        first = int(np.argmax(free.before[i] <= least[i] + HAIR))
        yield int(i), free.owners[first], float(least[i])


def called(scene: Scene, thing: str) -> str:
    """Return how a sentence calls a thing that stands ahead."""
    if thing in scene.stays:
        return f"{scene.stays[thing][0].name} ({thing})"
    return thing if thing in scene.placed else f"seat {thing}"


def _standing(scene: Scene) -> tuple[list[str], list[Body]]:
    """Return the bodies of stand-ins and stays with their owners."""
    bodies: list[tuple[str, Body]] = [(id_, b) for id_, placed in scene.placed.items() for b in placed.bodies]
    bodies += [(id_, body) for id_, (_, body) in scene.stays.items() if body is not None]
    return [id_ for id_, _ in bodies], [body for _, body in bodies]


def _seats_across(scene: Scene, heights: Sequence[Range]) -> tuple[list[str], list[Points], Flags]:
    """Return in plan what seats that stand up take up at the height of each look."""
    owners, rings, asked = [], [], []
    for seat in scene.layout.bay.seats:
        for low, high in dict.fromkeys(heights) if seat.up is not None else ():
            for y0, y1 in bands(seat.up or (), low, high):
                x0, x1 = seat.x
                owners.append(seat.id)
                rings.append(np.array([(x0, y0), (x1, y0), (x1, y1), (x0, y1)]))
                asked.append([z == (low, high) for z in heights])
    return owners, rings, np.array(asked, dtype=np.bool_).reshape(len(rings), len(heights)).T
