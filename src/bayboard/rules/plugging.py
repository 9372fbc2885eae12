"""The room straight out of every plug: what stands there first, and how far away."""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from bayboard.geometry.crowd import HAIR, Crowd, Flags, crowd, filled, heights_meet
from bayboard.geometry.outline import Points
from bayboard.geometry.sections import bands, rooms_beyond
from bayboard.geometry.strips import free_ahead, share_area
from bayboard.model.placed import Body, Placed, Plug
from bayboard.rules.scene import Scene


class Outlet(NamedTuple):
    """A plug and how far from its port, mm, it needs to be free."""

    placed: Placed
    plug: Plug
    need: float

    @property
    def subject(self) -> str:
        """Return `GEAR.PORT`."""
        return f"{self.placed.id}.{self.plug.port.id}"


class Blocked(NamedTuple):
    """An outlet with too little room, the nearest solid and how far away it is, mm."""

    outlet: Outlet
    solid: str
    free: float


class _Solids(NamedTuple):
    """Bodies in rows, the thing each belongs to, and which outlets look at it."""

    owners: list[str]
    rows: Crowd
    asked: Flags  # (outlets, rows)


def blocked(scene: Scene, outlets: list[Outlet]) -> Iterator[Blocked]:
    """Yield the outlets that meet a solid nearer than they need, with the nearest solid.

    Of solids equally near the first counts: stand-ins, then stays, then seats, in document order.
    """
    for group, measure in ((_sideways(outlets), _free_sideways), (_out(outlets), _free_out)):
        if group:
            yield from _nearest(group, *measure(scene, group))


def _sideways(outlets: list[Outlet]) -> list[Outlet]:
    return [outlet for outlet in outlets if outlet.plug.port.towards != "out"]


def _out(outlets: list[Outlet]) -> list[Outlet]:
    return [outlet for outlet in outlets if outlet.plug.port.towards == "out"]


def _nearest(outlets: list[Outlet], owners: list[str], free: Points) -> Iterator[Blocked]:
    least = free.min(axis=1, initial=np.inf)
    needs = np.array([outlet.need for outlet in outlets])
    for i in np.flatnonzero(least < needs - HAIR):
        first = int(np.argmax(free[i] <= least[i] + HAIR))
        yield Blocked(outlets[i], owners[first], float(least[i]))


def _free_sideways(scene: Scene, outlets: list[Outlet]) -> tuple[list[str], Points]:
    starts = np.array([outlet.plug.at[:2] for outlet in outlets])
    ways = np.array([outlet.plug.way[:2] for outlet in outlets])
    wide = np.array([outlet.plug.port.plug_wide for outlet in outlets])
    far = np.array([outlet.need for outlet in outlets])
    standing, seats = _standing(scene, outlets), _seats_across(scene, outlets)
    meets = standing.asked & heights_meet(_heights(outlets), standing.rows)
    free = [
        free_ahead(starts, ways, wide, far, solids.rows.shapes, asked)
        for solids, asked in ((standing, meets), (seats, seats.asked))
    ]
    return standing.owners + seats.owners, np.hstack(free)


def _free_out(scene: Scene, outlets: list[Outlet]) -> tuple[list[str], Points]:
    standing = _standing(scene, outlets)
    from_z = np.array([outlet.plug.at[2] for outlet in outlets])[:, None]
    ahead = np.maximum(standing.rows.z[None, :, 0] - from_z, 0.0)
    rings = np.array([outlet.plug.ring for outlet in outlets])
    asked = standing.asked & (standing.rows.z[None, :, 1] > from_z + HAIR)
    free = np.where(share_area(filled(rings), standing.rows.shapes, asked), ahead, np.inf)
    seats = [(seat, seat.up) for seat in scene.layout.bay.seats if seat.up is not None]
    columns = np.full((len(outlets), len(seats)), np.inf)
    for j, (seat, up) in enumerate(seats):
        for z in np.unique(from_z):
            level = from_z[:, 0] == z
            columns[level, j] = rooms_beyond(rings[level], float(z), seat.x, up) - z
    return standing.owners + [seat.id for seat, _ in seats], np.hstack([free, columns])


def _heights(outlets: list[Outlet]) -> Crowd:
    return crowd([outlet.placed.polygon for outlet in outlets], [outlet.plug.z for outlet in outlets])


def _standing(scene: Scene, outlets: list[Outlet]) -> _Solids:
    """Return the bodies of stand-ins and stays; no outlet looks at its own."""
    bodies: list[tuple[str, Body]] = [(id_, b) for id_, placed in scene.placed.items() for b in placed.bodies]
    bodies += [(id_, body) for id_, (_, body) in scene.stays.items() if body is not None]
    owners = [id_ for id_, _ in bodies]
    looking = np.array([outlet.placed.id for outlet in outlets], dtype=np.str_)
    others = looking[:, None] != np.array(owners, dtype=np.str_)[None, :]
    return _Solids(owners, crowd([b.polygon for _, b in bodies], [b.z for _, b in bodies]), others)


def _seats_across(scene: Scene, outlets: list[Outlet]) -> _Solids:
    """Return in plan what seats that stand up take up at the height of each plug, give left out."""
    heights = [outlet.plug.z for outlet in outlets]
    owners, rings, asked = [], [], []
    for seat in scene.layout.bay.seats:
        for low, high in dict.fromkeys(heights) if seat.up is not None else ():
            for y0, y1 in bands(seat.up or (), low, high):
                x0, x1 = seat.x
                owners.append(seat.id)
                rings.append(np.array([(x0, y0), (x1, y0), (x1, y1), (x0, y1)]))
                asked.append([z == (low, high) for z in heights])
    rows = Crowd(filled(rings), np.zeros((len(rings), 2)))
    looks = np.array(asked, dtype=np.bool_).reshape(len(rings), len(outlets)).T
    return _Solids(owners, rows, looks)
