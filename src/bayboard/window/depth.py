"""How deep a stand-in stands: off the wall, and what is left of the room under the seat."""

from collections.abc import Iterable, Set
from dataclasses import dataclass

import numpy as np

from bayboard.geometry.sections import padded, probed_rooms, rooms
from bayboard.model.layout import Outline, Point, Seat
from bayboard.model.placed import Placed
from bayboard.rules.fronts import Front, gear_fronts
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit
from bayboard.units.length import show_length
from bayboard.window.folds import folds_word, the_seat

SAME = 1e-6  # mm; two figures of one measure


@dataclass(frozen=True, slots=True)
class SeatRoom:
    """The least room in mm between a front and a seat that stands up; negative digs in.

    `subject` is the stand-in, or the port whose plug it is.
    """

    seat: str
    left: float
    front: float  # z of the front
    y: tuple[float, float]  # stretch of height over which it was taken
    subject: str = ""


def seat_rooms(scene: Scene, piece: Placed) -> list[SeatRoom]:
    """Return the room under each seat that stands before a stand-in's body, the least first."""
    fronts = [Front(piece.id, piece.id, body.ring, body.z[1]) for body in piece.bodies]
    return sorted(_least_of(scene, fronts, scene.layout.bay.seats), key=lambda room: room.left)


def front_rooms(scene: Scene, subjects: Set[str], seats: Iterable[Seat]) -> list[SeatRoom]:
    """Return the least room of stand-ins and plugs (`A1`, `A1.b`) under each seat, as the rule has it."""
    about = frozenset(subject.partition(".")[0] for subject in subjects)
    fronts = [front for front in gear_fronts(scene, about) if front.subject in subjects]
    return list(_least_of(scene, fronts, seats))


def _least_of(scene: Scene, fronts: list[Front], seats: Iterable[Seat]) -> Iterable[SeatRoom]:
    """Return the least room under each seat for each subject; none where the seat is not before it."""
    found: dict[tuple[str, str], SeatRoom] = {}
    for seat in seats if fronts else ():
        least = _least(scene, seat, [front.ring for front in fronts])
        room = least - seat.give - np.array([front.z for front in fronts])
        for at in np.flatnonzero(np.isfinite(room)).tolist():
            front, ys = fronts[at], fronts[at].ring[:, 1]
            key, left = (seat.id, front.subject), float(room[at])
            if key not in found or left < found[key].left:
                y = float(ys.min()), float(ys.max())
                found[key] = SeatRoom(seat.id, left, front.z, y, front.subject)
    return found.values()


def _least(scene: Scene, seat: Seat, rings: list) -> np.ndarray:
    if seat.probes:
        return probed_rooms(rings, seat.x, seat.up, seat.probes, limit(scene.layout, "probe_reach"))
    return rooms(padded(rings), seat.x, seat.up)


def meeting_height(seat: Seat, room: SeatRoom) -> float:
    """Return the y at which a room was found: where the section is nearest, or at the putty that gave it."""
    z = room.front + room.left + seat.give
    low, high = room.y
    if seat.up is not None:
        y = nearest_height(seat.up, room.y)
        if abs(_face(seat.up, y) - z) <= SAME:
            return y
    lumps = [py for _, py, pz in seat.probes if abs(pz - z) <= SAME]
    return min(max(lumps[0], low), high) if lumps else (low + high) / 2


def nearest_height(section: Outline, between: tuple[float, float]) -> float:
    """Return the y of a range at which a (z, y) section comes nearest to the wall; its middle if nowhere."""
    low, high = between
    found: list[Point] = []
    for (z0, y0), (z1, y1) in zip(section, (*section[1:], section[0]), strict=True):
        if low <= y0 <= high:
            found.append((z0, y0))
        for y in (low, high):
            if (y0 < y) != (y1 < y):
                found.append((z0 + (z1 - z0) * (y - y0) / (y1 - y0), y))
    return min(found)[1] if found else (low + high) / 2


def _face(section: Outline, y: float) -> float:
    """Return the least z of a (z, y) section at a height, inf where it is not there."""
    found = [z for z, at in section if at == y]
    for (z0, y0), (z1, y1) in zip(section, (*section[1:], section[0]), strict=True):
        if (y0 < y) != (y1 < y):
            found.append(z0 + (z1 - z0) * (y - y0) / (y1 - y0))
    return min(found, default=float("inf"))


def depth_sentence(scene: Scene, piece: Placed) -> str:
    """Return how far a stand-in stands off the wall and what is left under the seat."""
    units = scene.layout.units
    if piece.top is None:
        return f"Nobody measured how high {piece.id} is."
    stands = f"Stands {show_length(piece.top, units)} off the wall"
    found = seat_rooms(scene, piece)
    if not found:
        return f"{stands}; no {folds_word(scene.layout)} before it."
    room = found[0].left
    if room < 0:
        return f"{stands}, {show_length(-room, units)} into {the_seat(scene.layout, found[0].seat)}."
    return f"{stands}; {show_length(room, units)} left under the {folds_word(scene.layout)}."
