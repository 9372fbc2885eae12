"""Where leads end: at a port of a stand-in, or at an entry."""

from collections.abc import Mapping
from dataclasses import dataclass

from bayboard.model.layout import Card, Entry, Layout, Lead, Point, Port
from bayboard.model.placed import Placed, place


@dataclass(frozen=True, slots=True)
class End:
    """One end of a lead: a port of a placed stand-in, or an entry; `point` in bay axes.

    Always true: either `placed` and `port` are there, or `entry` is.  `z` is None at an entry:
    nobody measures how far out a lead comes in.
    """

    name: str
    point: Point
    z: float | None
    placed: Placed | None = None
    port: Port | None = None
    entry: Entry | None = None

    @property
    def meets(self) -> Port | Entry:
        """Return what the lead joins there."""
        known = self.port or self.entry
        assert known is not None
        return known


def placed_gear(layout: Layout) -> dict[str, Placed]:
    """Return the stand-ins that have a place on a board by id, in document order."""
    found = ((gear.id, place(layout, gear)) for gear in layout.gear)
    return {name: placed for name, placed in found if placed is not None}


def end(layout: Layout, name: str, placed: Mapping[str, Placed]) -> End | None:
    """Return the end called `GEAR.PORT` or by an entry's id, None while its gear is on the bench."""
    gear, dot, port_id = name.partition(".")
    if not dot:
        for entry in layout.bay.entries:
            if entry.id == name:
                return End(name, entry.at, None, entry=entry)
        return None
    stand_in = placed.get(gear)
    port = port_of(stand_in.card, port_id) if stand_in else None
    if stand_in is None or port is None:
        return None
    x, y, z = stand_in.port_at(port)
    return End(name, (x, y), z, placed=stand_in, port=port)


def ends(layout: Layout, lead: Lead, placed: Mapping[str, Placed]) -> tuple[End, End] | None:
    """Return both ends of a lead, None while one of them has no place."""
    first, last = end(layout, lead.from_, placed), end(layout, lead.to, placed)
    return None if first is None or last is None else (first, last)


def port_of(card: Card, port_id: str) -> Port | None:
    """Return the card's port of that id, None where there is none."""
    return next((port for port in card.ports if port.id == port_id), None)
