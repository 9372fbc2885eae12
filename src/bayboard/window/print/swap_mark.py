"""The mark of a sheet to be swapped: two arrows past each other and the word."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from bayboard.window import lettering
from bayboard.window.draw.strokes import arrow_head, segment
from bayboard.window.lettering import STRONG
from bayboard.window.theme import LIGHT, Theme, brush, pen

WORD = "swap"
HIGH, SIGN, PAD = 26.0, 20.0, 7.0  # px


def swap_size(theme: Theme) -> tuple[float, float]:
    """Return how wide and high the mark is in pixels."""
    size = theme.size
    return lettering.width(WORD, STRONG.sized(size)) + (SIGN + 3 * PAD) * size, HIGH * size


def sign_size(theme: Theme) -> tuple[float, float]:
    """Return how wide and high the mark is without its word, for a sheet that has no room for it."""
    return (SIGN + 2 * PAD) * theme.size, HIGH * theme.size


def paint_swap(p: QPainter, rect: QRectF, theme: Theme) -> None:
    """Paint the mark on a sheet, which is light in both themes."""
    on_paper, size = LIGHT if theme.dark else theme, theme.size
    p.setBrush(brush(on_paper.shouldfill))
    p.setPen(pen(on_paper.ink, 1.6))
    p.drawRoundedRect(rect, 3.0, 3.0)
    left, wide = rect.left() + PAD * size, SIGN * size
    for dy, way in ((-4.0, 1.0), (4.0, -1.0)):
        y = rect.center().y() + dy * size
        tail, head = (left, left + wide) if way > 0 else (left + wide, left)
        p.strokePath(segment(QPointF(tail, y), QPointF(head, y)), pen(on_paper.ink, 1.8))
        p.fillPath(arrow_head(QPointF(head, y), (way, 0.0), 7.0, 7.0), brush(on_paper.ink))
    if rect.width() < swap_size(theme)[0] - 1.0:
        return
    room = rect.adjusted((SIGN + 2 * PAD) * size, 0.0, 0.0, 0.0)
    lettering.draw_in(p, room, WORD, STRONG.sized(size), on_paper.ink, "left")
