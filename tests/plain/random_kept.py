"""What was made of a random document before it was changed: holes drilled, sheets printed."""

import math

from tests.plain.reading import Bay
from tests.plain.sketch import along


def drill(sketch):
    """Drill some of the fixings and stand-ins near where they are planned now."""
    rng, doc = sketch.rng, sketch.doc
    for fixing in doc["fixings"]:
        for member in ("drilled", "metal"):
            if rng.random() < 0.3:
                fixing[member] = _beside(sketch, fixing["at"])
    holes = [hole for hole in Bay(doc, {}).holes() if "#" in hole[0]]
    for name, at, _, _ in holes:
        if rng.random() < 0.4:
            doc.setdefault("drilled_holes", {})[name] = _beside(sketch, at)
    for gear in doc["gear"]:
        if gear["at"] and rng.random() < 0.25:
            at = rng.choice([list(gear["at"]), _beside(sketch, gear["at"])])
            turn = gear["turn"] + rng.choice([0, 360, sketch.near(0.1, -0.1)])
            gear["drilled"] = {"at": at, "turn": round(turn, 6)}


def print_sheets(sketch):
    """Print the holes that are known as they are, but for a few that were otherwise then."""
    rng, bay = sketch.rng, Bay(sketch.doc, {})
    holes = [_printed(bay, *hole) for hole in bay.holes() if hole[2]]
    for hole in holes:
        if rng.random() < 0.15:
            _otherwise(sketch, hole)
    gone = [{"id": name, "at": [0, 0], "make": "tap", "drill": 4.2, "slot": None} for name in _gone(sketch)]
    sketch.doc["printed"] = {"revision": "7", "holes": [*holes, *gone]}


def _printed(bay, name, at, drill, _board):
    slot = next((f.get("slot") for f in bay.fixings if f["id"] == name), None)
    make = "tap" if "#" in name else "slot" if slot else "clear"
    return {
        "id": name,
        "at": [round(a, 6) for a in at],
        "make": make,
        "drill": drill,
        "slot": slot and dict(slot),
    }


def _otherwise(sketch, hole):
    """Change one thing about a printed hole."""
    rng = sketch.rng
    what = rng.choice(["at", "at", "drill", "make", "slot"])
    if what == "at":
        hole["at"] = _beside(sketch, hole["at"])
    elif what == "drill":
        hole["drill"] = round(hole["drill"] + rng.choice([0.0099, 0.0101, -0.0099, -0.0101, 1]), 6)
    elif what == "make":
        hole["make"] = rng.choice(["tap", "clear"])
    else:
        hole["slot"] = {"travel": 4, "angle": rng.choice([30, 31])}


def _gone(sketch):
    """Return ids of holes that are no longer there: of nothing, of a piece, of a fixing's former self."""
    names = [f"{gear['id']}#9" for gear in sketch.doc["gear"][:2]]
    return sketch.rng.sample(["X1", "X2#1", *names], sketch.rng.choice([0, 0, 0, 1, 2]))


def _beside(sketch, at):
    """Return a place about 0.1 mm off, as often within a hair of that as not; or just there."""
    far = sketch.rng.choice([0, sketch.near(0.1, spread=0.5)])
    x, y = along(*at, sketch.rng.choice([0, 90, math.degrees(math.atan2(4, 3))]), far)
    return [round(x, 6), round(y, 6)]
