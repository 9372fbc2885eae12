"""Two holes of a board stand too close together.

Why: the web between them breaks out when drilled or loaded.
Quiet: far enough apart, or in different boards.
Speaks: their centres are nearer than the limit times the larger drill; gives the distance of the centres.
"""

from collections.abc import Iterator
from itertools import combinations

import numpy as np

from bayboard.geometry.crowd import HAIR, Flags
from bayboard.geometry.outline import Points
from bayboard.geometry.rims import distances
from bayboard.mechanics.holes import Hole, screw_holes
from bayboard.rules.finding import Finding, Said
from bayboard.rules.known_holes import known_holes, unlooked
from bayboard.rules.levels import MUST, Key, Levels
from bayboard.rules.places import Places
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
    need = _need(scene, drill[rows, None], drill[None, :])
    once = (rows[:, None] < order) | (~asked & (rows[:, None] != order))
    for i, j in np.argwhere(once & (board[rows, None] == board) & (apart < need - HAIR)):
        pair = holes[min(rows[i], j)], holes[max(rows[i], j)]
        yield _finding(scene, pair, float(apart[i, j]), float(need[i, j]))


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    asked = [hole for hole in known_holes(scene) if key is None or hole.id in key]
    rest = [hole for hole in asked if hole.board == places.model.board.id and hole.owner != places.id]
    names = {hole.id for hole in asked}
    own = [hole for hole in screw_holes(places.model) if hole.id in names]
    order = {hole.id: n for n, hole in enumerate(scene.holes)}
    found: dict[Key, Levels] = {}
    for hole in own:
        near = _near(scene, places.at + hole.at, hole, rest)
        for column in np.flatnonzero(near.any(axis=0)):
            pair = sorted((hole.id, rest[column].id), key=order.__getitem__)
            found[tuple(pair)] = MUST * near[:, column].astype(np.int8)
    for first, second in combinations(own, 2):  # they move together
        if _near(scene, np.array([first.at]), first, [second]).any():
            found[first.id, second.id] = np.full(len(places), MUST, dtype=np.int8)
    return found


def _near(scene: Scene, at: Points, hole: Hole, others: list[Hole]) -> Flags:
    """Return whether a hole at many places is too near to each of the others, (places, others)."""
    there = np.array([other.at for other in others]).reshape(-1, 2)
    drills = np.array([other.drill for other in others], dtype=np.float64)
    return np.asarray(distances(at, there) < _need(scene, hole.drill or 0.0, drills) - HAIR)


def _need(scene: Scene, drill: Points | float, other: Points) -> Points:
    """Return how far apart the centres of two holes have to be, mm."""
    return np.asarray(limit(scene.layout, "pitch_d") * np.maximum(drill, other))


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
