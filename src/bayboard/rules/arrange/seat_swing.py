"""A seat sweeps into a stand-in on its way down.

Why: a seat that clears the gear while it stands up may still strike it as it turns, with a person's whole
weight behind it.
Quiet: turned about its hinge from up to folded it meets nothing; the start itself is left to seat-depth.
Speaks: it enters a stand-in at some step; gives how deep at the worst, the seat's give left out.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.outline import Points
from bayboard.geometry.sections import padded
from bayboard.geometry.swing import Swing, depths, shared_at
from bayboard.model.layout import Seat
from bayboard.model.placed import Body, Placed
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.levels import MUST, Key, Levels
from bayboard.rules.meetings import body_members
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.swinging import blocks, swing_of
from bayboard.rules.unlooked import doubtful, no_section
from bayboard.rules.words import amount
from bayboard.tables.limits import limit
from bayboard.units.length import show_length

RULE = "seat-swing"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each stand-in that a seat sweeps into."""
    if not scene.layout.bay.seats:
        return
    bodies: list[tuple[Placed, Body]] = []
    for id_, placed in scene.placed.items():
        if about is None or id_ in about:
            yield from doubtful(RULE, placed, body_members(placed))
            bodies += [(placed, body) for body in placed.bodies]
    for seat in scene.layout.bay.seats:
        swing = swing_of(seat, limit(scene.layout, "swing_off"))
        if isinstance(swing, Swing):
            yield from _judged(scene, seat, swing, bodies)
        elif about is None:
            yield _unlooked(scene, seat, swing)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    found: dict[Key, Levels] = {}
    for seat in scene.layout.bay.seats:
        swing = swing_of(seat, limit(scene.layout, "swing_off"))
        if isinstance(swing, Swing) and key in (None, (places.id, seat.id)):
            levels = found[places.id, seat.id] = places.silence
            for body in places.model.bodies:
                rows = blocks(places.rings(body.ring), seat.x, np.tile(body.z, (len(places), 1)))
                levels[depths(swing, rows).max(axis=1, initial=0.0) > HAIR] = MUST
    return found


def _judged(scene: Scene, seat: Seat, swing: Swing, bodies: list[tuple[Placed, Body]]) -> Iterator[Finding]:
    if not bodies:
        return
    rows = blocks(padded([b.ring for _, b in bodies]), seat.x, np.array([b.z for _, b in bodies]))
    deep = depths(swing, rows)
    worst: dict[str, int] = {}
    for i, (placed, _) in enumerate(bodies):
        k = worst.setdefault(placed.id, i)
        worst[placed.id] = i if deep[i].max(initial=0.0) > deep[k].max(initial=0.0) else k
    for i in worst.values():
        if deep[i].max(initial=0.0) > HAIR:
            yield _finding(scene, seat, swing, bodies[i][0], rows[i], deep[i])


def _finding(scene: Scene, seat: Seat, swing: Swing, placed: Placed, block: Points, deep: Points) -> Finding:
    step = int(deep.argmax())
    x = (max(placed.box[0], seat.x[0]) + min(placed.box[2], seat.x[1])) / 2.0
    shown = amount(float(deep[step]), scene.layout.units)
    return Finding(
        rule=RULE,
        severity="must",
        subjects=(placed.id, seat.id),
        measure=float(deep[step]),
        limit=0.0,
        unit="mm",
        at=(x, float(shared_at(swing, step, block).centroid.y)),
        says=f"Seat {seat.id} sweeps {shown} into {placed.id} as it folds. It needs a free way.",
    )


def _unlooked(scene: Scene, seat: Seat, away: float | None) -> Unchecked:
    for section, which in ((seat.up, "up"), (seat.folded, "folded")):
        if section is None:
            return no_section(RULE, seat.id, which)
    if seat.hinge is None:
        says = f"Nobody measured the hinge of seat {seat.id}."
    elif away is None:
        says = f"Nobody said which way seat {seat.id} swings."
    else:
        shown = show_length(away, scene.layout.units)
        says = f"Swung about its hinge, seat {seat.id} ends {shown} off where it was measured folded."
    return Unchecked(rule=RULE, subjects=(seat.id,), says=says)
