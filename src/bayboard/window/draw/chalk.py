"""What is laid on the Wall for a while: chalk ghosts and measures, snap lines, the marquee, the line.

Chalk is cased in the board's black: unseen on the board, and it reads on cards and wall.  The casing is
opaque, since a translucent wide line costs seven times as much to lay down.
"""

from collections.abc import Sequence
from math import floor, hypot

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPolygonF

from bayboard.model.layout import Point
from bayboard.model.placed import Placed
from bayboard.window import lettering
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import Cure, Ghost, Measure, Snap
from bayboard.window.draw.strokes import add_head, arrow_head, ring_path, segment
from bayboard.window.draw.tags import free_spot, paint_tag, pushed_in, tag_rect
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, mixed, pen

HEAD = (9.0, 7.0)  # px; an arrow head's length and width
SHORT = 34.0  # px; below it the arrows stand outside and point at each other
BEYOND = 10.0  # px that a snap line runs on past what it is level with
FLAG = (26.0, 25.0)  # px; the chalk line's flag


def paint_ghost(p: QPainter, scale: Scale, ghost: Ghost, theme: Theme) -> None:
    """Paint the chalk outline of where a piece was or would go, its label inside."""
    path = ring_path(ghost.ring, scale)
    p.strokePath(path, pen(theme.board, 3.0, dash=(2.5, 2.0)))
    p.strokePath(path, pen(mixed(theme.board, theme.chalk, 0.8), 1.5, dash=(5.0, 4.0)))
    if ghost.label and not path.isEmpty():
        style = Style("pencil", round(17 * theme.size))
        lettering.draw_in(p, path.boundingRect(), ghost.label, style, theme.chalk)


def paint_cure(
    p: QPainter, scale: Scale, cure: Cure, theme: Theme, rect: QRectF, taken: Sequence[QRectF] = ()
) -> None:
    """Paint the place a cure leads to, the way there, and its words off what is `taken`."""
    paint_ghost(p, scale, Ghost(cure.ring), theme)
    a, b = scale.px(*cure.start), scale.px(*cure.end)
    if hypot(b.x() - a.x(), b.y() - a.y()) > 4.0:
        p.strokePath(segment(a, b), pen(theme.board, 4.0))
        p.strokePath(segment(a, b), pen(theme.chalk, 2.0))
        p.fillPath(arrow_head(b, (b.x() - a.x(), b.y() - a.y()), 12.0, 9.0), brush(theme.chalk))
    if cure.text:
        paint_tag(p, cure_tag(scale, cure, theme, rect, taken), cure.text, theme)


def cure_tag(scale: Scale, cure: Cure, theme: Theme, rect: QRectF, taken: Sequence[QRectF] = ()) -> QRectF:
    """Return where a cure's words stand: over its place, else below or beside it."""
    box, off = ring_path(cure.ring, scale).boundingRect(), 22.0 * theme.size
    tag = tag_rect(QPointF(box.center().x(), box.top() - off), cure.text, theme)
    aside = box.width() / 2 + tag.width() / 2 + off / 2
    steps = [(0.0, 0.0), (0.0, box.height() + 2 * off), (aside, off), (-aside, off)]
    steps += [(x, y - off) for x, y in ((aside, 0.0), (-aside, 0.0))] + [(0.0, -1.4 * off)]
    within = rect.adjusted(4, 4, -4, -4)
    spots = [pushed_in(tag.translated(x, y), within) for x, y in steps]
    return free_spot(spots, list(taken), within) or spots[0]


def paint_snap(p: QPainter, scale: Scale, snap: Snap, theme: Theme) -> None:
    """Paint one thin line through both things and a little beyond, with what is level in few words."""
    a, b = crisp(scale.px(*snap.a)), crisp(scale.px(*snap.b))
    far = hypot(b.x() - a.x(), b.y() - a.y()) or 1.0
    past = (b - a) * (BEYOND / far)
    a, b = a - past, b + past
    p.strokePath(segment(a, b), pen(theme.board, 3.0))
    p.strokePath(segment(a, b), pen("#BFE0FF" if theme.dark else "#9CCBF5", 1.2))
    if snap.text:
        middle = QPointF((a.x() + b.x()) / 2, (a.y() + b.y()) / 2 - 16.0 * theme.size)
        paint_tag(p, tag_rect(middle, snap.text, theme), snap.text, theme)


def crisp(at: QPointF) -> QPointF:
    """Return the middle of a pixel, so that thin upright and flat lines are drawn sharp."""
    return QPointF(floor(at.x()) + 0.5, floor(at.y()) + 0.5)


def paint_marquee(p: QPainter, scale: Scale, box: tuple[float, float, float, float], theme: Theme) -> None:
    """Paint the box that gathers what it touches."""
    frame = scale.box(box).normalized()
    p.fillRect(frame, brush(theme.blue, 0.16))
    path = QPainterPath()
    path.addRect(frame)
    p.strokePath(path, pen(theme.board, 2.6))
    p.strokePath(path, pen("#BFE0FF", 1.3, dash=(4.0, 3.0)))


def paint_ends(p: QPainter, scale: Scale, ends: Sequence[Point], theme: Theme) -> None:
    """Paint the picked ends of a measure as small open rings, so that what they are at is seen."""
    for x, y in ends:
        ring = QPainterPath()
        ring.addEllipse(scale.px(x, y), 5.0, 5.0)
        p.strokePath(ring, pen(theme.board, 4.0))
        p.strokePath(ring, pen(theme.chalk, 1.8))


def paint_measure(p: QPainter, scale: Scale, measure: Measure, theme: Theme) -> None:
    """Paint a measure's line, end strokes and arrows; its tag comes last, with `measure_tag`."""
    a, b = crisp(scale.px(*measure.a)), crisp(scale.px(*measure.b))
    token = theme.severity(measure.severity) if measure.severity else theme.chalk
    lines, heads = _measure_lines(a, b, bool(measure.severity))
    wide = 2.4 if measure.severity else 1.5
    if measure.severity:
        p.strokePath(lines, pen(theme.paper, wide + 4.0))
        p.strokePath(heads, pen(theme.paper, 3.0))
    else:
        p.strokePath(lines, pen(theme.board, wide + 2.0))
    p.strokePath(lines, pen(token, wide))
    p.fillPath(heads, brush(token))


def _measure_lines(a: QPointF, b: QPointF, loud: bool) -> tuple[QPainterPath, QPainterPath]:
    far = hypot(b.x() - a.x(), b.y() - a.y())
    ux, uy = ((b.x() - a.x()) / far, (b.y() - a.y()) / far) if far > 1e-6 else (1.0, 0.0)
    lines, heads = QPainterPath(), QPainterPath()
    tall = 26.0 if loud and far < SHORT else 12.0
    for end in (a, b):
        lines.moveTo(end.x() - uy * tall, end.y() + ux * tall)
        lines.lineTo(end.x() + uy * tall, end.y() - ux * tall)
    if far >= SHORT:
        lines.moveTo(a)
        lines.lineTo(b)
        add_head(heads, a, (-ux, -uy), *HEAD)
        add_head(heads, b, (ux, uy), *HEAD)
        return lines, heads
    for end, sense in ((a, -1.0), (b, 1.0)):
        lines.moveTo(end)
        lines.lineTo(end.x() + sense * ux * 30.0, end.y() + sense * uy * 30.0)
        add_head(heads, end, (-sense * ux, -sense * uy), 12.0, 9.0)
    return lines, heads


def measure_tag(
    scale: Scale, measure: Measure, theme: Theme, taken: Sequence[QRectF], rect: QRectF
) -> QRectF:
    """Return where a measure's tag stands: on its line where that is long enough, else beside it."""
    a, b = scale.px(*measure.a), scale.px(*measure.b)
    middle = QPointF((a.x() + b.x()) / 2, (a.y() + b.y()) / 2)
    marked = measure.severity is not None and measure.number is not None
    tag = tag_rect(QPointF(0.0, 0.0), measure.text, theme, marked)
    wide, high = tag.width(), tag.height()
    far = hypot(b.x() - a.x(), b.y() - a.y())
    flat = abs(b.x() - a.x()) >= abs(b.y() - a.y())
    aside, over = wide / 2 + 10.0, high / 2 + (30.0 if measure.severity else 16.0)
    steps = [(0.0, -over), (0.0, over), (aside, -over), (-aside, -over), (aside, over), (-aside, over)]
    if not flat:
        steps = [(-aside, 0.0), (aside, 0.0), (-aside, -over), (aside, -over), (-aside, over), (aside, over)]
    room = wide if flat else high
    if far > room + 32.0 and flat:
        steps.insert(0, (0.0, 0.0))
    spots = [tag.translated(middle.x() + dx, middle.y() + dy) for dx, dy in steps]
    within = rect.adjusted(4, 4, -4, -4)
    return free_spot(spots, list(taken), within) or pushed_in(spots[0], within)


def paint_chalk_line(
    p: QPainter,
    scale: Scale,
    x: float,
    theme: Theme,
    rect: QRectF,
    placed: Sequence[Placed],
    names: Sequence[QRectF] = (),
) -> None:
    """Paint the blue line of the section from its flag to the foot, behind stand-ins and names."""
    at = scale.px(x, 0.0).x()
    for top, bottom in open_stretches(scale, x, rect, placed, names):
        p.fillRect(QRectF(at - 2.2, top, 4.4, bottom - top), brush(theme.paper, 0.55))
        p.fillRect(QRectF(at - 1.0, top, 2.0, bottom - top), brush(theme.blue))
    flag_wide, flag_high = FLAG[0] * theme.size, FLAG[1] * theme.size
    left, top = at - flag_wide / 2, rect.top()
    flag = QPolygonF(
        [
            QPointF(left, top),
            QPointF(left + flag_wide, top),
            QPointF(left + flag_wide, top + 0.62 * flag_high),
            QPointF(at, top + flag_high),
            QPointF(left, top + 0.62 * flag_high),
        ]
    )
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(brush(theme.blue))
    p.drawPolygon(flag)
    p.setBrush(Qt.BrushStyle.NoBrush)
    grip = QPainterPath()
    for dx in (-4.0, 0.0, 4.0):
        grip.moveTo(at + dx * theme.size, top + 0.22 * flag_high)
        grip.lineTo(at + dx * theme.size, top + 0.55 * flag_high)
    p.strokePath(grip, pen(theme.paper, 1.4))


def open_stretches(
    scale: Scale, x: float, rect: QRectF, placed: Sequence[Placed], names: Sequence[QRectF] = ()
) -> list[tuple[float, float]]:
    """Return the pixel stretches (top, bottom) of an upright line at x that nothing covers."""
    at = scale.px(x, 0.0).x()
    covered = [
        (scale.px(0.0, high).y(), scale.px(0.0, low).y())
        for piece in placed
        if piece.box[0] <= x <= piece.box[2]
        for low, high in crossings(piece, x)
    ]
    covered += [(name.top(), name.bottom()) for name in names if name.left() <= at <= name.right()]
    covered.sort()
    free, top = [], rect.top()
    for a, b in covered:
        if a > top:
            free.append((top, min(a, rect.bottom())))
        top = max(top, b)
    if top < rect.bottom():
        free.append((top, rect.bottom()))
    return free


def crossings(piece: Placed, x: float) -> list[tuple[float, float]]:
    """Return the stretches (low, high) of y in mm where an upright line at x runs over a stand-in."""
    ys = []
    ring = piece.ring
    for i in range(len(ring)):
        (ax, ay), (bx, by) = ring[i - 1], ring[i]
        if (ax <= x) != (bx <= x):
            ys.append(float(ay + (by - ay) * (x - ax) / (bx - ax)))
    ys.sort()
    return list(zip(ys[::2], ys[1::2], strict=True))
