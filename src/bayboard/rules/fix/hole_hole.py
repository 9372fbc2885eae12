"""Two holes of a board stand too close together.

Why: the web between them breaks out when drilled or loaded.
Quiet: far enough apart, or in different boards.
Speaks: their centres are nearer than the limit times the larger drill; gives the distance of the centres.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.rims import distances
from bayboard.mechanics.holes import Hole
from bayboard.rules.finding import Finding, Said
from bayboard.rules.known_holes import known_holes, unlooked
from bayboard.rules.scene import Scene
from bayboard.rules.words import amount_and_need
from bayboard.tables.limits import limit

RULE = "hole-hole"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each two holes too close together."""
    yield from unlooked(RULE, scene, about)
    holes = known_holes(scene)
    asked = np.array([about is None or hole.owner in about for hole in holes], dtype=np.bool_)
    order = np.arange(len(holes))
    rows = np.flatnonzero(asked)
    at = np.array([hole.at for hole in holes]).reshape(-1, 2)
    drill = np.array([hole.drill for hole in holes], dtype=np.float64)
    board = np.array([hole.board for hole in holes])
    apart = distances(at[rows], at)
    need = limit(scene.layout, "pitch_d") * np.maximum(drill[rows, None], drill[None, :])
    once = (rows[:, None] < order) | (~asked & (rows[:, None] != order))
    for i, j in np.argwhere(once & (board[rows, None] == board) & (apart < need - HAIR)):
        pair = holes[min(rows[i], j)], holes[max(rows[i], j)]
        yield _finding(scene, pair, float(apart[i, j]), float(need[i, j]))


def _finding(scene: Scene, pair: tuple[Hole, Hole], apart: float, need: float) -> Finding:
    a, b = pair
    shown, wanted = amount_and_need(apart, need, scene.layout.units)
    return Finding(
        rule=RULE,
        severity="must",
        subjects=(a.id, b.id),
        measure=apart,
        limit=need,
        unit="mm",
        at=((a.at[0] + b.at[0]) / 2.0, (a.at[1] + b.at[1]) / 2.0),
        says=f"{a.id} and {b.id} are {shown} apart, centre to centre. They need {wanted}.",
    )
