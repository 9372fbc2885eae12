"""Soft shadows: translucent outlines stacked into an image once per shape and zoom, then laid down."""

from dataclasses import dataclass
from functools import lru_cache

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QImage,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QPen,
    QPolygonF,
)

Shape = tuple[tuple[tuple[float, float], ...], ...]  # rings in pixels from the shape's own origin, holes too


@dataclass(frozen=True, slots=True)
class Shadow:
    """How a shadow falls: how far it spreads and lies off, in pixels, and how dark it is."""

    spread: int
    right: float
    down: float
    alpha: float


AT_REST = Shadow(6, 2.0, 4.0, 0.50)
HOVERED = Shadow(8, 2.0, 5.0, 0.55)
IN_HAND = Shadow(14, 6.0, 14.0, 0.50)
OF_BOARD = Shadow(8, 2.0, 5.0, 0.40)


LARGE = 500_000  # square px; few images as large as this are kept
LARGEST = 4_000_000  # square px; a shadow larger than this is painted anew each time, without an image


def paint_shadow(p: QPainter, at: QPointF, shape: Shape, shadow: Shadow) -> None:
    """Lay the shadow of a shape whose origin stands at the pixel `at`."""
    rings = tuple(tuple((round(x), round(y)) for x, y in ring) for ring in shape)
    xs, ys = zip(*(corner for ring in rings for corner in ring), strict=True)
    area = (max(xs) - min(xs)) * (max(ys) - min(ys))
    where = QPointF(round(at.x() + shadow.right), round(at.y() + shadow.down))
    if area > LARGEST:
        outline = _outline(rings).translated(where)
        for veil, wide in _veils(shadow):
            p.strokePath(outline, QPen(QBrush(veil), wide))
        return
    image, left, top = (_large if area > LARGE else _small)(rings, shadow)
    p.drawImage(QPointF(where.x() + left, where.y() + top), image)


def _image(rings: Shape, shadow: Shadow) -> tuple[QImage, int, int]:
    """Return the shadow as an image and where its upper left corner lies from the shape's origin."""
    margin = shadow.spread + 1
    xs, ys = zip(*(at for ring in rings for at in ring), strict=True)
    left, top = int(min(xs)) - margin, int(min(ys)) - margin
    size = int(max(xs)) - left + margin + 1, int(max(ys)) - top + margin + 1
    image = QImage(*size, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(Qt.GlobalColor.transparent)
    outline = _outline(rings).translated(-left, -top)
    with QPainter(image) as p:
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        for veil, wide in _veils(shadow):
            stroker = QPainterPathStroker()
            stroker.setWidth(wide)
            stroker.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
            p.fillPath(outline.united(stroker.createStroke(outline)), veil)
    return image, left, top


_small = lru_cache(maxsize=256)(_image)
_large = lru_cache(maxsize=6)(_image)


def _outline(rings: Shape) -> QPainterPath:
    path = QPainterPath()
    for ring in rings:
        path.addPolygon(QPolygonF([QPointF(x, y) for x, y in ring]))
        path.closeSubpath()
    return path


def _veils(shadow: Shadow) -> list[tuple[QColor, float]]:
    """Return the translucent outlines to stack, widest first: each colour and twice how far it spreads."""
    steps = max(shadow.spread // 2, 1)
    veil = QColor(0, 0, 0)
    veil.setAlphaF(1.0 - (1.0 - shadow.alpha) ** (1.0 / steps))
    return [(veil, 2.0 * shadow.spread * (step - 0.5) / steps) for step in range(steps, 0, -1)]
