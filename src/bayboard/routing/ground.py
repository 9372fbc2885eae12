"""A bed of one layout with all that stands on it, as floors for each kind of room that is asked for."""

from collections.abc import Mapping
from dataclasses import dataclass

from bayboard.model.layout import Layout
from bayboard.model.placed import Placed
from bayboard.routing.bed import Bed, Obstacle, in_the_way
from bayboard.routing.floor import Floor, floor
from bayboard.routing.path import Way
from bayboard.routing.surface import Surface, surface


@dataclass(frozen=True, slots=True)
class Room:
    """How much room is asked for: growth of obstacles in diameters, and whether to stay on the board."""

    way: Way
    growth: float
    on_board: bool


ROOMS = (Room("clear", 0.5, True), Room("close", 0.25, True), Room("over the edge", 0.5, False))
CLEAR = ROOMS[0]
AWAY = (1e6, 1e6)  # mm; far from any board


class Ground:
    """A bed with its floors, each made when first asked for.

    `before`: the ground of the same bed in a layout of which only places of gear differ; whatever stands
    where it stood is taken over.  `lifted`: gear that is thought away.
    """

    def __init__(
        self,
        layout: Layout,
        bed: Bed,
        placed: Mapping[str, Placed],
        before: "Ground | None" = None,
        lifted: frozenset[str] = frozenset(),
    ) -> None:
        self._layout, self.bed, self._placed, self._lifted = layout, bed, placed, lifted
        self.surface: Surface = before.surface if before else surface(layout, bed)
        self._old: dict[Way, Floor] = before.floors() if before else {}
        self._made: dict[Way, Floor] = {}

    def floors(self) -> dict[Way, Floor]:
        """Return every floor that was made for this bed, some of them for an earlier layout."""
        return self._old | self._made

    def floor(self, room: Room) -> Floor:
        """Return the floor with that much room."""
        made = self._made.get(room.way)
        if made is None:
            old = self._old.get(room.way)
            made = self._new(room) if old is None else self._moved(old)
            self._made[room.way] = made
        return made

    def _new(self, room: Room) -> Floor:
        found = in_the_way(self._layout, self.bed, self._placed, room.growth * self.bed.od)
        if room.on_board:
            return floor([*found, self.surface.rim], self.surface.hull)
        return floor(found, None)

    def _moved(self, old: Floor) -> Floor:
        now = [self.now(thing) for thing in old.obstacles]
        same = all(a is b for a, b in zip(now, old.obstacles, strict=True))
        return old if same else floor(now, old.hull, old)

    def now(self, thing: Obstacle) -> Obstacle:
        """Return the thing where it stands now, the same object if that is where it stood."""
        placed = self._placed.get(thing.owner) if thing.kind == "gear" else None
        if placed is not None and thing.owner in self._lifted:
            return thing.put(AWAY, 0.0)
        return thing if placed is None else thing.put(placed.at, placed.gear.turn)
