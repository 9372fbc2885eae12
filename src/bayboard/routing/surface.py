"""What leads may lie on: the boards of a bed as one, and what bounds them."""

from dataclasses import dataclass
from functools import cached_property, lru_cache

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Layout, Outline
from bayboard.routing.bed import RIM, Bed, Obstacle, boards_of
from bayboard.routing.grown import Shape, polygons

FAR = 300_000.0  # mm; nothing of a layout is farther out
LIP = 1.0  # mm; how far a bay in the board's edge is taken to reach outward
EDGE = 2e-6  # mm; points this much outside the edge lie on it


class Rim(Obstacle):
    """What lies outside the board: `polygon` all of it, `shape` the bays in its edge.

    Elsewhere the board's convex hull bounds it, in which all corners lie.
    """

    def __init__(self, board: BaseGeometry) -> None:
        super().__init__("rim", RIM, (), (0.0, 0.0), 0.0, 0.0)
        parts = shapely.get_parts(shapely.difference(shapely.convex_hull(board), board))
        bays = shapely.union_all([part for part in parts if part.area > outlines.SPECK])
        # closed on the outside, where a path would otherwise run along the hull
        closed = shapely.buffer(bays, LIP, join_style="mitre")
        self.__dict__["shape"] = polygons(shapely.difference(closed, board))
        self.__dict__["polygon"] = shapely.difference(shapely.box(-FAR, -FAR, FAR, FAR), board)

    @cached_property
    def bare(self) -> Shape:
        """Return the same: the board's edge is not grown."""
        return self.shape


@dataclass(frozen=True, eq=False, slots=True)
class Surface:
    """Boards with rounded corners as one, cut-outs not taken out; their rim; their hull, a hair larger."""

    board: BaseGeometry
    rim: Rim
    hull: Polygon


def surface(layout: Layout, bed: Bed) -> Surface:
    """Return what leads on the bed may lie on."""
    return _surface(tuple((board.outline, board.corner_radius) for board in boards_of(layout, bed)))


@lru_cache(maxsize=64)
def _surface(boards: tuple[tuple[Outline, float], ...]) -> Surface:
    rims = [outlines.polygon(outlines.rounded(outline, radius)) for outline, radius in boards]
    board = rims[0] if len(rims) == 1 else shapely.union_all(rims)
    hull = shapely.buffer(shapely.convex_hull(board), EDGE, join_style="mitre")
    assert isinstance(hull, Polygon)
    return Surface(board, Rim(board), hull)
