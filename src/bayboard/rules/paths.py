"""Leads with what decides where they may lie: their boards, ends, heights and plugs."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

import shapely
from shapely.geometry.base import BaseGeometry

from bayboard.geometry.trespass import clipped, on_board
from bayboard.model.layout import Layout, Lead
from bayboard.model.placed import Placed
from bayboard.routing.ends import End, ends
from bayboard.routing.route import Route
from bayboard.rules.boards import BoardShape
from bayboard.tables.reference import lead_od

THICK = ("power", "ground")  # kinds whose thickness nobody may guess

Parts = list[tuple[float, float]]


@dataclass(frozen=True)
class Path:
    """A lead with a route, both its ends, and the boards it lies on."""

    lead: Lead
    route: Route
    ends: tuple[End, End]
    boards: tuple[BoardShape, ...]
    front: float  # z of the board it lies on
    od: float | None  # None: a power or ground lead of unknown size

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


def paths(
    layout: Layout,
    routes: Mapping[str, Route],
    placed: Mapping[str, Placed],
    boards: Mapping[str, BoardShape],
    before: Mapping[str, Path],
) -> dict[str, Path]:
    """Return the leads that have a route on a board, by id, in document order.

    A path of `before` is taken over where its lead, route and stand-ins are the same.
    """
    found: dict[str, Path] = {}
    for lead in layout.leads:
        route = routes.get(lead.id)
        if route is None or route.board is None:
            continue
        known = before.get(lead.id)
        if known is not None and known.lead is lead and known.route is route and _stand(known, placed):
            found[lead.id] = known
        elif (both := ends(layout, lead, placed)) is not None:
            ids = dict.fromkeys((route.board, *(e.placed.board.id for e in both if e.placed is not None)))
            on = tuple(boards[id_] for id_ in ids)
            front = boards[route.board].board.front
            found[lead.id] = Path(lead, route, both, on, front, _od(lead, route))
    return found


def _od(lead: Lead, route: Route) -> float | None:
    return None if route.kind in THICK and lead_od(lead.size, lead.od) is None else route.od


def _stand(path: Path, placed: Mapping[str, Placed]) -> bool:
    """Return whether the stand-ins at both ends still stand where the path was found."""
    return all(end.placed is None or placed.get(end.placed.id) is end.placed for end in path.ends)
