"""A warm stand-in hangs over a hotter one.

Why: warm air rises; the upper one breathes what the lower one has heated.
Quiet: one of them is cool or of unknown heat, the upper is the hotter, they hang side by side, or the bay
leans so far that nothing on the board is above anything.
Speaks: both are warm, the lower is hotter, and the upper's box is above; gives the room between, along the
board.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.stacks import room_above
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding, Said
from bayboard.rules.levels import NOTE, Key, Levels
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed
from bayboard.rules.words import amount
from bayboard.tables.limits import fixed, limit

RULE = "warm-stack"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a note for each two warm stand-ins with the hotter one below."""
    if abs(scene.layout.bay.lean) > fixed("above_lean"):
        return
    known = [placed for placed in scene.placed.values() if placed.card.heat is not None]
    for placed in known:
        if about is None or placed.id in about:
            yield from guessed(RULE, placed, ("outline", "heat"))
    warm = [placed for placed in known if _heat(placed) >= limit(scene.layout, "warm_watts") - HAIR]
    if not warm:
        return
    boxes, heat = np.array([placed.box for placed in warm]), np.array([_heat(placed) for placed in warm])
    room = np.where(heat[:, None] > heat[None, :], room_above(boxes, boxes), np.inf)
    for i, j in np.argwhere(np.isfinite(room)):
        if about is None or not about.isdisjoint((warm[i].id, warm[j].id)):
            yield _finding(scene, warm[i], warm[j], float(room[i, j]))


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    if key is None:
        return {}  # never a must
    boxes = [
        places.model.box + np.tile(places.at, 2) if id_ == places.id else np.array([scene.placed[id_].box])
        for id_ in key
    ]
    room = room_above(*boxes).reshape(-1)  # the heat of the two stays as it is
    return {key: NOTE * np.isfinite(room).astype(np.int8)}


def _heat(placed: Placed) -> float:
    return placed.card.heat or 0.0


def _finding(scene: Scene, lower: Placed, upper: Placed, room: float) -> Finding:
    (low_left, _, low_right, low_top), (left, foot, right, _) = lower.box, upper.box
    at = (max(low_left, left) + min(low_right, right)) / 2.0, (low_top + foot) / 2.0
    fact = f"hangs {amount(room, scene.layout.units)} over" if room > HAIR else "stands right on"
    says = (
        f"{upper.id} ({_heat(upper):g} W) {fact} {lower.id} ({_heat(lower):g} W) and breathes its warm air."
    )
    return Finding(
        rule=RULE,
        severity="note",
        subjects=(lower.id, upper.id),
        measure=room,
        limit=None,
        unit="mm",
        at=at,
        says=f"{says} Side by side both run cooler.",
    )
