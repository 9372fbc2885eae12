"""Job cards: what a revision looks like, clipped to a line, slightly turned as paper hangs."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPixmap

from bayboard.window import lettering
from bayboard.window.draw.shadow import Shadow, paint_shadow
from bayboard.window.draw.strokes import kept
from bayboard.window.lettering import HELPER, STRONG, Style
from bayboard.window.theme import Theme, brush, mixed, pen

WIDE, HIGH, PITCH = 124.0, 152.0, 128.0  # px of a card, and from one to the next
PICTURE = (108.0, 43.0)  # px of the small picture at most
LEANS = (-1.3, 0.9, -0.5, 1.2, -0.9, 0.4)  # degrees; paper never hangs quite straight
TITLE = Style(px=16.0, weight=700)
FOOT = Style(px=14.0, weight=600)
LONGEST = 200  # letters of a note that are looked at for a card
HUNG = Shadow(6, 1.5, 3.0, 0.34)
PAPER_DARK, PAPER_LIGHT = "#D9D5CB", "#FDFCF9"
INK, INK2, ACT = "#221F1B", "#575146", "#1B57A6"  # on paper in either theme


@dataclass(frozen=True, slots=True)
class JobCard:
    """What stands on a card.  `draft`: it is not kept, and its last line says so in blue."""

    title: str
    date: str
    note: str = ""
    foot: str = ""
    lean: float = 0.0
    draft: bool = False


def lean_of(number: int) -> float:
    """Return how far the card of a revision hangs out of true, degrees: always the same for a number."""
    return LEANS[number % len(LEANS)]


def paint_cord(p: QPainter, y: float, wide: float, theme: Theme) -> None:
    """Paint the line that the cards hang on."""
    p.fillRect(QRectF(0.0, y + 1.0, wide, 2.0), brush("#000000", 0.12))
    p.fillRect(QRectF(0.0, y - 0.8, wide, 1.6), brush(mixed(theme.shelf, theme.ink, 0.72)))


@contextmanager
def hung(p: QPainter, rect: QRectF, lean: float) -> Iterator[QRectF]:
    """Turn the painter by `lean` degrees about a card's clip for as long; give the card's own rectangle."""
    with kept(p):
        p.translate(rect.center().x(), rect.top())
        p.rotate(lean)
        p.translate(-rect.width() / 2, 0.0)
        yield QRectF(0.0, 0.0, rect.width(), rect.height())


def paint_card(
    p: QPainter,
    rect: QRectF,
    card: JobCard,
    picture: QPixmap | None,
    theme: Theme,
    chosen: bool = False,
    near: bool = False,
) -> None:
    """Paint a card in its upright rectangle, turned about its clip; `chosen` rings it, `near` lifts it."""
    with hung(p, rect, card.lean) as own:
        _paint_paper(p, own, theme, near)
        _paint_words(p, own, card, theme)
        if picture is not None:
            paint_picture(p, picture_rect(own, theme), picture)
        if chosen:
            ring = QPainterPath()
            ring.addRoundedRect(own.adjusted(-3.0, -3.0, 3.0, 3.0), 5.0, 5.0)
            p.strokePath(ring, pen(theme.blue, 3.0))
        _paint_clip(p, QPointF(rect.width() / 2, 0.0), theme)


def _paint_paper(p: QPainter, own: QRectF, theme: Theme, near: bool) -> None:
    corners = ((0.0, 0.0), (own.right(), 0.0), (own.right(), own.bottom()), (0.0, own.bottom()))
    shadow = Shadow(8, 2.0, 5.0, 0.42) if near else HUNG
    paint_shadow(p, QPointF(0.0, 0.0), (corners,), shadow)
    p.fillRect(own, brush(PAPER_DARK if theme.dark else PAPER_LIGHT))
    p.setPen(pen("#000000", 1.0, 0.14))
    p.setBrush(Qt.BrushStyle.NoBrush)
    p.drawRect(own)


def picture_rect(own: QRectF, theme: Theme) -> QRectF:
    """Return the room for the picture on a card."""
    size = theme.size
    wide, high = PICTURE[0] * size, PICTURE[1] * size
    return QRectF(own.center().x() - wide / 2, own.top() + 21.0 * size, wide, high)


def paint_picture(p: QPainter, room: QRectF, picture: QPixmap) -> None:
    """Paint the picture whole, as large as it fits."""
    k = min(room.width() / max(picture.width(), 1), room.height() / max(picture.height(), 1))
    wide, high = picture.width() * k, picture.height() * k
    p.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    where = QRectF(room.center().x() - wide / 2, room.center().y() - high / 2, wide, high)
    p.drawPixmap(where, picture, QRectF(picture.rect()))


def _paint_words(p: QPainter, own: QRectF, card: JobCard, theme: Theme) -> None:
    size, left, right = theme.size, own.left() + 9.0 * theme.size, own.right() - 9.0 * theme.size
    title, small, foot = TITLE.sized(size), HELPER.sized(size), FOOT.sized(size)
    y = picture_rect(own, theme).bottom() + 19.0 * size
    lettering.draw(p, QPointF(left, y), card.title, title, INK)
    room = right - left - lettering.width(card.title, title) - 5.0 * size
    if lettering.width(card.date, small) <= room:
        lettering.draw(p, QPointF(right, y), card.date, small, INK2, "right")
    bottom = own.bottom() - 9.0 * size
    lines = 2 if bottom - y >= 50.0 * size else 1
    for i, line in enumerate(note_lines(card.note, small, right - left, lines)):
        lettering.draw(p, QPointF(left, y + (18.0 + 17.0 * i) * size), line, small, INK)
    words = lettering.elided(card.foot, foot, right - left)
    lettering.draw(p, QPointF(left, bottom), words, foot, ACT if card.draft else INK)


def note_lines(note: str, style: Style, room: float, most: int) -> tuple[str, ...]:
    """Return a note in at most `most` lines, the last of them cut short where there is more."""
    if not note or most < 1:
        return ()
    lines = lettering.wrapped(" ".join(note[:LONGEST].split()), style, room)
    shown = list(lines[:most])
    if len(lines) > most or len(note) > LONGEST:
        shown[-1] = f"{shown[-1]} …"
    return tuple(lettering.elided(line, style, room) for line in shown)


def _paint_clip(p: QPainter, at: QPointF, theme: Theme) -> None:
    """Paint the clip that holds a card to the line."""
    size = theme.size
    wood = mixed(theme.lath, theme.tape, 0.45) if not theme.dark else mixed(theme.tape, theme.lath, 0.35)
    edge = mixed(wood, "#000000", 0.42)
    for wide, top, high in ((20.0, -9.0, 9.0), (18.0, 0.0, 10.0)):
        part = QRectF(at.x() - wide / 2 * size, at.y() + top * size, wide * size, high * size)
        p.setBrush(brush(wood))
        p.setPen(pen(edge, 1.0))
        p.drawRoundedRect(part, 2.0, 2.0)
    p.setBrush(Qt.BrushStyle.NoBrush)


def paint_choice(p: QPainter, middle: QPointF, word: str, theme: Theme) -> QRectF:
    """Paint the blue tag under a chosen card: "then" or "now"; return its rectangle."""
    style = STRONG.sized(theme.size)
    wide, high = lettering.width(word, style) + 20.0 * theme.size, 24.0 * theme.size
    tag = QRectF(middle.x() - wide / 2, middle.y() - high / 2, wide, high)
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(brush(theme.blue))
    p.drawRoundedRect(tag, 3.0, 3.0)
    p.setBrush(Qt.BrushStyle.NoBrush)
    lettering.draw_in(p, tag, word, style, theme.field)
    return tag
