"""The ways of single leads after one edit or another: each is led once, however many findings ask."""

from collections.abc import Mapping, Sequence

import numpy as np
from msgspec.structs import replace

from bayboard.edits.edit import Edit
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.to_bench import ToBench
from bayboard.geometry.solids import Flags
from bayboard.geometry.strips import near_path
from bayboard.model.layout import Layout, Lead
from bayboard.routing.reroute import reroute
from bayboard.routing.route import Route, routes
from bayboard.routing.swept import Swept, swept
from bayboard.rules.levels import head
from bayboard.rules.places import Places
from bayboard.tables.nudge import WAYS_KEPT


class Ways:
    """Leads of one layout, each looked at as if it were the only one: no lead minds another."""

    def __init__(self, layout: Layout) -> None:
        self._layout = layout
        self._now: dict[str, tuple[Layout, Mapping[str, Route]]] = {}
        self._after: dict[tuple[str, Edit], Route | None] = {}
        self._free: dict[tuple[str, str], Route | None] = {}
        self._swept: dict[tuple[str, str], Swept | None] = {}

    def after(self, lead: Lead, edit: Edit) -> Route | None:
        """Return the way of a lead after an edit; raise `Refused` where that is refused."""
        if (lead.id, edit) not in self._after:
            if len(self._after) >= WAYS_KEPT:
                self._after.clear()
            before, known = self._alone(lead)
            self._after[lead.id, edit] = reroute(edit.apply(before), before, known).get(lead.id)
        return self._after[lead.id, edit]

    def all_after(self, lead: Lead, gear: str, moves: Sequence[MoveGear]) -> list[Route | None]:
        """Return the way of a lead after each of many moves of one stand-in."""
        new = [move for move in moves if (lead.id, move) not in self._after]
        if len(self._after) + len(new) > WAYS_KEPT:
            self._after.clear()
            new = list(moves)
        swept = self._at(lead, gear) if new else None
        if swept is not None:
            found = swept.routes(np.array([(move.dx, move.dy) for move in new]))
            told = zip(new, found, strict=True)
            self._after |= {(lead.id, move): way for move, way in told if way is not None}
        return [self.after(lead, move) for move in moves]

    def _at(self, lead: Lead, gear: str) -> Swept | None:
        if (lead.id, gear) not in self._swept:
            self._swept[lead.id, gear] = swept(self._alone(lead)[0], lead, gear)
        return self._swept[lead.id, gear]

    def without(self, lead: Lead, gear: str) -> Route | None:
        """Return the way of a lead with a stand-in on the bench."""
        if (lead.id, gear) not in self._free:
            before, _ = self._alone(lead)
            self._free[lead.id, gear] = routes(ToBench((gear,)).apply(before)).get(lead.id)
        return self._free[lead.id, gear]

    def barred(self, lead: Lead, places: Places) -> Flags:
        """Return at which places a stand-in may change the way of a lead, (places,).

        Always where it stands at an end of the lead.  Elsewhere only where it lies near the way that the lead
        takes without it: a way that nothing has come upon stays the shortest.
        """
        if places.id in (head(lead.from_), head(lead.to)):
            return np.ones(len(places), dtype=np.bool_)
        near = np.zeros(len(places), dtype=np.bool_)
        way = None if lead.via else self.without(lead, places.id)
        if way is not None:
            for ring in (places.model.ring, *(body.ring for body in places.model.bodies)):
                near |= near_path(places.shapes(ring), way.points, way.od)
        return near

    def _alone(self, lead: Lead) -> tuple[Layout, Mapping[str, Route]]:
        if lead.id not in self._now:
            alone = replace(self._layout, leads=(lead,))
            self._now[lead.id] = alone, routes(alone)
        return self._now[lead.id]
