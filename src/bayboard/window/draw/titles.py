"""The title line of a view: its name and one grey phrase that says what is unusual now."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from bayboard.window import lettering
from bayboard.window.lettering import HELPER, Style
from bayboard.window.theme import Theme, brush

NAME = Style(px=17.0, weight=600)


def paint_title(
    p: QPainter, rect: QRectF, name: str, phrase: str, theme: Theme, token: str | None = None
) -> None:
    """Paint a view's title at the upper left of its rectangle, behind a bar of `token` (else ink).

    The phrase ends in "…" where the view is too narrow for it.
    """
    left, baseline = rect.left() + 16.0, rect.top() + 30.0 * theme.size
    p.fillRect(QRectF(left, baseline - 15.0 * theme.size, 3.0, 18.0 * theme.size), brush(token or theme.ink))
    style, grey = NAME.sized(theme.size), HELPER.sized(theme.size)
    lettering.draw(p, QPointF(left + 15.0, baseline), name, style, theme.ink)
    start = left + 15.0 + lettering.width(name, style) + 11.0
    room = max(rect.right() - start - 12.0, 0.0)
    lettering.draw(p, QPointF(start, baseline), lettering.elided(phrase, grey, room), grey, theme.ink2)
