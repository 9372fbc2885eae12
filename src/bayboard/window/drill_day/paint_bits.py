"""The bits on the ledge, as wide on the screen as they are, ticked when they have done their work."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPolygonF

from bayboard.window import lettering
from bayboard.window.draw.marks import paint_tick
from bayboard.window.draw.strokes import kept, segment
from bayboard.window.drill_day.show import Bit
from bayboard.window.first_frame import paint_panel
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, mixed, pen

STEEL, STEEL_DARK = "#5F6362", "#3D4140"
PALE, PALE_EDGE = "#B9B8B2", "#8D8C86"


def paint_bits(
    p: QPainter, rect: QRectF, bits: tuple[Bit, ...], theme: Theme, unit: float, px_per_mm: float
) -> None:
    """Paint the panel; `px_per_mm` is the screen's own, so that a bit held to it is as wide."""
    paint_panel(p, rect, theme.paper, theme)
    px = max(17.0 * unit, 14.0) * theme.size
    title = Style(px=px, weight=600)
    lettering.draw(p, rect.topLeft() + QPointF(20.0 * unit, 34.0 * unit), "Bits, true size", title, theme.ink)
    lip = QRectF(rect.left() + 14.0 * unit, 0.0, rect.width() - 28.0 * unit, px + 8.0)
    lip.moveBottom(rect.bottom() - 14.0 * unit)
    back = QRectF(lip.left(), lip.top() - 66.0 * unit, lip.width(), 66.0 * unit)
    shown = seen_bits(bits, lip.width(), px_per_mm)
    top = rect.top() + 80.0 * unit
    p.fillRect(back, brush(theme.shelf))
    for bit, x in shown:
        _paint_bit(p, x + lip.left(), top, lip.top(), bit, theme, px_per_mm)
    p.fillRect(back, brush(theme.shelf, 0.55))
    p.fillRect(lip, brush(theme.lath))
    p.fillRect(QRectF(lip.left(), lip.top(), lip.width(), 1.5), brush(theme.buffedge))
    for bit, x in shown:
        at = QPointF(x + lip.left(), 0.0)
        style = Style(px=max(16.0 * unit, 14.0) * theme.size, weight=700 if bit.now else 400)
        slot = lip.width() / len(shown)
        name = bit.name if lettering.width(bit.name, style) < slot - 4.0 else bit.name.removesuffix(" mm")
        room = QRectF(at.x() - slot / 2, lip.top(), slot, lip.height())
        lettering.draw_in(p, room, name, style, theme.ink if bit.now else theme.ink2)
        if bit.done:
            paint_tick(p, QPointF(at.x(), top - 18.0 * unit), theme, 18.0 * max(unit, 0.8))


def seen_bits(bits: tuple[Bit, ...], room: float, px_per_mm: float) -> list[tuple[Bit, float]]:
    """Return the bits that stand side by side on the ledge with the x of each, the one in use among them."""
    shown = list(bits)
    while len(shown) > 1 and sum(_felt(bit, px_per_mm) for bit in shown) > room:
        at = next((i for i, bit in enumerate(shown) if bit.now), 0)
        shown.pop(0 if at > len(shown) // 2 else -1)
    spare = (room - sum(_felt(bit, px_per_mm) for bit in shown)) / max(len(shown), 1)
    places, x = [], 0.0
    for bit in shown:
        wide = _felt(bit, px_per_mm) + spare
        places.append((bit, x + wide / 2))
        x += wide
    return places


def _felt(bit: Bit, px_per_mm: float) -> float:
    return max(bit.across * px_per_mm + 16.0, 46.0)


def _paint_bit(
    p: QPainter, x: float, top: float, foot: float, bit: Bit, theme: Theme, px_per_mm: float
) -> None:
    """Paint a twist drill on end, its tip up; pale when it is not the one in use."""
    r = bit.across * px_per_mm / 2
    tip = r * 0.6  # a point of 118 degrees
    body = QPolygonF(
        [
            QPointF(x, top),
            QPointF(x + r, top + tip),
            QPointF(x + r, foot),
            QPointF(x - r, foot),
            QPointF(x - r, top + tip),
        ]
    )
    path = QPainterPath()
    path.addPolygon(body)
    path.closeSubpath()
    steel = STEEL if bit.now else PALE
    edge = (mixed(STEEL_DARK, theme.ink, 0.3) if bit.now else PALE_EDGE) if not theme.dark else "#8D8C86"
    p.fillPath(path, brush(steel))
    flutes_end = top + (foot - top) * 0.62
    with kept(p):
        p.setClipPath(path)
        y = top + tip
        while y < flutes_end:
            a, b = QPointF(x - r - 1.0, y + 1.1 * r), QPointF(x + r + 1.0, y - 0.1 * r)
            p.strokePath(segment(a, b), pen("#D9D8D2", max(0.42 * r, 1.2), 0.85))
            y += max(1.55 * r, 7.0)
    p.strokePath(path, pen(edge, 1.3))
    if bit.now:
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(pen(theme.blue, 2.6))
        frame = QRectF(x - r - 8.0, top - 12.0, 2 * r + 16.0, foot - top + 12.0)
        p.drawRoundedRect(frame, 4.0, 4.0)
