"""A dial or fuse that no hand or driver gets at with the seats folded.

Why: a blown fuse that no fingers reach means the board comes out, at the roadside.
Quiet: nothing has to be turned there, or some straight way to it is as wide as its tool needs.
Speaks: the widest of the ways is narrower; told with its free diameter.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.hand import Hand
from bayboard.model.layout import Service
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding, Said, Severity
from bayboard.rules.levels import LEVEL, MUST, Key, Levels
from bayboard.rules.meetings import body_members
from bayboard.rules.places import Places
from bayboard.rules.reached_at import may_bar, reached_at
from bayboard.rules.reaching import handled
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed, no_section, unknown_bodies
from bayboard.units.length import show_two

RULE = "reach"
WIDE = True

_WHOSE = {"fingers": "fingers", "screwdriver": "a screwdriver"}


def look(scene: Scene, _about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each service point whose widest way is too narrow, and what is unknown."""
    if not any(handled(placed) for placed in scene.placed.values()):
        for placed in scene.placed.values():
            yield from guessed(RULE, placed, ("service",))  # "none" may be the guess
        return
    for placed, holder in zip(scene.placed.values(), scene.reach.things, strict=False):
        for service, hand in zip(handled(placed), holder.hands, strict=True):
            if not hand.enough:
                yield _finding(scene, placed, service, hand)
    yield from unknown_bodies(RULE, scene)
    for seat in scene.layout.bay.seats:
        if seat.folded is None:
            yield no_section(RULE, seat.id, "folded")
    for placed in scene.placed.values():
        yield from guessed(RULE, placed, (*body_members(placed), "service"))


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    found: dict[Key, Levels] = {}
    for placed in scene.placed.values():
        for service in handled(placed):
            subjects = (f"{placed.id}.{service.id}",)
            level = LEVEL[_severity(service)]
            new_must = key is None and level == MUST and may_bar(scene, places, placed, service)
            if subjects == key or new_must:
                reached = reached_at(scene, places, placed, service)
                found[subjects] = level * (~reached).astype(np.int8)
    return found


def _severity(service: Service) -> Severity:
    return "must" if service.kind == "fuse" else "should"


def _finding(scene: Scene, placed: Placed, service: Service, hand: Hand) -> Finding:
    what, who = f"{placed.id}'s {service.id}", _WHOSE[service.tool]
    found, need = show_two(hand.width, hand.need, scene.layout.units)
    if hand.width == 0:
        says = f"No way for {who} to {what} with the seats folded: every one meets something."
    else:
        says = f"The way to {what} is {found} wide with the seats folded. It needs {need} for {who}."
    x, y, _ = placed.service_at(service)
    return Finding(
        rule=RULE,
        severity=_severity(service),
        subjects=(f"{placed.id}.{service.id}",),
        measure=hand.width,
        limit=hand.need,
        unit="mm",
        at=(x, y),
        says=says,
    )
