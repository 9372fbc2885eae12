"""Fixings on the board: bolt, cross and slot; drilled ones are filled with chalk and stay where they are."""

from math import cos, radians, sin

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.layout import Fixing, Point
from bayboard.rules.scene import Scene
from bayboard.tables.reference import thread
from bayboard.window.draw.drilled import paint_made
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import WallShow
from bayboard.window.draw.strokes import cased, dot, segment
from bayboard.window.theme import Theme, brush, mixed, pen

LEAST = 6.0  # px; radius a fixing is drawn with at least
UNKNOWN = 12.0  # mm; washer drawn for a thread that is not in the tables


def paint_fixings(p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: WallShow) -> None:
    """Paint the fixings of the boards that are there, rings round the selected and the focused one."""
    for fixing in scene.layout.fixings:
        if fixing.board in scene.boards:
            _paint_fixing(p, scale, fixing, theme)
            if fixing.id in show.selected or show.focused == fixing.id:
                _ring(p, scale, fixing, theme, focused=fixing.id not in show.selected)


def fixing_radius(scale: Scale, fixing: Fixing) -> float:
    """Return the radius a fixing is drawn with in pixels: its washer's, never under 6."""
    row = thread(fixing.thread)
    across = UNKNOWN if row is None or row.washer_od is None else row.washer_od
    return max(scale.length(across) / 2, LEAST)


def _paint_fixing(p: QPainter, scale: Scale, fixing: Fixing, theme: Theme) -> None:
    at, r = scale.px(*fixing.at), fixing_radius(scale, fixing)
    p.setPen(pen("#000000", 1.4))
    p.setBrush(brush(mixed(theme.board, theme.chalk, 0.22)))
    p.drawEllipse(at, r, r)
    p.setBrush(Qt.BrushStyle.NoBrush)
    cross = segment(QPointF(at.x() - r - 4, at.y()), QPointF(at.x() + r + 4, at.y()))
    cross.addPath(segment(QPointF(at.x(), at.y() - r - 4), QPointF(at.x(), at.y() + r + 4)))
    p.strokePath(cross, pen(theme.chalk, 1.0, 0.75))
    if fixing.drilled is not None:
        _made(p, scale, r, fixing, theme)
    elif fixing.slot is not None:
        _slot(p, scale, at, r, fixing, theme)
    else:
        dot(p, at, 0.36 * r, "#000000")
    if fixing.metal is not None:
        _metal(p, scale, r, fixing.metal, theme)


def _made(p: QPainter, scale: Scale, r: float, fixing: Fixing, theme: Theme) -> None:
    """Paint the hole that is made, a slot's as two with the way between; its washer's place stays behind."""
    assert fixing.drilled is not None
    if fixing.slot is None:
        paint_made(p, scale, fixing.drilled, 0.6 * r, theme, fixing.at)
        return
    (x, y), half = fixing.drilled, fixing.slot.travel / 2
    dx, dy = half * cos(radians(fixing.slot.angle)), half * sin(radians(fixing.slot.angle))
    ends = ((x - dx, y - dy), (x + dx, y + dy))
    way = segment(scale.px(*ends[0]), scale.px(*ends[1]))
    p.strokePath(way, pen(theme.chalk, max(0.7 * r, 3.0), round_ends=True))
    paint_made(p, scale, fixing.drilled, 0.0, theme, fixing.at)
    for end in ends:
        paint_made(p, scale, end, 0.45 * r, theme)


def _metal(p: QPainter, scale: Scale, r: float, at: Point, theme: Theme) -> None:
    """Paint the hole in the sheet metal as a ring of chalk: it lies behind the board's own."""
    ring = QPainterPath()
    ring.addEllipse(scale.px(*at), 0.8 * r, 0.8 * r)
    p.strokePath(ring, pen("#000000", 3.6, 0.5))
    p.strokePath(ring, pen(theme.chalk, 1.8))


def _slot(p: QPainter, scale: Scale, at: QPointF, r: float, fixing: Fixing, theme: Theme) -> None:
    """Paint the way a slotted hole lets the board grow."""
    assert fixing.slot is not None
    half = max(scale.length(fixing.slot.travel) / 2, 0.35 * r)
    c, s = cos(radians(fixing.slot.angle)), sin(radians(fixing.slot.angle))
    way = QPointF(c * half, -s * half)
    p.strokePath(segment(at - way, at + way), pen("#000000", 0.7 * r, round_ends=True))
    p.strokePath(segment(at - way, at + way), pen(theme.chalk, 1.2, 0.9))


def _ring(p: QPainter, scale: Scale, fixing: Fixing, theme: Theme, focused: bool) -> None:
    ring = QPainterPath()
    r = fixing_radius(scale, fixing) + 7.0
    ring.addEllipse(scale.px(*fixing.at), r, r)
    cased(p, ring, theme.blue, 2.0, theme, dash=(4.0, 2.5) if focused else ())
