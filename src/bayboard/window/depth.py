"""How deep a stand-in stands: off the wall, and what is left of the room under the seat."""

from dataclasses import dataclass

import numpy as np

from bayboard.geometry.sections import padded, probed_rooms, rooms
from bayboard.model.layout import Seat
from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit
from bayboard.units.length import show_length


@dataclass(frozen=True, slots=True)
class SeatRoom:
    """The least room in mm between a stand-in's front and a seat that stands up; negative digs in."""

    seat: str
    left: float
    front: float  # z of the front
    y: tuple[float, float]  # stretch of height over which it was taken


def seat_rooms(scene: Scene, piece: Placed) -> list[SeatRoom]:
    """Return the room under each seat that stands before a stand-in, the least first."""
    found = []
    for seat in scene.layout.bay.seats:
        rings = [body.ring for body in piece.bodies]
        if not rings:
            continue
        fronts = np.array([body.z[1] for body in piece.bodies])
        least = _least(scene, seat, rings)
        room = least - seat.give - fronts
        at = int(np.argmin(room))
        if np.isfinite(room[at]):
            ys = rings[at][:, 1]
            found.append(
                SeatRoom(seat.id, float(room[at]), float(fronts[at]), (float(ys.min()), float(ys.max())))
            )
    return sorted(found, key=lambda r: r.left)


def _least(scene: Scene, seat: Seat, rings: list) -> np.ndarray:
    if seat.probes:
        return probed_rooms(rings, seat.x, seat.up, seat.probes, limit(scene.layout, "probe_reach"))
    return rooms(padded(rings), seat.x, seat.up)


def depth_sentence(scene: Scene, piece: Placed) -> str:
    """Return how far a stand-in stands off the wall and what is left under the seat."""
    units = scene.layout.units
    if piece.top is None:
        return f"Nobody measured how high {piece.id} is."
    stands = f"Stands {show_length(piece.top, units)} off the wall"
    found = seat_rooms(scene, piece)
    if not found:
        return f"{stands}; no seat before it."
    room = found[0].left
    if room < 0:
        return f"{stands}, {show_length(-room, units)} into seat {found[0].seat}."
    return f"{stands}; {show_length(room, units)} left under the seat."
