"""Two things want the same place.

Why: stand-ins that lie into each other, or into metal that stays, cannot be mounted as printed.
Quiet: they touch, share less than a pencil line, or one is lifted clear over the other.
Speaks: they share plan area at the same height; gives the smaller side of the smallest rectangle round it.
"""

from collections.abc import Iterator

import numpy as np
import shapely

from bayboard.rules.finding import Finding, Said
from bayboard.rules.levels import MUST, Key, Levels
from bayboard.rules.meetings import Meeting, body_members, overlapping, share_at
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed, unknown_bodies
from bayboard.rules.words import amount
from bayboard.tables.limits import limit

RULE = "overlap"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each stand-in that lies into another or into a stay."""
    yield from unknown_bodies(RULE, scene, about)
    for id_, placed in scene.placed.items():
        if about is None or id_ in about:
            yield from guessed(RULE, placed, body_members(placed))
    for meeting in overlapping(scene, about, limit(scene.layout, "overlap_area")):
        yield _finding(scene, meeting)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    others = [id_ for id_ in key or (*places.others(scene), *scene.stays) if id_ != places.id]
    found = share_at(scene, places, others, limit(scene.layout, "overlap_area"))
    return {subjects: MUST * shared.astype(np.int8) for subjects, shared in found.items()}


def _finding(scene: Scene, meeting: Meeting) -> Finding:
    first, second = meeting.subjects
    deep = -meeting.measure
    stay = scene.stays.get(second)
    other = second if stay is None else f"the {stay[0].name} ({second}), which stays"
    body, into = meeting.bodies
    shared = shapely.intersection(body.polygon, into.polygon).centroid
    return Finding(
        rule=RULE,
        severity="must",
        subjects=meeting.subjects,
        measure=deep,
        limit=0.0,
        unit="mm",
        at=(shared.x, shared.y),
        says=f"{first} lies {amount(deep, scene.layout.units)} into {other}. Each needs a place of its own.",
    )
