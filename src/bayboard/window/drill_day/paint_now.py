"""The lower half of drill day: id and drill in huge type, the close-up, and what comes after."""

from math import floor

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.window import lettering
from bayboard.window.draw.marks import paint_tick
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import dot, kept, segment
from bayboard.window.drill_day.paint_board import LIT
from bayboard.window.drill_day.show import CloseUp, Dot, Now, Then
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, pen

SMALLEST = 14.0  # px; nothing is lettered smaller
UNIT = 0.3  # size of a unit behind huge figures
NUMBER = 0.55  # size of a screw's number behind its stand-in's


def fitted(text: str, style: Style, room: float) -> Style:
    """Return the style, smaller where the text would not fit into `room` pixels."""
    wide = lettering.width(text, style)
    if wide <= room:
        return style
    return Style(style.face, max(floor(style.px * room / wide), SMALLEST), style.weight)


def sized(px: float, unit: float, theme: Theme, weight: int = 400) -> Style:
    """Return a style of the picture at the window's size and the Scale setting, never too small to read."""
    return Style(px=max(px * unit * theme.size, SMALLEST), weight=weight)


# --- huge type ---


def paint_type(p: QPainter, rect: QRectF, now: Now, theme: Theme, unit: float) -> None:
    """Paint id and drill as large as there is room, and what to do below them."""
    if not now.figure:
        _paint_words(p, rect, now, theme, unit)
        return
    base = rect.top() + 168.0 * unit
    name_wide = _paint_name(p, QPointF(rect.left(), base), now.name, theme, unit, 0.46 * rect.width())
    under = sized(24.0, unit, theme)
    below = rect.top() + 220.0 * unit
    x = rect.left() + max(name_wide, lettering.width(now.under, under)) + 44.0 * unit
    x = min(x, rect.left() + 0.5 * rect.width())
    if now.under:
        room = x - rect.left() - 16.0 * unit
        style = fitted(now.under, under, room)
        words = lettering.elided(now.under, style, room)
        lettering.draw(p, QPointF(rect.left(), below), words, style, theme.ink2)
    if not now.name:
        x = rect.left()
    room = rect.right() - x
    _paint_figure(p, QPointF(x, rect.top() + 122.0 * unit), now, theme, unit, room)
    for words, px, weight, y, token in (
        (now.what, 34.0, 500, 176.0, theme.ink),
        (now.more, 24.0, 400, 220.0, theme.ink2),
    ):
        style = fitted(words, sized(px, unit, theme, weight), room)
        shown = lettering.elided(words, style, room)
        lettering.draw(p, QPointF(x, rect.top() + y * unit), shown, style, token)


def _paint_words(p: QPainter, rect: QRectF, now: Now, theme: Theme, unit: float) -> None:
    """Paint a word in large type and two sentences below it: nothing is to be drilled."""
    big = fitted(now.name, Style(px=104.0 * unit, weight=700), rect.width())
    lettering.draw(p, QPointF(rect.left(), rect.top() + 82.0 * unit), now.name, big, theme.ink)
    strong, plain = sized(34.0, unit, theme, 500), sized(24.0, unit, theme)
    what = fitted(now.what, strong, rect.width())
    lettering.draw(p, QPointF(rect.left(), rect.top() + 136.0 * unit), now.what, what, theme.ink)
    for i, words in enumerate(lettering.wrapped(now.more, plain, rect.width())[:2]):
        at = QPointF(rect.left(), rect.top() + 178.0 * unit + i * 1.22 * plain.px)
        lettering.draw(p, at, words, plain, theme.ink2)


def _paint_name(p: QPainter, at: QPointF, name: str, theme: Theme, unit: float, room: float) -> float:
    """Paint the id, a screw's number smaller behind its stand-in's; return how wide it is."""
    head, mark, number = name.partition("#")
    big = Style(px=190.0 * unit, weight=700)
    wide = lettering.width(head, big) + lettering.width(mark + number, Style(px=NUMBER * big.px, weight=700))
    if wide > room:
        big = Style(px=big.px * room / wide, weight=700)
    lettering.draw(p, at, head, big, theme.ink)
    x = lettering.width(head, big)
    if mark:
        small = Style(px=NUMBER * big.px, weight=700)
        lettering.draw(p, at + QPointF(x + 0.02 * big.px, 0.0), mark + number, small, theme.ink2)
        x += lettering.width(mark + number, small)
    return x


def _paint_figure(p: QPainter, at: QPointF, now: Now, theme: Theme, unit: float, room: float) -> None:
    """Paint the drill, its unit after it at 0.3 of the size."""
    big = Style(px=150.0 * unit, weight=700)
    wide = lettering.width(now.figure, big) + 0.12 * big.px + lettering.width(now.unit, _unit_style(big))
    if wide > room:
        big = Style(px=max(big.px * room / wide, SMALLEST), weight=700)
    lettering.draw(p, at, now.figure, big, theme.ink)
    x = lettering.width(now.figure, big) + 0.12 * big.px
    lettering.draw(p, at + QPointF(x, 0.0), now.unit, _unit_style(big), theme.ink2)


def _unit_style(big: Style) -> Style:
    return Style(px=UNIT * big.px, weight=400)


# --- the close-up ---


def paint_close(p: QPainter, rect: QRectF, show: CloseUp, theme: Theme, unit: float) -> None:
    """Paint the next hole as it lies on the board: a slot's two holes and the strip between them."""
    frame = QPainterPath()
    frame.addRoundedRect(rect, 8.0, 8.0)
    k = rect.width() / max(show.wide, 1e-6)
    words = rect.top() + 26.0 * unit
    middle = QPointF(rect.center().x(), rect.center().y() + 8.0 * unit)
    scale = Scale(k, middle.x() - show.middle[0] * k, middle.y() + show.middle[1] * k)
    with kept(p):
        p.setClipPath(frame)
        p.fillRect(rect, brush(theme.wall))
        p.fillPath(_board_path(show, scale), brush(theme.board))
        if show.pair is not None:
            _paint_strip(p, scale, show, theme)
        for one in show.dots:
            _paint_close_dot(p, scale, one, theme)
        label = sized(15.0, unit, theme)
        wide = lettering.width("as it lies on the board", label) + 12.0
        p.fillRect(QRectF(rect.left() + 6.0, words - label.px, wide, 1.4 * label.px), brush(theme.board, 0.8))
        at = QPointF(rect.left() + 12.0, words)
        lettering.draw(p, at, "as it lies on the board", label, theme.chalk)
    p.strokePath(frame, pen("#000000", 1.0))


def _board_path(show: CloseUp, scale: Scale) -> QPainterPath:
    path = QPainterPath()
    for ring in (show.shape.polygon.exterior, *show.shape.polygon.interiors):
        points = [scale.px(float(x), float(y)) for x, y in ring.coords]
        part = QPainterPath(points[0])
        for at in points[1:]:
            part.lineTo(at)
        part.closeSubpath()
        path.addPath(part)
    return path


def _paint_strip(p: QPainter, scale: Scale, show: CloseUp, theme: Theme) -> None:
    """Dash the two sides of the strip that is sawn out between a slot's holes."""
    assert show.pair is not None
    a, b = scale.px(*show.pair[0]), scale.px(*show.pair[1])
    way = b - a
    far = (way.x() ** 2 + way.y() ** 2) ** 0.5 or 1.0
    r = scale.length(show.across) / 2
    side = QPointF(-way.y() / far * r, way.x() / far * r)
    for off in (side, -side):
        p.strokePath(segment(a + off, b + off), pen(theme.chalk, 1.6, dash=(4.0, 3.0)))


def _paint_close_dot(p: QPainter, scale: Scale, one: Dot, theme: Theme) -> None:
    at, r = scale.px(*one.at), max(scale.length(one.across or 3.0) / 2, 5.0)
    if one.state == "drilled":
        dot(p, at, r, theme.chalk)
        return
    token = LIT if one.state == "next" else theme.chalk
    ring = QPainterPath()
    ring.addEllipse(at, r, r)
    p.strokePath(ring, pen(token, 3.4 if one.state == "next" else 1.8))
    arm = 1.42 * r
    cross = segment(at - QPointF(arm, 0.0), at + QPointF(arm, 0.0))
    cross.addPath(segment(at - QPointF(0.0, arm), at + QPointF(0.0, arm)))
    p.strokePath(cross, pen(token, 2.0 if one.state == "next" else 1.4))


# --- what comes after ---


def paint_then(p: QPainter, rect: QRectF, then: Then, theme: Theme, unit: float, hovered: bool) -> None:
    """Paint a hole that comes later as a card."""
    p.setBrush(brush(theme.field))
    p.setPen(pen(theme.rule2 if hovered else theme.rule, 1.2))
    p.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), 6.0, 6.0)
    p.setBrush(Qt.BrushStyle.NoBrush)
    inner = rect.adjusted(16.0 * unit, 0.0, -14.0 * unit, 0.0)
    drill = sized(26.0, unit, theme, 600)
    base = rect.top() + rect.height() * 0.49
    lettering.draw(p, QPointF(inner.right(), base), then.drill, drill, theme.ink, "right")
    room = inner.width() - lettering.width(then.drill, drill) - 10.0
    name = fitted(then.hole, sized(41.0, unit, theme, 700), room)
    shown = lettering.elided(then.hole, name, room)
    lettering.draw(p, QPointF(inner.left(), base), shown, name, theme.ink)
    what = sized(18.0, unit, theme)
    words = lettering.elided(then.what, what, inner.width())
    lettering.draw(p, QPointF(inner.left(), rect.top() + rect.height() * 0.84), words, what, theme.ink2)


def paint_press(
    p: QPainter, rect: QRectF, now: Now, theme: Theme, unit: float, focused: bool, down: bool
) -> None:
    """Paint the big field: what pressing it says."""
    quiet = not now.press
    face = rect.translated(0.0, 1.0 if down else 0.0)
    p.setPen(pen(theme.rule2, 1.2) if quiet else Qt.PenStyle.NoPen)
    p.setBrush(brush(theme.field if quiet else theme.blue))
    p.drawRoundedRect(face, 10.0, 10.0)
    p.setBrush(Qt.BrushStyle.NoBrush)
    if focused:
        p.setPen(pen(theme.blue, 2.4))
        p.drawRoundedRect(rect.adjusted(-4.0, -4.0, 4.0, 4.0), 13.0, 13.0)
    ink = theme.ink2 if quiet else theme.field
    room = face.width() - 40.0 * unit
    big = fitted(now.press, Style(px=58.0 * unit, weight=700), room)
    small = sized(18.0, unit, theme)
    lettering.draw(p, QPointF(face.center().x(), face.top() + 100.0 * unit), now.press, big, ink, "centre")
    top = face.top() + (150.0 if now.press else 96.0) * unit
    lines = lettering.wrapped(now.press_small, small, room)
    for i, words in enumerate(lines[:3]):
        y = top + i * 1.3 * small.px
        lettering.draw(p, QPointF(face.center().x(), y), words, small, ink, "centre")
    if now.made:
        paint_tick(p, QPointF(face.left() + 30.0 * unit, face.top() + 30.0 * unit), theme, 22.0)
