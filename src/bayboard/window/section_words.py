"""What the Section measures at the chalk line: the room under the seat, and who sees what with it folded."""

from collections.abc import Iterator

from bayboard.model.layout import Outline, Point, Service
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding
from bayboard.tables.limits import limit
from bayboard.units.length import show_length
from bayboard.window.depth import SeatRoom, seat_rooms
from bayboard.window.draw.section_show import Depth, Sight
from bayboard.window.marking import open_findings
from bayboard.window.short import few_words
from bayboard.window.workplace import Workplace

DEEPEST = 300.0  # mm; more room than this under a seat is no measure worth laying down


def depths(place: Workplace) -> tuple[Depth, ...]:
    """Return the least room between the seat and the cut pieces that are selected or speak of it."""
    if place.lever != "up":
        return ()
    said = {f.subjects: (n, f) for n, f in open_findings(place.verdict) if f.rule == "seat-depth"}
    return tuple(
        depth
        for piece in _cut(place)
        for room in seat_rooms(place.scene, piece)
        if (depth := _depth(place, piece, room, said.get((piece.id, room.seat)))) is not None
    )


def _cut(place: Workplace) -> list[Placed]:
    """Return the pieces that the chalk line passes through."""
    x = place.chalk_x
    return [p for p in place.scene.placed.values() if x is not None and p.box[0] <= x <= p.box[2]]


def _depth(place: Workplace, piece: Placed, room: SeatRoom, said: tuple[int, Finding] | None) -> Depth | None:
    seat = next(seat for seat in place.shown.bay.seats if seat.id == room.seat)
    x = place.chalk_x
    if seat.up is None or x is None or not seat.x[0] <= x <= seat.x[1]:
        return None
    if said is None and (place.selected != (piece.id,) or room.left > DEEPEST):
        return None
    y = nearest_height(seat.up, room.y)
    front, end = (room.front, y), (room.front + room.left, y)
    if said is None:
        return Depth(front, end, f"{show_length(room.left, place.units)} left")
    number, finding = said
    return Depth(front, end, few_words(finding, place.units), finding.severity, number)


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


def sights(place: Workplace) -> tuple[Sight, ...]:
    """Return the lines of sight of the one selected piece with the seat folded."""
    scene = place.scene
    names = [name for name in place.selected if name in scene.placed]
    if place.lever != "folded" or len(names) != 1 or isinstance(scene.sight, str):
        return ()
    return tuple(_sights(place, names[0]))


def _sights(place: Workplace, name: str) -> Iterator[Sight]:
    scene, piece = place.scene, place.scene.placed[name]
    sight = scene.sight
    assert not isinstance(sight, str)  # `sights` has asked
    said = {f.subjects[0]: (n, f) for n, f in open_findings(place.verdict) if f.rule == "sight"}
    most = limit(scene.layout, "sight_angle")
    views = sight.views[list(scene.placed).index(name)]
    for service, view in zip(piece.card.service, views, strict=True):
        if not len(view.order):
            continue
        best = view.order[min(view.first, len(view.order) - 1) if view.angle is not None else 0]
        _, y, z = sight.eyes[best]
        number, finding = said.get(f"{name}.{service.id}", (None, None))
        yield Sight(
            point=(float(view.start[2]), float(view.start[1])),
            eye=(float(z), float(y)),
            verdict="blocked" if view.angle is None else "clear" if view.within(most) else "steep",
            text=_sight_text(service, view.angle),
            severity=None if finding is None else finding.severity,
            number=number,
        )


def _sight_text(service: Service, angle: float | None) -> str:
    return f"{service.kind} hidden" if angle is None else f"{service.kind} {angle:.0f}° off square"
