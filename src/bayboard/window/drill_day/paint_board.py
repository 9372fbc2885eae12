"""The board on drill day: outlines of what hangs there, every hole in its state, the next one lit."""

import shapely
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QPainter, QPainterPath, QRadialGradient

from bayboard.window import lettering
from bayboard.window.draw.ground import paint_board
from bayboard.window.draw.marks import paint_mark
from bayboard.window.draw.scale import Scale, fitting
from bayboard.window.draw.strokes import dot, kept, ring_path, segment
from bayboard.window.draw.tags import free_spot, pushed_in
from bayboard.window.drill_day.show import BoardShow, Dot, Ordinates, StandIn
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, colour, pen

LIT = "#FFE7A0"  # of the next hole and its figures
RING = 40.0  # px; radius of the lit ring
LEAST = 4.5  # px; a hole is drawn no smaller
MARGIN = 26.0  # px of wall round the board
DASH = (9.0, 5.0)
PALE = "#A9A69D"  # numbers of stand-ins, 7.7 on the board
_ASLANT = (-66.0, 66.0, -96.0, 96.0)  # px over or under a hole that has no room beside its line
_SHARES = (0.25, 0.4, 0.5, 0.6, 0.75, 0.15, 0.85)  # of a line's length, where its figure may stand


def scale_of(show: BoardShow, rect: QRectF, unit: float) -> Scale:
    """Return the scale at which the board fills its panel."""
    x0, y0, x1, y1 = show.shape.polygon.bounds
    return fitting((x0, y0, x1, y1), rect, MARGIN * max(unit, 0.7))


def dot_radius(one: Dot, scale: Scale) -> float:
    """Return the radius a hole is drawn with, in pixels."""
    return max(scale.length(one.across or 0.0) / 2, LEAST)


def paint_day_board(p: QPainter, rect: QRectF, show: BoardShow | None, theme: Theme, unit: float) -> None:
    """Paint the wall's primer in the panel, the board on it, and its holes."""
    panel = QPainterPath()
    panel.addRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), 8.0, 8.0)
    with kept(p):
        p.setClipPath(panel)
        p.fillRect(rect, brush(theme.wall))
        if show is not None:
            scale = scale_of(show, rect, unit)
            paint_board(p, scale, show.shape, theme)
            _paint_stand_ins(p, scale, show, theme, unit)
            _paint_holes(p, rect, scale, show, theme, unit)
    p.strokePath(panel, pen(theme.rule2, 1.2))


def _paint_stand_ins(p: QPainter, scale: Scale, show: BoardShow, theme: Theme, unit: float) -> None:
    for piece in show.stand_ins:
        path = ring_path(piece.ring, scale)
        p.strokePath(path, pen(theme.chalk, 1.2, 0.62, dash=(5.0, 4.0)))
        box = path.boundingRect()
        lettering.draw_in(p, box, piece.id, Style("pencil", _number_size(box, unit)), PALE)


def _paint_holes(p: QPainter, rect: QRectF, scale: Scale, show: BoardShow, theme: Theme, unit: float) -> None:
    lit = next((d for d in show.dots if d.chosen), None)
    if lit is not None:
        _paint_glow(p, scale.px(*lit.at), 145.0 * unit)
    if show.next is not None:
        _paint_lines(p, rect, scale, show.next)
    if lit is not None:
        _paint_lit(p, scale.px(*lit.at))  # before the holes: it hides none that is near
    for one in show.dots:
        _paint_dot(p, scale, one, theme)
    for one in show.dots:
        if one.differs:
            at = scale.px(*one.at) + QPointF(0.0, -dot_radius(one, scale) - 11.0)
            paint_mark(p, at, "must", None, theme, 16.0 * theme.size)
    taken = [_felt(scale.px(*d.at), dot_radius(d, scale) + 4.0) for d in show.dots]
    if lit is not None:
        taken.append(_felt(scale.px(*lit.at), RING * max(unit, 0.8)))
    tags = figure_tags(rect, scale, show, theme, unit, taken)
    _paint_names(p, rect, scale, show, theme, [*taken, *(tag for tag, _ in tags)])
    if show.check is not None:
        _paint_check(p, scale, show)
    for tag, words in tags:
        paint_figure(p, tag, words, theme, unit)


def _felt(at: QPointF, radius: float) -> QRectF:
    return QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius)


def _paint_glow(p: QPainter, at: QPointF, radius: float) -> None:
    light = QRadialGradient(at, radius)
    for share, alpha in ((0.0, 0.62), (0.3, 0.40), (0.65, 0.14), (1.0, 0.0)):
        light.setColorAt(share, colour(LIT, alpha))
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(QBrush(light))
    p.drawEllipse(at, radius, radius)
    p.setBrush(Qt.BrushStyle.NoBrush)


def _paint_lines(p: QPainter, rect: QRectF, scale: Scale, next_: Ordinates) -> None:
    at, foot = scale.px(*next_.at), scale.px(*next_.foot)
    lines = segment(QPointF(foot.x(), at.y()), at)
    lines.addPath(segment(QPointF(at.x(), foot.y()), QPointF(at.x(), rect.top())))
    p.strokePath(lines, pen("#000000", 3.4, 0.45))
    p.strokePath(lines, pen(LIT, 1.8, 0.85, dash=DASH))


def _paint_dot(p: QPainter, scale: Scale, one: Dot, theme: Theme) -> None:
    at, r = scale.px(*one.at), dot_radius(one, scale)
    if one.state == "drilled":
        dot(p, at, r, theme.chalk)
        return
    token = LIT if one.state == "next" else theme.chalk
    cross = segment(at - QPointF(r + 4.5, 0.0), at + QPointF(r + 4.5, 0.0))
    cross.addPath(segment(at - QPointF(0.0, r + 4.5), at + QPointF(0.0, r + 4.5)))
    dot(p, at, r, theme.board)
    p.strokePath(cross, pen(token, 1.2, 0.95))
    ring = QPainterPath()
    ring.addEllipse(at, r, r)
    p.strokePath(ring, pen(token, 1.8))


def _paint_lit(p: QPainter, at: QPointF) -> None:
    """Paint the lit ring of the hole that is spoken of."""
    for radius, wide, token, alpha in (
        (RING, 7.0, "#000000", 0.85),
        (RING, 3.0, LIT, 1.0),
        (RING - 7.0, 1.4, LIT, 1.0),
    ):
        ring = QPainterPath()
        ring.addEllipse(at, radius, radius)
        p.strokePath(ring, pen(token, wide, alpha))


# --- figures and names ---


def figure_tags(
    rect: QRectF, scale: Scale, show: BoardShow, theme: Theme, unit: float, taken: list[QRectF]
) -> list[tuple[QRectF, str]]:
    """Return the tags of the figures with their words, each on its line and off the holes."""
    if show.check is not None:
        a, b = scale.px(*show.check[0]), scale.px(*show.check[1])
        spots = [a + (b - a) * share for share in (0.5, 0.4, 0.6, 0.3, 0.7)]
        return [(_tag(rect, spots, show.check_words, theme, unit, taken), show.check_words)]
    if show.next is None:
        return []
    at, foot = scale.px(*show.next.at), scale.px(*show.next.foot)
    held = [*taken, *(_number(piece, scale, unit).adjusted(-3, -3, 3, 3) for piece in show.stand_ins)]
    half = _wide(show.next.left, unit, theme) / 2
    spots = _level_spots(at, foot, half, 1.1 * _high(unit, theme))
    left = _tag(rect, spots, show.next.left, theme, unit, held)
    aside = _wide(show.next.up, unit, theme) / 2 + 6.0
    spots = _upright_spots(at, foot, rect.top(), aside)
    up = _tag(rect, spots, show.next.up, theme, unit, [*held, left.adjusted(-4, -4, 4, 4)])
    return [(left, show.next.left), (up, show.next.up)]


def _level_spots(at: QPointF, foot: QPointF, half: float, lifted: float) -> list[QPointF]:
    """Return where the figure of the level line may stand: on it, just over or under it, past the hole."""
    on = [QPointF(foot.x() + (at.x() - foot.x()) * share, at.y()) for share in _SHARES]
    past = [QPointF(at.x() + RING + far + half, at.y()) for far in (12.0, 60.0, 120.0)]
    near = [spot + QPointF(0.0, off) for off in (-lifted, lifted) for spot in on]
    aslant = [at + QPointF(dx, dy) for dy in _ASLANT for dx in (half + 12.0, -half - 12.0)]
    return [*on, *past, *near, *aslant]


def _upright_spots(at: QPointF, foot: QPointF, top: float, aside: float) -> list[QPointF]:
    """Return where the figure of the upright line may stand: on it below or above the hole, or beside it."""
    below = [QPointF(at.x(), foot.y() - (foot.y() - at.y()) * share) for share in (0.5, 0.35, 0.65)]
    above = [QPointF(at.x(), at.y() - (at.y() - top) * share) for share in _SHARES[2:]]
    on = [*below, *above]
    return [*on, *(spot + QPointF(off, 0.0) for off in (aside, -aside) for spot in on)]


def _number(piece: StandIn, scale: Scale, unit: float) -> QRectF:
    """Return the room of a stand-in's number in its middle."""
    box = scale.box(_box(piece))
    px = _number_size(box, unit)
    return QRectF(box.center().x() - 0.6 * px, box.center().y() - 0.5 * px, 1.2 * px, px)


def _number_size(box: QRectF, unit: float) -> float:
    return min(max(28.0 * unit, 18.0), max(box.height() * 0.6, 12.0))


def _box(piece: StandIn) -> tuple[float, float, float, float]:
    xs, ys = zip(*piece.ring, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _style(unit: float, theme: Theme) -> Style:
    return Style(px=max(21.0 * unit, 16.0) * theme.size, weight=700)


def _wide(words: str, unit: float, theme: Theme) -> float:
    style = _style(unit, theme)
    return lettering.width(words, style) + 1.1 * style.px


def _high(unit: float, theme: Theme) -> float:
    return 1.45 * _style(unit, theme).px


def _tag(
    rect: QRectF, spots: list[QPointF], words: str, theme: Theme, unit: float, taken: list[QRectF]
) -> QRectF:
    wide, high = _wide(words, unit, theme), _high(unit, theme)
    inner = rect.adjusted(4.0, 4.0, -4.0, -4.0)
    found = [pushed_in(QRectF(s.x() - wide / 2, s.y() - high / 2, wide, high), inner) for s in spots]
    return free_spot(found, taken, inner) or found[0]


def paint_figure(p: QPainter, rect: QRectF, words: str, theme: Theme, unit: float) -> None:
    """Paint a figure on its lit tag."""
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(brush(LIT))
    p.drawRoundedRect(rect, 3.0, 3.0)
    p.setBrush(Qt.BrushStyle.NoBrush)
    lettering.draw_in(p, rect, words, _style(unit, theme), "#221F1B")


def _paint_names(
    p: QPainter, rect: QRectF, scale: Scale, show: BoardShow, theme: Theme, taken: list[QRectF]
) -> None:
    """Write the fixings' ids beside them, where there is room; they are in the huge type in any case."""
    style = Style(px=17.0 * theme.size, weight=600)
    named: set[str] = set()
    for one in show.dots:
        if one.hole not in show.named or one.hole in named:
            continue
        named.add(one.hole)
        at, wide, high = scale.px(*one.at), lettering.width(one.hole, style) + 4.0, 1.2 * style.px
        off = dot_radius(one, scale) + 12.0
        ways = ((off, -off - high), (-off - wide, -off - high), (off, off), (-off - wide, off))
        more = ((off + 8.0, -high / 2), (-off - wide - 8.0, -high / 2), (off + 24.0, -off - high))
        spots = [QRectF(at.x() + dx, at.y() + dy, wide, high) for dx, dy in (*ways, *more)]
        on = [spot for spot in spots if show.shape.polygon.contains(shapely.box(*scale.seen(spot)))]
        spot = free_spot(on, taken, rect)
        if spot is not None:
            taken.append(spot)
            token = theme.chalk if one.state != "drilled" else "#B4B0A6"
            lettering.draw_in(p, spot, one.hole, style, token)


def _paint_check(p: QPainter, scale: Scale, show: BoardShow) -> None:
    """Paint the line between the two datum holes along which the tape lies."""
    assert show.check is not None
    a, b = scale.px(*show.check[0]), scale.px(*show.check[1])
    p.strokePath(segment(a, b), pen("#000000", 4.0, 0.5))
    p.strokePath(segment(a, b), pen(LIT, 2.0, dash=DASH))
    for at in (a, b):
        ring = QPainterPath()
        ring.addEllipse(at, 18.0, 18.0)
        p.strokePath(ring, pen("#000000", 5.0, 0.8))
        p.strokePath(ring, pen(LIT, 2.4))
