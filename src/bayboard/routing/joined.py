"""A lead with its ends, its diameter and the bed it lies on."""

from collections.abc import Mapping
from dataclasses import dataclass

from bayboard.geometry.outline import Points
from bayboard.model.layout import Board, Layout, Lead
from bayboard.model.placed import Placed, board_of
from bayboard.routing.bed import Bed
from bayboard.routing.ends import End, ends
from bayboard.routing.kind import kind
from bayboard.routing.path import Route, Way
from bayboard.tables.limits import limit
from bayboard.tables.reference import lead_od


@dataclass(frozen=True, slots=True)
class Joined:
    """A lead both of whose ends have a place.  `board` and `bed` are None where there is no board."""

    lead: Lead
    first: End
    last: End
    od: float
    board: str | None
    bed: Bed | None

    @property
    def gear(self) -> set[str]:
        """Return the stand-ins it is joined to."""
        return {end.placed.id for end in (self.first, self.last) if end.placed is not None}

    def route(self, points: Points, way: Way) -> Route:
        """Return the lead's route over these points."""
        carries = kind(self.first.meets, self.last.meets)
        return Route(self.lead.id, carries, self.board, points, self.od, way != "given", way)


def joined(layout: Layout, lead: Lead, placed: Mapping[str, Placed]) -> Joined | None:
    """Return the lead with its ends, None while one of them has no place."""
    both = ends(layout, lead, placed)
    if both is None:
        return None
    od, board = diameter(layout, lead), board_under(layout, *both)
    if board is None:
        return Joined(lead, *both, od, None, None)
    boards = dict.fromkeys([board.id, *(end.placed.board.id for end in both if end.placed)])
    return Joined(lead, *both, od, board.id, Bed(tuple(boards), lead.side, od))


def diameter(layout: Layout, lead: Lead) -> float:
    """Return a lead's outside diameter in mm; limit `lead_od` where neither it nor a size is known."""
    known = lead_od(lead.size, lead.od)
    return limit(layout, "lead_od") if known is None else known


def board_under(layout: Layout, first: End, last: End) -> Board | None:
    """Return the board a lead lies on: that of `from`, else of `to`, else the first; None without boards."""
    for end in (first, last):
        if end.placed is not None:
            return end.placed.board
    return board_of(layout, None)
