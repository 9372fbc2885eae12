"""Stand-ins: buff chipboard with pencil lettering, their shadows, tape and rings."""

from dataclasses import dataclass
from functools import lru_cache
from random import Random

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QBrush, QImage, QPainter, QPainterPath, QPolygonF
from shapely import LineString, MultiLineString, MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from bayboard.model.layout import Card
from bayboard.model.placed import Placed
from bayboard.window import lettering
from bayboard.window.draw.face import Face, face
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.shadow import AT_REST, HOVERED, IN_HAND, Shape, paint_shadow
from bayboard.window.draw.strokes import add_ring, cased, hatched, kept
from bayboard.window.theme import Theme, brush, mixed, pen

RING_OFF = 6.0  # px between a stand-in's edge and its ring
REST = 0.16  # how much paler the names of ports are until the pointer is near


@dataclass(frozen=True, slots=True)
class GearState:
    """How a stand-in is shown besides lying there, its shapes in mm.

    `height` is 1 in the hand and 0 on the board; `over` is what of it hangs off its board, `rim` the part of
    the board's edge that it covers.
    """

    hovered: bool = False
    height: float = 0.0
    over: Polygon | MultiPolygon | None = None
    rim: BaseGeometry | None = None


AT_EASE = GearState()
MOST_FACES = 1000
_FACES: dict[tuple[int, str, float, float, float], tuple[Card, Face]] = {}  # with the card each is of


def face_of(scale: Scale, placed: Placed, theme: Theme) -> Face:
    """Return the face of a stand-in at a zoom.

    Faces are asked for many times a frame, and a card's hash is slow: they are known by which card it is.
    """
    card = placed.card
    key = id(card), placed.id, placed.gear.turn, scale.px_per_mm, theme.size
    known = _FACES.get(key)
    if known is None or known[0] is not card:
        if len(_FACES) >= MOST_FACES:
            _FACES.clear()
        known = _FACES[key] = card, face(card, placed.id, placed.gear.turn, scale.px_per_mm, theme.size)
    return known[1]


def paint_gear(p: QPainter, scale: Scale, placed: Placed, theme: Theme, state: GearState = AT_EASE) -> None:
    """Paint a stand-in where it stands, its shadow as long as it is high over the board."""
    at = scale.px(*placed.at)
    made = face_of(scale, placed, theme)
    _paint_shadow(p, at, made, state)
    paint_face(p, at, made, theme, near=state.hovered or state.height > 0.0)
    if state.over is not None and not state.over.is_empty:
        _paint_overhang(p, scale, state.over, state.rim, theme)
    if placed.gear.taped:
        paint_tape_strip(p, at, made, theme)


def _paint_shadow(p: QPainter, at: QPointF, made: Face, state: GearState) -> None:
    if state.height >= 1.0:
        paint_shadow(p, at, made.shape, IN_HAND)
        return
    paint_shadow(p, at, made.shape, HOVERED if state.hovered else AT_REST)
    if state.height > 0.0:  # on its way up or down: the long shadow grows out of the short one
        with kept(p):
            p.setOpacity(p.opacity() * state.height)
            paint_shadow(p, at, made.shape, IN_HAND)


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


def _paint_overhang(
    p: QPainter, scale: Scale, over: Polygon | MultiPolygon, rim: BaseGeometry | None, theme: Theme
) -> None:
    """Hatch what hangs off the board in pencil; the board's edge below it is a line in must."""
    path = QPainterPath()
    for part in over.geoms if isinstance(over, MultiPolygon) else [over]:
        add_ring(path, list(part.exterior.coords)[:-1], scale)
    hatched(p, path, 8, theme.pencil, 0.7)
    cased(p, _line_path(rim, scale), theme.must, 2.0, theme, casing=1.5)


def _line_path(line: BaseGeometry | None, scale: Scale) -> QPainterPath:
    """Return lines in mm as a path in pixels, empty for anything else."""
    path = QPainterPath()
    for part in line.geoms if isinstance(line, MultiLineString) else [line]:
        if isinstance(part, LineString):
            path.addPolygon(QPolygonF([scale.px(x, y) for x, y in part.coords]))
    return path


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
    """Paint the ring of a selected piece, full, or dashed where the keys are at it."""
    if focused:
        cased(p, _ring_path(scale, placed, theme, RING_OFF), theme.blue, 2.0, theme, dash=(4.0, 2.5))
    elif selected:
        cased(p, _ring_path(scale, placed, theme, RING_OFF), theme.blue, 2.6, theme)
