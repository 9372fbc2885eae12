"""A hole stands too near the edge of its board.

Why: a thin web beside a hole cracks when the screw is tightened or the vehicle shakes.
Quiet: the centre is far enough from the rim and from every cut-out.
Speaks: it is nearer than the limit times the drill; gives its distance from the edge, negative off the board
or in a cut-out.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.rims import rim_depths
from bayboard.mechanics.holes import Hole, screw_holes
from bayboard.rules.finding import Finding, Said
from bayboard.rules.known_holes import known_holes, unlooked
from bayboard.rules.levels import MUST, Key, Levels
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.words import amount, amount_and_need
from bayboard.tables.limits import limit
from bayboard.units.length import show_length

RULE = "hole-edge"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each hole too near an edge."""
    yield from unlooked(RULE, scene, about)
    holes = [hole for hole in known_holes(scene) if about is None or hole.owner in about]
    for board_id, shape in scene.boards.items():
        on_it = [hole for hole in holes if hole.board == board_id]
        deep = rim_depths(np.array([hole.at for hole in on_it]), shape.rim)
        for hole, value in zip(on_it, deep, strict=True):
            need = limit(scene.layout, "edge_d") * (hole.drill or 0.0)
            if value < need - HAIR:
                yield _finding(scene, hole, float(value), need)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    found: dict[Key, Levels] = {}
    for hole in screw_holes(places.model):
        if hole.drill is not None and key in (None, (hole.id,)):
            deep = rim_depths(hole.at + places.at, scene.boards[hole.board].rim)
            near = deep < limit(scene.layout, "edge_d") * hole.drill - HAIR
            found[(hole.id,)] = MUST * near.astype(np.int8)
    return found


def _finding(scene: Scene, hole: Hole, deep: float, need: float) -> Finding:
    units = scene.layout.units
    shown, wanted = amount_and_need(deep, need, units)
    if deep < -HAIR:
        fact = f"{hole.id} is off its board by {amount(-deep, units)}"
    else:
        fact = f"{hole.id} is {shown} from" if deep > HAIR else f"{hole.id} is on"
        fact += " the edge of its board"
    return Finding(
        rule=RULE,
        severity="must",
        subjects=(hole.id,),
        measure=deep,
        limit=need,
        unit="mm",
        at=hole.at,
        says=f"{fact}. A {show_length(hole.drill or 0.0, units)} hole needs {wanted}.",
    )
