"""How a card is cut: its clipped corner, the edge of the board one sees, its centre lines."""

from collections.abc import Sequence
from math import hypot

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath, QPolygonF

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Point

CLIPPED = 18.0  # mm off the upper left corner, less on small cards
CLIPPED_SHARE = 0.18  # of the shorter side
EDGE = 2.0  # px of cut edge that show


def clipped(outline: Sequence[Point]) -> tuple[tuple[Point, ...], Point]:
    """Return the outline with its upper left corner cut off, and that corner.

    An outline without a corner at its box's upper left is cut at the corner nearest to it,
    provided that corner sticks out and its edges are long enough.
    """
    x0, y0, x1, y1 = outlines.box(outline)
    at = min(range(len(outline)), key=lambda i: hypot(outline[i][0] - x0, outline[i][1] - y1))
    tip, before, after = outline[at], outline[at - 1], outline[(at + 1) % len(outline)]
    size = min(CLIPPED, CLIPPED_SHARE * min(x1 - x0, y1 - y0))
    legs = [_towards(tip, end, size) for end in (before, after)]
    cross = (tip[0] - before[0]) * (after[1] - tip[1]) - (tip[1] - before[1]) * (after[0] - tip[0])
    sticks_out = cross * outlines.signed_area(outline) > 0
    if not sticks_out or None in legs:
        return tuple(outline), tip
    kept = [*outline[:at], *[leg for leg in legs if leg is not None], *outline[at + 1 :]]
    return tuple(kept), tip


def _towards(tip: Point, end: Point, size: float) -> Point | None:
    far = hypot(end[0] - tip[0], end[1] - tip[1])
    if far < 1.5 * size:
        return None
    share = size / far
    return tip[0] + (end[0] - tip[0]) * share, tip[1] + (end[1] - tip[1]) * share


def polygon_path(ring: Sequence[Point]) -> QPainterPath:
    """Return a closed ring of pixels as a path."""
    path = QPainterPath()
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in ring]))
    path.closeSubpath()
    return path


def lower_edge(ring: Sequence[Point]) -> QPainterPath:
    """Return the strip of cut that shows along the edges that look down, inside a ring of pixels."""
    strip = QPainterPath()
    sign = 1.0 if outlines.signed_area(ring) > 0 else -1.0
    for (ax, ay), (bx, by) in zip(ring, [*ring[1:], ring[0]], strict=True):
        if -(bx - ax) * sign > 0.3 * (hypot(bx - ax, by - ay) or 1.0):
            strip.addPath(polygon_path([(ax, ay), (bx, by), (bx, by - EDGE), (ax, ay - EDGE)]))
    return strip


def centre_ticks(outline: Sequence[Point], px_per_mm: float) -> list[tuple[Point, Point]]:
    """Return ticks in mm on the middle of each side, as a stand-in is laid out on its centre lines."""
    x0, y0, x1, y1 = outlines.box(outline)
    long = min(12.0, 0.08 * px_per_mm * min(x1 - x0, y1 - y0) + 3.0) / px_per_mm
    return [
        ((x0, 0.0), (x0 + long, 0.0)),
        ((x1, 0.0), (x1 - long, 0.0)),
        ((0.0, y0), (0.0, y0 + long)),
        ((0.0, y1), (0.0, y1 - long)),
    ]
