"""A stand-in drawn once in its card's own frame: what is pierced, where leads go in, what hands reach."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

import shapely

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Card, Point, Port, Screw, Service
from bayboard.paper.curves import Box, Carry, circle, line, polyline, rectangle
from bayboard.paper.marks import DRILLED, MEASURED, Stroke, Trace
from bayboard.tables.reference import thread

CLIPPED, CLIPPED_SHARE = 10.0, 0.18  # mm, and of the shorter side, off the upper left corner
AT_CORNER = 1.0  # mm; a corner of the outline this near to its box's corner is clipped
CLIP_CLEAR = 3.0  # mm; the clipped corner stays this far off a screw's hole
CLIP_DASH = (2.0, 1.2)
UNKNOWN_SCREW = 2.0  # mm; radius drawn for a thread that is not in the tables
ARROW, HEAD = 8.0, 2.0  # mm
CROSS = 2.0  # mm; how far a screw's cross reaches past its hole
DIAL = 3.6  # mm; radius of a port that faces out
_SIGNS = {
    "dial": (7.2, 7.2),
    "fuse": (8.0, 4.0),
    "cover": (13.0, 9.0),
    "plug": (6.0, 4.0),
    "light": (7.2, 7.2),
}  # mm


@dataclass(frozen=True, slots=True)
class Spot:
    """Something on a stand-in that wants a word: its centre and how far it reaches."""

    at: Point
    core: float
    arms: float


def strokes(card: Card) -> Iterator[Stroke]:
    """Return everything on a stand-in that is no word; what leaves the outline is to be clipped there."""
    clip = clipped_corner(card)
    if clip is not None:
        yield Stroke((line(*clip),), MEASURED, CLIP_DASH)
    if card.screws:
        yield Stroke(tuple(circle(s.at, screw_radius(s)) for s in card.screws), DRILLED)
        yield Stroke(tuple(t for s in card.screws for t in _cross(s)), MEASURED)
    drawn = [t for port in card.ports for t in _port(port)]
    drawn += [t for service in card.service for t in _service(service)]
    if drawn:
        yield Stroke(tuple(drawn), DRILLED)


def screw_radius(screw: Screw) -> float:
    """Return the radius of the hole drawn for a screw: its thread's own."""
    known = thread(screw.thread)
    return known.major_d / 2 if known is not None else UNKNOWN_SCREW


def outside(card: Card) -> tuple[Box, ...]:
    """Return boxes that cover what of the outline's box is not the stand-in."""
    box = outlines.box(card.outline)
    rest = shapely.difference(shapely.box(*box), outlines.polygon(card.outline))
    return tuple(tuple(part.bounds) for part in getattr(rest, "geoms", [rest]) if not part.is_empty)


def clipped_corner(card: Card) -> tuple[Point, Point] | None:
    """Return the cut that takes off the upper left corner, by which a stand-in is told upright.

    None where the outline has no corner there, or no room for it.
    """
    x0, _, _, y1 = outlines.box(card.outline)
    n = len(card.outline)
    at = min(range(n), key=lambda i: hypot(card.outline[i][0] - x0, card.outline[i][1] - y1))
    if hypot(card.outline[at][0] - x0, card.outline[at][1] - y1) > AT_CORNER:
        return None
    tip, before, after = card.outline[at], card.outline[at - 1], card.outline[(at + 1) % n]
    bend = (tip[0] - before[0]) * (after[1] - tip[1]) - (tip[1] - before[1]) * (after[0] - tip[0])
    if bend * outlines.signed_area(card.outline) <= 0:
        return None
    size = _clip_size(card, tip)
    legs = [hypot(end[0] - tip[0], end[1] - tip[1]) for end in (before, after)]
    if size <= 0 or min(legs) < 1.5 * size:
        return None
    shares = [size / leg for leg in legs]
    a, b = (
        (tip[0] + (end[0] - tip[0]) * share, tip[1] + (end[1] - tip[1]) * share)
        for end, share in zip((before, after), shares, strict=True)
    )
    return a, b


def _clip_size(card: Card, tip: Point) -> float:
    x0, y0, x1, y1 = outlines.box(card.outline)
    size = min(CLIPPED, CLIPPED_SHARE * min(x1 - x0, y1 - y0))
    free = (hypot(s.at[0] - tip[0], s.at[1] - tip[1]) - screw_radius(s) - CLIP_CLEAR for s in card.screws)
    return min([size, *free])


def spot(thing: Port | Service) -> Spot:
    """Return where the word of a port or a service point belongs."""
    if isinstance(thing, Port):
        if thing.towards == "out":
            return Spot(thing.at, DIAL, DIAL)
        return Spot(_back(thing.at, thing.towards, ARROW / 2), ARROW / 2 + 0.4, ARROW / 2)
    half = _SIGNS[thing.kind][0] / 2
    return Spot(_sign_at(thing), half + 0.4, half)


def _sign_at(service: Service) -> Point:
    """Return where the sign of a service point stands: on it, or behind its arrow when it faces sideways."""
    if service.facing == "out":
        return service.at
    return _back(service.at, service.facing, ARROW + _SIGNS[service.kind][0] / 2 + 0.6)


def _back(at: Point, way: float | str, by: float) -> Point:
    c, s = outlines.unit(float(way))
    return at[0] - c * by, at[1] - s * by


def _cross(screw: Screw) -> Iterator[Trace]:
    (x, y), r = screw.at, screw_radius(screw)
    for dx, dy in ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)):
        yield line((x + 0.4 * dx, y + 0.4 * dy), (x + (r + CROSS) * dx, y + (r + CROSS) * dy))


def _port(port: Port) -> Iterator[Trace]:
    """Return the way out of a port: an arrow to the edge, or an arrow's tip seen from the front."""
    if port.towards == "out":
        yield circle(port.at, DIAL - 0.6)
        yield circle(port.at, 0.5)
        return
    yield from _arrow(port.at, float(port.towards))


def _arrow(tip: Point, way: float) -> Iterator[Trace]:
    carry = Carry.to(tip, way)
    yield carry.trace(line((-ARROW, 0.0), (0.0, 0.0)))
    yield carry.trace(polyline([(-HEAD, HEAD / 2), (0.0, 0.0), (-HEAD, -HEAD / 2)]))


def _service(service: Service) -> Iterator[Trace]:
    """Return the sign of a service point, and an arrow the way it faces unless that is straight out."""
    at = _sign_at(service)
    size = _SIGNS[service.kind]
    match service.kind:
        case "dial":
            yield circle(at, size[0] / 2)
            yield line(at, (at[0] + 0.3 * size[0], at[1] + 0.3 * size[0]))
        case "light":
            yield circle(at, size[0] / 4)
            for way in (45.0, 135.0, 225.0, 315.0):
                yield Carry.to(at, way).trace(line((size[0] / 4 + 0.6, 0.0), (size[0] / 2, 0.0)))
        case "fuse":
            yield rectangle(_round(at, size))
            yield line((at[0] - size[0] / 2 + 1.2, at[1]), (at[0] + size[0] / 2 - 1.2, at[1]))
        case "cover" | "plug":
            yield rectangle(_round(at, size))
    if service.facing != "out":
        yield from _arrow(service.at, float(service.facing))


def _round(at: Point, size: tuple[float, float]) -> Box:
    return at[0] - size[0] / 2, at[1] - size[1] / 2, at[0] + size[0] / 2, at[1] + size[1] / 2
