"""seat-swing, said plainly: the seat is turned step by step in its (z, y) section."""

import math

from shapely import Polygon, box
from tests.plain.arrange import doubtful_bodies
from tests.plain.shapes import between_x, short_side

NOTHING = 1e-9


def seat_swing(bay):
    """Say into which pieces a seat swings on its way from up to folded."""
    for name, seat in bay.seats.items():
        angle = _angle(bay, seat)
        if angle is None:
            yield ((name,),)
            continue
        steps = max(1, math.ceil(abs(angle) - 1e-6))
        ways = [_turned(seat["up"], seat["hinge"], angle * k / steps) for k in range(1, steps + 1)]
        for piece in bay.pieces.values():
            deep = _deepest(seat, piece, [Polygon(way) for way in ways])
            if deep > 1e-9:
                yield "must", (piece.id, name), deep, 0
    if bay.seats:
        yield from doubtful_bodies(bay)


def _turned(ring, hinge, angle):
    """Return a (z, y) ring turned counter-clockwise about the hinge."""
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    out = []
    for z, y in ring:
        dz, dy = z - hinge[0], y - hinge[1]
        out.append((hinge[0] + c * dz - s * dy, hinge[1] + s * dz + c * dy))
    return out


def _off(one, other):
    """Return the largest distance from a vertex of either ring to the nearest vertex of the other."""
    there = max(min(math.dist(p, q) for q in other) for p in one)
    back = max(min(math.dist(p, q) for q in one) for p in other)
    return max(there, back)


def _angle(bay, seat):
    """Return the angle that carries up onto folded, None when it is not known or does not."""
    up, folded, hinge = seat["up"], seat["folded"], seat.get("hinge")
    if up is None or folded is None or hinge is None:
        return None
    angle = seat.get("swing")
    if angle is None:
        tries = [_between(p, q, hinge) for p in up for q in folded]
        angle = min(tries, key=lambda t: (round(_off(_turned(up, hinge, t), folded), 6), abs(t)))
    off = _off(_turned(up, hinge, angle), folded)
    return None if off > bay.limit("swing_off") + 1e-9 else angle


def _between(p, q, hinge):
    """Return the short angle about the hinge from p to q."""
    one = math.atan2(p[1] - hinge[1], p[0] - hinge[0])
    two = math.atan2(q[1] - hinge[1], q[0] - hinge[0])
    return (math.degrees(two - one) + 180) % 360 - 180


def _deepest(seat, piece, ways):
    deep = 0.0
    for body in piece.bodies():
        own = between_x(body.shape, *sorted(seat["x"]))
        if own.area <= NOTHING:
            continue
        room = box(body.low, own.bounds[1], body.high, own.bounds[3])
        for way in ways:
            shared = way.intersection(room)
            if shared.area > 1e-6:
                deep = max(deep, short_side(shared))
    return deep
