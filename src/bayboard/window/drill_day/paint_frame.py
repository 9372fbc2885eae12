"""What stands round the parts of drill day: header, warning, panels, labels below the buttons."""

from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from bayboard.window import lettering
from bayboard.window.draw.marks import paint_mark
from bayboard.window.drill_day.paint_bits import paint_bits
from bayboard.window.drill_day.paint_now import fitted, paint_close, paint_type, sized
from bayboard.window.drill_day.plan import DayPlan
from bayboard.window.drill_day.show import DayShow
from bayboard.window.first_frame import paint_panel
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, pen

KEYS = ("N", "Backspace", "Esc")


class Told(NamedTuple):
    """What the header tells in place of the revision: what was said last, and why nothing is written."""

    line: str = ""
    trouble: str = ""


def paint_frame(
    p: QPainter, rect: QRectF, plan: DayPlan, show: DayShow, theme: Theme, told: Told, px_per_mm: float
) -> None:
    """Paint everything but the board and what can be pressed."""
    p.fillRect(rect, brush(theme.bench))
    _paint_header(p, plan, show, theme, told)
    if show.warning:
        _paint_warning(p, plan.warning, show.warning, theme)
    paint_bits(p, plan.bits, show.bits, theme, plan.unit, px_per_mm)
    paint_panel(p, plan.now, theme.paper, theme)
    huge = plan.type if show.close is not None else plan.type_alone
    paint_type(p, huge, show.now, theme, plan.unit)
    if show.close is not None:
        paint_close(p, plan.close, show.close, theme, plan.unit)
    _paint_caption(p, plan, show, theme)
    _paint_foot(p, plan, show, theme)


def _paint_header(p: QPainter, plan: DayPlan, show: DayShow, theme: Theme, told: Told) -> None:
    rect, u = plan.header, plan.unit
    p.fillRect(rect, brush(theme.paper))
    p.fillRect(QRectF(rect.left(), rect.bottom() - 1.0, rect.width(), 1.0), brush(theme.rule))
    title, small = Style(px=24.0 * theme.size, weight=700), Style(px=17.0 * theme.size)
    count = Style(px=22.0 * theme.size, weight=600)
    base = rect.center().y() + 8.0 * theme.size
    x, end = 24.0 * u, rect.right() - 24.0 * u
    lettering.draw(p, QPointF(end, base), show.count, count, theme.ink, "right")
    end -= lettering.width(show.count, count) + 30.0
    lettering.draw(p, QPointF(x, base), "Drill day", title, theme.ink)
    x += lettering.width("Drill day", title) + 24.0 * u
    words, token = (told.line, theme.ink) if told.line else (f"{show.vehicle} · {show.phrase}", theme.ink2)
    if told.trouble and not told.line:
        words, token = f"{show.vehicle} · {told.trouble}", theme.must
    lettering.draw(p, QPointF(x, base), lettering.elided(words, small, end - x), small, token)


def _paint_warning(p: QPainter, rect: QRectF, words: str, theme: Theme) -> None:
    """Paint what must not be drilled from the sheets, on a band that cannot be missed."""
    p.setBrush(brush(theme.field))
    p.setPen(pen(theme.must, 2.4))
    p.drawRoundedRect(rect.adjusted(1.0, 1.0, -1.0, -1.0), 6.0, 6.0)
    size = theme.size
    paint_mark(p, QPointF(rect.left() + 26.0 * size, rect.center().y()), "must", None, theme, cased=False)
    style = Style(px=19.0 * size, weight=600)
    room = rect.width() - 60.0 * size
    while style.px > 15.0 * size and len(lettering.wrapped(words, style, room)) > 1:
        style = Style(px=style.px - 1.0, weight=600)
    lines = lettering.wrapped(words, style, room)[:2]
    y = rect.center().y() + 0.36 * style.px - 0.62 * style.px * (len(lines) - 1)
    for i, text in enumerate(lines):
        at = QPointF(rect.left() + 48.0 * size, y + i * 1.24 * style.px)
        lettering.draw(p, at, text, style, theme.must)


def _paint_caption(p: QPainter, plan: DayPlan, show: DayShow, theme: Theme) -> None:
    left = plan.close.left() if show.close is not None or not show.now.name else plan.type.left()
    y = plan.press.bottom() + 25.0 * plan.unit
    weight, token = (700, theme.must) if show.now.astray else (400, theme.ink2)
    style = sized(16.0, plan.unit, theme, weight)
    if show.now.astray:
        paint_mark(
            p, QPointF(left + 10.0, y - 0.35 * style.px), "must", None, theme, 1.1 * style.px, cased=False
        )
        left += 26.0
    room = plan.press.right() - left
    style = fitted(show.now.caption, style, room)
    for i, words in enumerate(lettering.wrapped(show.now.caption, style, room)[:2]):
        lettering.draw(p, QPointF(left, y + i * 1.25 * style.px), words, style, token)


def _paint_foot(p: QPainter, plan: DayPlan, show: DayShow, theme: Theme) -> None:
    foot, u = plan.foot, plan.unit
    p.fillRect(QRectF(foot.left(), foot.top(), foot.width(), 1.2), brush(theme.rule))
    label = sized(19.0, u, theme, 600)
    words = "After this" if show.then else ""
    lettering.draw(p, QPointF(foot.left(), foot.top() + 36.0 * u), words, label, theme.ink)
    small = sized(15.0, u, theme)
    for rect, key in zip(plan.buttons, KEYS, strict=True):
        at = QPointF(rect.center().x(), rect.bottom() + 1.5 * small.px)
        lettering.draw(p, at, key, small, theme.ink2, "centre")
