"""What the Section measures between a seat and what hangs: the room under it, and its way down."""

from collections.abc import Iterator
from functools import lru_cache

import numpy as np

from bayboard.geometry.sections import padded
from bayboard.geometry.swing import Swing as Turn
from bayboard.geometry.swing import depths as turn_depths
from bayboard.geometry.swing import shared_at, turn_between
from bayboard.model.layout import Seat
from bayboard.rules.finding import Finding
from bayboard.rules.swinging import blocks, swing_of
from bayboard.tables.limits import limit
from bayboard.units.length import show_length
from bayboard.window.depth import SeatRoom, front_rooms, meeting_height
from bayboard.window.draw.seats import seats_at
from bayboard.window.draw.section_show import Depth, Ring, Swing
from bayboard.window.folds import seat_of, the_seat, under
from bayboard.window.marking import open_findings
from bayboard.window.section_points import cut_names
from bayboard.window.short import few_words
from bayboard.window.workplace import Workplace

DEEPEST = 300.0  # mm; more room than this under a seat is no measure worth laying down


def depths(place: Workplace) -> tuple[Depth, ...]:
    """Return the least room between the seat at the chalk line and each piece that is cut there.

    A plug's room is told only where a finding is about it; with something in the hand, so is the others'.
    """
    if place.lever != "up" or place.chalk_x is None:
        return ()
    seats = {s.id: s for s in seats_at(place.scene, place.chalk_x) if s.x[0] <= place.chalk_x <= s.x[1]}
    said = {f.subjects: (n, f) for n, f in open_findings(place.heard) if f.rule == "seat-depth"}
    names = set(cut_names(place))
    plain = names & place.hand.pieces or names
    plugs = {subject for subject, _ in said if subject.partition(".")[0] in names}
    rooms = [
        (r, said.get((r.subject, r.seat))) for r in front_rooms(place.scene, names | plugs, seats.values())
    ]
    return tuple(
        _depth(place, seats[room.seat], room, about)
        for room, about in rooms
        if about or (room.subject in plain and room.left <= DEEPEST)
    )


def _depth(place: Workplace, seat: Seat, room: SeatRoom, said: tuple[int, Finding] | None) -> Depth:
    y = meeting_height(seat, room)
    front, end = (room.front, y), (room.front + room.left, y)
    if said is None:
        room_left = show_length(room.left, place.units)
        words = f"{room_left} {under(the_seat(place.shown, seat.id))}"
        return Depth(front, end, words, shorter=(f"{room_left} left",), subject=room.subject)
    number, finding = said
    words = few_words(finding, place.units, seat_of(place.shown, finding))
    much = show_length(abs(room.left), place.units)
    return Depth(front, end, words, finding.severity, number, (much,), room.subject)


# --- the seat on its way down ---


def swings(place: Workplace) -> tuple[Swing, ...]:
    """Return the way of each seat at the chalk line whose hinge is known to carry it down."""
    x, off = place.chalk_x, limit(place.shown, "swing_off")
    if x is None:
        return ()
    found = []
    for seat in seats_at(place.scene, x):
        turn = swing_of(seat, off) if seat.x[0] <= x <= seat.x[1] else None
        if isinstance(turn, Turn):
            found.extend(_swing(place, seat, turn))
    return tuple(found)


def _swing(place: Workplace, seat: Seat, turn: Turn) -> Iterator[Swing]:
    if seat.up is None or seat.folded is None or seat.hinge is None:
        return
    angle = seat.swing if seat.swing is not None else turn_between(seat.up, seat.folded, seat.hinge)
    about = np.asarray(seat.up) - seat.hinge
    far = int(np.hypot(*about.T).argmax())
    dug = _dug(place, seat, turn) or ((), None, "", None, None)
    yield Swing(
        seat.hinge,
        _swept(turn),
        angle or 0.0,
        float(np.hypot(*about[far])),
        float(np.degrees(np.arctan2(about[far][1], about[far][0]))),
        *dug,
    )


@lru_cache(maxsize=32)
def _swept(turn: Turn) -> tuple[Ring, ...]:
    """Return the outlines of all that a seat sweeps."""
    parts = getattr(turn.whole, "geoms", [turn.whole])
    return tuple(_ring(part) for part in parts if hasattr(part, "exterior"))


def _ring(shape: object) -> Ring:
    coords = shape.exterior.simplify(0.2).coords  # type: ignore[attr-defined]
    return tuple((float(z), float(y)) for z, y in coords)


def _dug(place: Workplace, seat: Seat, turn: Turn) -> tuple | None:
    """Return the seat's section where it digs in deepest, and its words, when that finding is spoken of."""
    finding = place.spoken_of()
    if finding is None or finding.rule != "seat-swing" or finding.subjects[1:] != (seat.id,):
        return None
    piece = place.scene.placed.get(finding.subjects[0])
    if piece is None or not piece.bodies:
        return None
    rows = blocks(padded([b.ring for b in piece.bodies]), seat.x, np.array([b.z for b in piece.bodies]))
    deep = turn_depths(turn, rows)
    body, step = np.unravel_index(int(deep.argmax()), deep.shape)
    middle = shared_at(turn, int(step), rows[body]).centroid
    words = f"digs in {show_length(float(deep[body, step]), place.units)} as it folds"
    at = (float(middle.x), float(middle.y)) if not middle.is_empty else None
    number = place.heard.number(finding)
    return _ring(turn.shapes[int(step)]), at, words, finding.severity, number
