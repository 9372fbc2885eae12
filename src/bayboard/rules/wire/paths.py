"""Leads with what decides where they may lie: their boards, ends, heights and plugs."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import shapely
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.trespass import clipped, on_board
from bayboard.model.layout import Lead
from bayboard.routing.ends import End, ends
from bayboard.routing.route import Route
from bayboard.rules.cables import known_od
from bayboard.rules.scene import BoardShape, Scene

Parts = list[tuple[float, float]]


@dataclass(frozen=True)
class Path:
    """A lead with a route, both its ends, and the boards it lies on."""

    lead: Lead
    route: Route
    ends: tuple[End, End]
    boards: tuple[BoardShape, ...]
    front: float  # z of the board it lies on
    od: float | None

    @property
    def z(self) -> tuple[float, float]:
        """Return its lowest and highest z; the same on the back and where nobody knows its thickness."""
        return self.front, self.front + (self.od if self.on_front and self.od else 0.0)

    @property
    def on_front(self) -> bool:
        """Return whether it lies among the gear."""
        return self.lead.side == "front"

    @cached_property
    def ground(self) -> BaseGeometry:
        """Return all that its boards cover, corners rounded, cut-outs counted as board."""
        return shapely.union_all([shape.whole for shape in self.boards])

    @property
    def from_off(self) -> bool:
        """Return whether it starts at an entry that lies off its boards."""
        return self._off(self.ends[0])

    @property
    def to_off(self) -> bool:
        """Return whether it ends at an entry that lies off its boards."""
        return self._off(self.ends[1])

    def _off(self, end: End) -> bool:
        return end.entry is not None and not on_board(end.point, self.ground)

    def beyond_plugs(self, gear: str, parts: Parts) -> Parts:
        """Return the parts of the path inside a stand-in, less what its plugs there excuse."""
        low, high = 0.0, self.route.length
        first, last = self.ends
        if first.placed is not None and first.port is not None and first.placed.id == gear:
            low = first.port.plug
        if last.placed is not None and last.port is not None and last.placed.id == gear:
            high -= last.port.plug
        return clipped(parts, low, high)


def paths(scene: Scene) -> Iterator[Path]:
    """Yield each lead that has a route on a board, in document order."""
    for lead in scene.layout.leads:
        route = scene.routes.get(lead.id)
        both = ends(scene.layout, lead, scene.placed) if route else None
        if route is None or both is None or route.board is None:
            continue
        ids = dict.fromkeys((route.board, *(e.placed.board.id for e in both if e.placed is not None)))
        boards = tuple(scene.boards[id_] for id_ in ids)
        yield Path(lead, route, both, boards, scene.boards[route.board].board.front, known_od(scene, lead))
