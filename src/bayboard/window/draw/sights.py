"""What is measured in the Section: eyes and lines of sight, the room left under the seat."""

from collections.abc import Sequence
from math import hypot

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.window import lettering
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.section_show import Depth, Eyes, Fan, Sight
from bayboard.window.draw.strokes import add_head, cased, dot, segment
from bayboard.window.draw.tags import free_spot, paint_tag, pushed_in, tag_rect
from bayboard.window.lettering import HELPER
from bayboard.window.theme import Theme, brush, pen

DASHES = {"clear": (), "steep": (5.0, 3.5), "blocked": (1.2, 2.2)}
FAN = 78.0  # px; how far a fan is drawn
SHORT = 34.0  # px; below it a depth's arrows stand outside


def paint_eyes(p: QPainter, scale: Scale, eyes: Eyes, theme: Theme) -> None:
    """Paint the box the eyes look from."""
    (z0, y0), (z1, y1) = eyes.low, eyes.high
    frame = QRectF(scale.px(-z1, y1), scale.px(-z0, y0)).normalized()
    path = QPainterPath()
    path.addRect(frame)
    p.fillPath(path, brush(theme.note, 0.07))
    p.strokePath(path, pen(theme.note, 1.5, dash=(5.0, 3.5)))
    style = HELPER.sized(theme.size)
    if frame.width() > lettering.width("eyes", style) + 16 and frame.height() > 26:
        at = QPointF(frame.left() + 10.0, frame.bottom() - 10.0)
        lettering.draw(p, at, "eyes", style, theme.note)


def _sight_token(sight: Sight, theme: Theme) -> str:
    return {"clear": theme.ok, "steep": theme.should, "blocked": theme.ink}[sight.verdict]


def paint_sight(p: QPainter, scale: Scale, sight: Sight, theme: Theme) -> None:
    """Paint a line of sight: full is clear, dashed too steep, dotted with a cross where it is stopped."""
    a, b = scale.px(-sight.point[0], sight.point[1]), scale.px(-sight.eye[0], sight.eye[1])
    token = _sight_token(sight, theme)
    cased(p, segment(a, b), token, 2.0, theme, DASHES[sight.verdict])
    dot(p, a, 5.0, theme.paper)
    dot(p, a, 3.6, token)
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


def paint_words(
    p: QPainter,
    scale: Scale,
    sights: Sequence[Sight],
    depths: Sequence[Depth],
    theme: Theme,
    rect: QRectF,
    taken: list[QRectF],
) -> None:
    """Paint the tags of depths and sights, each with a leader; `taken` is what they keep off, and grows."""
    said: list[tuple[Depth | Sight, QPointF]] = []
    for depth in depths:
        z, y = (depth.front[0] + depth.seat[0]) / 2, (depth.front[1] + depth.seat[1]) / 2
        said.append((depth, scale.px(-z, y)))
    for sight in sights:
        if sight.text:
            a, b = scale.px(-sight.point[0], sight.point[1]), scale.px(-sight.eye[0], sight.eye[1])
            said.append((sight, a + (b - a) * min(0.4, 0.6 * seen_share(a, b, rect))))
    placed = [(one, at, _tag_spot(one, at, theme, rect, taken)) for one, at in said]
    for one, at, spot in placed:
        _leader(p, at, spot, _token(one, theme), theme)
    for one, _, spot in placed:
        paint_tag(p, spot, one.text, theme, one.severity, one.number, token=_token(one, theme))


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


def _token(said: Depth | Sight, theme: Theme) -> str:
    if said.severity:
        return theme.severity(said.severity)
    return _sight_token(said, theme) if isinstance(said, Sight) else theme.ink


def _tag_spot(said: Depth | Sight, at: QPointF, theme: Theme, rect: QRectF, taken: list[QRectF]) -> QRectF:
    """Return where a tag stands, at the left edge if it can, and add it to what is taken."""
    within = rect.adjusted(8.0, 40.0, -8.0, -8.0)
    marked = said.severity is not None and said.number is not None
    tag = tag_rect(QPointF(0.0, 0.0), said.text, theme, marked)
    left = within.left() + tag.width() / 2
    away = (110.0, 80.0, -70.0, 150.0, -110.0, 190.0, -150.0, 40.0, -40.0)
    if isinstance(said, Sight):
        away = (-40.0, 40.0, -70.0, 70.0, -110.0, 110.0, -150.0, 150.0, 190.0)
    spots = [tag.translated(x, at.y() + dy) for dy in away for x in (left, at.x())]
    spot = free_spot(spots, taken, within) or pushed_in(spots[0], within)
    taken.append(spot)
    return spot


def _leader(p: QPainter, at: QPointF, tag: QRectF, token: str, theme: Theme) -> None:
    start = QPointF(
        min(max(at.x(), tag.left() + 20.0), tag.right() - 20.0),
        tag.top() if tag.top() > at.y() else tag.bottom(),
    )
    if hypot(start.x() - at.x(), start.y() - at.y()) > 10.0 and not tag.contains(at):
        cased(p, segment(start, at), token, 1.8, theme)


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
