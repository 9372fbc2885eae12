"""A board as the person with the drill sees it: from the front, or mirrored from the back."""

from dataclasses import dataclass, replace
from functools import cached_property
from math import dist, hypot

import numpy as np
import shapely
from shapely import Polygon

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR
from bayboard.geometry.outline import Points, Ring
from bayboard.mechanics.bits import slot_apart
from bayboard.mechanics.holes import Hole, holes
from bayboard.model.drilled import drilled_at
from bayboard.model.layout import Board, Layout, Point
from bayboard.model.placed import Placed, place
from bayboard.paper.curves import Box, Carry, polyline, ring
from bayboard.paper.marks import Trace
from bayboard.tables.limits import fixed


@dataclass(frozen=True)
class Drilled:
    """A hole as drawn: `discs` are the centres to drill, two for a slot; `radius` 0: drill unknown.

    `made`: it is drilled already, there where `at` says; `planned`: its place by the plan where that is
    another, else None.
    """

    hole: Hole
    at: Point
    discs: tuple[Point, ...]
    radius: float
    turn: float  # degrees; a slot's direction as seen
    made: bool = False
    planned: Point | None = None

    @property
    def id(self) -> str:
        """Return the hole's id."""
        return self.hole.id

    @property
    def apart(self) -> float:
        """Return the distance of a slot's two centres, 0 for a plain hole."""
        (x0, y0), (x1, y1) = self.discs[0], self.discs[-1]
        return hypot(x1 - x0, y1 - y0)


@dataclass(frozen=True)
class StandIn:
    """A piece of gear on the board, as seen."""

    id: str
    outline: tuple[Point, ...]
    at: Point
    turn: float

    @property
    def trace(self) -> Trace:
        """Return the outline as a ring."""
        return polyline(self.outline, closed=True)


@dataclass(frozen=True)
class Face:
    """One board with its holes and stand-ins, in mm; `carry` takes bay axes to what is seen."""

    board: Board
    back: bool
    carry: Carry
    holes: tuple[Drilled, ...]
    stand_ins: tuple[StandIn, ...]

    @cached_property
    def outline(self) -> Trace:
        """Return the outline with its corners rounded."""
        return self.carry.trace(ring(self.board.outline, self.board.corner_radius))

    @cached_property
    def cutouts(self) -> tuple[tuple[str, Trace], ...]:
        """Return the id and ring of every cut-out."""
        return tuple((c.id, self.carry.trace(ring(c.outline))) for c in self.board.cutouts)

    @cached_property
    def solid(self) -> Polygon:
        """Return the board less its cut-outs, corners rounded."""
        rounded = self._seen(outlines.rounded(self.board.outline, self.board.corner_radius))
        return outlines.with_holes(rounded, [self._seen(c.outline) for c in self.board.cutouts])

    @cached_property
    def box(self) -> Box:
        """Return the box of the board."""
        return outlines.box(self._seen(self.board.outline))

    @cached_property
    def edges(self) -> tuple[tuple[float, ...], tuple[float, ...]]:
        """Return the x of upright edges and the y of level ones inside the box, outline and cut-outs."""
        upright: set[float] = set()
        level: set[float] = set()
        for points in (self.board.outline, *(c.outline for c in self.board.cutouts)):
            seen = self._seen(points)
            for (x0, y0), (x1, y1) in zip(seen, np.roll(seen, -1, axis=0), strict=True):
                if x0 == x1:
                    upright.add(float(x0))
                if y0 == y1:
                    level.add(float(y0))
        x0, y0, x1, y1 = self.box
        return tuple(sorted(upright - {x0, x1})), tuple(sorted(level - {y0, y1}))

    @cached_property
    def seen_all_round(self) -> Polygon:
        """Return the board grown by half its outline's line: what paper must show."""
        return shapely.buffer(self.solid, 0.3, quad_segs=2)

    def _seen(self, points: Ring | Points) -> Points:
        return self.carry.points(np.asarray(points, dtype=np.float64))


def face(layout: Layout, board: Board, back: bool) -> Face:
    """Return the face of a board; on the back x is mirrored within the board's own box."""
    x0, _, x1, _ = outlines.box(board.outline)
    carry = Carry.mirror(x0 + x1) if back else Carry()
    drilled = tuple(_drilled(layout, h, carry) for h in holes(layout) if h.board == board.id)
    standing = (p for g in layout.gear if (p := place(layout, g)) is not None and p.board.id == board.id)
    return Face(board, back, carry, drilled, tuple(_stand_in(p, carry) for p in standing))


def _drilled(layout: Layout, hole: Hole, carry: Carry) -> Drilled:
    """Return a hole where it is to be drilled, or where it was."""
    made = drilled_at(layout, hole.id)
    if made is None:
        return _bored(hole, carry.point(hole.at), carry)
    there, planned = carry.point(made), carry.point(hole.at)
    astray = dist(there, planned) > fixed("drilled_off") + HAIR
    return replace(_bored(hole, there, carry), made=True, planned=planned if astray else None)


def _bored(hole: Hole, at: Point, carry: Carry) -> Drilled:
    """Return a hole with its middle at a place as seen."""
    radius = (hole.drill or 0.0) / 2
    if hole.slot is None or hole.drill is None:
        return Drilled(hole, at, (at,), radius, 0.0)
    way = Carry.to((0.0, 0.0), hole.slot.angle).then(Carry(carry.a, carry.b, carry.c, carry.d))
    half = slot_apart(hole.drill, hole.slot.travel) / 2
    dx, dy = half * way.a, half * way.b
    discs = ((at[0] - dx, at[1] - dy), (at[0] + dx, at[1] + dy))
    return Drilled(hole, at, discs, radius, way.turn)


def _stand_in(placed: Placed, carry: Carry) -> StandIn:
    stood = Carry.to(placed.at, placed.gear.turn).then(carry)
    return StandIn(
        placed.id, tuple(stood.point(p) for p in placed.card.outline), carry.point(placed.at), stood.turn
    )
