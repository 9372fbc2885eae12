"""Seats and lids in the Section: as the lever has them, the other way dashed, and on their way between."""

from collections.abc import Sequence
from functools import lru_cache
from math import cos, radians, sin

import shapely
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath, QPolygonF
from shapely import Polygon

from bayboard.geometry.swing import turned_about
from bayboard.model.layout import Outline, Point, Seat
from bayboard.rules.scene import Scene
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.section_show import SectionShow, Swing
from bayboard.window.draw.strokes import add_head, dot, hatched
from bayboard.window.theme import Theme, brush, mixed, pen

PROBE_NEAR = 75.0  # mm; putty lumps are shown this near to the cut
HINGE = 5.0  # px; radius of the hinge's ring


def seats_at(scene: Scene, x: float) -> list[Seat]:
    """Return the seats the cut runs through, else those that stand beyond it, nearest last.

    Of two seats that meet at the cut the left one is seen, as the Section looks left.
    """
    seats = scene.layout.bay.seats
    through = [seat for seat in seats if seat.x[0] < x <= seat.x[1]]
    through = through or [seat for seat in seats if seat.x[0] == x]
    return through or sorted((s for s in seats if s.x[1] < x), key=lambda s: s.x[1])


def seat_path(points: Outline, scale: Scale) -> QPainterPath:
    """Return a seat's section, (z, y) points, as a path in pixels."""
    path = QPainterPath()
    for i, (z, y) in enumerate(points):
        at = scale.px(-z, y)
        path.moveTo(at) if i == 0 else path.lineTo(at)
    path.closeSubpath()
    return path


def solid_section(seat: Seat, show: SectionShow) -> Outline | None:
    """Return the section that is drawn solid: as the lever has it, or on its way while it folds."""
    if show.folding is None or seat.up is None or seat.folded is None:
        return seat.up if show.lever == "up" else seat.folded
    swing = next((s for s in show.swings if s.hinge == seat.hinge and s.swept), None)
    if swing is not None:
        turned = turned_about(seat.up, swing.hinge, show.folding * swing.angle).tolist()
        return tuple((z, y) for z, y in turned)
    return seat.up if show.folding < 0.5 else seat.folded


def paint_seats(p: QPainter, scale: Scale, seats: Sequence[Seat], theme: Theme, show: SectionShow) -> None:
    """Paint the seats: where they go dashed, how they stand solid, and how far they give way."""
    for seat in seats:
        other = seat.folded if show.lever == "up" else seat.up
        if other is not None and show.folding is None:
            paint_ghost(p, seat_path(other, scale), theme)
    for seat in seats:
        solid = solid_section(seat, show)
        if solid is None:
            continue
        path = seat_path(solid, scale)
        paint_seat(p, path, theme)
        if seat.give > 0.0 and show.lever == "up" and show.folding is None:
            given = path.translated(scale.length(seat.give), 0.0)
            p.strokePath(given, pen(theme.ink2, 1.1, 0.9, dash=(1.5, 2.5)))


def paint_seat(p: QPainter, path: QPainterPath, theme: Theme) -> None:
    """Paint a seat as it stands now: a pad within its cover."""
    cover = mixed(theme.room, "#B5AC9C", 0.75) if not theme.dark else "#34373A"
    pad = mixed(cover, "#FFFFFF", 0.22 if not theme.dark else 0.05)
    p.fillPath(path, brush(cover))
    p.fillPath(_pad(tuple((at.x(), at.y()) for at in path.toFillPolygon())), brush(pad))
    p.strokePath(path, pen(theme.ink2, 2.0, round_ends=True))


@lru_cache(maxsize=16)
def _pad(ring: tuple[tuple[float, float], ...]) -> QPainterPath:
    """Return what is left of a seat's section inside its cover, pixels."""
    path = QPainterPath()
    if len(ring) >= 4:
        left = Polygon(ring).buffer(-9.0)
        for part in shapely.get_parts(left).tolist():
            path.addPolygon(QPolygonF([QPointF(x, y) for x, y in part.exterior.coords]))
    return path


def paint_ghost(p: QPainter, path: QPainterPath, theme: Theme) -> None:
    """Paint where the seat goes with the lever the other way."""
    p.strokePath(path, pen(theme.ink2, 1.3, 0.7, dash=(6.0, 4.0)))


def paint_swing(p: QPainter, scale: Scale, swing: Swing, theme: Theme) -> None:
    """Paint a seat's way: what it sweeps faintly, the arc of its far corner, where it digs in."""
    for ring in swing.swept:
        swept = seat_path(ring, scale)
        p.fillPath(swept, brush(theme.ink2, 0.05))
        p.strokePath(swept, pen(theme.ink2, 1.0, 0.55, dash=(1.5, 3.0)))
    if swing.dig:
        dig = seat_path(swing.dig, scale)
        token = theme.severity(swing.severity or "must")
        p.fillPath(dig, brush(token, 0.10))
        p.strokePath(dig, pen(token, 1.6, dash=(6.0, 3.0)))
    _paint_arc(p, scale, swing, theme)


def paint_hinge(p: QPainter, scale: Scale, swing: Swing, theme: Theme) -> QRectF:
    """Paint the hinge a seat turns about; return where it lies."""
    at = scale.px(-swing.hinge[0], swing.hinge[1])
    dot(p, at, HINGE + 1.5, theme.paper)
    p.setPen(pen(theme.ink2, 1.8))
    p.drawEllipse(at, HINGE, HINGE)
    dot(p, at, 1.8, theme.ink2)
    return QRectF(at.x() - HINGE, at.y() - HINGE, 2 * HINGE, 2 * HINGE).adjusted(-2.0, -2.0, 2.0, 2.0)


def _paint_arc(p: QPainter, scale: Scale, swing: Swing, theme: Theme) -> None:
    """Paint the way of the seat's farthest corner, with a head at either end."""
    at, r = scale.px(-swing.hinge[0], swing.hinge[1]), scale.length(swing.radius)
    box = QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r)
    path, heads = QPainterPath(), QPainterPath()
    # z runs to the left on the screen, so angles are mirrored
    path.arcMoveTo(box, 180.0 - swing.first)
    path.arcTo(box, 180.0 - swing.first, -swing.angle)
    for degrees, sense in ((swing.first, -1.0), (swing.first + swing.angle, 1.0)):
        c, s = cos(radians(degrees)), sin(radians(degrees))
        way = sense * (1.0 if swing.angle > 0 else -1.0)
        tip = QPointF(at.x() - r * c, at.y() - r * s)
        add_head(heads, tip, (way * s, -way * c), 9.0, 6.0)
    p.strokePath(path, pen(theme.ink2, 1.2, 0.8))
    p.fillPath(heads, brush(theme.ink2))


def probes_near(seats: Sequence[Seat], x: float) -> list[Point]:
    """Return (z, y) of the putty lumps near the cut."""
    return [(z, y) for seat in seats for px, y, z in seat.probes if abs(px - x) <= PROBE_NEAR]


def paint_probes(p: QPainter, scale: Scale, probes: Sequence[Point], theme: Theme) -> list[QRectF]:
    """Paint putty lumps; return where they lie."""
    places = []
    for z, y in probes:
        at = scale.px(-z, y)
        dot(p, at, 4.0, theme.hold)
        p.setPen(pen(theme.ink2, 1.0))
        p.drawEllipse(at, 4.0, 4.0)
        places.append(QRectF(at.x() - 4.0, at.y() - 4.0, 8.0, 8.0))
    return places


def paint_crushed(p: QPainter, path: QPainterPath, seats: Sequence[QPainterPath], theme: Theme) -> None:
    """Hatch in must what a seat takes of a piece."""
    for seat in seats:
        crushed = path.intersected(seat)
        if not crushed.isEmpty():
            p.fillPath(crushed, brush(theme.must, 0.30))
            hatched(p, crushed, 6, theme.must, both=True)
