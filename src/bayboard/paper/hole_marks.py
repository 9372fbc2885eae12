"""The mark of a hole: what the drill goes by, and what still shows where it should have gone.

A drill ring, four arms that reach past it, ticks inside it with the centre left open, and a dashed witness
ring that survives the drilling.  A square frame stands round every fixing, none round a tapped hole: kind
is shape, never colour.  A slot is two holes with the strip between.

A hole that is made already is a black disc there where it is, without a cross: nobody drills it again.
Where the plan lies elsewhere, a thin line leads to a small open ring there, which is none to drill by.
"""

from itertools import pairwise
from math import dist

from bayboard.mechanics.bits import clear_drill, tap_drill
from bayboard.model.layout import Point
from bayboard.paper.curves import Box, Carry, circle, line, rectangle
from bayboard.paper.face import Drilled
from bayboard.paper.marks import DRILLED, MEASURED, Fill, Stroke, Trace
from bayboard.units.length import Units, show_length

OPEN = 0.5  # mm; the centre that ticks leave free
GAP = 0.5  # mm; between ticks or arms and the drill ring
SHORTEST = 0.2  # mm; a shorter tick is only a blot
WITNESS = 2.0  # mm; how far outside the drill ring the witness ring lies
ARM, ARM_PAST = 9.0, 5.0  # mm; arms reach this far from the centre, or this far past the ring
FRAME = 4.0  # mm; from the drill ring to the frame of a fixing
DASH = (1.6, 1.2)
UNKNOWN = 2.0  # mm; radius of a made hole whose drill is not known
PLANNED = 0.8  # mm; radius of the ring where a made hole was planned: far too small to be taken for a drill's


def reach(hole: Drilled) -> float:
    """Return how far the arms go from a centre; a made hole has none."""
    return _disc(hole) + 0.4 if hole.made else max(ARM, hole.radius + ARM_PAST)


def strokes(hole: Drilled, carry: Carry) -> tuple[Stroke | Fill, ...]:
    """Return the mark on the page."""
    centres = [carry.point(at) for at in hole.discs]
    if hole.made:
        return _made(hole, centres, carry)
    rings = tuple(circle(c, hole.radius) for c in centres) if hole.radius else ()
    witness = tuple(circle(c, hole.radius + WITNESS) for c in centres)
    arms = tuple(arm_traces(hole, carry))
    made = [Stroke(arms, MEASURED), Stroke(witness, MEASURED, DASH)]
    if rings:
        made.append(Stroke((*rings, *_strip(hole, carry)), DRILLED))
    frame = frame_box(hole, carry)
    if frame is not None:
        made.append(Stroke((rectangle(frame),), DRILLED))
    return tuple(made)


def _made(hole: Drilled, centres: list[Point], carry: Carry) -> tuple[Stroke | Fill, ...]:
    """Return the discs of a made hole and, where its plan lies elsewhere, the way there."""
    discs = Fill(tuple(circle(c, _disc(hole)) for c in centres))
    web = tuple(line(a, b) for a, b in pairwise(centres))
    made: tuple[Stroke | Fill, ...] = (discs, *((Stroke(web, 2 * _disc(hole)),) if web else ()))
    if hole.planned is None:
        return made
    there, here = carry.point(hole.planned), carry.point(hole.at)
    off = dist(there, here)
    if off <= PLANNED:
        return made
    on_ring = tuple(t + (h - t) * PLANNED / off for t, h in zip(there, here, strict=True))
    way = line(here, (on_ring[0], on_ring[1]))
    return (*made, Stroke((way, circle(there, PLANNED)), MEASURED))


def _disc(hole: Drilled) -> float:
    return hole.radius or UNKNOWN


def core(hole: Drilled) -> float:
    """Return how far from a centre no word may come, the arms aside."""
    return _disc(hole) + 0.4 if hole.made else hole.radius + WITNESS + 0.4


def frame_box(hole: Drilled, carry: Carry) -> Box | None:
    """Return the frame of a fixing on the page, None for a tapped hole."""
    if hole.hole.make == "tap" or hole.made:
        return None
    x, y = carry.point(hole.at)
    half = hole.apart / 2 + hole.radius + FRAME
    return x - half, y - half, x + half, y + half


def solid_boxes(hole: Drilled, carry: Carry) -> list[Box]:
    """Return the boxes on the page that no word may enter; the arms stand out of them."""
    half = core(hole)
    boxes = [(x - half, y - half, x + half, y + half) for x, y in map(carry.point, hole.discs)]
    frame = frame_box(hole, carry)
    return [*boxes, frame] if frame is not None else boxes


def arm_traces(hole: Drilled, carry: Carry) -> list[Trace]:
    """Return the arms on the page."""
    return [t for i, at in enumerate(hole.discs) for t in _arms(hole, i, carry.point(at))]


def words(hole: Drilled, units: Units) -> tuple[str, ...]:
    """Return what is to be done, in lines: "tap M5, drill 4.2" or "clear 6.6 for M6 (17/64)"."""
    made, drill = hole.hole, hole.hole.drill
    if hole.made:
        return ("drilled", *_astray(hole, units))
    if drill is None:
        return (f"{made.thread}: drill not known",)
    if made.make == "tap":
        return (f"tap {made.thread}, drill {tap_drill(made.thread, drill, units)}",)
    size = clear_drill(drill, units, f" for {made.thread}")
    if len(hole.discs) == 1:
        return (f"clear {size}",)
    return (f"two holes {size},", f"{show_length(hole.apart, units)} apart; saw between")


def _astray(hole: Drilled, units: Units) -> tuple[str, ...]:
    """Return where the plan of a made hole lies from it as seen, nothing where it lies there."""
    if hole.planned is None:
        return ()
    dx, dy = hole.planned[0] - hole.at[0], hole.planned[1] - hole.at[1]
    ways = ((dx, "right" if dx > 0 else "left"), (dy, "up" if dy > 0 else "down"))
    shown = [(show_length(abs(mm), units), way) for mm, way in ways]
    nothing = show_length(0.0, units)
    told = " and ".join(f"{length} {way}" for length, way in shown if length != nothing)
    return (f"its plan lies {told}",) if told else ()


def _arms(hole: Drilled, which: int, centre: Point) -> list[Trace]:
    """Return the lines of one centre, turned with its slot; no long arm towards a slot's other centre."""
    r, far = hole.radius, reach(hole)
    ticks = [(OPEN, r - GAP)] if r > OPEN + GAP + SHORTEST else []
    outer = r + GAP if r else OPEN
    inward = {0: 0.0, 1: 180.0}[which] if len(hole.discs) == 2 else None
    found = []
    for way in (0.0, 90.0, 180.0, 270.0):
        arm = Carry.to((0.0, 0.0), way).then(Carry.to(centre, hole.turn))
        stretches = ticks if way == inward else [*ticks, (outer, far)]
        found += [line(arm.point((a, 0.0)), arm.point((b, 0.0))) for a, b in stretches]
    return found


def _strip(hole: Drilled, carry: Carry) -> tuple[Trace, ...]:
    """Return the two sides of a slot's strip."""
    if len(hole.discs) < 2:
        return ()
    slot = Carry.to(hole.at, hole.turn).then(carry)
    half = hole.apart / 2
    return tuple(line(slot.point((-half, y)), slot.point((half, y))) for y in (-hole.radius, hole.radius))
