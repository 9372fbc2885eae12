"""Stand-ins: buff chipboard with pencil lettering, their shadows, tape, rings and turning arc."""

from dataclasses import dataclass
from functools import lru_cache
from math import atan2, cos, degrees, radians, sin
from random import Random

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QImage, QPainter, QPainterPath, QPolygonF
from shapely import MultiPolygon, Polygon

from bayboard.model.placed import Placed
from bayboard.units.angle import show_angle
from bayboard.window import lettering
from bayboard.window.draw.face import Face, face
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.shadow import AT_REST, HOVERED, IN_HAND, Shape, paint_shadow
from bayboard.window.draw.strokes import add_head, add_ring, cased, hatched, kept
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, mixed, pen

RING_OFF = 6.0  # px between a stand-in's edge and its ring
REST = 0.16  # how much paler the names of ports are until the pointer is near
ARC = 40.0  # px; radius of the turning arc, ARC_SMALL on cards narrower than ARC_FROM
ARC_SMALL = 27.0
ARC_FROM = 150.0


@dataclass(frozen=True, slots=True)
class GearState:
    """How a stand-in is shown besides lying there: `over` is what of it hangs off its board, in mm."""

    hovered: bool = False
    in_hand: bool = False
    over: Polygon | MultiPolygon | None = None


AT_EASE = GearState()


def face_of(scale: Scale, placed: Placed, theme: Theme) -> Face:
    """Return the face of a stand-in at a zoom."""
    return face(placed.card, placed.id, placed.gear.turn, scale.px_per_mm, theme.size)


def paint_gear(p: QPainter, scale: Scale, placed: Placed, theme: Theme, state: GearState = AT_EASE) -> None:
    """Paint a stand-in where it stands.

    In hand it lifts by its shadow alone: its edges stay where its measures end.
    """
    at = scale.px(*placed.at)
    made = face_of(scale, placed, theme)
    shadow = IN_HAND if state.in_hand else HOVERED if state.hovered else AT_REST
    paint_shadow(p, at, made.shape, shadow)
    paint_face(p, at, made, theme, near=state.hovered or state.in_hand)
    if state.over is not None and not state.over.is_empty:
        _paint_overhang(p, scale, state.over, theme)
    if placed.gear.taped:
        paint_tape_strip(p, at, made, theme)


def paint_face(p: QPainter, at: QPointF, made: Face, theme: Theme, near: bool = False) -> None:
    """Paint a card's face with its origin at the pixel `at`; `near` darkens the names of its ports."""
    with kept(p):
        p.translate(at)
        p.fillPath(made.cut, brush(theme.buff))
        p.fillPath(made.cut, QBrush(_grain(theme.buffedge)))
        p.fillPath(made.edge, brush(theme.buffedge))
        p.strokePath(made.cut, pen(theme.buffedge, 1.0))
        p.strokePath(made.faint, pen(theme.pencil2, 1.1))
        p.strokePath(made.pencil, pen(theme.pencil, 1.5))
        p.fillPath(made.heads, brush(theme.pencil))
        faint = theme.pencil if near else mixed(theme.pencil, theme.buff, REST)
        for word in made.words:
            ink = faint if word.of_port else theme.pencil
            lettering.draw(p, QPointF(word.x, word.y), word.text, word.style, ink, word.align)


def _paint_overhang(p: QPainter, scale: Scale, over: Polygon | MultiPolygon, theme: Theme) -> None:
    """Hatch what hangs off the board in pencil, its line on the board's edge in must."""
    path = QPainterPath()
    for part in over.geoms if isinstance(over, MultiPolygon) else [over]:
        add_ring(path, list(part.exterior.coords)[:-1], scale)
    hatched(p, path, 8, theme.pencil, 0.7)
    p.strokePath(path, pen(theme.must, 1.2))


def paint_tape_strip(p: QPainter, at: QPointF, made: Face, theme: Theme) -> None:
    """Paint the masking tape of a held piece over the middle of its upper edge, slanted by 2 degrees."""
    wide = min(max(0.24 * made.box.width(), 30.0), 74.0)
    high = min(max(0.09 * made.box.height(), 10.0), 17.0)
    with kept(p):
        p.translate(at.x() + made.box.center().x(), at.y() + made.box.top())
        p.rotate(-2.0)
        strip = _torn(wide, high)
        p.fillPath(strip.translated(0.8, 1.6), brush("#000000", 0.18))
        p.fillPath(strip, brush(theme.hold, 0.88))
        p.strokePath(strip, pen("#FFFFFF", 0.8, 0.25))


@lru_cache(maxsize=128)
def _torn(wide: float, high: float) -> QPainterPath:
    """Return a strip of tape round (0, 0) with torn ends."""
    left, top, teeth = -wide / 2, -0.62 * high, 5
    right = [(-left + (1.8 if i % 2 else 0.0), top + high * i / teeth) for i in range(teeth + 1)]
    back = [(left - (1.8 if i % 2 else 0.0), top + high * (teeth - i) / teeth) for i in range(teeth + 1)]
    path = QPainterPath(QPointF(left, top))
    for x, y in [*right, *back]:
        path.lineTo(x, y)
    path.closeSubpath()
    return path


@lru_cache(maxsize=4)
def _grain(token: str) -> QImage:
    """Return the fibres of the chipboard as a tile 128 px square."""
    chance = Random(11)
    tile = QImage(128, 128, QImage.Format.Format_ARGB32_Premultiplied)
    tile.fill(Qt.GlobalColor.transparent)
    with QPainter(tile) as p:
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        for _ in range(12):
            x, y = chance.uniform(4, 112), chance.uniform(4, 122)
            fibre = QPainterPath(QPointF(x, y))
            fibre.quadTo(x + 4, y - 1.5, x + chance.uniform(6, 12), y + chance.uniform(-0.5, 1.0))
            p.strokePath(fibre, pen(token, 1.0, 0.30))
    return tile


@lru_cache(maxsize=256)
def ring_round(shape: Shape, off: float) -> QPainterPath:
    """Return the ring `off` pixels outside a shape, its corners round."""
    path = QPainterPath()
    grown = Polygon(shape[0]).buffer(off, quad_segs=6)
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in grown.exterior.coords]))
    path.closeSubpath()
    return path


def _ring_path(scale: Scale, placed: Placed, theme: Theme, off: float) -> QPainterPath:
    return ring_round(face_of(scale, placed, theme).shape, off).translated(scale.px(*placed.at))


def paint_rings(
    p: QPainter, scale: Scale, placed: Placed, theme: Theme, selected: bool, focused: bool
) -> None:
    """Paint the ring of a selected piece (full, cased) and of the one with the focus (dashed)."""
    if selected:
        cased(p, _ring_path(scale, placed, theme, RING_OFF), theme.blue, 2.6, theme)
    if focused:
        off = RING_OFF + (6.0 if selected else 0.0)
        cased(p, _ring_path(scale, placed, theme, off), theme.blue, 2.0, theme, dash=(4.0, 2.5))


def turn_grip(scale: Scale, placed: Placed, theme: Theme) -> QRectF:
    """Return where a selected piece is gripped to turn it: 44 px at its clipped corner, as felt.

    On a small card the grip lies outside, where its arc is.
    """
    made, at = face_of(scale, placed, theme), scale.px(*placed.at)
    felt, inward = 44.0 * theme.size, (12.0 if _arc_inside(made, theme) else -16.0) * theme.size
    middle = made.box.center()
    x = made.tip[0] + (inward if middle.x() > made.tip[0] else -inward)
    y = made.tip[1] + (inward if middle.y() > made.tip[1] else -inward)
    return QRectF(at.x() + x - felt / 2, at.y() + y - felt / 2, felt, felt)


def _arc_radius(made: Face, theme: Theme) -> float:
    return (ARC if made.box.width() >= ARC_FROM else ARC_SMALL) * theme.size


def _arc_inside(made: Face, theme: Theme) -> bool:
    return min(made.box.width(), made.box.height()) >= 2.4 * _arc_radius(made, theme)


def paint_turning(
    p: QPainter, scale: Scale, placed: Placed, theme: Theme, turning: float | None = None
) -> None:
    """Paint the turning arc: in pencil in the clipped corner, in chalk outside it on a small card.

    The degrees stand beside it where the card is wide enough.
    """
    made = face_of(scale, placed, theme)
    radius, inside = _arc_radius(made, theme), _arc_inside(made, theme)
    middle, tip = made.box.center(), QPointF(*made.tip)
    facing = degrees(atan2(-(middle.y() - tip.y()), middle.x() - tip.x()))
    facing = 45.0 + 90.0 * round((facing - 45.0) / 90.0)  # along the diagonal of the box
    with kept(p):
        p.translate(scale.px(*placed.at))
        arc, heads = _arc(tip, radius, facing if inside else facing + 180.0)
        if not inside:
            p.strokePath(arc, pen("#000000", 4.0, 0.5))
        p.strokePath(arc, pen(theme.pencil if inside else theme.chalk, 1.8))
        p.fillPath(heads, brush(theme.pencil if inside else theme.chalk))
        if made.box.width() >= ARC_FROM and inside:
            shown = placed.gear.turn % 360.0 if turning is None else turning
            far = radius + 17.0 * theme.size
            x, y = tip.x() + far * cos(radians(facing)), tip.y() - far * sin(radians(facing))
            style = Style("pencil", round(17 * theme.size))
            at = QPointF(x, y + 9.0 * theme.size)
            lettering.draw(p, at, show_angle(shown), style, theme.pencil, "centre")


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
