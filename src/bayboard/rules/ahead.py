"""The free way straight ahead of plugs and sides: what stands there first, and how far away.

Each look is a row: where it starts, which way it goes, how wide and how far.  A stand-in at many places is
many rows; all are measured at once.
"""

from collections.abc import Iterator, Sequence
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


def free(scene: Scene, looks: Looks) -> Free:
    """Return how far looks are free; seats stand up, their give left out."""
    return free_sideways(scene, looks) if isinstance(looks, Sideways) else free_out(scene, looks)


def free_sideways(scene: Scene, looks: Sideways) -> Free:
    """Return how far strips along the board are free; seats stand up, their give left out."""
    owners, rows, others = _standing(scene, looks.ids)
    meet = others & ranges_meet(np.asarray(looks.z, dtype=np.float64).reshape(-1, 2), rows.z)
    seats, shapes, level = _seats_across(scene, looks.z)
    free = [
        free_ahead(looks.starts, looks.ways, looks.wide, looks.far, solids, asked)
        for solids, asked in ((rows.shapes, meet), (filled(shapes), level))
    ]
    return Free(owners + seats, np.hstack(free))


def free_out(scene: Scene, looks: Outward) -> Free:
    """Return how far the way out of the board is free over plan rings; seats stand up, give left out."""
    owners, rows, others = _standing(scene, looks.ids)
    free = free_above(filled(looks.rings), looks.z, rows, others)
    seats = [(seat, seat.up) for seat in scene.layout.bay.seats if seat.up is not None]
    columns = np.full((len(looks.z), len(seats)), np.inf)
    for j, (seat, up) in enumerate(seats):
        for z in np.unique(looks.z):
            level = looks.z == z
            columns[level, j] = rooms_beyond(looks.rings[level], float(z), seat.x, up) - z
    return Free(owners + [seat.id for seat, _ in seats], np.hstack([free, columns]))


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


def _standing(scene: Scene, looking: Sequence[str]) -> tuple[list[str], Crowd, Flags]:
    """Return the bodies of stand-ins and stays with their owners, and which are not the looker's own."""
    bodies: list[tuple[str, Body]] = [(id_, b) for id_, placed in scene.placed.items() for b in placed.bodies]
    bodies += [(id_, body) for id_, (_, body) in scene.stays.items() if body is not None]
    owners = [id_ for id_, _ in bodies]
    others = np.array(looking, dtype=np.str_)[:, None] != np.array(owners, dtype=np.str_)[None, :]
    return owners, crowd([b.polygon for _, b in bodies], [b.z for _, b in bodies]), others


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
