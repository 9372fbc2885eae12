"""What differs between two layouts, laid on the Wall: the old in chalk, arrows from corner to corner.

Old places lie under what hangs there now; arrows, rings and tags over it.  All places are bay axes, mm.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot
from typing import Literal

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from bayboard.model.layout import Point
from bayboard.model.placed import Placed
from bayboard.window import lettering
from bayboard.window.draw.gear import ring_round
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import arrow_head, cased, dot, ring_path, segment
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, mixed, pen

Ring = tuple[Point, ...]
Kind = Literal["moved", "new", "gone", "changed"]
DIM = 0.38  # how far the board's black veils what is the same in both
SHORTEST = 14.0  # px; a way shorter than this has no arrow, since its ghost says it already
NEW_OFF = 6.0  # px between a new piece and the dots round it
DASH = 14.0  # px from one chalk dash to the next
FIXING = 7.0  # px; radius of an old bolt's chalk ring


@dataclass(frozen=True, slots=True)
class Shift:
    """A stand-in that stood elsewhere, came, went or is another; a ring is () where it does not hang.

    `arrow` goes from a corner of the old outline to the same corner of the new one.
    """

    id: str
    kind: Kind
    was: Ring = ()
    now: Ring = ()
    arrow: tuple[Point, Point] | None = None
    tag: str = ""


@dataclass(frozen=True, slots=True)
class Bolt:
    """A fixing that moved, came or went: where it was and where it is, None for nowhere."""

    id: str
    was: Point | None
    now: Point | None
    tag: str = ""


@dataclass(frozen=True, slots=True)
class Told:
    """Words about a spot that is no stand-in: the drilled fixings of one corner."""

    at: Point
    text: str


@dataclass(frozen=True, slots=True)
class ChangesShow:
    """All that is laid on the Wall.  `same`: ids of stand-ins that are alike in both, and so are dimmed.

    `outlines`: old edges of boards and bay; `ways`: old paths of leads that went.
    """

    shifts: tuple[Shift, ...] = ()
    bolts: tuple[Bolt, ...] = ()
    told: tuple[Told, ...] = ()
    outlines: tuple[Ring, ...] = ()
    ways: tuple[tuple[Point, ...], ...] = ()
    same: frozenset[str] = frozenset()


def paint_old(p: QPainter, scale: Scale, show: ChangesShow, theme: Theme) -> None:
    """Paint what was, under what is: old edges, old paths, ghosts without their numbers, old bolts."""
    for ring in show.outlines:
        _chalked(p, ring_path(ring, scale), theme)
    for way in show.ways:
        path = QPainterPath(scale.px(*way[0]))
        for at in way[1:]:
            path.lineTo(scale.px(*at))
        _chalked(p, path, theme)
    for shift in show.shifts:
        paint_ghost_body(p, scale, shift, theme)
    for bolt in show.bolts:
        if bolt.was is not None:
            ring = QPainterPath()
            ring.addEllipse(scale.px(*bolt.was), FIXING * theme.size, FIXING * theme.size)
            _chalked(p, ring, theme)


def paint_ghost_body(p: QPainter, scale: Scale, shift: Shift, theme: Theme, filled: bool = True) -> None:
    """Paint the chalk outline of where a stand-in was, dusted inside where it is `filled`."""
    if not shift.was:
        return
    path = ring_path(shift.was, scale)
    if filled:
        p.fillPath(path, brush(theme.chalk, 0.10))
    _chalked(p, path, theme)


def _chalked(p: QPainter, path: QPainterPath, theme: Theme) -> None:
    """Draw a chalk line in dashes, each cased in the board's black: unseen on it, and it reads on primer."""
    for token, wide, long in ((theme.board, 3.8, 10.0), (mixed(theme.board, theme.chalk, 0.85), 1.6, 8.0)):
        line = QPen(pen(token, wide, dash=(long / wide, (DASH - long) / wide)))
        line.setDashOffset((long - 8.0) / 2 / wide)
        p.strokePath(path, line)


def ghost_style(theme: Theme) -> Style:
    """Return how a ghost's number is lettered."""
    return Style("pencil", round(17 * theme.size))


def ghost_spot(box: QRectF, text: str, theme: Theme, taken: Sequence[QRectF]) -> QRectF | None:
    """Return where a ghost's number is read: its middle, else a free part of it, None when all is covered."""
    style = ghost_style(theme)
    wide, high = lettering.width(text, style) + 6.0, lettering.line(text, style).rise + 6.0
    spare_x, spare_y = (box.width() - wide) / 2, (box.height() - high) / 2
    if spare_x < 0 or spare_y < 0:
        return None
    shares = sorted(
        ((x / 4, y / 4) for x in range(-4, 5) for y in range(-4, 5)),
        key=lambda s: (s[0] ** 2 + s[1] ** 2, s),
    )
    for x, y in shares:
        middle = box.center() + QPointF(0.9 * x * spare_x, 0.9 * y * spare_y)
        spot = QRectF(middle.x() - wide / 2, middle.y() - high / 2, wide, high)
        if not any(spot.intersects(held) for held in taken):
            return spot
    return None


def paint_ghost_number(p: QPainter, spot: QRectF, text: str, theme: Theme) -> None:
    """Letter a ghost's number in chalk; it may lie off the board, so that it is cased."""
    style = ghost_style(theme)
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(brush(theme.board, 0.72))
    p.drawRoundedRect(spot, 3.0, 3.0)
    p.setBrush(Qt.BrushStyle.NoBrush)
    lettering.draw_in(p, spot, text, style, mixed(theme.board, theme.chalk, 0.9))


def paint_dimmed(p: QPainter, scale: Scale, piece: Placed, theme: Theme) -> None:
    """Veil a stand-in that is the same in both, so that the eye goes to the others."""
    p.fillPath(ring_path(piece.ring, scale), brush(theme.board, DIM))


def paint_dots(p: QPainter, scale: Scale, ring: Ring, theme: Theme) -> None:
    """Paint the dots round something new."""
    at = [scale.px(*corner) for corner in ring]
    shape = (tuple((spot.x(), spot.y()) for spot in at),)
    path = ring_round(shape, NEW_OFF)
    p.strokePath(path, pen(theme.board, 4.4))
    p.strokePath(path, pen(theme.chalk, 2.4, dash=(0.1, 1.9), round_ends=True))


def paint_arrow(p: QPainter, a: QPointF, b: QPointF, theme: Theme) -> None:
    """Paint the way from an old corner, an open ring, to the new one, a head."""
    far = hypot(b.x() - a.x(), b.y() - a.y())
    if far < SHORTEST:
        return
    way = (b.x() - a.x(), b.y() - a.y())
    neck = QPointF(b.x() - 9.0 * way[0] / far, b.y() - 9.0 * way[1] / far)
    head = arrow_head(b, way, 14.0, 11.0)
    p.strokePath(segment(a, neck), pen(theme.board, 5.6))
    p.strokePath(head, pen(theme.board, 3.0))
    p.strokePath(segment(a, neck), pen(theme.chalk, 2.4))
    p.fillPath(head, brush(theme.chalk))
    dot(p, a, 6.0, theme.board)
    p.setPen(pen(theme.chalk, 2.0))
    p.drawEllipse(a, 4.2, 4.2)


def paint_ways(p: QPainter, scale: Scale, show: ChangesShow, theme: Theme) -> None:
    """Paint the arrows and the dots round what is new, over what hangs there now."""
    for shift in show.shifts:
        if shift.kind == "new" and shift.now:
            paint_dots(p, scale, shift.now, theme)
        if shift.arrow is not None:
            paint_arrow(p, scale.px(*shift.arrow[0]), scale.px(*shift.arrow[1]), theme)
    for bolt in show.bolts:
        if bolt.was is not None and bolt.now is not None:
            paint_arrow(p, scale.px(*bolt.was), scale.px(*bolt.now), theme)
        elif bolt.now is not None:
            paint_dots(p, scale, _round(bolt.now, 6.0 / scale.px_per_mm), theme)


def paint_chosen(p: QPainter, scale: Scale, shift: Shift, theme: Theme) -> None:
    """Ring the thing that is spoken of in blue, its old place shown over whatever covers it."""
    paint_ghost_body(p, scale, shift, theme, filled=False)
    for ring in (shift.now or shift.was,):
        at = [scale.px(*corner) for corner in ring]
        path = ring_round((tuple((spot.x(), spot.y()) for spot in at),), NEW_OFF)
        cased(p, path, theme.blue, 2.6, theme)
    if shift.arrow is not None:
        paint_arrow(p, scale.px(*shift.arrow[0]), scale.px(*shift.arrow[1]), theme)


def paint_chosen_bolt(p: QPainter, scale: Scale, at: Point, theme: Theme) -> None:
    """Ring a fixing that is spoken of."""
    ring = QPainterPath()
    ring.addEllipse(scale.px(*at), 17.0 * theme.size, 17.0 * theme.size)
    cased(p, ring, theme.blue, 2.2, theme)


def paint_chosen_line(p: QPainter, scale: Scale, line: Ring, theme: Theme, closed: bool) -> None:
    """Draw the edge or the path of a thing that is spoken of in blue; nothing for ()."""
    if not line:
        return
    path = QPainterPath(scale.px(*line[0]))
    for at in line[1:]:
        path.lineTo(scale.px(*at))
    if closed:
        path.closeSubpath()
    cased(p, path, theme.blue, 2.6, theme)


def _round(at: Point, radius: float) -> Ring:
    """Return a small square round a point: the dots round it make a ring of it."""
    x, y = at
    corners = ((-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0))
    return tuple((x + radius * dx, y + radius * dy) for dx, dy in corners)
