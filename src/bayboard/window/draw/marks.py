"""The signs of a finding: solid diamond, filled triangle, open ring; the tick and the open square."""

from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPolygonF

from bayboard.rules.finding import Severity
from bayboard.window import lettering
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, pen

MARK = 26.0  # px across, before the Scale setting


@lru_cache(maxsize=64)
def mark_shape(severity: Severity, across: float) -> QPainterPath:
    """Return the sign's outline round (0, 0)."""
    half = across / 2
    path = QPainterPath()
    if severity == "must":
        corners = [(0.0, -half), (half, 0.0), (0.0, half), (-half, 0.0)]
    elif severity == "should":
        corners = [(0.0, -0.92 * half), (half, 0.78 * half), (-half, 0.78 * half)]
    else:
        path.addEllipse(QPointF(0.0, 0.0), 0.86 * half, 0.86 * half)
        return path
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))
    path.closeSubpath()
    return path


def paint_mark(
    p: QPainter,
    at: QPointF,
    severity: Severity,
    number: int | None,
    theme: Theme,
    across: float | None = None,
    cased: bool = True,
) -> None:
    """Paint a severity's sign round `at`, its number inside; `cased` for the scene, not for panels.

    `across` in pixels; left out, `MARK` at the Scale setting.
    """
    across = MARK * theme.size if across is None else across
    shape = mark_shape(severity, across).translated(at)
    edge = max(1.6, across / 14)
    if cased:
        p.strokePath(shape, pen(theme.paper, 2 * edge + 4.0, round_ends=True))
    fill = {"must": theme.must, "should": theme.shouldfill, "note": theme.paper}[severity]
    line = {"must": theme.must, "should": dark_edge(theme), "note": theme.note}[severity]
    p.fillPath(shape, brush(fill))
    p.strokePath(shape, pen(line, edge, round_ends=severity != "must"))
    if number is not None:
        ink = {"must": theme.paper, "should": theme.tapeink, "note": theme.note}[severity]
        _number(p, at, severity, number, across, ink)


def dark_edge(theme: Theme) -> str:
    """Return the dark edge of a should: dark in both themes."""
    return theme.tapeink if theme.dark else theme.should


def _number(p: QPainter, at: QPointF, severity: Severity, number: int, across: float, ink: str) -> None:
    text = str(number)
    share = (0.54 if len(text) == 1 else 0.44) * (0.92 if severity == "should" else 1.0)
    style = Style(px=round(across * share), weight=700)
    down = 0.17 * across if severity == "should" else 0.0
    rise = lettering.line(text, style).rise
    lettering.draw(p, QPointF(at.x(), at.y() + down + rise / 2), text, style, ink, "centre")


def paint_tick(p: QPainter, at: QPointF, theme: Theme, across: float = 18.0) -> None:
    """Paint the tick round `at`; a word beside it says what is well."""
    half = across / 2
    path = QPainterPath(QPointF(at.x() - half, at.y() + 0.1 * half))
    path.lineTo(at.x() - 0.3 * half, at.y() + 0.75 * half)
    path.lineTo(at.x() + half, at.y() - 0.75 * half)
    p.strokePath(path, pen(theme.ok, max(2.0, across / 7)))


def paint_unchecked(p: QPainter, at: QPointF, count: int, theme: Theme, across: float | None = None) -> None:
    """Paint the open square with the count of what nobody could look at round `at`."""
    across = 22.0 * theme.size if across is None else across
    box = QRectF(at.x() - across / 2, at.y() - across / 2, across, across)
    text = str(count)
    style = Style(px=round(across * (0.6 if len(text) < 3 else 0.46)), weight=700)
    p.setPen(pen(theme.ink2, 2.0))
    p.setBrush(Qt.BrushStyle.NoBrush)
    p.drawRoundedRect(box, 4.0, 4.0)
    lettering.draw_in(p, box, text, style, theme.ink2)
