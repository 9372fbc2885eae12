"""A stand-in on its board: the card's frame carried into bay axes."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from shapely import Polygon

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Prism, standing
from bayboard.geometry.sides import SIDES, Edge, Side, box_ring, edge
from bayboard.model.layout import Board, Card, Gear, Layout, Point, Port, Service


@dataclass(frozen=True, slots=True)
class Body:
    """A prism that takes up room: a plan outline between two heights over z = 0."""

    ring: Points  # (n, 2), bay axes
    polygon: Polygon
    z: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Plug:
    """The room that the plug of a port takes: a plan rectangle and its z range, bay axes.

    `way` is the unit vector out of the port.  A plug that points out of the board stands on a square.
    """

    port: Port
    at: tuple[float, float, float]
    way: tuple[float, float, float]
    ring: Points  # (4, 2)
    z: tuple[float, float]


@dataclass(frozen=True)
class Placed:
    """A piece of gear with a place; everything it gives is in bay axes, mm and degrees.

    Always true: `gear.at` is not None.
    """

    gear: Gear
    card: Card
    board: Board

    @property
    def id(self) -> str:
        """Return the gear's id."""
        return self.gear.id

    @property
    def at(self) -> Point:
        """Return where the card's origin stands."""
        assert self.gear.at is not None
        return self.gear.at

    @property
    def under(self) -> float:
        """Return z of the underside: the board's front plus the gear's lift."""
        return self.board.front + self.gear.lift

    @property
    def top(self) -> float | None:
        """Return z of the front face, None when the card's height is not known."""
        return None if self.card.height is None else self.under + self.card.height

    @cached_property
    def ring(self) -> Points:
        """Return the outline, shape (n, 2)."""
        return outlines.placed(self.card.outline, self.at, self.gear.turn)

    @cached_property
    def polygon(self) -> Polygon:
        """Return the outline as a polygon."""
        return outlines.polygon(self.ring)

    @cached_property
    def box(self) -> tuple[float, float, float, float]:
        """Return (x0, y0, x1, y1) of the outline."""
        return outlines.box(self.ring)

    @cached_property
    def sides(self) -> dict[Side, Edge]:
        """Return the sides of the outline's box, named as on the card."""
        box = outlines.box(self.card.outline)
        return {side: edge(box, side, self.at, self.gear.turn) for side in SIDES}

    @cached_property
    def box_ring(self) -> Points:
        """Return the corners of the outline's box, turned with the card, (4, 2)."""
        return box_ring(outlines.box(self.card.outline), self.at, self.gear.turn)

    @cached_property
    def bodies(self) -> tuple[Body, ...]:
        """Return the room it takes: the card's solids, else outline by height; () if unknown."""
        if self.card.solids:
            return tuple(
                Body(ring, outlines.polygon(ring), (self.under + s.z[0], self.under + s.z[1]))
                for s in self.card.solids
                for ring in [outlines.placed(s.outline, self.at, self.gear.turn)]
            )
        if self.top is None:
            return ()
        return (Body(self.ring, self.polygon, (self.under, self.top)),)

    @cached_property
    def prisms(self) -> tuple[Prism, ...]:
        """Return the bodies as prisms, one each."""
        outlined = [s.outline for s in self.card.solids] or [self.card.outline]
        return tuple(
            standing(outline, self.at, self.gear.turn, *body.z)
            for outline, body in zip(outlined, self.bodies, strict=False)
        )

    @cached_property
    def plugs(self) -> tuple[Plug, ...]:
        """Return the room of the ports' plugs, in card order."""
        return tuple(self._plug(port) for port in self.card.ports)

    def _plug(self, port: Port) -> Plug:
        at, way, half = self.port_at(port), self.way(port.towards), port.plug_wide / 2.0
        aside, ahead = np.array([-way[1], way[0]]) * half, np.array(way[:2]) * port.plug
        if port.towards == "out":
            ring = outlines.placed(_square(port.at, half), self.at, self.gear.turn)
            return Plug(port, at, way, ring, (at[2], at[2] + port.plug))
        near = np.array(at[:2])
        ring = np.array([near - aside, near + ahead - aside, near + ahead + aside, near + aside])
        return Plug(port, at, way, ring, (at[2] - half, at[2] + half))

    def point(self, at: Point) -> Point:
        """Return a point of the card's frame in bay axes."""
        x, y = outlines.placed([at], self.at, self.gear.turn)[0]
        return float(x), float(y)

    def port_at(self, port: Port) -> tuple[float, float, float]:
        """Return (x, y, z) of a port."""
        return (*self.point(port.at), self.under + port.z)

    def service_at(self, service: Service) -> tuple[float, float, float]:
        """Return (x, y, z) of a service point."""
        return (*self.point(service.at), self.under + service.z)

    def way(self, towards: float | str) -> tuple[float, float, float]:
        """Return the unit vector of a port's `towards` or a service point's `facing`."""
        if isinstance(towards, str):
            return (0.0, 0.0, 1.0)
        c, s = outlines.unit(towards + self.gear.turn)
        return (c, s, 0.0)


def _square(at: Point, half: float) -> list[Point]:
    (x, y), h = at, half
    return [(x - h, y - h), (x + h, y - h), (x + h, y + h), (x - h, y + h)]


def board_of(layout: Layout, board_id: str | None) -> Board | None:
    """Return the board of that id, the first where the id is None, None where there is none."""
    for board in layout.boards:
        if board_id is None or board.id == board_id:
            return board
    return None


def place(layout: Layout, gear: Gear) -> Placed | None:
    """Return the stand-in on its board, None when it waits on the bench or there is no board."""
    board = board_of(layout, gear.board)
    if gear.at is None or board is None:
        return None
    return Placed(gear, layout.cards[gear.card], board)
