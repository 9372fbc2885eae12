"""The path of each lead over the board."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.model.layout import Board, LeadKind, Layout, Lead
from bayboard.model.placed import board_of
from bayboard.routing.ends import End, ends, placed_gear
from bayboard.routing.kind import kind
from bayboard.tables.limits import limit
from bayboard.tables.reference import lead_od


@dataclass(frozen=True, slots=True)
class Route:
    """The path of one lead: `points` (n, 2) from its `from` end to its `to` end, bay axes.

    `routed` tells the program's own path from one given by the lead's `via`.  `kind` None: ends
    that may not be joined.  `board` is None where there is no board.
    """

    lead: str
    kind: LeadKind | None
    board: str | None
    points: Points
    od: float
    routed: bool

    @property
    def length(self) -> float:
        """Return the length in mm of the part in the bay, the run behind an entry not counted."""
        return float(np.hypot(*np.diff(self.points, axis=0).T).sum())


def routes(layout: Layout) -> Mapping[str, Route]:
    """Return the route of every lead both of whose ends have a place, by lead id."""
    placed = placed_gear(layout)
    found: dict[str, Route] = {}
    for lead in layout.leads:
        both = ends(layout, lead, placed)
        if both is not None:
            found[lead.id] = _route(layout, lead, *both)
    return found


def _route(layout: Layout, lead: Lead, first: End, last: End) -> Route:
    board = board_under(layout, first, last)
    points = np.array([first.point, *lead.via, last.point], dtype=np.float64)
    return Route(
        lead.id,
        kind(first.meets, last.meets),
        board.id if board else None,
        points,
        diameter(layout, lead),
        not lead.via,
    )


def board_under(layout: Layout, first: End, last: End) -> Board | None:
    """Return the board a lead lies on: that of `from`, else of `to`, else the first; None without boards."""
    for end in (first, last):
        if end.placed is not None:
            return end.placed.board
    return board_of(layout, None)


def diameter(layout: Layout, lead: Lead) -> float:
    """Return a lead's outside diameter in mm; limit `lead_od` where neither it nor a size is known."""
    known = lead_od(lead.size, lead.od)
    return limit(layout, "lead_od") if known is None else known
