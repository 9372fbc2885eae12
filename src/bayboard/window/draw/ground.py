"""What stands before any gear goes up: primer, landings, stays, vents, linings, entries, boards."""

from functools import lru_cache
from itertools import pairwise
from random import Random

import shapely
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QImage,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
    QRadialGradient,
)
from shapely import Geometry, Polygon

from bayboard.model.layout import Bay, Entry, Outline, Stay, Vent
from bayboard.rules.boards import BoardShape
from bayboard.rules.scene import Scene
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.shadow import OF_BOARD, Shape, paint_shadow
from bayboard.window.draw.strokes import hatched, kept, ring_path
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, colour, mixed, pen

GROMMET = 34.0  # mm across, as drawn: the document does not say how large an entry's hole is
PEBBLE_FROM = 0.4  # px/mm; below it the board is plain
PENCILLED = Style("pencil", 15.0)


def paint_ground(p: QPainter, scale: Scale, scene: Scene, theme: Theme, rect: QRectF) -> None:
    """Paint the primer, the bay and the boards."""
    p.fillRect(rect, _sheen(rect.top(), rect.bottom(), theme.room, 104, 99))
    bay = scene.layout.bay
    paint_bay(p, scale, bay, theme)
    for shape in scene.boards.values():
        paint_board(p, scale, shape, theme)
    for region in bay.no_drill:
        for shape in scene.boards.values():
            behind = _behind(region.outline, shape.polygon, scale.px_per_mm)
            paint_no_drill(p, behind.translated(scale.px(0.0, 0.0)), theme, behind=True)
    for entry in bay.entries:
        paint_grommet(p, scale, entry)


def paint_bay(p: QPainter, scale: Scale, bay: Bay, theme: Theme) -> None:
    """Paint the wall and what is on it, entries excepted."""
    paint_primer(p, ring_path(bay.wall, scale), theme)
    for landing in bay.landings:
        _pressed(p, _soft(landing.outline, scale), theme)
    for lining in bay.linings:
        seam = ring_path(lining.outline, scale)
        p.fillPath(seam, brush(theme.ink, 0.04))
        p.strokePath(seam, pen(theme.ink2, 1.2, 0.8, dash=(5.0, 3.0)))
    for vent in bay.vents:
        paint_vent(p, scale, vent, theme)
    for region in bay.no_drill:
        paint_no_drill(p, ring_path(region.outline, scale), theme)
    for stay in bay.stays:
        paint_stay(p, scale, stay, theme)


def paint_primer(p: QPainter, wall: QPainterPath, theme: Theme) -> None:
    """Paint the metal of the wall, lit from above; nothing for a bay not measured yet."""
    if wall.isEmpty():
        return
    p.fillPath(wall.translated(1.0, 4.0), brush(mixed(theme.room, "#000000", 0.13)))
    box = wall.boundingRect()
    p.fillPath(wall, _sheen(box.top(), box.bottom(), theme.wall, 102, 98))
    p.strokePath(_lit(wall), pen(mixed(theme.wall, "#FFFFFF", 0.10 if theme.dark else 0.35), 1.6))
    p.strokePath(wall, QPen(_edge(theme), 1.5))


def _soft(outline: Outline, scale: Scale) -> QPainterPath:
    """Return an outline of pressed metal, its corners taken off by the press: a few pixels as drawn."""
    return _softened(outline, scale.px_per_mm).translated(scale.px(0.0, 0.0))


@lru_cache(maxsize=256)
def _behind(outline: Outline, board: Polygon, k: float) -> QPainterPath:
    """Return what of a region lies behind a board, in pixels from bay (0, 0)."""
    return _filled(board.intersection(Polygon(outline)), k)


def _filled(shape: Geometry, k: float) -> QPainterPath:
    """Return the outer rings of polygons in mm as a path in pixels from bay (0, 0)."""
    path = QPainterPath()
    for part in shapely.get_parts(shape).tolist():
        if isinstance(part, Polygon) and not part.is_empty:
            path.addPolygon(QPolygonF([QPointF(x * k, -y * k) for x, y in part.exterior.coords]))
            path.closeSubpath()
    return path


@lru_cache(maxsize=256)
def _softened(outline: Outline, k: float) -> QPainterPath:
    shape = Polygon(outline)
    x0, y0, x1, y1 = shape.bounds
    radius = min(6.0 / k, 0.3 * min(x1 - x0, y1 - y0))
    return _filled(shape.buffer(-radius).buffer(radius, quad_segs=6), k)


def _pressed(p: QPainter, path: QPainterPath, theme: Theme) -> None:
    """Paint a flat pressed into the metal, faintly."""
    p.fillPath(path, brush("#000000", 0.09 if theme.dark else 0.06))
    p.strokePath(path, pen("#000000", 1.2, 0.10, round_ends=True))


def _sheen(top: float, bottom: float, token: str, above: int, below: int) -> QBrush:
    light = QLinearGradient(0.0, top, 0.0, bottom)
    light.setColorAt(0.0, colour(token).lighter(above))
    light.setColorAt(1.0, colour(token).lighter(below))
    return QBrush(light)


def _edge(theme: Theme) -> QBrush:
    return QBrush(colour(theme.wall).lighter(150) if theme.dark else colour(theme.wall).darker(150))


def paint_vent(p: QPainter, scale: Scale, vent: Vent, theme: Theme) -> None:
    """Paint a vent: its outline and its slats."""
    path = _soft(vent.outline, scale)
    box = path.boundingRect()
    p.fillPath(path, brush("#000000", 0.06))
    slats = QPainterPath()
    gap = max(scale.length(24.0), 7.0)
    x = box.left() + gap / 2
    while x < box.right() - gap / 4:
        slats.moveTo(x, box.top() + box.height() * 0.14)
        slats.lineTo(x, box.bottom() - box.height() * 0.14)
        x += gap
    with kept(p):
        p.setClipPath(path, Qt.ClipOperation.IntersectClip)
        p.strokePath(slats, QPen(_edge(theme), 2.2))
    p.strokePath(path, QPen(_edge(theme), 1.5))


def paint_stay(p: QPainter, scale: Scale, stay: Stay, theme: Theme) -> None:
    """Paint something that stays in the vehicle."""
    path = _soft(stay.outline, scale)
    box = path.boundingRect()
    body = colour(theme.wall).darker(110) if theme.dark else colour(theme.wall).darker(140)
    light = QLinearGradient(0.0, box.top(), 0.0, box.bottom())
    light.setColorAt(0.0, body.lighter(112))
    light.setColorAt(1.0, body)
    p.fillPath(path.translated(0.5, 2.0), brush("#000000", 0.22))
    p.fillPath(path, QBrush(light))
    p.strokePath(path, QPen(QBrush(body.darker(135)), 1.5))


def paint_no_drill(p: QPainter, path: QPainterPath, theme: Theme, behind: bool = False) -> None:
    """Paint a region that must not be drilled: crossed red hatching in a red rim.

    `behind` a board it is dashed and paler, since must alone has little contrast on black.
    """
    token = mixed(theme.must, theme.chalk, 0.22) if behind else theme.must
    p.fillPath(path, brush(token, 0.06 if behind else 0.10))
    hatched(p, path, 11, token, 0.30 if behind else 0.55, both=True)
    p.strokePath(path, pen(token, 1.6, 0.75 if behind else 0.9, dash=(5.0, 3.0) if behind else ()))


def grommet_radius(scale: Scale) -> float:
    """Return the radius an entry is drawn with, in pixels: never so small that it is missed."""
    return min(max(scale.length(GROMMET / 2), 10.0), 26.0)


def paint_grommet(p: QPainter, scale: Scale, entry: Entry) -> None:
    """Paint the place where leads come in: a rubber grommet round a dark hole."""
    at, radius = scale.px(*entry.at), grommet_radius(scale)
    depth = QRadialGradient(at.x(), at.y() + radius * 0.2, radius)
    depth.setColorAt(0.0, colour("#000000"))
    depth.setColorAt(0.55, colour("#0A0B0C"))
    depth.setColorAt(0.62, colour("#1B1D1F"))
    depth.setColorAt(1.0, colour("#26292C"))
    p.setBrush(brush("#000000", 0.25))
    p.setPen(Qt.PenStyle.NoPen)
    p.drawEllipse(at + QPointF(0.5, 2.0), radius + 1.0, radius + 1.0)
    p.setBrush(QBrush(depth))
    p.setPen(pen("#4B5053", 1.4))
    p.drawEllipse(at, radius, radius)
    p.setBrush(Qt.BrushStyle.NoBrush)


@lru_cache(maxsize=64)
def _board_lines(polygon: Polygon, k: float) -> tuple[QPainterPath, QPainterPath, Shape]:
    """Return a board's path, its lit edges and its rings, in pixels from bay (0, 0)."""
    rings = tuple(
        tuple((x * k, -y * k) for x, y in list(ring.coords)[:-1])
        for ring in (polygon.exterior, *polygon.interiors)
    )
    path = QPainterPath()
    for ring in rings:
        path.addPolygon(QPolygonF([QPointF(x, y) for x, y in ring]))
        path.closeSubpath()
    return path, _lit(path), rings


def _lit(path: QPainterPath) -> QPainterPath:
    """Return the edges that face up and catch the light, drawn just inside."""
    lit = QPainterPath()
    for ring in path.toSubpathPolygons():
        points = [(at.x(), at.y()) for at in ring]
        for (ax, ay), (bx, by) in pairwise(points):
            dx, dy = bx - ax, by - ay
            # probe the side below the edge: inside there means that the edge faces up
            if abs(dx) > 0.5 * abs(dy) and path.contains(QPointF((ax + bx) / 2, (ay + by) / 2 + 1.0)):
                lit.moveTo(ax, ay + 1.8)
                lit.lineTo(bx, by + 1.8)
    return lit


def paint_board(p: QPainter, scale: Scale, shape: BoardShape, theme: Theme) -> None:
    """Paint a board: its shadow on the wall, black plastic, pebble, and the lit edge facing up."""
    path, lit, rings = _board_lines(shape.polygon, scale.px_per_mm)
    origin = scale.px(0.0, 0.0)
    paint_shadow(p, origin, rings, OF_BOARD)
    with kept(p):
        p.translate(origin)
        p.fillPath(path, brush(theme.board))
        if scale.px_per_mm >= PEBBLE_FROM:
            p.fillPath(path, QBrush(_pebble()))
        p.strokePath(lit, pen(theme.boardhi, 1.6))
        p.strokePath(path, pen("#000000", 1.4))


@lru_cache(maxsize=1)
def _pebble() -> QImage:
    """Return the grain of the plastic: a tile 48 px square of flecks at 5 % white."""
    chance = Random(5)
    tile = QImage(48, 48, QImage.Format.Format_ARGB32_Premultiplied)
    tile.fill(Qt.GlobalColor.transparent)
    with QPainter(tile) as p:
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        for _ in range(14):
            x, y = chance.uniform(3, 43), chance.uniform(3, 45)
            fleck = QPainterPath(QPointF(x, y))
            fleck.quadTo(x + 1.4, y - 1.2, x + 2.8, y + chance.uniform(-0.4, 0.6))
            p.strokePath(fleck, pen("#FFFFFF", 1.0, chance.choice((0.05, 0.08))))
    return tile
