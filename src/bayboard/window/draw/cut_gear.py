"""Stand-ins in the Section: those the cut runs through, hatched, and those beyond it, dashed."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.placed import Placed
from bayboard.window import lettering
from bayboard.window.draw.cuts import ring_spans
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.seats import paint_crushed
from bayboard.window.draw.strokes import cased, hatched, kept
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, pen

UNKNOWN = 25.0  # mm; how deep a piece of unknown height is drawn, open in front


def body_boxes(piece: Placed, scale: Scale, x: float) -> list[QRectF]:
    """Return the pixels that a piece's body takes in the cut at x; a piece of unknown height none."""
    return [
        QRectF(scale.px(-body.z[1], high), scale.px(-body.z[0], low)).normalized()
        for body in piece.bodies
        for low, high in ring_spans(body.ring, x)
    ]


def side_box(piece: Placed, scale: Scale) -> QRectF:
    """Return the pixels that a piece takes seen from the side, from the board's front to its own."""
    top = piece.top if piece.top is not None else piece.under + UNKNOWN
    _, low, _, high = piece.box
    return QRectF(scale.px(-top, high), scale.px(-piece.under, low)).normalized()


def paint_beyond(p: QPainter, scale: Scale, pieces: Sequence[Placed], theme: Theme) -> None:
    """Paint the outlines of pieces that stand farther left; those that look alike once."""
    outline = QPainterPath()
    boxes = {side_box(piece, scale).toRect().getRect(): side_box(piece, scale) for piece in pieces}
    for box in boxes.values():
        outline.addRect(box)
    p.strokePath(outline, pen(theme.ink2, 1.2, 0.9, dash=(4.0, 3.0)))


def letter_beyond(
    p: QPainter, scale: Scale, pieces: Sequence[Placed], theme: Theme, taken: list[QRectF]
) -> None:
    """Letter the pieces farther left, the nearest first, where their numbers are not in the way."""
    for piece in sorted(pieces, key=lambda g: -g.box[2]):
        _letter(p, side_box(piece, scale), piece.id, theme, None, taken)


def paint_cut(
    p: QPainter,
    scale: Scale,
    piece: Placed,
    x: float,
    theme: Theme,
    selected: bool,
    crushing: Sequence[QPainterPath],
    taken: list[QRectF],
) -> None:
    """Paint a piece where it is cut: hatched, its number upright, what the seat digs into in must."""
    boxes = body_boxes(piece, scale, x)
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    for box in boxes:
        path.addRect(box)
    if not boxes:
        _paint_unknown(p, scale, piece, x, theme, taken)
        return
    path = path.simplified()
    p.fillPath(path, brush(theme.buff))
    hatched(p, path, 9, theme.pencil2, 0.5)
    paint_crushed(p, path, crushing, theme)
    p.strokePath(path, pen(theme.pencil, 1.6))
    if selected:
        ring = QPainterPath()
        ring.addRoundedRect(path.boundingRect().adjusted(-5, -5, 5, 5), 4.0, 4.0)
        cased(p, ring, theme.blue, 2.0, theme, casing=1.5)
    _letter(p, path.boundingRect(), piece.id, theme, theme.buff, taken)


def _paint_unknown(
    p: QPainter, scale: Scale, piece: Placed, x: float, theme: Theme, taken: list[QRectF]
) -> None:
    """Paint a piece whose height nobody measured: open in front, with a question mark."""
    for low, high in ring_spans(piece.ring, x):
        box = QRectF(scale.px(-(piece.under + UNKNOWN), high), scale.px(-piece.under, low)).normalized()
        path = QPainterPath(box.topLeft())
        for at in (box.topRight(), box.bottomRight(), box.bottomLeft()):
            path.lineTo(at)
        p.fillRect(box, brush(theme.buff, 0.45))
        p.strokePath(path, pen(theme.pencil, 1.6, dash=(4.0, 3.0)))
        _letter(p, box, f"{piece.id} ?", theme, theme.buff, taken)


def _letter(
    p: QPainter, box: QRectF, text: str, theme: Theme, behind: str | None, taken: list[QRectF]
) -> None:
    """Letter a number in a box, turned upright-reading along a box too narrow for it."""
    style = Style("pencil", round((17.0 if behind else 15.0) * theme.size))
    wide, rise = lettering.width(text, style), lettering.line(text, style).rise
    lying = box.width() < wide + 4.0
    long, high = (rise + 8.0, wide + 8.0) if lying else (wide + 8.0, rise + 8.0)
    spot = QRectF(box.center().x() - long / 2, box.center().y() - high / 2, long, high)
    if spot.height() > box.height() + 8.0 or any(spot.intersects(t) for t in taken):
        return
    taken.append(spot)
    if behind:
        p.fillRect(spot.intersected(box.adjusted(1, 1, -1, -1)), brush(behind))
    with kept(p):
        p.translate(spot.center())
        if lying:
            p.rotate(-90.0)
        ink = theme.pencil if behind else theme.ink2
        lettering.draw(p, QPointF(0.0, rise / 2), text, style, ink, "centre")
