"""The path of each lead over the board."""

from collections.abc import Mapping
from dataclasses import dataclass

from bayboard.geometry.outline import Points
from bayboard.model.layout import LeadKind, Layout


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


def routes(layout: Layout) -> Mapping[str, Route]:
    """Return the route of every lead both of whose ends have a place, by lead id."""
    raise NotImplementedError
