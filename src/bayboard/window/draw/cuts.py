"""Where an upright line cuts outlines: the stretches of height that lie inside."""

from collections.abc import Iterable, Sequence

import shapely
from shapely import Geometry

from bayboard.geometry.outline import Points
from bayboard.model.layout import Outline

Span = tuple[float, float]


def spans(shape: Geometry, x: float) -> list[Span]:
    """Return the stretches (low, high) of y where an upright line at x runs inside a shape, from below."""
    if shape.is_empty or not shape.bounds[0] <= x <= shape.bounds[2]:
        return []
    parts = shapely.get_parts(shape).tolist()
    rings = [ring for part in parts for ring in (part.exterior, *part.interiors)]
    return _inside([ring.coords for ring in rings], x)


def ring_spans(outline: Outline | Points, x: float) -> list[Span]:
    """Return the stretches of y where an upright line at x runs inside a ring; [] for no ring."""
    points = outline if isinstance(outline, tuple) else outline.tolist()
    return _inside([points], x) if len(points) else []


def _inside(rings: Iterable[Sequence[Sequence[float]]], x: float) -> list[Span]:
    heights: list[float] = []
    for ring in rings:
        ax, ay = ring[-1][0], ring[-1][1]
        for point in ring:
            bx, by = point[0], point[1]
            if (ax <= x) != (bx <= x):
                heights.append(ay + (by - ay) * (x - ax) / (bx - ax))
            ax, ay = bx, by
    heights.sort()
    return [(low, high) for low, high in zip(heights[::2], heights[1::2], strict=True) if high > low]


def without(whole: Span, holes: Iterable[Span]) -> list[Span]:
    """Return what is left of a stretch once others are taken out of it."""
    left, low = [], whole[0]
    for start, end in sorted(holes):
        if start > low:
            left.append((low, min(start, whole[1])))
        low = max(low, end)
        if low >= whole[1]:
            return left
    return [*left, (low, whole[1])]
