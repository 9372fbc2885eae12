"""insert-landing, no-drill, hole-edge and hole-hole, said plainly."""

import math
from itertools import combinations

from shapely import Polygon
from tests.plain.arrange import guessed
from tests.plain.reading import flange, thread, washer
from tests.plain.shapes import signed_inside, under


def insert_landing(bay):
    """Say which fixings do not sit flat on a landing."""
    landings = [Polygon(landing["outline"]) for landing in bay.bay.get("landings", [])]
    for fixing in bay.fixings:
        if not landings:
            yield ((fixing["id"],),)
            continue
        if thread(fixing["thread"]) is None:
            yield ((fixing["id"],),)
            continue
        inside = max(signed_inside(fixing["at"], landing) for landing in landings)
        if fixing.get("into", "insert") == "insert":
            across = flange(fixing["thread"]) or 2 * thread(fixing["thread"])["major_d_mm"]
        else:
            across = washer(fixing["thread"])
        need = across / 2 + bay.limit("insert_margin")
        if under(inside, need):
            yield "must", (fixing["id"],), inside, need


def no_drill(bay):
    """Say which holes in the metal come into or near a region that must not be drilled."""
    margin = bay.limit("no_drill_margin")
    for fixing in bay.fixings:
        if fixing.get("into", "insert") not in ("insert", "through"):
            continue
        for region in bay.bay.get("no_drill", []):
            deep = signed_inside(fixing["at"], Polygon(region["outline"]))
            if under(0, deep):
                yield "must", (fixing["id"], region["id"]), deep, 0
            elif under(-margin, deep):
                yield "should", (fixing["id"], region["id"]), deep, margin


def hole_edge(bay):
    """Say which holes come too near an edge of the board or of a cut-out."""
    for name, at, drill, board in bay.holes():
        if drill is None:
            yield ((name,),)
        elif under(inside := signed_inside(at, bay.shapes[board]), bay.limit("edge_d") * drill):
            yield "must", (name,), inside, bay.limit("edge_d") * drill
    yield from _guessed_screws(bay)


def hole_hole(bay):
    """Say which holes come too near one another."""
    holes = bay.holes()
    for name, _, drill, _ in holes:
        if drill is None:
            yield ((name,),)
    holes = [hole for hole in holes if hole[2] is not None]
    for (one, at, drill, board), (other, at2, drill2, board2) in combinations(holes, 2):
        need = bay.limit("pitch_d") * max(drill, drill2)
        if board == board2 and under(math.dist(at, at2), need):
            yield "must", (one, other), math.dist(at, at2), need
    yield from _guessed_screws(bay)


def _guessed_screws(bay):
    for piece in bay.pieces.values():
        if guessed(piece, "screws"):
            yield ((piece.id,),)
