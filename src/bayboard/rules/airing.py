"""The air that cards ask for beside and before their gear: what stands in it first, and how far away."""

from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

import numpy as np

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.geometry.sides import SIDES, Edge, Side, box_ring, edge
from bayboard.model.placed import Placed
from bayboard.rules.ahead import Free, Outward, Sideways, free_out, free_sideways, nearest
from bayboard.rules.scene import Scene

Facing = Side | Literal["out"]


class AirSide(NamedTuple):
    """A side of a stand-in that asks for air, mm: left, right, up, down of its card, or out of the board."""

    placed: Placed
    facing: Facing
    asked: float


class Stuffy(NamedTuple):
    """A side with less air than it asks for: the nearest solid, how far off it is, the middle between."""

    side: AirSide
    solid: str
    free: float
    at: tuple[float, float]


def asks(placed: Placed) -> bool:
    """Return whether a card asks for air on any side."""
    air = placed.card.air
    return max(air.out, air.left, air.right, air.up, air.down) > 0.0


def air_sides(placed: Placed) -> list[AirSide]:
    """Return the sides of a stand-in of known height that ask for air, `out` last."""
    air = placed.card.air
    asked: list[tuple[Facing, float]] = [(name, getattr(air, name)) for name in SIDES]
    asked.append(("out", air.out))
    return [AirSide(placed, facing, mm) for facing, mm in asked if mm > 0.0 and placed.bodies]


def stuffy(scene: Scene, about: Sequence[AirSide]) -> Iterator[Stuffy]:
    """Yield the sides that have less air than they ask for."""
    out = [side for side in about if side.facing == "out"]
    aside = [side for side in about if side.facing != "out"]
    for group, measure in ((aside, free_aside), (out, free_before)):
        if group:
            asked = np.array([side.asked for side in group])
            for i, solid, free in nearest(measure(scene, group), asked):
                yield Stuffy(group[i], solid, free, _middle(group[i], free))


def free_aside(scene: Scene, group: Sequence[AirSide]) -> Free:
    """Return how far the strips beside some sides are free, over all the heights of their bodies."""
    rows = [(n, side, body.z) for n, side in enumerate(group) for body in side.placed.bodies]
    edges = [_edge(side) for _, side, _ in rows]
    looks = Sideways(
        ids=[side.placed.id for _, side, _ in rows],
        starts=np.array([e.middle for e in edges]),
        ways=np.array([e.way for e in edges]),
        wide=np.array([e.wide for e in edges]),
        far=np.array([side.asked for _, side, _ in rows]),
        z=[z for _, _, z in rows],
    )
    owners, before = free_sideways(scene, looks)
    first = np.searchsorted([n for n, _, _ in rows], range(len(group)))
    return Free(owners, np.minimum.reduceat(before, first, axis=0) if owners else before[first])


def free_before(scene: Scene, group: Sequence[AirSide]) -> Free:
    """Return how far the way out is free over the boxes of some stand-ins, from their highest body on."""
    looks = Outward(
        ids=[side.placed.id for side in group],
        rings=np.array([_ring(side.placed) for side in group]),
        z=np.array([top(side.placed) for side in group]),
    )
    return free_out(scene, looks)


def top(placed: Placed) -> float:
    """Return z of the highest body of a stand-in."""
    return max(body.z[1] for body in placed.bodies)


def _edge(side: AirSide) -> Edge:
    assert side.facing != "out"
    placed = side.placed
    return edge(outlines.box(placed.card.outline), side.facing, placed.at, placed.gear.turn)


def _ring(placed: Placed) -> Points:
    return box_ring(outlines.box(placed.card.outline), placed.at, placed.gear.turn)


def _middle(side: AirSide, free: float) -> tuple[float, float]:
    if side.facing == "out":
        x, y = _ring(side.placed).mean(axis=0)
    else:
        from_edge = _edge(side)
        x, y = from_edge.middle + from_edge.way * free / 2
    return float(x), float(y)
