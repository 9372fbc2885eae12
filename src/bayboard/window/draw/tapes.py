"""The steel tapes: the hanging one is the height axis of Wall and Section, the other lies at the foot.

Both read from the lower left of the wall, as a person would hook a tape there, not from bay (0, 0).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, floor

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.layout import Layout, Point, Units
from bayboard.units.length import show_length
from bayboard.window import lettering
from bayboard.window.draw.scale import Scale, box_of
from bayboard.window.draw.strokes import kept
from bayboard.window.lettering import FIGURE, Style
from bayboard.window.theme import Theme, brush, mixed, pen

HANGING = 36.0  # px wide
FOOT = 28.0  # px high
EIGHTHS_FROM = 0.45  # px/mm; below it no eighths are ticked, below QUARTERS_FROM no quarters
QUARTERS_FROM = 0.25
NEAREST = 1.4  # px between two ticks
INCH = 25.4
APART_HIGH = 22.0  # px; figures nearer than this above each other are thinned out
APART_WIDE = 46.0  # px; the same for figures side by side
CLEAR = 2.0  # px between a figure and the ticks that end beside it


@dataclass(frozen=True, slots=True)
class Tick:
    """A mark of the tape: mm from its zero, its length as a share of the longest, its figure."""

    at: float
    share: float
    figure: str = ""
    red: bool = False


def tape_zero(layout: Layout) -> Point:
    """Return where both tapes start (bay axes): the wall's lower left, else the boards', else (0, 0)."""
    points = list(layout.bay.wall) or [at for board in layout.boards for at in board.outline]
    box = box_of(points)
    return (0.0, 0.0) if box is None else (box[0], box[1])


def ticks(
    low: float, high: float, px_per_mm: float, units: Units, every: float, apart: float
) -> Iterator[Tick]:
    """Yield the ticks between two lengths in mm.

    A figure stands every `every` mm, or every so many times that, so that two figures are
    `apart` pixels from each other.
    """
    step = _finest(px_per_mm, units)
    figures = every
    while figures * px_per_mm < apart:
        figures *= 2
    for count in range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1):
        yield _inch_tick(count, step, figures) if units == "in" else _mm_tick(count, step, figures)


def _finest(k: float, units: Units) -> float:
    """Return the mm between two ticks.

    Metric ticks never stand nearer than 3.2 pixels; inches thin out where the look says, which
    lets eighths come as near as 1.4.
    """
    if units == "in":
        step = INCH / 8 if k >= EIGHTHS_FROM else INCH / 4 if k >= QUARTERS_FROM else INCH / 2
        while step * k < NEAREST:
            step *= 2
        return step
    for step in (1.0, 5.0, 10.0, 50.0, 100.0, 500.0, 1000.0):
        if step * k >= 3.2:
            return step
    return 10_000.0


def _inch_tick(count: int, step: float, figures: float) -> Tick:
    inches = count * step / INCH
    eighths = round(inches * 8)
    share = {0: 1.0, 4: 0.62, 2: 0.46, 6: 0.46}.get(eighths % 8, 0.32)
    whole = round(inches)
    shown = eighths % 8 == 0 and _every(count * step, figures)
    return Tick(count * step, share, f"{whole}" if shown and whole else "", shown and whole % 12 == 0)


def _mm_tick(count: int, step: float, figures: float) -> Tick:
    mm = round(count * step)
    share = 1.0 if mm % 50 == 0 else 0.66 if mm % 10 == 0 else 0.46 if mm % 5 == 0 else 0.32
    shown = _every(float(mm), figures)
    return Tick(float(mm), share, f"{mm}" if shown and mm else "", shown and mm % 1000 == 0)


def _every(mm: float, figures: float) -> bool:
    rest = mm % figures
    return min(rest, figures - rest) < 1e-6 * max(figures, 1.0)


def paint_hanging_tape(
    p: QPainter,
    rect: QRectF,
    scale: Scale,
    theme: Theme,
    units: Units,
    zero: float = 0.0,
    pointer: float | None = None,
) -> None:
    """Paint the tape that hangs between Wall and Section; `zero` and `pointer` are y in mm (bay axes).

    Ticks face both ways, because both views read off it.
    """
    with kept(p):
        p.setClipRect(rect)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        _steel(p, rect, theme, upright=True)
        low, high = scale.mm(rect.bottomLeft())[1] - zero, scale.mm(rect.topLeft())[1] - zero
        long, left, right = 0.28 * rect.width(), rect.left(), rect.right()
        whole, fine = QPainterPath(), QPainterPath()
        every, px = (2 * INCH, 16.0) if units == "in" else (50.0, 14.0)
        room = 0.66 * rect.width()
        for tick in ticks(max(low, 0.0), high, scale.px_per_mm, units, every, APART_HIGH):
            y = scale.px(0.0, tick.at + zero).y()
            path = whole if tick.share >= 1.0 else fine
            length = long * tick.share
            if tick.figure:
                wide = _figure(p, QPointF(rect.center().x(), y), tick, theme, px, room)
                length = min(length, (rect.width() - wide) / 2 - CLEAR)
            for x, sense in ((left, 1.0), (right, -1.0)):
                path.moveTo(x, y)
                path.lineTo(x + sense * length, y)
        p.strokePath(fine, pen(theme.tapeink, 1.0, 0.55))
        p.strokePath(whole, pen(theme.tapeink, 1.4))
        if pointer is not None:
            y = scale.px(0.0, pointer).y()
            p.fillRect(QRectF(left, y - 1.5, rect.width(), 3.0), brush(theme.footred))


def paint_foot_tape(
    p: QPainter,
    rect: QRectF,
    scale: Scale,
    theme: Theme,
    units: Units,
    zero: float = 0.0,
    pointer: float | None = None,
    chalk: float | None = None,
) -> None:
    """Paint the tape at the foot with the chalk line's tag; `zero`, `pointer`, `chalk` are x in mm."""
    with kept(p):
        p.setClipRect(rect)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        _steel(p, rect, theme, upright=False)
        low, high = scale.mm(rect.topLeft())[0] - zero, scale.mm(rect.topRight())[0] - zero
        tag = chalk_tag(rect, scale, theme, units, zero, chalk)
        marks = lying_ticks(max(low, 0.0), high, scale.px_per_mm, units, theme.size)
        _lay(p, rect, [(tick, scale.px(tick.at + zero, 0.0).x()) for tick in marks], theme, tag)
        if pointer is not None:
            x = scale.px(pointer, 0.0).x()
            p.fillRect(QRectF(x - 1.5, rect.top(), 3.0, rect.height()), brush(theme.footred))
        if tag is not None and chalk is not None:
            _chalk_tag(p, tag, show_length(chalk - zero, units), theme)


def lying_ticks(low: float, high: float, px_per_mm: float, units: Units, size: float = 1.0) -> Iterator[Tick]:
    """Yield the ticks of a tape that lies at the foot; long figures stand apart as `size` makes them grow."""
    if units == "in":
        return ticks(low, high, px_per_mm, units, 4 * INCH, APART_WIDE)
    return ticks(low, high, px_per_mm, units, 50.0, APART_WIDE * size)


def _lay(
    p: QPainter, rect: QRectF, marks: list[tuple[Tick, float]], theme: Theme, tag: QRectF | None = None
) -> None:
    """Lay ticks with their pixel columns along a tape; figures keep off a tag."""
    whole, fine = QPainterPath(), QPainterPath()
    for tick, x in marks:
        path = whole if tick.share >= 1.0 else fine
        path.moveTo(x, rect.top())
        path.lineTo(x, rect.top() + 0.38 * rect.height() * tick.share)
        hidden = tag is not None and tag.left() - 16.0 < x < tag.right() + 16.0
        if tick.figure and not hidden:
            _figure(p, QPointF(x, rect.top() + 0.66 * rect.height()), tick, theme)
    p.strokePath(fine, pen(theme.tapeink, 1.0, 0.55))
    p.strokePath(whole, pen(theme.tapeink, 1.4))


def paint_out_tape(p: QPainter, rect: QRectF, scale: Scale, theme: Theme, units: Units) -> None:
    """Paint the tape under the Section: it counts out of the wall from z = 0, to the left."""
    with kept(p):
        p.setClipRect(rect)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        _steel(p, rect, theme, upright=False)
        wall, far = scale.px(0.0, 0.0).x(), -scale.mm(rect.topLeft())[0]
        marks = lying_ticks(0.0, far, scale.px_per_mm, units, theme.size)
        beside = QRectF(wall, rect.top(), rect.right() - wall, rect.height())
        _lay(p, rect, [(tick, scale.px(-tick.at, 0.0).x()) for tick in marks], theme)
        lettering.draw_in(p, beside, "out", Style(px=15.0).sized(theme.size), theme.tapeink)


def chalk_tag(
    rect: QRectF, scale: Scale, theme: Theme, units: Units, zero: float, chalk: float | None
) -> QRectF | None:
    """Return where the chalk line's tag lies on the foot tape, None without a line or out of view."""
    if chalk is None or not rect.left() <= scale.px(chalk, 0.0).x() <= rect.right():
        return None
    style = FIGURE.sized(theme.size)
    wide = lettering.width(show_length(chalk - zero, units), style) + 18.0
    left = min(max(scale.px(chalk, 0.0).x() - wide / 2, rect.left()), rect.right() - wide)
    return QRectF(left, rect.top() + 3.0, wide, rect.height() - 6.0)


def _chalk_tag(p: QPainter, tag: QRectF, text: str, theme: Theme) -> None:
    p.setBrush(brush(theme.blue))
    p.setPen(Qt.PenStyle.NoPen)
    p.drawRoundedRect(tag, 3.0, 3.0)
    lettering.draw_in(p, tag, text, FIGURE.sized(theme.size), theme.field if not theme.dark else theme.board)


def _steel(p: QPainter, rect: QRectF, theme: Theme, upright: bool) -> None:
    p.fillRect(rect, brush(theme.tape))
    edges = QPainterPath()
    for a, b in (
        ((rect.topLeft(), rect.bottomLeft()), (rect.topRight(), rect.bottomRight()))
        if upright
        else ((rect.topLeft(), rect.topRight()), (rect.bottomLeft(), rect.bottomRight()))
    ):
        edges.moveTo(a)
        edges.lineTo(b)
    p.strokePath(edges, pen(mixed(theme.tape, theme.tapeink, 0.55), 2.0))


def _figure(
    p: QPainter, at: QPointF, tick: Tick, theme: Theme, px: float = 16.0, room: float | None = None
) -> float:
    """Letter a figure round a point, red and larger at a foot or a metre, never wider than `room`.

    Return how wide it came out, px.
    """
    style = Style("pencil", round((px + 3.0 if tick.red else px) * theme.size))
    while room is not None and lettering.width(tick.figure, style) > room and style.px > 9:
        style = Style("pencil", style.px - 1)
    y = at.y() + lettering.line(tick.figure, style).rise / 2
    token = theme.footred if tick.red else theme.tapeink
    lettering.draw(p, QPointF(at.x(), y), tick.figure, style, token, "centre")
    return lettering.width(tick.figure, style)
