"""air, warm-stack and heat-rise, said plainly."""

from itertools import permutations

from shapely import Polygon, box
from tests.plain.arrange import doubtful_bodies, guessed, meet, unknown_stays
from tests.plain.depth import _least_along, _seat_plan
from tests.plain.reading import seat_up
from tests.plain.shapes import FAR, turned, under

NOTHING = 1e-6
H = 5.0  # W/m2K, free air (cooling.csv, memory)
SIDES = ("left", "right", "up", "down")


def asked(piece):
    """Return the clear air that a piece asks for, by side."""
    return {side: mm for side, mm in piece.card.get("air", {}).items() if mm > 0}


def air(bay):
    """Say which sides have less clear air than they ask for."""
    for piece in bay.pieces.values():
        for side, need in asked(piece).items():
            free = _out(bay, piece) if side == "out" else _beside(bay, piece, side)
            near = min((mm for mm, _ in free), default=None)
            if near is not None and under(near, need):
                solid = next(name for mm, name in free if mm <= near + 1e-9)
                must = under(near, bay.limit("air_must_share") * need)
                yield "must" if must else "should", (piece.id, solid), near, need
    if any(asked(piece) for piece in bay.pieces.values()):
        yield from doubtful_bodies(bay, "air")
        yield from unknown_stays(bay)
        for name, seat in bay.seats.items():
            if seat["up"] is None:
                yield ((name,),)
    for piece in bay.pieces.values():
        if guessed(piece, "air") or (asked(piece) and guessed(piece, "outline")):
            yield ((piece.id,),)


def _box(piece):
    return Polygon(piece.card["outline"]).bounds


def _strip(piece, side):
    """Return the strip beyond a side of the outline's box, and the way it runs, as card axes turned."""
    x0, y0, x1, y1 = _box(piece)
    flat, way, edge = {
        "left": ((x0 - FAR, y0, x0, y1), (-1, 0), (x0, 0)),
        "right": ((x1, y0, x1 + FAR, y1), (1, 0), (x1, 0)),
        "down": ((x0, y0 - FAR, x1, y0), (0, -1), (0, y0)),
        "up": ((x0, y1, x1, y1 + FAR), (0, 1), (0, y1)),
    }[side]
    ring = list(box(*flat).exterior.coords)[:-1]
    strip = Polygon([turned(p, piece.at, piece.turn) for p in ring])
    return strip, turned(edge, piece.at, piece.turn), turned(way, (0, 0), piece.turn)


def _standing(bay, piece):
    """Return (id, body) of all that stands, own bodies left out, in document order."""
    found = [(p.id, body) for p in bay.pieces.values() if p is not piece for body in p.bodies()]
    return found + [(i, bay.stay_body(s)) for i, s in bay.stays.items() if s["height"] is not None]


def _beside(bay, piece, side):
    """Return (mm, id) of each solid in the strip beyond a side whose z meets the body."""
    strip, edge, way = _strip(piece, side)
    own = piece.bodies()
    shapes = []
    for name, body in _standing(bay, piece):
        if any(meet(b.low, b.high, body.low, body.high) for b in own):
            shapes.append((name, body.shape))
    for name, seat in bay.seats.items():
        if seat["up"] is not None:
            shapes += [(name, plan) for b in own for plan in _seat_plan(seat, b.low, b.high)]
    found = []
    for name, shape in shapes:
        shared = strip.intersection(shape)
        if shared.area > NOTHING:
            found.append((max(0.0, _least_along(shared, edge, way)), name))
    return found


def _out(bay, piece):
    """Return (mm, id) of each solid that stands over the box, above the top."""
    if not piece.known:
        return []
    top = max(body.high for body in piece.bodies())
    plan = Polygon([turned(p, piece.at, piece.turn) for p in list(box(*_box(piece)).exterior.coords)[:-1]])
    found = []
    for name, body in _standing(bay, piece):
        if body.high > top + 1e-9 and plan.intersection(body.shape).area > NOTHING:
            found.append((max(0.0, body.low - top), name))
    for name, seat in bay.seats.items():
        x0, x1 = sorted(seat["x"])
        own = plan.intersection(box(x0, -FAR, x1, FAR))
        if seat["up"] is not None and own.area > NOTHING:
            over = seat_up(seat).intersection(box(top, own.bounds[1], FAR, own.bounds[3]))
            if over.area > NOTHING:
                found.append((max(0.0, over.bounds[0] - top), name))
    return found


def warm_stack(bay):
    """Say which warm pieces hang over a hotter one."""
    pieces = list(bay.pieces.values())
    if abs(bay.bay.get("lean", 0)) > 45:
        return
    for low, high in permutations(pieces, 2):
        heats = low.card["heat"], high.card["heat"]
        if None in heats or min(heats) < bay.limit("warm_watts") or heats[0] <= heats[1]:
            continue
        (x0, _, x1, top), (u0, bottom, u1, _) = low.shape.bounds, high.shape.bounds
        if bottom - top >= -1e-9 and min(x1, u1) - max(x0, u0) > 1e-9:
            yield "note", (low.id, high.id), bottom - top, None
    for piece in pieces:
        if piece.card["heat"] is not None and guessed(piece, "outline", "heat"):
            yield ((piece.id,),)


def heat_rise(bay):
    """Say which boards get warm with all that hangs on them."""
    for name in bay.boards:
        on_it = [piece for piece in bay.pieces.values() if piece.board["id"] == name]
        watts = sum(piece.card["heat"] or 0 for piece in on_it)
        face = bay.shapes[name].area + sum(piece.shape.area for piece in on_it)  # mm2
        rise = watts / (H * face / 1e6)
        if rise > bay.limit("rise_note") + 1e-9:
            yield "note", (name,), rise, None
    for piece in bay.pieces.values():
        if piece.card["heat"] is None or guessed(piece, "outline", "heat"):
            yield ((piece.id,),)
