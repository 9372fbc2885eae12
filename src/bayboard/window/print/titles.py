"""The title line of the Print stage's views: as the Wall and the Section have theirs."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from bayboard.window import lettering
from bayboard.window.lettering import HEADING, Style
from bayboard.window.theme import Theme, brush

SMALL = Style(px=15.0)


def paint_title(
    p: QPainter, rect: QRectF, name: str, phrase: str, theme: Theme, bar: str, ground: str | None = None
) -> None:
    """Paint a view's name behind a bar and one grey phrase, on a veil of `ground` where one is given."""
    size = theme.size
    if ground is not None:
        p.fillRect(QRectF(rect.left(), rect.top(), rect.width(), 46.0 * size), brush(ground, 0.82))
    p.fillRect(QRectF(rect.left() + 15.0 * size, rect.top() + 16.0 * size, 3.0, 17.0 * size), brush(bar))
    style, small = HEADING.sized(size), SMALL.sized(size)
    baseline = rect.top() + 31.0 * size
    x = rect.left() + 27.0 * size
    lettering.draw(p, QPointF(x, baseline), name, style, theme.ink)
    x += lettering.width(name, style) + 11.0 * size
    words = lettering.elided(phrase, small, rect.right() - x - 8.0)
    lettering.draw(p, QPointF(x, baseline), words, small, theme.ink2)
