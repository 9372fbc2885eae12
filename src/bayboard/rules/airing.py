"""The air that cards ask for beside and before their gear: what stands in it first, and how far away."""

from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

import numpy as np

from bayboard.geometry.sides import SIDES, Edge, Side
from bayboard.model.placed import Placed
from bayboard.rules.ahead import Free, Looks, Outward, Sideways, kept_free, nearest
from bayboard.rules.scene import Scene

Facing = Side | Literal["out"]


class AirSide(NamedTuple):
    """A side of a stand-in that asks for air, mm: left, right, up, down of its card, or out of the board."""

    placed: Placed
    facing: Facing
    asked: float

    @property
    def edge(self) -> Edge:
        """Return the side of the outline's box; only for sides along the board."""
        assert self.facing != "out"
        return self.placed.sides[self.facing]


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
    for group, rows, looks in looked(about):
        asked = np.array([side.asked for side in group])
        owners, before = kept_free(scene, "air", looks)
        first = np.searchsorted(rows, range(len(group)))
        by_side = np.minimum.reduceat(before, first, axis=0) if owners else before[first]
        for i, solid, far in nearest(Free(owners, by_side), asked):
            yield Stuffy(group[i], solid, far, _middle(group[i], far))


def looked(about: Sequence[AirSide]) -> Iterator[tuple[list[AirSide], list[int], Looks]]:
    """Yield sides with their looks and the number of the side that each look is of, in order.

    A side along the board has a look at the height of each body; all go before those out of the board.
    """
    aside = [side for side in about if side.facing != "out"]
    if aside:
        rows = [n for n, side in enumerate(aside) for _ in side.placed.bodies]
        yield aside, rows, _aside(aside)
    out = [side for side in about if side.facing == "out"]
    if out:
        yield out, list(range(len(out))), _out(out)


def _aside(group: Sequence[AirSide]) -> Sideways:
    """Return the strips beside some sides, one for each body."""
    rows = [(side, body.z) for side in group for body in side.placed.bodies]
    edges = [side.edge for side, _ in rows]
    return Sideways(
        ids=[side.placed.id for side, _ in rows],
        starts=np.array([e.middle for e in edges]),
        ways=np.array([e.way for e in edges]),
        wide=np.array([e.wide for e in edges]),
        far=np.array([side.asked for side, _ in rows]),
        z=[z for _, z in rows],
    )


def _out(group: Sequence[AirSide]) -> Outward:
    """Return the way out over the boxes of some stand-ins, from their highest body on."""
    return Outward(
        ids=[side.placed.id for side in group],
        rings=np.array([side.placed.box_ring for side in group]),
        z=np.array([top(side.placed) for side in group]),
    )


def top(placed: Placed) -> float:
    """Return z of the highest body of a stand-in."""
    return max(body.z[1] for body in placed.bodies)


def _middle(side: AirSide, free: float) -> tuple[float, float]:
    if side.facing == "out":
        x, y = side.placed.box_ring.mean(axis=0)
    else:
        x, y = side.edge.middle + side.edge.way * free / 2
    return float(x), float(y)
