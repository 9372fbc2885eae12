"""The ledge: gear that still waits, standing true to the Wall's scale, its size written below."""

from collections.abc import Collection
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Card, Gear, Layout, Units
from bayboard.units.length import show_length
from bayboard.window import lettering
from bayboard.window.draw.face import Face, face
from bayboard.window.draw.gear import paint_face, ring_round
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.shadow import AT_REST, HOVERED, paint_shadow
from bayboard.window.draw.strokes import cased, kept
from bayboard.window.lettering import HELPER
from bayboard.window.theme import Theme, brush, mixed, pen

LIP = 44.0  # px; the ledge's front, where the sizes are written
PADDING = 18.0
APART = 24.0
LEAST = 56.0  # px a piece's place is wide at least, as felt


@dataclass(frozen=True, slots=True)
class LedgePlace:
    """Where a waiting piece stands: its id, the pixels it takes, and the room of its size below."""

    gear: str
    rect: QRectF
    label: QRectF


def waiting(layout: Layout) -> tuple[Gear, ...]:
    """Return the gear on the bench: without a place, or any gear while there is no board."""
    return tuple(gear for gear in layout.gear if gear.at is None or not layout.boards)


def size_text(card: Card, units: Units, full: bool = True) -> str:
    """Return a card's size: long × wide × high, or its length alone."""
    x0, y0, x1, y1 = outlines.box(card.outline)
    long = show_length(x1 - x0, units)
    if not full:
        return long
    sides = [x1 - x0, y1 - y0] + ([card.height] if card.height is not None else [])
    figures = [show_length(side, units).removesuffix(f" {units}") for side in sides]
    return " × ".join(figures) + f" {units}"


def _face(gear: Gear, layout: Layout, scale: Scale, theme: Theme) -> Face:
    return face(layout.cards[gear.card], gear.id, 0.0, scale.px_per_mm, theme.size)


def ledge_places(
    rect: QRectF, scale: Scale, layout: Layout, theme: Theme, scrolled: float = 0.0
) -> tuple[LedgePlace, ...]:
    """Return where the waiting gear stands from left to right; past the right edge they go on."""
    style = HELPER.sized(theme.size)
    floor = rect.bottom() - LIP * theme.size
    left = rect.left() + PADDING - scrolled
    found = []
    for gear in waiting(layout):
        made, card = _face(gear, layout, scale, theme), layout.cards[gear.card]
        text = _label(card, layout.units, theme, made)
        wide = max(made.box.width(), lettering.width(text, style), LEAST)
        middle = left + wide / 2
        stands = QRectF(
            middle - made.box.width() / 2, floor - made.box.height(), made.box.width(), made.box.height()
        )
        found.append(LedgePlace(gear.id, stands, QRectF(left, floor, wide, LIP * theme.size)))
        left += wide + APART
    return tuple(found)


def _label(card: Card, units: Units, theme: Theme, made: Face) -> str:
    full = size_text(card, units)
    room = max(made.box.width(), LEAST) + APART
    return full if lettering.width(full, HELPER.sized(theme.size)) <= room else size_text(card, units, False)


def paint_ledge(
    p: QPainter,
    rect: QRectF,
    scale: Scale,
    layout: Layout,
    theme: Theme,
    focused: str | None = None,
    hovered: str | None = None,
    in_hand: Collection[str] = (),
    scrolled: float = 0.0,
    selected: str | None = None,
) -> None:
    """Paint the ledge's back, its lip and what stands on it; what is in hand leaves a gap."""
    with kept(p):
        p.setClipRect(rect)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        floor = rect.bottom() - LIP * theme.size
        p.fillRect(rect, brush(theme.shelf))
        p.fillRect(QRectF(rect.left(), floor, rect.width(), rect.bottom() - floor), brush(theme.lath))
        edge = mixed(theme.lath, theme.ink, 0.30)
        p.fillRect(QRectF(rect.left(), floor - 0.8, rect.width(), 1.6), brush(edge))
        by_id = {gear.id: gear for gear in layout.gear}
        for place in ledge_places(rect, scale, layout, theme, scrolled):
            if place.gear in in_hand:
                _paint_gap(p, place, theme)
                continue
            _paint_waiting(p, place, by_id[place.gear], scale, layout, theme, hovered == place.gear)
            made = _face(by_id[place.gear], layout, scale, theme)
            if place.gear in (focused, selected):
                ring = ring_round(made.shape, 6.0).translated(_origin(place, made))
                dash = () if place.gear == selected else (4.0, 2.5)
                cased(p, ring, theme.blue, 2.2, theme, dash)


def _origin(place: LedgePlace, made: Face) -> QPointF:
    return place.rect.center() - made.box.center()


def _paint_waiting(
    p: QPainter, place: LedgePlace, gear: Gear, scale: Scale, layout: Layout, theme: Theme, hovered: bool
) -> None:
    made, card = _face(gear, layout, scale, theme), layout.cards[gear.card]
    at = _origin(place, made)
    paint_shadow(p, at, made.shape, HOVERED if hovered else AT_REST)
    paint_face(p, at, made, theme, near=hovered)
    text = _label(card, layout.units, theme, made)
    style = HELPER.sized(theme.size)
    room = lettering.elided(text, style, place.label.width() + APART - 6.0)
    lettering.draw_in(p, place.label, room, style, theme.ink2)


def _paint_gap(p: QPainter, place: LedgePlace, theme: Theme) -> None:
    """Paint the place of a piece that is in hand."""
    path = QPainterPath()
    path.addRect(place.rect.adjusted(0.5, 0.5, -0.5, -0.5))
    p.strokePath(path, pen(theme.rule2, 1.3, dash=(5.0, 4.0)))
