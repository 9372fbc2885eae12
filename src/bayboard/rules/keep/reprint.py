"""A board's holes are no longer what was printed.

Why: whoever drills from the older sheet drills in the wrong place, and a wrong hole spoils the board.
Quiet: nothing was printed yet, or every hole stands, and is made, as on the sheets.
Speaks: holes came, went, moved, or want another drill or slot; gives how many, and names them.
"""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.mechanics.holes import screw_holes
from bayboard.mechanics.printed import changed_among
from bayboard.model.layout import Point, Printed
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.levels import SHOULD, Key, Levels
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed
from bayboard.tables.limits import fixed

RULE = "reprint"
WIDE = True  # a screw that moves changes what is said of its board


def look(scene: Scene, _about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each board whose sheets no longer hold; always of the whole."""
    printed = scene.layout.printed
    if printed is None:
        return
    shown = frozenset(hole.id for hole in printed.holes)
    for hole in scene.holes:
        if hole.drill is None and hole.id not in shown:
            says = f"No table has {hole.thread}, so nobody knows whether the sheets still show {hole.id}."
            yield Unchecked(rule=RULE, subjects=(hole.id,), says=says)
    for placed in scene.placed.values():
        yield from guessed(RULE, placed, ("screws",))
    for board, changed in changed_among(scene.layout, scene.holes).items():
        if len(changed) >= fixed("reprint_holes"):
            yield _finding(scene, printed, board, changed)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    if key is None or scene.layout.printed is None:
        return {}  # never a must
    shown = {hole.id: hole.at for hole in scene.layout.printed.holes}
    own = list(screw_holes(places.model))
    others = [hole for hole in scene.holes if hole.owner != places.id]
    as_shown = [replace(hole, at=shown.get(hole.id, hole.at)) for hole in own]
    always = changed_among(scene.layout, [*others, *as_shown]).get(key[0], ())
    count = np.full(len(places), len(always))
    for hole in own:
        if hole.board == key[0] and hole.id in shown and hole.id not in always:
            count += np.hypot(*(places.at + hole.at - shown[hole.id]).T) > fixed("reprint_off") + HAIR
    return {key: SHOULD * (count >= fixed("reprint_holes")).astype(np.int8)}


def _finding(scene: Scene, printed: Printed, board: str, changed: tuple[str, ...]) -> Finding:
    many = len(changed) > 1
    count = f"{len(changed)} holes differ" if many else "1 hole differs"
    names = ", ".join(changed)
    return Finding(
        rule=RULE,
        severity="should",
        subjects=(board,),
        measure=float(len(changed)),
        limit=fixed("reprint_holes"),
        unit="holes",
        at=_place(scene, printed, changed[0]),
        says=f"{count} from the sheets printed as revision {printed.revision}: {names}. Print again.",
    )


def _place(scene: Scene, printed: Printed, name: str) -> Point:
    """Return where a hole is planned, where it was printed when it is gone."""
    places = {hole.id: hole.at for hole in printed.holes} | {hole.id: hole.at for hole in scene.holes}
    return places[name]
