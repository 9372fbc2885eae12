"""The stage strip: laths of a folding rule, joined by rivets."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QPainter, QPainterPath, QRadialGradient

from bayboard.rules.finding import Severity
from bayboard.window import lettering
from bayboard.window.draw.marks import paint_mark, paint_tick, paint_unchecked
from bayboard.window.draw.strokes import kept
from bayboard.window.lettering import Style
from bayboard.window.theme import LIGHT, Theme, brush, colour, mixed, pen

LATH = (152.0, 40.0)  # px; a lath's length and height before the Scale setting
LAP = 16.0  # px by which two laths overlap round their rivet
LEFT = 14.0


@dataclass(frozen=True, slots=True)
class Lath:
    """A stage: its name and its worst open finding, else what is unchecked, else a tick.

    `worst` is (severity, number).  A stage that nobody looked at (`looked` false) shows nothing.
    """

    name: str
    current: bool = False
    worst: tuple[Severity, int] | None = None
    unchecked: int = 0
    looked: bool = True
    hovered: bool = False
    focused: bool = False


def lath_rects(rect: QRectF, count: int, theme: Theme) -> tuple[QRectF, ...]:
    """Return where the laths lie in the strip, left to right; they overlap by a rivet."""
    wide, high = LATH[0] * theme.size, min(LATH[1] * theme.size, rect.height() - 10.0)
    step = wide - LAP
    top = rect.center().y() - high / 2
    return tuple(
        QRectF(rect.left() + LEFT + i * step, top + (1.5 if i % 2 else -1.5), wide, high)
        for i in range(count)
    )


def paint_strip(p: QPainter, rect: QRectF, laths: tuple[Lath, ...], theme: Theme) -> None:
    """Paint the folding rule into the strip's rectangle; the lath in use lies on top."""
    with kept(p):
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        places = lath_rects(rect, len(laths), theme)
        order = sorted(range(len(laths)), key=lambda i: laths[i].current)
        for i in order:
            _paint_lath(p, places[i], laths[i], theme)
        for place in places[1:]:
            _rivet(p, QPointF(place.left() + LAP / 2, place.center().y()))


def _paint_lath(p: QPainter, place: QRectF, lath: Lath, theme: Theme) -> None:
    wood = theme.tape if lath.current else theme.lath
    ink = theme.tapeink if lath.current else theme.ink
    if lath.hovered and not lath.current:
        wood = mixed(wood, ink, 0.06)
    path = QPainterPath()
    path.addRoundedRect(place, 8.0, 8.0)
    if lath.current:
        for grow in (3.0, 2.0, 1.0):
            p.fillPath(path.translated(0.0, grow), brush("#000000", 0.07))
    p.fillPath(path, brush(wood))
    edge = mixed(wood, "#6A4E1E", 0.65 if lath.current else 0.35)
    p.strokePath(path, pen(edge, 1.6 if lath.current else 1.0))
    _rule_ticks(p, place, ink, 0.75 if lath.current else 0.4)
    style = Style(px=17.0, weight=600).sized(theme.size)
    baseline = QPointF(place.left() + 26.0 * theme.size, place.top() + 0.56 * place.height())
    lettering.draw(p, baseline, lath.name, style, ink)
    at = QPointF(place.right() - 36.0 * theme.size, place.center().y() - 2.0)
    _paint_verdict(p, at, lath, theme)
    if lath.focused:
        ring = QPainterPath()
        ring.addRoundedRect(place.adjusted(-3, -3, 3, 3), 10.0, 10.0)
        p.strokePath(ring, pen(theme.blue, 2.0, dash=(4.0, 2.5)))


def _paint_verdict(p: QPainter, at: QPointF, lath: Lath, theme: Theme) -> None:
    """Paint the worst finding, else what is unchecked, else the tick: never a tick over a doubt."""
    ground = LIGHT if lath.current else theme  # the lath in use is tape yellow in both themes
    if lath.worst is not None:
        severity, number = lath.worst
        paint_mark(p, at, severity, number, theme, 25.0 * theme.size, cased=lath.current)
    elif lath.unchecked:
        paint_unchecked(p, at, lath.unchecked, ground.sized(theme.size))
    elif lath.looked:
        paint_tick(p, at, ground, 18.0 * theme.size)


def _rule_ticks(p: QPainter, place: QRectF, ink: str, alpha: float) -> None:
    marks = QPainterPath()
    x, count = place.left() + 22.0, 0
    while x < place.right() - 18.0:
        marks.moveTo(x, place.bottom() - 1.0)
        marks.lineTo(x, place.bottom() - (7.0 if count % 5 == 0 else 4.0))
        x += 6.4
        count += 1
    p.strokePath(marks, pen(ink, 1.0, alpha))


def _rivet(p: QPainter, at: QPointF) -> None:
    steel = QRadialGradient(at.x() - 1.5, at.y() - 1.5, 6.0)
    steel.setColorAt(0.0, colour("#D9DDDC"))
    steel.setColorAt(0.45, colour("#8A9090"))
    steel.setColorAt(1.0, colour("#555B5B"))
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(QBrush(steel))
    p.drawEllipse(at, 5.5, 5.5)
    p.setBrush(Qt.BrushStyle.NoBrush)
