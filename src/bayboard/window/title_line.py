"""A view's title line: a bar, a word, and one grey phrase that says what is unusual now."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from bayboard.window import lettering
from bayboard.window.lettering import HEADING, Style
from bayboard.window.theme import Theme, brush

LEFT, BASE = 27.0, 31.0  # px of the word's left end and baseline
PHRASE = Style(px=15.0)


def paint_title(
    p: QPainter,
    wide: float,
    theme: Theme,
    word: str,
    phrases: Sequence[str],
    bar: str,
    ground: str,
    veiled: bool,
) -> None:
    """Paint the title line of a view `wide` pixels wide, with the first of the phrases that fits.

    `veiled`: what is drawn below the words is covered by the view's ground, so that they can be read.
    """
    size = theme.size
    heading, small = HEADING.sized(size), PHRASE.sized(size)
    x = LEFT * size + lettering.width(word, heading) + 12.0 * size
    phrase = next((text for text in phrases if lettering.width(text, small) <= wide - x - 8.0), "")
    if veiled:
        end = x + lettering.width(phrase, small) + 8.0 * size
        p.fillRect(QRectF(8.0 * size, 11.0 * size, end - 8.0 * size, 28.0 * size), brush(ground, 0.86))
    p.fillRect(QRectF(15.0 * size, 16.0 * size, 3.0, 17.0 * size), brush(bar))
    lettering.draw(p, QPointF(LEFT * size, BASE * size), word, heading, theme.ink)
    lettering.draw(p, QPointF(x, BASE * size), phrase, small, theme.ink2)


def title_end(theme: Theme, word: str, phrase: str) -> float:
    """Return where the phrase ends, in pixels."""
    size = theme.size
    wide = lettering.width(word, HEADING.sized(size)) + lettering.width(phrase, PHRASE.sized(size))
    return LEFT * size + wide + 12.0 * size
