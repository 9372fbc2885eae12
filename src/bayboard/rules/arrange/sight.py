"""A dial, fuse, plug or light that nobody sees with the seats folded.

Why: what cannot be seen cannot be set, read or traced; the amplifier comes off the board to turn a dial.
Quiet: from some eye point a free line meets the place within the limit of its facing.
Speaks: every free line is flatter than that, or there is none; told with the smallest free angle.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.model.layout import Service
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding, Said, Severity, Unchecked
from bayboard.rules.levels import LEVEL, Key, Levels
from bayboard.rules.meetings import body_members
from bayboard.rules.places import Places
from bayboard.rules.reached_at import seen_at
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed, no_section, unknown_bodies
from bayboard.tables.limits import limit
from bayboard.units.angle import show_two_angles

RULE = "sight"
WIDE = True


def look(scene: Scene, _about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each service point that is hidden or seen too flat, and what is unknown."""
    if not any(placed.card.service for placed in scene.placed.values()):
        for placed in scene.placed.values():
            yield from guessed(RULE, placed, ("service",))  # "none" may be the guess
        return
    if isinstance(scene.sight, str):
        yield from _unseeable(scene, scene.sight)
        yield from _unknown(scene)
        return
    most = limit(scene.layout, "sight_angle")
    for placed, views in zip(scene.placed.values(), scene.sight.views, strict=False):
        for service, view in zip(placed.card.service, views, strict=True):
            if not view.within(most):
                yield _finding(placed, service, view.angle, most)
    yield from _unknown(scene)


def _unknown(scene: Scene) -> Iterator[Unchecked]:
    yield from unknown_bodies(RULE, scene)
    for seat in scene.layout.bay.seats:
        if seat.folded is None:
            yield no_section(RULE, seat.id, "folded")
    for placed in scene.placed.values():
        yield from guessed(RULE, placed, (*body_members(placed), "service"))


def _unseeable(scene: Scene, why: str) -> Iterator[Unchecked]:
    for placed in scene.placed.values():
        for service in placed.card.service:
            yield Unchecked(rule=RULE, subjects=(f"{placed.id}.{service.id}",), says=why)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    if key is None or isinstance(scene.sight, str):
        return {}  # never a must
    found: dict[Key, Levels] = {}
    for placed in scene.placed.values():
        for service in placed.card.service:
            if key == (f"{placed.id}.{service.id}",):
                seen = seen_at(scene, places, placed, service, scene.sight.eyes)
                found[key] = LEVEL[_severity(service)] * (~seen).astype(np.int8)
    return found


def _severity(service: Service) -> Severity:
    return "note" if service.kind == "light" else "should"


def _finding(placed: Placed, service: Service, angle: float | None, most: float) -> Finding:
    what = f"{placed.id}'s {service.id}"
    if angle is None:
        says = f"{what} is hidden from everywhere with the seats folded."
    else:
        found, needed = show_two_angles(angle, most)
        says = f"{what} is seen {found} off straight at best with the seats folded. {needed} can be read."
    x, y, _ = placed.service_at(service)
    return Finding(
        rule=RULE,
        severity=_severity(service),
        subjects=(f"{placed.id}.{service.id}",),
        measure=angle,
        limit=most,
        unit="deg",
        at=(x, y),
        says=says,
    )
