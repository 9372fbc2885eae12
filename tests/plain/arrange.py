"""overlap, gap, off-board, off-wall and on-stay, said plainly.

Each rule yields (severity, subjects, measure, limit), or (subjects,) for what could not be checked.
"""

from itertools import combinations

from shapely import Point, Polygon
from tests.plain.prisms import Prism, distance
from tests.plain.reading import front
from tests.plain.shapes import furthest_outside, rounded, short_side, turned, under


def meet(low_a, high_a, low_b, high_b):
    """Return whether two ranges share more than nothing."""
    return min(high_a, high_b) - max(low_a, low_b) > 0


def guessed(piece, *members):
    """Return whether the piece's card has one of `members` guessed."""
    return any(member in piece.card.get("guessed", []) for member in members)


def body_members(piece):
    """Return the members that make a piece's body."""
    return ("solids",) if piece.card.get("solids") else ("outline", "height", "solids")


def doubtful_bodies(bay, *more):
    """Yield one unchecked line for each piece whose body is unknown or guessed, or any of `more` guessed."""
    for piece in bay.pieces.values():
        if not piece.known or guessed(piece, *body_members(piece), *more):
            yield ((piece.id,),)


def unknown_stays(bay):
    """Yield one unchecked line for each stay of unknown height."""
    for name, stay in bay.stays.items():
        if stay["height"] is None:
            yield ((name,),)


def unknown_folded(bay):
    """Yield one unchecked line for each seat whose folded section is unknown."""
    for name, seat in bay.seats.items():
        if seat["folded"] is None:
            yield ((name,),)


def shared_side(one, other):
    """Return the smaller side of what two pieces of gear, or a piece and a stay, share; 0 when nothing."""
    worst = 0.0
    for a in one:
        for b in other:
            if meet(a.low, a.high, b.low, b.high):
                shared = a.shape.intersection(b.shape)
                if shared.area > 0.01:
                    worst = max(worst, short_side(shared))
    return worst


def overlap(bay):
    """Say which bodies stand in one another."""
    pieces = list(bay.pieces.values())
    for a, b in combinations(pieces, 2):
        side = shared_side(a.bodies(), b.bodies())
        if side:
            yield "must", (a.id, b.id), side, 0
    for piece in pieces:
        for name, stay in bay.stays.items():
            body = bay.stay_body(stay)
            side = shared_side(piece.bodies(), [body] if body else [])
            if side:
                yield "must", (piece.id, name), side, 0
    yield from doubtful_bodies(bay)
    yield from unknown_stays(bay)


def gap(bay):
    """Say which bodies stand too near one another."""
    for a, b in combinations(bay.pieces.values(), 2):
        pairs = [(p, q) for p in a.bodies() for q in b.bodies() if meet(p.low, p.high, q.low, q.high)]
        if not pairs or shared_side(a.bodies(), b.bodies()):
            continue
        apart = min(p.shape.distance(q.shape) for p, q in pairs)
        if all(x.card["heat"] is not None and x.card["heat"] < bay.limit("cold_watts") for x in (a, b)):
            if under(apart, bay.limit("gap_cold")):
                yield "must", (a.id, b.id), apart, bay.limit("gap_cold")
        elif under(apart, bay.limit("gap_must")):
            yield "must", (a.id, b.id), apart, bay.limit("gap_must")
        elif under(apart, bay.limit("gap_should")):
            yield "should", (a.id, b.id), apart, bay.limit("gap_should")
    yield from doubtful_bodies(bay, "heat")


def off_board(bay):
    """Say which pieces hang over the edge of their board, or have a screw off it."""
    for piece in bay.pieces.values():
        shape = bay.shapes[piece.board["id"]]
        out = furthest_outside(piece.ring, shape)
        screws = [turned(s["at"], piece.at, piece.turn) for s in piece.card.get("screws", [])]
        if any(shape.distance(Point(at)) > 1e-9 for at in screws):
            yield "must", (piece.id,), out if out > 0.01 else 0, 0
        elif out > 0.01:
            yield "should", (piece.id,), out, 0
        if guessed(piece, "outline", "screws"):
            yield ((piece.id,),)


def off_wall(bay):
    """Say which boards reach past the wall."""
    for name, board in bay.boards.items():
        if not bay.bay["wall"]:
            yield ((name,),)
            continue
        ring = rounded(board["outline"], board.get("corner_radius", 0))
        out = furthest_outside(ring, Polygon(bay.bay["wall"]))
        if out > 0.01:
            yield "must", (name,), out, 0


def on_stay(bay):
    """Say which stays a board lies on, covers, or keeps fingers from."""
    lined = bay.bay.get("lined", 0)
    for name, stay in bay.stays.items():
        keep, clear = stay.get("keep", "solid"), stay.get("clear", 0)
        grown = Polygon(stay["outline"]).buffer(clear, quad_segs=256)
        for board in bay.boards.values():
            covered = bay.shapes[board["id"]].intersection(grown).area > 1e-6
            if covered and keep == "never-cover":
                yield "must", (name, board["id"]), None, None
            elif covered and stay["height"] is not None:
                left = board["standoff"] - lined - stay["height"] - clear
                if under(left, 0):
                    yield "must", (name, board["id"]), left, 0
        if stay["height"] is None and keep != "never-cover":
            yield ((name,),)
        elif keep == "reach":
            yield from _corridor(bay, name, stay)
    if any(s.get("keep") == "reach" and s["height"] is not None for s in bay.stays.values()):
        yield from doubtful_bodies(bay)
        yield from unknown_stays(bay)
        yield from unknown_folded(bay)


def _corridor(bay, name, stay):
    x0, y0, x1, y1 = Polygon(stay["outline"]).bounds
    start = ((x0 + x1) / 2, (y0 + y1) / 2, stay["height"])
    end = (*start[:2], start[2] + bay.limit("corridor_length"))
    solids = [Prism(bay.shapes[i], b["standoff"], front(b)) for i, b in bay.boards.items()]
    solids += [body for piece in bay.pieces.values() for body in piece.bodies()]
    solids += [bay.stay_body(s) for i, s in bay.stays.items() if i != name and s["height"] is not None]
    solids += bay.folded().values()
    if not solids:
        return
    free = 2 * min(distance(solid, start, end) for solid in solids)
    if under(free, bay.limit("corridor_fingers")):
        grown = Polygon(stay["outline"])
        nearest = min(bay.boards, key=lambda i: bay.shapes[i].distance(grown))
        yield "should", (name, nearest), free, bay.limit("corridor_fingers")
