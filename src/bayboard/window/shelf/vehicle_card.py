"""A vehicle's job card: its picture, its name, when it was worked on, the newest note, how it stands."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPixmap

from bayboard.window import lettering
from bayboard.window.draw.job_card import (
    ACT,
    FOOT,
    INK,
    INK2,
    TITLE,
    JobCard,
    hung,
    note_lines,
    paint_card,
    paint_picture,
)
from bayboard.window.lettering import HELPER
from bayboard.window.theme import Theme, brush, mixed, pen

WIDE, HIGH, PITCH = 176.0, 206.0, 188.0  # px of a card at most, and from one to the next
PICTURE = (155.0, 62.0)  # px of the picture at most
TALL = 190.0  # px; on a lower card the name has one line
LEAST_PICTURE = 44.0  # px; how high it stays where the row is low
SIDE = 10.0  # px of words from the sides
TOP, FOOT_AT = 19.0, 10.0  # px of the picture from the top, of the foot from the bottom
MUST = "#B3261E"  # on paper in either theme


@dataclass(frozen=True, slots=True)
class VehicleCard:
    """What stands on a card.  `harmed`: its file cannot be read; `here`: it is the one on the Wall."""

    name: str
    date: str = ""
    note: str = ""
    foot: str = ""
    lean: float = 0.0
    harmed: bool = False
    here: bool = False


def paint_vehicle(
    p: QPainter,
    rect: QRectF,
    card: VehicleCard,
    picture: QPixmap | None,
    theme: Theme,
    chosen: bool = False,
    near: bool = False,
) -> None:
    """Paint a card in its upright rectangle, hanging a little out of true from its clip."""
    with hung(p, rect, card.lean) as own:
        paint_card(p, own, JobCard("", ""), None, theme, chosen, near)
        _paint_picture(p, picture_rect(own, theme), picture)
        _paint_words(p, own, card, theme)


def picture_rect(own: QRectF, theme: Theme) -> QRectF:
    """Return the room for the picture: smaller on a low card, so that the words stay whole."""
    size = theme.size
    spare = own.height() - (HIGH - PICTURE[1]) * size
    high = min(max(spare + 34.0 * size, LEAST_PICTURE * size), PICTURE[1] * size)
    wide = high * PICTURE[0] / PICTURE[1]
    return QRectF(own.center().x() - wide / 2, own.top() + TOP * size, wide, high)


def _paint_picture(p: QPainter, room: QRectF, picture: QPixmap | None) -> None:
    if picture is None:
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(pen(mixed(INK2, "#FFFFFF", 0.5), 1.2, dash=(5.0, 4.0)))
        p.drawRect(room.adjusted(0.5, 0.5, -0.5, -0.5))
    else:
        paint_picture(p, room, picture)


def _paint_words(p: QPainter, own: QRectF, card: VehicleCard, theme: Theme) -> None:
    size, room = theme.size, own.width() - 2 * SIDE * theme.size
    y, bottom = picture_rect(own, theme).bottom() + 2.0 * size, own.bottom() - FOOT_AT * size
    small = HELPER.sized(size)
    roomy = own.height() >= TALL * size
    names = note_lines(card.name, TITLE.sized(size), room, 2 if roomy else 1)
    said = [(line, TITLE.sized(size), INK) for line in names]
    said += [(card.date, small, INK2)] if card.date else []
    lines = int((bottom - y) // (18.0 * size)) - len(said) - 1
    said += [(line, small, INK) for line in note_lines(card.note, small, room, min(lines, 3)) if lines > 0]
    for words, style, ink in said:
        y += 18.0 * size
        lettering.draw(p, QPointF(own.left() + SIDE * size, y), words, style, ink)
    _paint_foot(p, QPointF(own.left() + SIDE * size, bottom), room, card, size)


def _paint_foot(p: QPainter, at: QPointF, room: float, card: VehicleCard, size: float) -> None:
    """Paint how the vehicle stands, with the sign of a must where its file cannot be read."""
    style, ink = FOOT.sized(size), MUST if card.harmed else ACT if card.here else INK
    if card.harmed:
        _paint_diamond(p, QPointF(at.x() + 5.0 * size, at.y() - 5.0 * size), 5.5 * size)
        at, room = at + QPointF(16.0 * size, 0.0), room - 16.0 * size
    lettering.draw(p, at, lettering.elided(card.foot, style, room), style, ink)


def _paint_diamond(p: QPainter, at: QPointF, half: float) -> None:
    """Paint the sign of something that must be put right."""
    sign = QPainterPath(at + QPointF(0.0, -half))
    for x, y in ((half, 0.0), (0.0, half), (-half, 0.0)):
        sign.lineTo(at + QPointF(x, y))
    sign.closeSubpath()
    p.fillPath(sign, brush(MUST))
