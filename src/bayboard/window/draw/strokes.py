"""Strokes shared by the painters: rings as paths, cased lines, arrows, hatching."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import lru_cache
from math import hypot

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QBrush, QImage, QPainter, QPainterPath, QPolygonF, QTransform

from bayboard.geometry.outline import Points
from bayboard.window.draw.scale import Scale
from bayboard.window.theme import Theme, brush, pen

CASING = 2.0  # px of paper on each side of whatever is laid on the scene


@contextmanager
def kept(p: QPainter) -> Iterator[None]:
    """Put the painter's state back afterwards, also when painting fails half-way."""
    p.save()
    try:
        yield
    finally:
        p.restore()


def ring_path(ring: Sequence[tuple[float, float]] | Points, scale: Scale) -> QPainterPath:
    """Return a closed ring in mm as a path in pixels; an empty path for an empty ring."""
    path = QPainterPath()
    add_ring(path, ring, scale)
    return path


def add_ring(path: QPainterPath, ring: Sequence[tuple[float, float]] | Points, scale: Scale) -> None:
    """Add a closed ring in mm to a path in pixels."""
    if len(ring):
        path.addPolygon(QPolygonF([scale.px(float(x), float(y)) for x, y in ring]))
        path.closeSubpath()


def cased(
    p: QPainter,
    path: QPainterPath,
    token: str,
    wide: float,
    theme: Theme,
    dash: tuple[float, ...] = (),
    casing: float = CASING,
) -> None:
    """Draw a line on its casing of paper, so that it reads on wall, board and card alike."""
    p.strokePath(path, pen(theme.paper, wide + 2 * casing))
    p.strokePath(path, pen(token, wide, dash=dash))


def segment(a: QPointF, b: QPointF) -> QPainterPath:
    """Return the straight line from a to b."""
    path = QPainterPath(a)
    path.lineTo(b)
    return path


def add_head(path: QPainterPath, tip: QPointF, way: tuple[float, float], long: float, wide: float) -> None:
    """Add a filled arrow head: its tip, the way it points in pixels, its length and width."""
    far = hypot(*way) or 1.0
    ux, uy = way[0] / far, way[1] / far
    back = QPointF(tip.x() - ux * long, tip.y() - uy * long)
    side = QPointF(-uy * wide / 2, ux * wide / 2)
    path.addPolygon(QPolygonF([tip, back + side, back - side, tip]))


def arrow_head(tip: QPointF, way: tuple[float, float], long: float, wide: float) -> QPainterPath:
    """Return a filled arrow head as a path."""
    path = QPainterPath()
    add_head(path, tip, way, long, wide)
    return path


def hatched(
    p: QPainter,
    path: QPainterPath,
    gap: int,
    token: str,
    alpha: float = 1.0,
    both: bool = False,
) -> None:
    """Hatch the inside of a path with lines rising to the right, `gap` pixels apart; `both` crosses them.

    The lines keep to the path's own corner, so that a hatched thing carries them along.
    """
    box = path.boundingRect()
    filling = QBrush(_hatch_tile(gap, token, alpha, both))
    filling.setTransform(QTransform.fromTranslate(box.left(), box.top()))
    p.fillPath(path, filling)


@lru_cache(maxsize=64)
def _hatch_tile(gap: int, token: str, alpha: float, both: bool) -> QImage:
    """Return a square of hatching that joins itself on all sides."""
    tile = QImage(gap, gap, QImage.Format.Format_ARGB32_Premultiplied)
    tile.fill(Qt.GlobalColor.transparent)
    lines = QPainterPath()
    for shift in (-gap, 0, gap):
        lines.moveTo(shift - 1, gap + 1)
        lines.lineTo(shift + gap + 1, -1)
        if both:
            lines.moveTo(shift - 1, -1)
            lines.lineTo(shift + gap + 1, gap + 1)
    with QPainter(tile) as p:
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.strokePath(lines, pen(token, 1.1, alpha))
    return tile


def dot(p: QPainter, at: QPointF, radius: float, token: str, alpha: float = 1.0) -> None:
    """Fill a disc."""
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(brush(token, alpha))
    p.drawEllipse(at, radius, radius)
    p.setBrush(Qt.BrushStyle.NoBrush)
