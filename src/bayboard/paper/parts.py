"""Stand-ins larger than a sheet, cut into parts taped edge to edge; joins keep off screws and signs."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product
from math import ceil
from typing import TypeVar

import shapely
from shapely import LineString, Polygon

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Card, Point, Port, Service
from bayboard.model.refused import Refused
from bayboard.paper import seams
from bayboard.paper.curves import Box
from bayboard.paper.seams import Axis, Seams
from bayboard.paper.stand_in import screw_radius

Kind = TypeVar("Kind", Polygon, LineString)

SCREW_CLEAR = 3.0  # mm; a join nearer to a screw's hole or a sign gets one more part
MOST_PARTS = 100  # of one stand-in
SIGN = 1.0  # mm; half of what must stay whole of a port's or a service point's sign


@dataclass(frozen=True, slots=True)
class Parts:
    """The polygons a card is cut into, in its own frame, and the straight joins between them."""

    polygons: tuple[Polygon, ...]
    joins: tuple[tuple[Point, Point], ...]

    @property
    def boxes(self) -> tuple[Box, ...]:
        """Return the box of each part."""
        return tuple(_box(p) for p in self.polygons)

    @property
    def sizes(self) -> tuple[tuple[float, float], ...]:
        """Return (width, height) of each part."""
        return tuple((x1 - x0, y1 - y0) for x0, y0, x1, y1 in self.boxes)


def parted(card: Card, sheet: tuple[float, float]) -> Parts:
    """Return a card cut so that each part fits a sheet of that size either way; one part if it fits."""
    x0, y0, x1, y1 = outlines.box(card.outline)
    if any(x1 - x0 <= wide and y1 - y0 <= high for wide, high in (sheet, sheet[::-1])):
        return Parts((outlines.polygon(card.outline),), ())
    found = [_parted(card, room) for room in (sheet, sheet[::-1])]
    return min(found, key=lambda p: len(p.polygons))


def _parted(card: Card, room: Sequence[float]) -> Parts:
    box, shape = outlines.box(card.outline), outlines.polygon(card.outline)
    needed = ceil((box[2] - box[0]) / room[0]) * ceil((box[3] - box[1]) / room[1])
    if needed > MOST_PARTS:
        what = f"its stand-in needs {needed} sheets, more than anybody tapes together"
        raise Refused(f"card {card.name} › outline", what, "Correct the outline")
    across, up = (_seams(card, box, i, room[i]) for i in (0, 1))
    xs, ys = (box[0], *across, box[2]), (box[1], *up, box[3])
    polygons = [
        piece
        for (y0, y1), (x0, x1) in product(pairwise(ys), pairwise(xs))
        for piece in _pieces(shapely.intersection(shape, shapely.box(x0, y0, x1, y1)), Polygon)
    ]
    return Parts(tuple(polygons), tuple(_joins(shape, xs, ys)))


def _seams(card: Card, box: Box, i: int, room: float) -> Seams:
    """Return the fewest joins along an axis, one more where that keeps them off the screws."""
    screws = [(s.at[i] - screw_radius(s), s.at[i] + screw_radius(s)) for s in card.screws]
    things: tuple[Port | Service, ...] = (*card.ports, *card.service)
    points = [(p.at[i] - SIGN, p.at[i] + SIGN) for p in things]
    spans = tuple(span for span in (*screws, *points) if box[i] < span[0] and span[1] < box[i + 2])
    axis = Axis(box[i], box[i + 2], room, room, room, spans)
    count = seams.fewest(axis)
    tries = (count, count + 1) if count else (0,)
    found = [best for n in tries if (best := seams.best(axis, n)) is not None]
    return next((s for clear, s in found if clear >= SCREW_CLEAR), max(found)[1])


def _joins(shape: Polygon, xs: Sequence[float], ys: Sequence[float]) -> Iterator[tuple[Point, Point]]:
    """Return the stretches of the seams that lie on the card, parted where seams cross."""
    upright = [((x, y0), (x, y1)) for x in xs[1:-1] for y0, y1 in pairwise(ys)]
    level = [((x0, y), (x1, y)) for y in ys[1:-1] for x0, x1 in pairwise(xs)]
    for a, b in (*upright, *level):
        for piece in _pieces(shapely.intersection(shape, LineString((a, b))), LineString):
            (ax, ay), (bx, by) = piece.coords[0], piece.coords[-1]
            yield (ax, ay), (bx, by)


def _pieces(shape: shapely.Geometry, kind: type[Kind]) -> list[Kind]:
    return [p for p in getattr(shape, "geoms", [shape]) if isinstance(p, kind) and not p.is_empty]


def _box(polygon: Polygon) -> Box:
    x0, y0, x1, y1 = polygon.bounds
    return float(x0), float(y0), float(x1), float(y1)
