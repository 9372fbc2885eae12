"""beside, crossing and lead-path, said plainly."""

import math
from itertools import combinations, pairwise

from shapely import LineString, Point, Polygon
from shapely.ops import substring, unary_union
from tests.plain.arrange import doubtful_bodies, guessed, meet
from tests.plain.depth import thick_unknown
from tests.plain.reading import washer
from tests.plain.shapes import inner, under


def pairs(bay):
    """Yield each power or ground lead with each signal lead."""
    leads = bay.leads()
    for power in leads:
        for signal in leads:
            if power.kind in ("power", "ground") and signal.kind == "signal":
                yield power, signal


def acute(a, b):
    """Return the acute angle between two straight pieces, degrees."""
    (ux, uy), (vx, vy) = _way(a), _way(b)
    return math.degrees(math.atan2(abs(ux * vy - uy * vx), abs(ux * vx + uy * vy)))


def _way(piece):
    (x0, y0), (x1, y1) = piece
    length = math.dist(*piece)
    return (x1 - x0) / length, (y1 - y0) / length


def beside(bay):
    """Say which signal leads run along a power or ground lead, and which entries share a way."""
    for power, signal in pairs(bay):
        total = sum(_covered(s, power.stretches(), bay) for s in signal.stretches())
        for severity in ("must", "should"):
            if under(bay.limit(f"beside_{severity}"), total):
                yield severity, (power.id, signal.id), total, bay.limit(f"beside_{severity}")
                break
    yield from _same_way(bay)
    yield from _guessed_ends(bay)


def _covered(stretch, others, bay):
    """Return the length of a stretch inside the flat-ended rectangles of the others nearly parallel to it."""
    line = LineString(stretch)
    near = [p for p in others if not under(bay.limit("beside_angle"), acute(p, stretch))]
    strips = [LineString(p).buffer(bay.limit("beside_d"), cap_style="flat") for p in near]
    return line.intersection(unary_union(strips)).length


def _guessed_ends(bay):
    """Yield one unchecked line for each piece whose guessed ports a power, ground or signal lead meets."""
    for lead in bay.leads():
        if lead.kind in ("power", "ground", "signal"):
            for piece, *_ in lead.ends:
                if piece and guessed(piece, "ports"):
                    yield ((piece.id,),)


def _same_way(bay):
    for a, b in combinations(bay.entries.values(), 2):
        if not a.get("way") or a.get("way") != b.get("way"):
            continue
        for power, signal in ((a, b), (b, a)):
            if {"power", "ground"} & set(power["carries"]) and "signal" in signal["carries"]:
                unknown = [e for e in (power, signal) if e["run"] is None]
                for entry in unknown:
                    yield ((entry["id"],),)
                if not unknown:
                    yield "note", (power["id"], signal["id"]), min(power["run"], signal["run"]), None
                break


def crossing(bay):
    """Say where signal leads cross power or ground leads, the shallowest of each pair."""
    for power, signal in pairs(bay):
        ends = [power.path[0], power.path[-1], signal.path[0], signal.path[-1]]
        angles = []
        for p in power.stretches():
            for s in signal.stretches():
                spot = _spot(p, s)
                if spot and min(math.dist(spot, end) for end in ends) > 1e-6:
                    angles.append(acute(p, s))
        if angles:
            least = min(angles)
            bad = under(least, bay.limit("crossing_should"))
            yield (
                "should" if bad else "note",
                (power.id, signal.id),
                least,
                bay.limit("crossing_should") if bad else None,
            )
    yield from _guessed_ends(bay)


def _spot(p, s):
    """Return the one point two straight pieces share, None when they share none or run in one line."""
    (ux, uy), (vx, vy) = _way(p), _way(s)
    turn = ux * vy - uy * vx
    if abs(turn) < 1e-9:
        return None
    wx, wy = s[0][0] - p[0][0], s[0][1] - p[0][1]
    t, r = (wx * vy - wy * vx) / turn, (wx * uy - wy * ux) / turn
    slack = 1e-6
    if -slack <= t <= math.dist(*p) + slack and -slack <= r <= math.dist(*s) + slack:
        return (p[0][0] + t * ux, p[0][1] + t * uy)
    return None


def lead_path(bay):
    """Say which leads run through gear, a cut-out or a fixing, or off their board."""
    for lead in bay.leads():
        for name, inside in _passed(bay, lead):
            if inside > 0.01:
                yield "must", (lead.id, name), inside, 0
        outside = _off_board(bay, lead)
        if outside > 0.01:
            yield "must", (lead.id,), outside, 0
        for fixing in _fixings(bay, lead):
            if washer(fixing["thread"]) is None:
                yield ((fixing["id"],),)
    if bay.leads():
        yield from doubtful_bodies(bay, "ports")
        yield from thick_unknown(bay)


def _fixings(bay, lead):
    return [fixing for fixing in bay.fixings if bay.fixing_board(fixing) in lead.boards]


def _passed(bay, lead):
    """Yield (id, length inside) of all that a lead may run through."""
    for piece in bay.pieces.values():
        yield piece.id, _through_gear(lead, piece)
    for name in lead.boards:
        for cutout in bay.boards[name].get("cutouts", []):
            yield cutout["id"], _inside(lead.line(), inner(Polygon(cutout["outline"])))
    for fixing in _fixings(bay, lead):
        across = washer(fixing["thread"]) or 0
        yield fixing["id"], sum(_chord(s, fixing["at"], across / 2) for s in lead.stretches())


def _through_gear(lead, piece):
    if not lead.on_front or lead.od is None:
        return 0.0
    top = lead.front + lead.od
    body = unary_union([b.shape for b in piece.bodies() if meet(lead.front, top, b.low, b.high)])
    line = lead.line()
    free = [end[1]["plug"] if end[0] is piece else 0 for end in lead.ends]
    if free[0] + free[1] >= line.length:
        return 0.0
    return _inside(substring(line, free[0], line.length - free[1]), inner(body))


def _inside(line, shape):
    """Return how much of a line lies in a shape; out and back on one line counts twice."""
    points = list(line.coords)
    pieces = [LineString(pair) for pair in pairwise(points)]
    return sum(piece.intersection(shape).length for piece in pieces)


def _chord(stretch, middle, radius):
    """Return the length of a straight piece inside a circle."""
    (ux, uy), length = _way(stretch), math.dist(*stretch)
    wx, wy = middle[0] - stretch[0][0], middle[1] - stretch[0][1]
    along, across = wx * ux + wy * uy, abs(wx * uy - wy * ux)
    if across >= radius:
        return 0.0
    half = math.sqrt(radius * radius - across * across)
    return max(0.0, min(length, along + half) - max(0.0, along - half))


def _off_board(bay, lead):
    whole = unary_union([bay.wholes[name] for name in lead.boards])
    stretches = lead.stretches()
    for end, last in ((0, 0), (1, -1)):
        entry = lead.ends[end][2]
        if entry and stretches and whole.distance(Point(entry["at"])) > 0:
            stretches.pop(last)
    return sum(LineString(s).difference(whole).length for s in stretches)
