"""The path of every lead: as given, or the shortest way round whatever stands on its bed."""

from collections.abc import Iterator, Mapping

from bayboard.model.layout import Layout
from bayboard.routing.bed import Bed
from bayboard.routing.ends import placed_gear
from bayboard.routing.ground import Ground
from bayboard.routing.joined import board_under, diameter, joined
from bayboard.routing.led import Led, led
from bayboard.routing.path import Route

__all__ = ["Route", "Routes", "board_under", "diameter", "routes"]


class Routes(Mapping[str, Route]):
    """The route of each lead that has one, by lead id, in document order.

    `led` and `grounds` are what it was made from, for the next layout to take over.  `without`: leads
    as they would be led without the gear in `lifted`, where that was asked.
    """

    def __init__(
        self,
        leads: Mapping[str, Led],
        grounds: Mapping[Bed, Ground],
        lifted: frozenset[str] = frozenset(),
        without: Mapping[str, Led] | None = None,
    ) -> None:
        self.led, self.grounds = leads, grounds
        self.lifted, self.without = lifted, without or {}

    def __getitem__(self, lead: str) -> Route:
        """Return the route of a lead; raise `KeyError` where it has none."""
        return self.led[lead].route

    def __iter__(self) -> Iterator[str]:
        """Yield the ids of leads that have a route."""
        return iter(self.led)

    def __len__(self) -> int:
        """Return how many leads have a route."""
        return len(self.led)


def routes(layout: Layout) -> Routes:
    """Return the route of every lead both of whose ends have a place, by lead id.

    A lead with an empty `via` takes the exact shortest way round: out of a plug straight for the
    plug's length, then in straight stretches that keep half its diameter off all that stands at its
    height on its bed, off cut-outs and washers, and on the board but for the stretch next to an entry
    that lies off it.
    """
    placed = placed_gear(layout)
    leads = [j for lead in layout.leads if (j := joined(layout, lead, placed)) is not None]
    beds = dict.fromkeys(j.bed for j in leads if not j.lead.via)
    grounds = {bed: Ground(layout, bed, placed) for bed in beds if bed is not None}
    found = led(leads, grounds)
    return Routes({j.lead.id: found[j.lead.id] for j in leads}, grounds)
