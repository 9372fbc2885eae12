"""A stand-in hangs over the edge of its board.

Why: what the board does not carry cannot be screwed down, and an edge in the air catches hands and cables.
Quiet: the whole outline lies on the board, even round a cut-out, or hangs out by less than a saw follows.
Speaks: some of its outline is off the board or over a cut-out, or a screw has nothing to bite; gives how far
the outline reaches out.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.rims import Rim, farthest_out, rim_depths
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding, Said
from bayboard.rules.levels import MUST, SHOULD, Key, Levels
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed
from bayboard.rules.words import amount
from bayboard.tables.limits import limit

RULE = "off-board"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each stand-in that is not wholly on its board."""
    asked = [placed for id_, placed in scene.placed.items() if about is None or id_ in about]
    for placed in asked:
        yield from guessed(RULE, placed, ("outline", "screws"))
    for board_id, shape in scene.boards.items():
        on_it = [placed for placed in asked if placed.board.id == board_id]
        out = farthest_out([placed.ring for placed in on_it], shape.rim)
        loose = _screws_off(on_it, shape.rim)
        for placed, far in zip(on_it, out, strict=True):
            reaches = float(far) if far >= limit(scene.layout, "outside_silent") else 0.0
            if reaches or placed.id in loose:
                yield _finding(scene, placed, reaches, loose.get(placed.id, []))


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    rim = scene.boards[places.model.board.id].rim
    levels = places.silence
    if key is not None:  # reaching out alone is no must
        silent = limit(scene.layout, "outside_silent")
        rings = places.rings(places.model.ring)
        corners = rim_depths(rings.reshape(-1, 2), rim).reshape(len(places), -1)
        far = corners.min(axis=1) < -2 * silent  # no need to look for the farthest point
        levels[far] = SHOULD
        rest = np.flatnonzero(~far)
        levels[rest[farthest_out(list(rings[rest]), rim) >= silent]] = SHOULD
    for screw in places.model.card.screws:
        levels[rim_depths(places.points(screw.at), rim) < -HAIR] = MUST
    return {(places.id,): levels}


def _screws_off(standing: list[Placed], rim: Rim) -> dict[str, list[int]]:
    """Return the numbers of the screws whose centre is off the board or in a cut-out, by stand-in."""
    screws = [
        (placed, n, screw) for placed in standing for n, screw in enumerate(placed.card.screws, start=1)
    ]
    at = np.array([placed.point(screw.at) for placed, _, screw in screws])
    loose: dict[str, list[int]] = {}
    for k in np.flatnonzero(rim_depths(at, rim) < -HAIR):
        placed, n, _ = screws[k]
        loose.setdefault(placed.id, []).append(n)
    return loose


def _finding(scene: Scene, placed: Placed, reaches: float, loose: list[int]) -> Finding:
    facts = []
    if reaches:
        facts.append(f"{placed.id} reaches {amount(reaches, scene.layout.units)} beyond its board.")
    if loose:
        which = " and ".join(f"{placed.id}#{n}" for n in loose)
        facts.append(f"{which} {'has' if len(loose) == 1 else 'have'} no board to go into.")
    elif reaches:
        facts.append("Wholly on it is better.")
    return Finding(
        rule=RULE,
        severity="must" if loose else "should",
        subjects=(placed.id,),
        measure=reaches,
        limit=0.0,
        unit="mm",
        at=placed.at,
        says=" ".join(facts),
    )
