"""A panel's title: its name, one grey phrase, and what stands at the right end."""

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter

from bayboard.window import lettering
from bayboard.window.lettering import HEADING, Style
from bayboard.window.theme import Theme

SMALL = Style(px=15.0)


def paint_panel_title(
    p: QPainter, name: str, phrase: str, theme: Theme, wide: float, right: str = ""
) -> None:
    """Paint a panel's name, a grey phrase beside it and, if given, one at the right end."""
    size, pad = theme.size, 16.0 * theme.size
    heading, small, y = HEADING.sized(size), SMALL.sized(size), 28.0 * theme.size
    end = wide - pad
    if right:
        lettering.draw(p, QPointF(end, y), right, small, theme.ink2, "right")
        end -= lettering.width(right, small) + 12.0 * size
    lettering.draw(p, QPointF(pad, y), name, heading, theme.ink)
    x = pad + lettering.width(name, heading) + 12.0 * size
    lettering.draw(p, QPointF(x, y), lettering.elided(phrase, small, max(end - x, 0.0)), small, theme.ink2)
