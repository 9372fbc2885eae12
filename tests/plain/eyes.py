"""sight and reach, said plainly: every eye point, every direction, every body.

Sight is exact but for rays that graze a body within 1e-9 mm; reach is exact to 1e-9 mm: the axis of a
corridor is cut at the end planes of each body, and each part measured as line to flat shape.
"""

import math

from shapely import Polygon
from tests.plain.arrange import doubtful_bodies, guessed, unknown_folded, unknown_stays
from tests.plain.prisms import blocks, distance, way_out
from tests.plain.shapes import under


def others(bay, piece):
    """Return the bodies of all but one stand-in, the stays and the folded seats."""
    bodies = [b for p in bay.pieces.values() if p is not piece for b in p.bodies()]
    bodies += [bay.stay_body(s) for s in bay.stays.values() if s["height"] is not None]
    return bodies + list(bay.folded().values())


def steps(low, high, step=100):
    """Return low, low + 100, ... and high."""
    out = []
    while low + len(out) * step < high:
        out.append(low + len(out) * step)
    return [*out, high]


def eye_points(bay):
    """Return every point an eye may look from, None when the wall is unknown and needed."""
    eye, lean = bay.bay.get("eye", {}), bay.bay.get("lean", 0)
    x0, y0, x1, y1 = bay.board_box()
    spans = {"x": [x0 - 300, x1 + 300], "z": [400, 1200] if lean >= 45 else [500, 900]}
    if lean >= 45:
        spans["y"] = [y0 - 500, y1 + 500]
    elif bay.bay["wall"]:
        top = Polygon(bay.bay["wall"]).bounds[3]
        spans["y"] = [top - 100, top + 500]
    spans |= {axis: span for axis, span in eye.items() if span is not None}
    if "y" not in spans:
        return None
    return [(x, y, z) for x in steps(*spans["x"]) for y in steps(*spans["y"]) for z in steps(*spans["z"])]


def sight(bay):
    """Say which service points cannot be seen, or only from the side."""
    points = eye_points(bay) if bay.boards else []
    for piece in bay.pieces.values():
        for service in piece.card.get("service", []):
            if points is None:
                yield ((f"{piece.id}.{service['id']}",),)
                continue
            best = _best_angle(bay, piece, service, points)
            if best is None or under(bay.limit("sight_angle"), best):
                severity = "note" if service["kind"] == "light" else "should"
                yield severity, (f"{piece.id}.{service['id']}",), best, bay.limit("sight_angle")
        if guessed(piece, "service"):
            yield ((piece.id,),)
    if any(piece.card.get("service") for piece in bay.pieces.values()):
        yield from unknown_extents(bay)


def unknown_extents(bay):
    """Yield one unchecked line for each body of unknown extent."""
    yield from doubtful_bodies(bay)
    yield from unknown_stays(bay)
    yield from unknown_folded(bay)


def _best_angle(bay, piece, service, points):
    at, facing = piece.point(service), piece.way(service["facing"])
    out = max((way_out(body, at, facing) for body in piece.bodies()), default=0.0) + 0.5
    start = tuple(a + out * d for a, d in zip(at, facing, strict=True))
    bodies = piece.bodies() + others(bay, piece)
    best = None
    for eye in points:
        for body in bodies:
            if blocks(body, start, eye):
                break
        else:
            line = [e - s for e, s in zip(eye, start, strict=True)]
            cosine = sum(a * b for a, b in zip(line, facing, strict=True)) / math.hypot(*line)
            angle = math.degrees(math.acos(max(-1.0, min(1.0, cosine))))
            best = angle if best is None else min(best, angle)
    return best


def directions(facing):
    """Return facing, and facing tilted 15, 30 and 45 degrees towards 12 sides."""
    across = (0.0, 0.0, 1.0)
    other = (
        facing[1] * across[2] - facing[2] * across[1],
        facing[2] * across[0] - facing[0] * across[2],
        facing[0] * across[1] - facing[1] * across[0],
    )
    return [facing, *_tilted(facing, across, other)]


def _tilted(facing, first, second):
    for tilt in (15, 30, 45):
        for k in range(12):
            c, s = math.cos(math.radians(30 * k)), math.sin(math.radians(30 * k))
            side = [c * a + s * b for a, b in zip(first, second, strict=True)]
            ct, st = math.cos(math.radians(tilt)), math.sin(math.radians(tilt))
            yield tuple(ct * f + st * e for f, e in zip(facing, side, strict=True))


def all_ways(piece, facing):
    """Return the 37 directions; the first of 12 is the card's +x turned, or out where it faces sideways."""
    if facing == "out":
        first, second = piece.way(0), piece.way(90)
        return [(0.0, 0.0, 1.0), *_tilted((0.0, 0.0, 1.0), first, second)]
    return directions(piece.way(facing))


def reach(bay):
    """Say which service points no fingers or driver get to."""
    for piece in bay.pieces.values():
        for service in piece.card.get("service", []):
            tool = service.get("tool", "none")
            if tool == "none":
                continue
            need = bay.limit("corridor_fingers" if tool == "fingers" else "corridor_driver")
            free = _widest(bay, piece, service)
            if under(free, need):
                severity = "must" if service["kind"] == "fuse" else "should"
                yield severity, (f"{piece.id}.{service['id']}",), free, need
        if guessed(piece, "service"):
            yield ((piece.id,),)
    services = [s for p in bay.pieces.values() for s in p.card.get("service", [])]
    if any(service.get("tool", "none") != "none" for service in services):
        yield from unknown_extents(bay)


def _widest(bay, piece, service):
    at, bodies, widest = piece.point(service), others(bay, piece), 0.0
    for way in all_ways(piece, service["facing"]):
        end = tuple(a + bay.limit("corridor_length") * d for a, d in zip(at, way, strict=True))
        if end[2] < piece.front - 1e-9:
            continue
        free = min((distance(body, at, end) for body in bodies), default=math.inf)
        widest = max(widest, min(2 * free, 300.0))
    return widest
