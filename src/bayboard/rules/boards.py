"""Boards with their polygons, worked out once."""

from dataclasses import dataclass
from functools import cached_property

from shapely import Polygon

from bayboard.geometry import outline as outlines
from bayboard.geometry.covered import ARC_TRUE
from bayboard.geometry.prism import Prism, prism_on
from bayboard.geometry.rims import Rim, rim
from bayboard.model.layout import Board


@dataclass(frozen=True)
class BoardShape:
    """A board with its polygons."""

    board: Board

    @cached_property
    def whole(self) -> Polygon:
        """Return the outline with its rounded corners, cut-outs not taken out."""
        return outlines.polygon(outlines.rounded(self.board.outline, self.board.corner_radius))

    @cached_property
    def rim(self) -> Rim:
        """Return its edges, the rounded corners and the cut-outs among them."""
        return rim(self.board.outline, self.board.corner_radius, [c.outline for c in self.board.cutouts])

    @property
    def polygon(self) -> Polygon:
        """Return the outline with rounded corners and cut-outs taken out."""
        return self.rim.shape

    @cached_property
    def true_polygon(self) -> Polygon:
        """Return the same with its arcs drawn so closely that areas and lengths are true."""
        if not self.board.corner_radius:
            return self.polygon
        ring = outlines.rounded(self.board.outline, self.board.corner_radius, ARC_TRUE)
        return outlines.with_holes(ring, [c.outline for c in self.board.cutouts])

    @cached_property
    def prism(self) -> Prism:
        """Return the board as a solid from its back to its front."""
        return prism_on(self.polygon, self.board.standoff, self.board.front)
