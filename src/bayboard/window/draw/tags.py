"""Tags: figures and words on paper, so that no text depends on what lies below it."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.rules.finding import Severity
from bayboard.window import lettering
from bayboard.window.draw.marks import MARK, paint_mark
from bayboard.window.lettering import FIGURE, Style
from bayboard.window.theme import Theme, brush, pen

RADIUS = 3.0
HIGH = 24.0  # px, before the Scale setting


def tag_size(text: str, theme: Theme, marked: bool = False, style: Style = FIGURE) -> tuple[float, float]:
    """Return how wide and high a tag is, in pixels; `marked` leaves room for a sign at its left."""
    sized = style.sized(theme.size)
    room = (MARK + 15.0) * theme.size if marked else 10.0 * theme.size
    return lettering.width(text, sized) + room + 10.0 * theme.size, HIGH * theme.size


def tag_rect(middle: QPointF, text: str, theme: Theme, marked: bool = False, style: Style = FIGURE) -> QRectF:
    """Return the rectangle of a tag round its middle."""
    wide, high = tag_size(text, theme, marked, style)
    return QRectF(middle.x() - wide / 2, middle.y() - high / 2, wide, high)


def paint_tag(
    p: QPainter,
    rect: QRectF,
    text: str,
    theme: Theme,
    severity: Severity | None = None,
    number: int | None = None,
    style: Style = FIGURE,
    token: str | None = None,
) -> None:
    """Paint a tag: plain chalk with dark figures, or paper edged and lettered in a severity's colour.

    `token` edges and letters a tag without a severity.
    """
    edge = theme.severity(severity) if severity else token
    p.setBrush(brush(theme.paper if edge else theme.chalk))
    p.setPen(pen(edge, 1.5) if edge else Qt.PenStyle.NoPen)
    p.drawRoundedRect(rect, RADIUS, RADIUS)
    p.setBrush(Qt.BrushStyle.NoBrush)
    sized = style.sized(theme.size)
    room = rect.adjusted(10.0 * theme.size, 0.0, 0.0, 0.0)
    if severity and number is not None:
        at = QPointF(rect.left() + (MARK / 2 + 6.0) * theme.size, rect.center().y())
        paint_mark(p, at, severity, number, theme, MARK * theme.size)
        room = rect.adjusted((MARK + 15.0) * theme.size, 0.0, 0.0, 0.0)
    lettering.draw_in(p, room, text, sized, edge or theme.tapeink, "left")


def paint_name(p: QPainter, rect: QRectF, text: str, theme: Theme, token: str | None = None) -> None:
    """Paint a name on paper without an edge: an entry's, a seat's, the place of a chalk line."""
    p.setBrush(brush(theme.paper))
    p.setPen(Qt.PenStyle.NoPen)
    p.drawRoundedRect(rect, RADIUS, RADIUS)
    p.setBrush(Qt.BrushStyle.NoBrush)
    lettering.draw_in(p, rect, text, FIGURE.sized(theme.size), token or theme.ink)


def paint_end_name(
    p: QPainter, at: QPointF, text: str, theme: Theme, taken: list[QRectF], within: QRectF
) -> None:
    """Paint what a lead's end is at on a tag beside that end, off what is taken, and ring the end."""
    wide, high = tag_size(text, theme)
    over, aside = high / 2 + 12.0, wide / 2 + 12.0
    ways = ((0.0, -over), (0.0, over), (aside, 0.0), (-aside, 0.0))
    spots = [tag_rect(QPointF(at.x() + dx, at.y() + dy), text, theme) for dx, dy in ways]
    room = within.adjusted(4, 4, -4, -4)
    ring = QPainterPath()
    ring.addEllipse(at, 5.0, 5.0)
    p.strokePath(ring, pen(theme.board, 4.0))
    p.strokePath(ring, pen(theme.chalk, 1.8))
    paint_tag(p, free_spot(spots, taken, room) or pushed_in(spots[0], room), text, theme)


def free_spot(spots: list[QRectF], taken: list[QRectF], within: QRectF, air: float = 2.0) -> QRectF | None:
    """Return the first spot that lies within the view and off all that is taken, None if there is none."""
    for spot in spots:
        if within.contains(spot):
            grown = spot.adjusted(-air, -air, air, air)
            if not any(grown.intersects(held) for held in taken):
                return spot
    return None


def pushed_in(rect: QRectF, within: QRectF) -> QRectF:
    """Return the rectangle moved the least way into the view."""
    dx = max(within.left() - rect.left(), 0.0) or min(within.right() - rect.right(), 0.0)
    dy = max(within.top() - rect.top(), 0.0) or min(within.bottom() - rect.bottom(), 0.0)
    return rect.translated(dx, dy)
