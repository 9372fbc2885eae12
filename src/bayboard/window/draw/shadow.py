"""Soft shadows: translucent outlines stacked into an image once per shape and zoom, then laid down."""

from dataclasses import dataclass
from functools import lru_cache
from math import ceil

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath, QPainterPathStroker, QPolygonF

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


def paint_shadow(p: QPainter, at: QPointF, shape: Shape, shadow: Shadow) -> None:
    """Lay the shadow of a shape whose origin stands at the pixel `at`."""
    rings = tuple(tuple((round(x), round(y)) for x, y in ring) for ring in shape)
    image, left, top = _image(rings, shadow)
    p.drawImage(QPointF(round(at.x() + shadow.right + left), round(at.y() + shadow.down + top)), image)


@lru_cache(maxsize=256)
def _image(shape: Shape, shadow: Shadow) -> tuple[QImage, int, int]:
    """Return the shadow as an image and where its upper left corner lies from the shape's origin."""
    margin = shadow.spread + 1
    xs, ys = zip(*(at for ring in shape for at in ring), strict=True)
    left, top = int(min(xs)) - margin, int(min(ys)) - margin
    size = ceil(max(xs)) - left + margin, ceil(max(ys)) - top + margin
    image = QImage(min(size[0], 8000), min(size[1], 8000), QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(Qt.GlobalColor.transparent)
    outline = QPainterPath()
    for ring in shape:
        outline.addPolygon(QPolygonF([QPointF(x - left, y - top) for x, y in ring]))
        outline.closeSubpath()
    with QPainter(image) as p:
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        steps = max(shadow.spread // 2, 1)
        veil = QColor(0, 0, 0)
        veil.setAlphaF(1.0 - (1.0 - shadow.alpha) ** (1.0 / steps))
        for step in range(steps, 0, -1):
            wide = 2.0 * shadow.spread * (step - 0.5) / steps
            _veil(p, outline, veil, wide)
    return image, left, top


def _veil(p: QPainter, outline: QPainterPath, veil: QColor, wide: float) -> None:
    """Add one veil: the outline grown by half of `wide`, evenly dark."""
    stroker = QPainterPathStroker()
    stroker.setWidth(wide)
    stroker.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    p.fillPath(outline.united(stroker.createStroke(outline)), veil)
