"""What boards cover of a region: how much of it, and how long the rim is that is left to the air."""

from collections.abc import Sequence
from typing import NamedTuple

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

ARC_TRUE = 1e-6  # mm; how closely an arc is drawn whose area and length are told


class Cover(NamedTuple):
    """How a board lies over a region: the covered share, and the rim of the covered part, mm."""

    share: float
    rim: float


def cover(region: Polygon, board: Polygon, least: float) -> Cover | None:
    """Return how a board, its cut-outs taken out, lies over a region; None under `least` mm2.

    `rim` is the perimeter of the covered part, with its holes, but never more than the board's outer edge.
    """
    shared = shapely.intersection(region, board)
    if shared.area <= least:
        return None
    around = sum(part.length for part in shapely.get_parts(shared) if isinstance(part, Polygon))
    return Cover(shared.area / region.area, min(around, board.exterior.length))


def under(region: Polygon, shapes: Sequence[Polygon]) -> BaseGeometry:
    """Return the part of a region that lies under any of some shapes."""
    return shapely.intersection(region, shapely.union_all(shapes))


def area_with(covered: BaseGeometry, region: Polygon, more: Sequence[Polygon]) -> float:
    """Return the area in mm2 of a covered part of a region together with what lies under more shapes."""
    added = shapely.difference(under(region, more), covered).area if more else 0.0
    return float(covered.area + added)
