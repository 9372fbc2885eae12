"""The turning grip: a pencil arc in one stand-in's clipped corner, a chalk arc at the corner of several."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import atan2, cos, degrees, radians, sin

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.placed import Placed
from bayboard.units.angle import show_angle
from bayboard.window import lettering
from bayboard.window.draw.face import Face
from bayboard.window.draw.gear import RING_OFF, face_of
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import add_head
from bayboard.window.draw.tags import paint_tag, pushed_in, tag_rect
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, pen

ARC = 40.0  # px; radius of the turning arc, ARC_SMALL on cards narrower than ARC_FROM
ARC_SMALL = 27.0
ARC_FROM = 150.0
FELT = 44.0  # px square that the grip is felt over


@dataclass(frozen=True, slots=True)
class Grip:
    """A turning grip in pixels: the corner its arc goes round, which way that opens, where it is felt.

    `facing` in degrees, 90 is up.  `inside`: it lies on the card, in pencil; else beside it, in chalk.
    """

    tip: QPointF
    radius: float
    facing: float
    inside: bool
    felt: QRectF
    roomy: bool = False  # degrees find room beside the arc


def turn_grip(scale: Scale, pieces: Sequence[Placed], theme: Theme) -> Grip | None:
    """Return the grip of what is selected: of one piece in its clipped corner, of several at their box's."""
    if not pieces:
        return None
    return _of_one(scale, pieces[0], theme) if len(pieces) == 1 else _of_several(scale, pieces, theme)


def _of_one(scale: Scale, placed: Placed, theme: Theme) -> Grip:
    """Return the grip of one piece; on a small card it lies outside, where its arc is."""
    made, at = face_of(scale, placed, theme), scale.px(*placed.at)
    wide = made.box.width() >= ARC_FROM * theme.size
    radius = (ARC if wide else ARC_SMALL) * theme.size
    inside = min(made.box.width(), made.box.height()) >= 2.4 * radius
    inward = (12.0 if inside else -16.0) * theme.size
    tip = QPointF(at.x() + made.tip[0], at.y() + made.tip[1])
    facing = _facing(made)
    way = QPointF(inward if _right(made) else -inward, inward if _down(made) else -inward)
    grip = Grip(tip, radius, facing if inside else facing + 180.0, inside, _felt(tip + way, theme))
    return replace(grip, roomy=inside and wide and _is_free(made, _degrees_rect(grip, theme).translated(-at)))


def _degrees_rect(grip: Grip, theme: Theme) -> QRectF:
    """Return the room that degrees take beside the arc."""
    middle = _beyond(grip, grip.radius + 17.0 * theme.size)
    half = lettering.width("270°", _degrees_style(theme)) / 2
    return QRectF(middle.x() - half, middle.y() - 9.0 * theme.size, 2 * half, 18.0 * theme.size)


def _is_free(made: Face, spot: QRectF) -> bool:
    """Return whether neither the number nor the name of a card lies in a spot."""
    lines = [(word, lettering.line(word.text, word.style)) for word in made.words if not word.of_port]
    held = (QRectF(w.x - line.width / 2, w.y - line.rise, line.width, line.rise) for w, line in lines)
    return not any(box.intersects(spot) for box in held)


def _degrees_style(theme: Theme) -> Style:
    return Style("pencil", round(17 * theme.size))


def _right(made: Face) -> bool:
    return made.box.center().x() > made.tip[0]


def _down(made: Face) -> bool:
    return made.box.center().y() > made.tip[1]


def _facing(made: Face) -> float:
    """Return which way the middle lies from the clipped corner, along a diagonal of the box."""
    middle = made.box.center()
    facing = degrees(atan2(-(middle.y() - made.tip[1]), middle.x() - made.tip[0]))
    return 45.0 + 90.0 * round((facing - 45.0) / 90.0)


def _of_several(scale: Scale, pieces: Sequence[Placed], theme: Theme) -> Grip:
    """Return the one grip of several pieces, outside the upper left corner of the box round them."""
    left, top = min(p.box[0] for p in pieces), max(p.box[3] for p in pieces)
    off = RING_OFF + 2.0
    tip = scale.px(left, top) - QPointF(off, off)
    away = 16.0 * theme.size
    return Grip(tip, ARC_SMALL * theme.size, 135.0, False, _felt(tip - QPointF(away, away), theme))


def _felt(middle: QPointF, theme: Theme) -> QRectF:
    felt = FELT * theme.size
    return QRectF(middle.x() - felt / 2, middle.y() - felt / 2, felt, felt)


def paint_turning(
    p: QPainter,
    scale: Scale,
    pieces: Sequence[Placed],
    theme: Theme,
    turning: float | None = None,
    rect: QRectF | None = None,
) -> None:
    """Paint the grip's arc; a piece's degrees stand beside it, on a tag while it turns (`turning`)."""
    grip = turn_grip(scale, pieces, theme)
    if grip is None:
        return
    if turning is not None:
        paint_tag(p, degrees_tag(scale, pieces, theme, turning, rect), show_angle(turning), theme)
        if len(pieces) > 1:
            return  # their box's corner is not where it was gripped
    arc, heads = _arc(grip.tip, grip.radius, grip.facing)
    token = theme.pencil if grip.inside else theme.chalk
    if not grip.inside:
        p.strokePath(arc, pen(theme.board, 5.6))
        p.strokePath(heads, pen(theme.board, 3.6))
    p.strokePath(arc, pen(token, 1.8 if grip.inside else 2.2))
    p.fillPath(heads, brush(token))
    if grip.roomy and turning is None:
        _paint_degrees(p, grip, show_angle(pieces[0].gear.turn % 360.0), theme)


def _beyond(grip: Grip, far: float) -> QPointF:
    """Return the point `far` pixels from the corner through the middle of the arc."""
    a = radians(grip.facing)
    return QPointF(grip.tip.x() + far * cos(a), grip.tip.y() - far * sin(a))


def _paint_degrees(p: QPainter, grip: Grip, words: str, theme: Theme) -> None:
    at = _beyond(grip, grip.radius + 17.0 * theme.size) + QPointF(0.0, 9.0 * theme.size)
    lettering.draw(p, at, words, _degrees_style(theme), theme.pencil, "centre")


def _tag_middle(scale: Scale, pieces: Sequence[Placed], grip: Grip, theme: Theme) -> QPointF:
    """Return where the degrees of a turn stand: outside the clipped corner, over the box of several."""
    if len(pieces) == 1:
        return _beyond(grip, (-30.0 if grip.inside else grip.radius + 24.0) * theme.size)
    left, right = min(p.box[0] for p in pieces), max(p.box[2] for p in pieces)
    return scale.px((left + right) / 2, max(p.box[3] for p in pieces)) - QPointF(0.0, 30.0 * theme.size)


def degrees_tag(
    scale: Scale, pieces: Sequence[Placed], theme: Theme, turning: float, rect: QRectF | None = None
) -> QRectF:
    """Return the tag with the degrees of what turns, inside the view; empty where nothing is selected."""
    grip = turn_grip(scale, pieces, theme)
    if grip is None:
        return QRectF()
    tag = tag_rect(_tag_middle(scale, pieces, grip, theme), show_angle(turning), theme)
    return tag if rect is None else pushed_in(tag, rect.adjusted(4, 4, -4, -4))


def _arc(tip: QPointF, radius: float, facing: float) -> tuple[QPainterPath, QPainterPath]:
    """Return an arc round a corner that opens towards `facing`, and its two heads."""
    box = QRectF(tip.x() - radius, tip.y() - radius, 2 * radius, 2 * radius)
    arc, heads = QPainterPath(), QPainterPath()
    arc.arcMoveTo(box, facing - 30.0)
    arc.arcTo(box, facing - 30.0, 60.0)
    for end, sense in ((facing - 40.0, -1.0), (facing + 40.0, 1.0)):
        a = radians(end)
        at = QPointF(tip.x() + radius * cos(a), tip.y() - radius * sin(a))
        add_head(heads, at, (-sin(a) * sense, -cos(a) * sense), 11.0, 9.0)
    return arc, heads
