"""drilled and reprint, said plainly."""

import math

from tests.plain.arrange import guessed
from tests.plain.shapes import turned

FAR = 1e-9  # what floating point leaves over


def drilled(bay):
    """Say what is planned elsewhere than it was drilled: in mm, in degrees where only the turn is off."""
    for piece in bay.pieces.values():
        pose = bay.gear[piece.id].get("drilled")
        far = [math.dist(piece.at, pose["at"])] if pose else []
        screws = piece.card.get("screws", [])
        for n, screw in enumerate(screws, 1):
            made = bay.doc.get("drilled_holes", {}).get(f"{piece.id}#{n}")
            if made:
                far.append(math.dist(turned(screw["at"], piece.at, piece.turn), made))
                if guessed(piece, "screws"):
                    yield ((piece.id,),)
        if far and max(far) > 0.1 + FAR:
            yield "must", (piece.id,), max(far), 0.1
        elif pose and (turn := _between(piece.turn, pose["turn"])) > 0.1 + FAR:
            yield "must", (piece.id,), turn, 0.1
    for fixing in bay.fixings:
        made = [fixing[member] for member in ("drilled", "metal") if fixing.get(member)]
        far = max((math.dist(fixing["at"], at) for at in made), default=0)
        if far > 0.1 + FAR:
            yield "must", (fixing["id"],), far, 0.1


def _between(a, b):
    """Return the degrees between two turns, the short way round."""
    return math.degrees(abs(math.remainder(math.radians(a - b), 2 * math.pi)))


def reprint(bay):
    """Say on which boards the holes are no longer those that were printed, and how many."""
    printed = bay.doc.get("printed")
    if not printed:
        return
    then = {hole["id"]: hole for hole in printed["holes"]}
    count = dict.fromkeys(bay.boards, 0)
    now = {name: (at, drill, board) for name, at, drill, board in bay.holes()}
    for name, (at, drill, board) in now.items():
        if drill is None and name not in then:
            yield ((name,),)
        elif name not in then or _other(then[name], at, drill, *_made(bay, name)):
            count[board] += 1
    owners = {thing["id"]: thing for thing in (*bay.gear.values(), *bay.fixings)}
    for name in then:
        if name not in now and count:
            owner = owners.get(name.split("#")[0], {})
            count[owner.get("board") or next(iter(bay.boards))] += 1
    for piece in bay.pieces.values():
        if guessed(piece, "screws"):
            yield ((piece.id,),)
    for board, many in count.items():
        if many:
            yield "should", (board,), many, 1


def _made(bay, name):
    """Return how a hole is made and its slot."""
    if "#" in name:
        return "tap", None
    slot = next(fixing for fixing in bay.fixings if fixing["id"] == name).get("slot")
    return ("slot" if slot else "clear"), slot


def _other(was, at, drill, make, slot):
    if math.dist(was["at"], at) > 0.1 + FAR or was["make"] != make or was["slot"] != slot:
        return True
    return drill is None or abs(was["drill"] - drill) > 0.01 + FAR
