"""seat-depth and plug-room, said plainly."""

import math

from shapely import Polygon, box
from tests.plain.arrange import doubtful_bodies, guessed, meet, unknown_stays
from tests.plain.reading import disc, lead_kind, lead_od, least_up, seat_up
from tests.plain.shapes import FAR, between_x, oblong, square, under

NOTHING = 1e-6


def fronts(bay):
    """Yield (subject, plan shape, front z) of all that may touch a seat."""
    for piece in bay.pieces.values():
        for body in piece.bodies():
            yield piece.id, body.shape, body.high
        for port in piece.card.get("ports", []):
            x, y, z = piece.point(port)
            wide = port.get("plug_wide", 14)
            if port["towards"] == "out":
                yield f"{piece.id}.{port['id']}", square((x, y), wide, piece.turn), z + port["plug"]
            else:
                way = piece.way(port["towards"])[:2]
                yield f"{piece.id}.{port['id']}", oblong((x, y), way, port["plug"], wide), z + wide / 2
    for lead in bay.leads():
        if lead.on_front and lead.od is not None:
            band = lead.line().buffer(lead.od / 2, cap_style="flat", quad_segs=256)
            yield lead.id, band, lead.front + lead.od


def least_seat(bay, seat, shape):
    """Return the least z of a seat over a plan shape, `give` not taken off; None where it says nothing."""
    own = between_x(shape, *sorted(seat["x"]))
    if own.area <= NOTHING:
        return None
    found, rest = [], own
    probes = seat.get("probes", [])
    for i, (x, y, z) in enumerate(probes):
        near = own.intersection(disc((x, y), bay.limit("probe_reach")))
        rest = rest.difference(disc((x, y), bay.limit("probe_reach")))
        for j, other in enumerate(probes):
            if j != i:
                near = near.intersection(_nearer((x, y), other[:2], i < j))
        if near.area > NOTHING:
            found.append(z)
    section = seat_up(seat)
    if section is not None and rest.area > NOTHING:
        _, y0, _, y1 = rest.bounds
        found.append(least_up(section, y0, y1))
    return min((z for z in found if z is not None), default=None)


def _nearer(here, there, first):
    """Return the half of the plane nearer to `here`; of two probes in one place the first has it all."""
    away = math.dist(here, there)
    if away == 0:
        return box(-FAR, -FAR, FAR, FAR) if first else Polygon()
    middle = ((here[0] + there[0]) / 2, (here[1] + there[1]) / 2)
    way = ((here[0] - there[0]) / away, (here[1] - there[1]) / away)
    return oblong(middle, way, FAR, 2 * FAR)


def seat_depth(bay):
    """Say what the closed seat presses on or comes near."""
    for name, seat in bay.seats.items():
        worst = {}
        for subject, shape, z in fronts(bay):
            least = least_seat(bay, seat, shape)
            if least is not None:
                left = least - seat.get("give", 0) - z
                worst[subject] = min(left, worst.get(subject, math.inf))
        for subject, left in worst.items():
            if under(left, bay.limit("seat_margin")):
                yield "must" if under(left, 0) else "should", (subject, name), left, bay.limit("seat_margin")
        if seat["up"] is None:
            yield ((name,),)
    if bay.seats:
        yield from doubtful_bodies(bay, "ports")
        yield from thick_unknown(bay)


def thick_unknown(bay):
    """Yield one unchecked line for each lead on a front whose diameter is unknown."""
    for lead in bay.leads():
        if lead.on_front and lead.od is None:
            yield ((lead.id,),)


def plug_room(bay):
    """Say which plugs, with the bend of their leads, have no room."""
    for piece in bay.pieces.values():
        for port in piece.card.get("ports", []):
            text = f"{piece.id}.{port['id']}"
            bend = 0.0
            for lead in bay.lead_at(text):
                od = lead_od(bay.doc, bay.entries, lead)
                if od is not None:
                    bend = max(bend, bay.limit("bend_od") * od)
                elif lead_kind(bay.doc, bay.entries, lead):
                    yield ((lead["id"],),)
            need = port["plug"] + bend
            found = list(_ahead(bay, piece, port))
            if found:
                free, solid = min(found, key=lambda pair: pair[0])
                if under(free, need):
                    yield "must", (text, solid), free, need
        if guessed(piece, "ports"):
            yield ((piece.id,),)
    if not any(piece.card.get("ports") for piece in bay.pieces.values()):
        return
    yield from doubtful_bodies(bay)
    yield from unknown_stays(bay)
    for name, seat in bay.seats.items():
        if seat["up"] is None:
            yield ((name,),)


def _ahead(bay, piece, port):
    """Yield (free distance, solid's id) of each solid out of a port, in document order."""
    solids = [(p.id, body) for p in bay.pieces.values() if p is not piece for body in p.bodies()]
    solids += [(i, bay.stay_body(s)) for i, s in bay.stays.items() if s["height"] is not None]
    look = _out if port["towards"] == "out" else _along
    yield from look(bay, piece, port, solids)


def _along(bay, piece, port, solids):
    x, y, z = piece.point(port)
    wide = port.get("plug_wide", 14)
    low, high = z - wide / 2, z + wide / 2
    way = piece.way(port["towards"])[:2]
    strip = oblong((x, y), way, FAR, wide)
    shapes = [(i, body.shape) for i, body in solids if meet(low, high, body.low, body.high)]
    for name, seat in bay.seats.items():
        if seat["up"] is not None:
            shapes += [(name, shape) for shape in _seat_plan(seat, low, high)]
    for name, shape in shapes:
        shared = strip.intersection(shape)
        if shared.area > NOTHING:
            yield max(0.0, _least_along(shared, (x, y), way)), name


def _seat_plan(seat, low, high):
    """Return the plan rectangles that a closed seat fills between two z."""
    cut = seat_up(seat).intersection(box(low, -FAR, high, FAR))
    x0, x1 = sorted(seat["x"])
    pieces = getattr(cut, "geoms", [cut])
    return [box(x0, p.bounds[1], x1, p.bounds[3]) for p in pieces if p.area > NOTHING]


def _least_along(shape, start, way):
    parts = [part for part in getattr(shape, "geoms", [shape]) if part.area > 0]
    corners = [c for part in parts for c in part.exterior.coords]
    return min((x - start[0]) * way[0] + (y - start[1]) * way[1] for x, y in corners)


def _out(bay, piece, port, solids):
    x, y, z = piece.point(port)
    plan = square((x, y), port.get("plug_wide", 14), piece.turn)
    for name, body in solids:
        if body.high > z and plan.intersection(body.shape).area > NOTHING:
            yield max(0.0, body.low - z), name
    for name, seat in bay.seats.items():
        own = between_x(plan, *sorted(seat["x"]))
        if seat["up"] is None or own.area <= NOTHING:
            continue
        cut = seat_up(seat).intersection(box(z, own.bounds[1], FAR, own.bounds[3]))
        if cut.area > NOTHING:
            yield cut.bounds[0] - z, name
