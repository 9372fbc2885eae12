"""What a lead lies on and what stands in its way there."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from math import cos, pi, radians, sin
from typing import Literal

import shapely
from shapely.geometry.base import BaseGeometry

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.model.layout import Board, Layout, Outline, Point
from bayboard.model.placed import Placed, board_of
from bayboard.routing.grown import Shape, grown
from bayboard.tables.reference import thread

RIM = "rim"  # the owner of what lies outside the board; no id, for ids are longer known things of the layout
HAIR = 1e-9  # mm; heights that share no more than this do not meet
MOST_CORNERS = 3000  # beyond this many, outlines of very many points are drawn a little larger with fewer
COARSE = (0.0, 0.05, 0.25, 1.0, 5.0)  # mm


@dataclass(frozen=True, slots=True)
class Bed:
    """The boards a lead lies on, the side of them, and its diameter in mm."""

    boards: tuple[str, ...]
    side: Literal["front", "back"]
    od: float


@dataclass(frozen=True, eq=False)
class Obstacle:
    """One thing in the way: outlines in their own frame, where they stand, and by how much they are grown."""

    kind: Literal["gear", "cut-out", "fixing", "rim"]
    owner: str
    rings: tuple[Outline, ...]
    at: Point
    turn: float
    growth: float
    coarse: float = 0.0

    def put(self, at: Point, turn: float) -> "Obstacle":
        """Return the thing at another place, itself when that is where it stands."""
        return self if (at, turn) == (self.at, self.turn) else replace(self, at=at, turn=turn)

    @cached_property
    def shape(self) -> Shape:
        """Return what the centre line of a lead may not enter."""
        return grown(self.rings, self.growth, self.coarse).moved(self.at, self.turn)

    @cached_property
    def bare(self) -> Shape:
        """Return the thing itself, not grown."""
        return grown(self.rings, 0.0, self.coarse).moved(self.at, self.turn)

    @cached_property
    def rims(self) -> tuple[Points, ...]:
        """Return the outlines where they stand, (n, 2) each."""
        return tuple(outlines.placed(ring, self.at, self.turn) for ring in self.rings)

    @cached_property
    def polygon(self) -> BaseGeometry:
        """Return the thing itself in plan."""
        return shapely.union_all([outlines.polygon(ring) for ring in self.rims])


def boards_of(layout: Layout, bed: Bed) -> list[Board]:
    """Return the boards of a bed."""
    return [board for board in (board_of(layout, name) for name in bed.boards) if board is not None]


def fixed(layout: Layout, bed: Bed, growth: float) -> list[Obstacle]:
    """Return the cut-outs of the bed's boards and the washers of its fixings, grown."""
    found = [
        Obstacle("cut-out", cutout.id, (cutout.outline,), (0.0, 0.0), 0.0, growth)
        for board in boards_of(layout, bed)
        for cutout in board.cutouts
    ]
    for fixing in layout.fixings:
        bolt = thread(fixing.thread)
        if bolt is not None and fixing.board in bed.boards:
            ring = octagon(bolt.large_washer_od / 2.0)
            found.append(Obstacle("fixing", fixing.id, (ring,), fixing.at, 0.0, growth))
    return found


def octagon(radius: float) -> Outline:
    """Return the octagon round a circle about the origin."""
    out = radius / cos(pi / 8)
    return tuple((out * cos(radians(a)), out * sin(radians(a))) for a in (22.5 + 45.0 * k for k in range(8)))


def standing(layout: Layout, bed: Bed, placed: Iterable[Placed], growth: float) -> list[Obstacle]:
    """Return the stand-ins whose height meets that of a lead on the bed, grown; none on the back."""
    if bed.side == "back":
        return []
    low = boards_of(layout, bed)[0].front
    met = [(p, _met(p, low, low + bed.od)) for p in placed]
    return [Obstacle("gear", p.id, rings, p.at, p.gear.turn, growth) for p, rings in met if rings]


def _met(placed: Placed, low: float, high: float) -> tuple[Outline, ...]:
    """Return the outlines of the parts whose heights meet low … high.

    A stand-in whose height nobody measured is in the way where it starts below `high`: a lead is not
    led through it.
    """
    under, card = placed.under, placed.card
    if card.solids:
        spans = [(s.outline, under + s.z[0], under + s.z[1]) for s in card.solids]
    else:
        spans = [(card.outline, under, float("inf") if placed.top is None else placed.top)]
    return tuple(ring for ring, z0, z1 in spans if min(z1, high) - max(z0, low) > HAIR)


def in_the_way(layout: Layout, bed: Bed, placed: Mapping[str, Placed], growth: float) -> list[Obstacle]:
    """Return everything in the way of a lead on the bed: gear, cut-outs, fixings, each grown."""
    found = standing(layout, bed, placed.values(), growth) + fixed(layout, bed, growth)
    coarse = _coarse(found)
    if not coarse:
        return found
    return [replace(o, coarse=coarse) for o in found]


def _coarse(found: Sequence[Obstacle]) -> float:
    for coarse in COARSE:
        corners = [len(grown(o.rings, o.growth, coarse).corners.at) for o in found]
        if sum(corners) <= MOST_CORNERS:
            return coarse
    return COARSE[-1]
