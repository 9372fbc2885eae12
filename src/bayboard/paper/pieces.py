"""What is cut out of the pages of stand-ins: whole pieces, or the parts of those larger than a sheet."""

from collections.abc import Iterator
from dataclasses import dataclass

import shapely

from bayboard.model.layout import Card, Point
from bayboard.paper import lettering, place_labels, stand_in, stand_in_words
from bayboard.paper.curves import Box, grown, line, polyline, rectangle, ring
from bayboard.paper.marks import CUT, MEASURED, Clipped, Fill, Letters, Mark, Stroke, Trace, pt
from bayboard.paper.parts import Parts
from bayboard.paper.place_labels import Block
from bayboard.paper.stand_in_words import Told

JOIN_WORD = pt(7.5)
JOIN_TICK = 4.0  # mm; a join's mark reaches this far into either part
LINE = 0.2  # mm; half a cut line and a little, so that clipping leaves the whole of it


@dataclass(frozen=True)
class Join:
    """A numbered place where two parts are taped together, in the card's frame."""

    number: int
    a: Point
    b: Point

    @property
    def middle(self) -> Point:
        """Return where its mark stands."""
        return (self.a[0] + self.b[0]) / 2, (self.a[1] + self.b[1]) / 2

    @property
    def mark(self) -> Trace:
        """Return the short line across the join."""
        (x, y), upright = self.middle, self.a[0] == self.b[0]
        dx, dy = (JOIN_TICK, 0.0) if upright else (0.0, JOIN_TICK)
        return line((x - dx, y - dy), (x + dx, y + dy))


@dataclass(frozen=True)
class Piece:
    """Something to cut out: marks in its card's frame, their box, its polygon if it is a part, joins."""

    id: str
    box: Box
    shape: tuple[Stroke | Fill | Clipped, ...]
    words: tuple[Mark, ...]
    part: tuple[Point, ...]
    joins: tuple[Join, ...]


def pieces(card: Card, told: Told, parts: Parts, first_join: int) -> Iterator[Piece]:
    """Return the pieces of one stand-in; its joins are numbered from `first_join`."""
    joins = tuple(Join(first_join + i, a, b) for i, (a, b) in enumerate(parts.joins))
    lines = tuple(polyline((j.a, j.b)) for j in joins)
    outline = ring(card.outline)
    drawn: list[Stroke | Fill | Clipped] = [
        Clipped(outline, tuple(stand_in.strokes(card))),
        Stroke((outline,), CUT),
    ]
    if joins:
        drawn += [Stroke(lines, CUT), Stroke(tuple(j.mark for j in joins), MEASURED)]
    ground = stand_in_words.ground(card, (*lines, *(j.mark for j in joins)))
    words = [m for j in joins for m in _join_words(j, ground)]
    words += stand_in_words.words(card, told, ground, parts.boxes)
    whole = len(parts.polygons) == 1
    for polygon, box in zip(parts.polygons, parts.boxes, strict=True):
        corners = tuple((float(x), float(y)) for x, y in polygon.exterior.coords[:-1])
        mine = tuple(j for j in joins if polygon.distance(shapely.Point(j.middle)) < LINE)
        if whole:
            yield Piece(told.id, box, tuple(drawn), tuple(words), (), ())
        else:
            clipped = Clipped(rectangle(grown(box, LINE)), tuple(drawn))
            yield Piece(told.id, box, (clipped,), tuple(_on(words, box)), corners, mine)


def _join_words(join: Join, ground) -> Iterator[Mark]:  # type: ignore[no-untyped-def]
    """Return the join's number on either side of it."""
    x, y = join.middle
    upright = join.a[0] == join.b[0]
    block = Block(((f"join {join.number}", "bold", JOIN_WORD),))
    far = 60.0
    for side in (-1.0, 1.0):
        at = (x + side * 1.0, y) if upright else (x, y + side * 1.0)
        low, high = (x - far, x) if side < 0 else (x, x + far)
        inside = (low, y - far, high, y + far)
        if not upright:
            low, high = (y - far, y) if side < 0 else (y, y + far)
            inside = (x - far, low, x + far, high)
        yield from place_labels.words(block, ground, inside, at)


def _on(words: list[Mark], box: Box) -> Iterator[Mark]:
    """Return the words that stand in a box; no word lies across a join."""
    for mark in words:
        x, y = _middle(mark)
        if box[0] <= x <= box[2] and box[1] <= y <= box[3]:
            yield mark


def _middle(mark: Mark) -> Point:
    if isinstance(mark, Letters):
        x0, y0, x1, y1 = lettering.box(mark)
        return (x0 + x1) / 2, (y0 + y1) / 2
    assert isinstance(mark, Stroke | Fill)
    (x0, y0), (*_, x1, y1) = mark.traces[0].start, mark.traces[0].steps[min(1, len(mark.traces[0].steps) - 1)]
    return (x0 + x1) / 2, (y0 + y1) / 2
