"""The old in the Section: what stood elsewhere at the chalk line, dashed, tagged beside what is there now."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene
from bayboard.window import lettering
from bayboard.window.draw.cut_gear import UNKNOWN, body_boxes
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import segment
from bayboard.window.draw.tags import free_spot, paint_name, tag_size
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, pen


def cut_at(scene: Scene, x: float) -> tuple[Placed, ...]:
    """Return the stand-ins that the chalk line passes through."""
    return tuple(piece for piece in scene.placed.values() if piece.box[0] < x < piece.box[2])


def side_boxes(piece: Placed, scale: Scale, x: float) -> list[QRectF]:
    """Return the pixels a piece takes in the cut; one of unknown height is as deep as it is drawn."""
    boxes = body_boxes(piece, scale, x)
    if boxes:
        return boxes
    _, low, _, high = piece.box
    top = piece.top if piece.top is not None else piece.under + UNKNOWN
    return [QRectF(scale.px(-top, high), scale.px(-piece.under, low)).normalized()]


def paint_then(p: QPainter, scale: Scale, pieces: Sequence[Placed], theme: Theme, x: float) -> list[QRectF]:
    """Paint the old pieces dashed; return the box of each."""
    found = []
    for piece in pieces:
        path = QPainterPath()
        for box in side_boxes(piece, scale, x):
            path.addRect(box)
        path = path.simplified()
        p.strokePath(path, pen(theme.paper, 3.6))
        p.strokePath(path, pen(theme.ink, 1.7, dash=(4.5, 3.0)))
        found.append(path.boundingRect())
    return found


def paint_number(p: QPainter, box: QRectF, text: str, theme: Theme, taken: Sequence[QRectF]) -> None:
    """Letter an old piece's number in its box where nothing stands."""
    style = Style("pencil", round(15.0 * theme.size))
    wide, rise = lettering.width(text, style) + 6.0, lettering.line(text, style).rise + 6.0
    y = box.bottom() - 0.25 * box.height()
    spot = QRectF(box.center().x() - wide / 2, y - rise / 2, wide, rise)
    if wide <= box.width() and not any(spot.intersects(held) for held in taken):
        lettering.draw_in(p, spot, text, style, theme.ink2)


def side_tags(
    boxes: Sequence[tuple[str, QRectF]], theme: Theme, rect: QRectF, taken: Sequence[QRectF]
) -> list[tuple[str, QRectF, QRectF]]:
    """Return (word, tag, box) of what is told at the cut: each at the left of its box, none over another."""
    found: list[tuple[str, QRectF, QRectF]] = []
    held = list(taken)
    for word, box in boxes:
        wide, high = tag_size(word, theme)
        spots = [
            QRectF(box.left() - off - wide, top, wide, high)
            for off in (28.0 * theme.size, 60.0 * theme.size, 100.0 * theme.size)
            for top in (
                box.center().y() - high / 2,
                box.top() - 0.2 * high,
                box.bottom() - 0.8 * high,
                box.top() - 1.6 * high,
                box.bottom() + 0.6 * high,
            )
        ]
        spot = free_spot(spots, held, rect.adjusted(4.0, 4.0, -4.0, -4.0))
        if spot is not None:
            held.append(spot)
            found.append((word, spot, box))
    return found


def paint_side_tags(p: QPainter, tags: Sequence[tuple[str, QRectF, QRectF]], theme: Theme) -> None:
    """Paint "now" and "then" with a line to the box each is about."""
    for _, tag, box in tags:
        y = min(max(tag.center().y(), box.top() + 6.0), box.bottom() - 6.0)
        line = segment(QPointF(tag.right(), tag.center().y()), QPointF(box.left(), y))
        p.strokePath(line, pen(theme.paper, 4.0))
        p.strokePath(line, pen(theme.ink, 1.4))
    for word, tag, _ in tags:
        paint_name(p, tag, word, theme)
        bar = theme.ink if word == "now" else theme.rule2
        p.fillRect(QRectF(tag.left(), tag.top(), 3.0, tag.height()), brush(bar))
