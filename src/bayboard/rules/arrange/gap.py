"""Two stand-ins stand too close together.

Why: hands, plugs and warm air need room between boxes, and a saw or drill wanders a little.
Quiet: far enough apart, not at the same height, or lying into each other (overlap speaks); two cold
pieces may all but touch.
Speaks: nearer than the limits; gives the plan distance between the nearest bodies.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.crowd import HAIR, middle_between
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding, Said, Severity
from bayboard.rules.levels import LEVEL, SILENT, Key, Levels
from bayboard.rules.meetings import Meeting, apart_at, body_members, close, lies_into, share_at
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed, no_height
from bayboard.rules.words import amount_and_need
from bayboard.tables.limits import limit

RULE = "gap"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each two stand-ins that are too close."""
    for id_, placed in scene.placed.items():
        if about is None or id_ in about:
            if not placed.bodies:
                yield no_height(RULE, id_)
            yield from guessed(RULE, placed, (*body_members(placed), "heat"))
    for meeting in close(scene, about, _most(scene)):
        yield from _judged(scene, meeting)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    others = [id_ for id_ in key or places.others(scene) if id_ != places.id]
    found = {}
    for subjects, apart in apart_at(scene, places, others, _most(scene)).items():
        levels = places.silence
        for severity, need in _limits(scene, *(scene.placed[id_] for id_ in subjects)):
            levels[apart < need - HAIR] = np.maximum(levels[apart < need - HAIR], LEVEL[severity])
        touching = np.flatnonzero(apart <= HAIR)
        area = limit(scene.layout, "overlap_area")
        for into in share_at(scene, places.some(touching), set(subjects) - {places.id}, area).values():
            levels[touching[into]] = SILENT
        found[subjects] = levels
    return found


def _judged(scene: Scene, meeting: Meeting) -> Iterator[Finding]:
    first, second = (scene.placed[id_] for id_ in meeting.subjects)
    needed = _needed(scene, meeting.measure, first, second)
    if needed is None:
        return
    if meeting.measure <= HAIR and lies_into(first, second, limit(scene.layout, "overlap_area")):
        return
    severity, need = needed
    apart, shown = amount_and_need(meeting.measure, need, scene.layout.units)
    fact = f"stands {apart} off" if meeting.measure > HAIR else "touches"
    wish = f"It needs {shown}" if severity == "must" else f"{shown} is better"
    yield Finding(
        rule=RULE,
        severity=severity,
        subjects=meeting.subjects,
        measure=meeting.measure,
        limit=need,
        unit="mm",
        at=middle_between(meeting.bodies[0].polygon, meeting.bodies[1].polygon),
        says=f"{first.id} {fact} {second.id}. {wish}.",
    )


def _needed(scene: Scene, apart: float, first: Placed, second: Placed) -> tuple[Severity, float] | None:
    """Return the severity and the limit that is crossed, None when there is room enough."""
    crossed = (held for held in _limits(scene, first, second) if apart < held[1] - HAIR)
    return next(crossed, None)


def _limits(scene: Scene, first: Placed, second: Placed) -> list[tuple[Severity, float]]:
    """Return the severities that two stand-ins may come to, the worst first, each with its limit."""
    if _is_cold(scene, first) and _is_cold(scene, second):
        return [("must", limit(scene.layout, "gap_cold"))]
    return [("must", limit(scene.layout, "gap_must")), ("should", limit(scene.layout, "gap_should"))]


def _most(scene: Scene) -> float:
    return max(limit(scene.layout, name) for name in ("gap_must", "gap_should", "gap_cold"))


def _is_cold(scene: Scene, placed: Placed) -> bool:
    heat = placed.card.heat
    return heat is not None and heat < limit(scene.layout, "cold_watts")
