"""Typed and dragged values: kept to 0.000001 mm, in which every 1/64 in is exact."""

from bayboard.model.layout import Point
from bayboard.units import length


def rounded(mm: float) -> float:
    """Return mm rounded to 0.000001, never -0; serves degrees too."""
    return length.rounded(mm)


def rounded_point(at: Point) -> Point:
    """Return a point, mm, with both figures rounded to 0.000001."""
    return length.rounded(at[0]), length.rounded(at[1])
