"""What is measured in the Section: eyes and lines of sight, the way in, the room left under the seat."""

from math import atan2, degrees, hypot

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.window.draw.scale import Scale
from bayboard.window.draw.section_show import Depth, Eyes, Fan, Sight, Tube
from bayboard.window.draw.strokes import add_head, cased, dot, kept, segment
from bayboard.window.theme import Theme, brush, pen

DASHES = {"clear": (), "steep": (5.0, 3.5), "blocked": (1.2, 2.2)}
FAN = 78.0  # px; how far a fan is drawn
SHORT = 34.0  # px; below it a depth's arrows stand outside
FLAT = 0.22  # of its width; how flat the ends of a tube are seen
END_ON = 0.35  # of a tube's length; a tube shorter than this is seen from its end


def eyes_frame(scale: Scale, eyes: Eyes) -> QRectF:
    """Return the pixels of the eyes' box."""
    (z0, y0), (z1, y1) = eyes.low, eyes.high
    return QRectF(scale.px(-z1, y1), scale.px(-z0, y0)).normalized()


def paint_eyes(p: QPainter, scale: Scale, eyes: Eyes, theme: Theme) -> None:
    """Paint the box the eyes look from."""
    path = QPainterPath()
    path.addRect(eyes_frame(scale, eyes))
    p.fillPath(path, brush(theme.note, 0.07))
    p.strokePath(path, pen(theme.note, 1.5, dash=(5.0, 3.5)))


def sight_token(sight: Sight, theme: Theme) -> str:
    """Return the colour of a line of sight; how it is drawn says the same."""
    return {"clear": theme.ok, "steep": theme.should, "blocked": theme.ink}[sight.verdict]


def paint_sight(p: QPainter, scale: Scale, sight: Sight, theme: Theme) -> None:
    """Paint a line of sight: full is clear, dashed too steep, dotted with a cross where it is stopped."""
    a, b = scale.px(-sight.point[0], sight.point[1]), scale.px(-sight.eye[0], sight.eye[1])
    token = sight_token(sight, theme)
    wide = 2.6 if sight.chosen else 2.0
    cased(p, segment(a, b), token, wide, theme, DASHES[sight.verdict])
    dot(p, a, 6.5 if sight.chosen else 5.0, theme.paper)
    dot(p, a, 4.8 if sight.chosen else 3.6, token)
    dot(p, b, 5.0, theme.paper)
    dot(p, b, 3.6, token)
    if sight.stopped is not None:
        at, r = scale.px(-sight.stopped[0], sight.stopped[1]), 6.0
        cross = segment(QPointF(at.x() - r, at.y() - r), QPointF(at.x() + r, at.y() + r))
        cross.addPath(segment(QPointF(at.x() - r, at.y() + r), QPointF(at.x() + r, at.y() - r)))
        cased(p, cross, theme.ink, 2.4, theme)


def paint_depth(p: QPainter, scale: Scale, depth: Depth, theme: Theme) -> None:
    """Paint the distance between a piece's front and the seat, or how far it digs in."""
    a, b = scale.px(-depth.front[0], depth.front[1]), scale.px(-depth.seat[0], depth.seat[1])
    token = theme.severity(depth.severity) if depth.severity else theme.ink
    left, right = sorted((a, b), key=lambda at: at.x())
    lines, heads = QPainterPath(), QPainterPath()
    for at in (a, b):
        lines.moveTo(at.x(), at.y() - 14.0)
        lines.lineTo(at.x(), at.y() + 14.0)
    if right.x() - left.x() >= SHORT:
        lines.moveTo(left)
        lines.lineTo(right)
        add_head(heads, left, (-1.0, 0.0), 9.0, 7.0)
        add_head(heads, right, (1.0, 0.0), 9.0, 7.0)
    else:
        for at, sense in ((left, -1.0), (right, 1.0)):
            lines.moveTo(at)
            lines.lineTo(at.x() + sense * 28.0, at.y())
            add_head(heads, at, (-sense, 0.0), 10.0, 8.0)
    cased(p, lines, token, 2.0, theme)
    p.strokePath(heads, pen(theme.paper, 2.5))
    p.fillPath(heads, brush(token))


def paint_fan(p: QPainter, scale: Scale, fan: Fan, theme: Theme) -> None:
    """Paint faintly the fan within which a service point can be read."""
    here = scale.px(-fan.at[0], fan.at[1])
    path = QPainterPath(here)
    box = QRectF(here.x() - FAN, here.y() - FAN, 2 * FAN, 2 * FAN)
    # z runs to the left on the screen, so the angle is counted from there
    path.arcTo(box, 180.0 - fan.facing - fan.spread, 2 * fan.spread)
    path.closeSubpath()
    p.fillPath(path, brush(theme.ok, 0.10))
    p.strokePath(path, pen(theme.ok, 1.0, 0.6, dash=(3.0, 3.0)))


def paint_tube(p: QPainter, scale: Scale, tube: Tube, theme: Theme) -> None:
    """Paint the way in as wide as it is, and inside it dark the width that is needed.

    What is needed and not there stands out beyond the tube, dashed in the finding's colour.
    """
    a, b = scale.px(-tube.start[0], tube.start[1]), scale.px(-tube.end[0], tube.end[1])
    wide, need = scale.length(tube.width), scale.length(tube.need)
    long = hypot(b.x() - a.x(), b.y() - a.y())
    enough = tube.width >= tube.need
    token = theme.blue if enough else theme.severity(tube.severity or "should")
    with kept(p):
        p.translate(a)
        p.rotate(degrees(atan2(b.y() - a.y(), b.x() - a.x())))
        outer, inner = _hull(long, wide), _hull(long, need)
        p.fillPath(outer, brush(token, 0.14))
        if enough:
            p.fillPath(inner, brush(token, 0.42))
            p.strokePath(inner, pen(token, 1.0, 0.8))
        p.strokePath(outer, pen(token, 1.6))
        p.strokePath(_rim(long, wide), pen(token, 1.4, 0.9))
        if not enough:
            p.strokePath(inner, pen(theme.paper, 3.4))
            p.strokePath(inner, pen(token, 1.6, dash=(4.0, 3.0)))
    dot(p, a, 5.0, theme.paper)
    dot(p, a, 3.6, token)


def _hull(long: float, wide: float) -> QPainterPath:
    """Return the outline of a tube along +x seen a little from its end; from the end alone a circle."""
    path, half = QPainterPath(), wide / 2
    if long < END_ON * wide or long < 12.0:
        path.addEllipse(QPointF(long / 2, 0.0), half, half)
        return path
    path.setFillRule(path.fillRule().WindingFill)
    path.addRect(QRectF(0.0, -half, long, wide))
    path.addEllipse(QPointF(long, 0.0), FLAT * half, half)
    return path.simplified()


def _rim(long: float, wide: float) -> QPainterPath:
    """Return the rim at a tube's open end."""
    path, half = QPainterPath(), wide / 2
    if long >= END_ON * wide and long >= 12.0:
        path.addEllipse(QPointF(long, 0.0), FLAT * half, half)
    return path


def tube_box(scale: Scale, tube: Tube) -> QRectF:
    """Return the pixels' box that a tube takes."""
    a, b = scale.px(-tube.start[0], tube.start[1]), scale.px(-tube.end[0], tube.end[1])
    half = scale.length(tube.width) / 2
    return QRectF(a, b).normalized().adjusted(-half, -half, half, half)


def seen_share(a: QPointF, b: QPointF, rect: QRectF) -> float:
    """Return how far along from a to b a line stays in view, from 0 to 1; 0 where a is out of view."""
    shares = [1.0]
    for start, end, least, most in (
        (a.x(), b.x(), rect.left(), rect.right()),
        (a.y(), b.y(), rect.top(), rect.bottom()),
    ):
        if end < least:
            shares.append((start - least) / (start - end) if start > least else 0.0)
        if end > most:
            shares.append((most - start) / (end - start) if start < most else 0.0)
    return min(shares)
