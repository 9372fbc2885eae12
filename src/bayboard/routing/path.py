"""The path of one lead, as everybody else sees it."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.model.layout import LeadKind

Way = Literal["given", "clear", "close", "over the edge", "straight"]


@dataclass(frozen=True, slots=True, eq=False)
class Route:
    """The path of one lead: `points` (n, 2) from its `from` end to its `to` end, bay axes.

    `routed` tells the program's own path from one given by the lead's `via`.  `kind` None: ends
    that may not be joined.  `board` is None where there is no board.  `way`: how much room was found for
    the program's path: clear of everything by half the lead's diameter; by half of that; over the
    edge of the board; none at all, so straight.
    """

    lead: str
    kind: LeadKind | None
    board: str | None
    points: Points
    od: float
    routed: bool
    way: Way = "given"

    @property
    def length(self) -> float:
        """Return the length in mm of the part in the bay, the run behind an entry not counted."""
        return float(np.hypot(*np.diff(self.points, axis=0).T).sum())
