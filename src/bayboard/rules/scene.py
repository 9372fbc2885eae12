"""A layout with what the rules share derived once: places, boards, solids, routes, holes.

A scene made from the one before keeps every derived thing whose layout part is the same
object, so moving one stand-in derives one stand-in anew.
"""

from collections.abc import Callable, Iterator, Mapping
from functools import cached_property
from typing import Any, TypeVar

from bayboard.geometry import outline as outlines
from bayboard.geometry.hand import Reach
from bayboard.geometry.prism import Prism, prism
from bayboard.geometry.sight import Sight
from bayboard.geometry.solids import Solids, grouped, swapped
from bayboard.mechanics.holes import Hole, fixing_holes, screw_holes
from bayboard.model.layout import Layout, Seat, Stay
from bayboard.model.placed import Body, Placed, place
from bayboard.routing.carried import carried
from bayboard.routing.reroute import rerouting
from bayboard.routing.route import Route, routes
from bayboard.rules.boards import BoardShape
from bayboard.rules.looking import look
from bayboard.rules.paths import Path, paths
from bayboard.rules.reaching import reach

T = TypeVar("T")


class Scene:
    """What a rule looks at.  Never changed once made; everything is derived on first use."""

    def __init__(
        self,
        layout: Layout,
        before: "Scene | None" = None,
        known_routes: Mapping[str, Route] | None = None,
    ) -> None:
        self.layout = layout
        self._before = before
        self._kept: dict[str, Any] = {}
        if known_routes is not None:
            self.routes = known_routes

    def forget_before(self) -> None:
        """Drop the scene this one was made from once its parts have been taken over."""
        _ = self.placed, self.boards, self.screw_holes
        kin = self._kin()
        self._kept = (kin._kept if kin else {}) | self._kept
        self._before = None

    def kept(self, name: str, make: Callable[[T | None], T]) -> T:
        """Return what a rule derives and keeps under a name: `make` gets what it kept of the scene before.

        None where there is no scene before, or more than places of the same stand-ins differ from it.
        """
        if name not in self._kept:
            kin = self._kin()
            self._kept[name] = make(kin._kept.get(name) if kin else None)
        found: T = self._kept[name]
        return found

    @cached_property
    def placed(self) -> dict[str, Placed]:
        """Return the stand-ins with a place on a board, in document order."""
        old = self._before.placed if self._before else {}
        found: dict[str, Placed] = {}
        for gear in self.layout.gear:
            now = place(self.layout, gear)
            if now is None:
                continue
            was = old.get(gear.id)
            same = was and was.gear is gear and was.card is now.card and was.board is now.board
            found[gear.id] = was if was and same else now
        return found

    @cached_property
    def boards(self) -> dict[str, BoardShape]:
        """Return the boards with their shapes, in document order."""
        old = self._before.boards if self._before else {}
        return {
            board.id: old[board.id] if board.id in old and old[board.id].board is board else BoardShape(board)
            for board in self.layout.boards
        }

    @cached_property
    def stays(self) -> dict[str, tuple[Stay, Body | None]]:
        """Return each stay with its body (bottom at -inf), None when its height is unknown."""
        if self._before and self._before.layout.bay is self.layout.bay:
            return self._before.stays
        return {stay.id: (stay, _stay_body(stay)) for stay in self.layout.bay.stays}

    @cached_property
    def stay_prisms(self) -> dict[str, Prism]:
        """Return the stays of known height as prisms, by id."""
        if self._before and self._before.layout.bay is self.layout.bay:
            return self._before.stay_prisms
        return {
            id_: prism(stay.outline, *body.z) for id_, (stay, body) in self.stays.items() if body is not None
        }

    @cached_property
    def folded_prisms(self) -> dict[str, Prism]:
        """Return the seats whose folded section is known as prisms over their x, by id."""
        if self._before and self._before.layout.bay is self.layout.bay:
            return self._before.folded_prisms
        seats = self.folded.values()
        return {s.id: prism(s.folded, *s.x, along="x") for s in seats if s.folded is not None}

    @cached_property
    def solids(self) -> Solids:
        """Return the pieces of all stand-ins, owned by their number in `placed`."""
        kin = self._kin()
        if kin is None:
            return grouped([placed.prisms for placed in self.placed.values()])
        rows = kin.solids
        for n, placed in enumerate(self.placed.values()):
            if kin.placed[placed.id] is not placed:
                rows = swapped(rows, n, grouped([placed.prisms], [n]))
        return rows

    @cached_property
    def sight(self) -> Sight | str:
        """Return what is seen of the stand-ins, by number in `placed`; a sentence when nobody can look."""
        kin = self._kin()
        before = kin.sight if kin and not isinstance(kin.sight, str) else None
        solid = (*self.stay_prisms.values(), *self.folded_prisms.values())
        return look(self.layout, self.placed, solid, before, kin.placed if kin else {})

    @cached_property
    def reach(self) -> Reach:
        """Return how wide the ways to the stand-ins are, by number in `placed`."""
        kin = self._kin()
        solid = (*self.stay_prisms.values(), *self.folded_prisms.values())
        return reach(self.layout, self.placed, solid, kin.reach if kin else None, kin.placed if kin else {})

    def _kin(self) -> "Scene | None":
        """Return the scene before, if only places of the same stand-ins differ from it."""
        before = self._before
        if before is None or list(before.placed) != list(self.placed):
            return None
        members = ("bay", "boards", "cards", "limits")
        same = all(getattr(before.layout, m) is getattr(self.layout, m) for m in members)
        return before if same else None

    @cached_property
    def folded(self) -> dict[str, Seat]:
        """Return the seats whose folded section is known."""
        return {seat.id: seat for seat in self.layout.bay.seats if seat.folded is not None}

    @cached_property
    def routes(self) -> Mapping[str, Route]:
        """Return the path of each lead that has one, by lead id."""
        for _ in self.lead_again():
            pass
        found: Mapping[str, Route] = self.__dict__["routes"]
        return found

    def lead_again(self) -> Iterator[None]:
        """Find the routes bit by bit, where they are not known yet."""
        if "routes" in self.__dict__:
            return
        before = self._before
        if before is None:
            found = routes(self.layout)
        else:
            found = yield from rerouting(self.layout, before.layout, before.routes)
        self.__dict__.setdefault("routes", found)

    @property
    def carried(self) -> Mapping[str, Route]:
        """Return the routes; while they are being found those before, with ends that go along."""
        if "routes" in self.__dict__ or self._before is None:
            return self.routes
        return self._carried

    @cached_property
    def _carried(self) -> Mapping[str, Route]:
        before = self._before
        return carried(self.layout, before.routes, before.placed, self.placed) if before else self.routes

    @cached_property
    def paths(self) -> dict[str, Path]:
        """Return the leads that have a route on a board, by lead id, in document order."""
        kin = self._kin()
        return paths(self.layout, self.routes, self.placed, self.boards, kin.paths if kin else {})

    @cached_property
    def holes(self) -> tuple[Hole, ...]:
        """Return every hole to be made in the boards, as `mechanics.holes.holes` gives them."""
        screws = (hole for of_gear in self.screw_holes.values() for hole in of_gear)
        return (*screws, *fixing_holes(self.layout))

    @cached_property
    def screw_holes(self) -> dict[str, tuple[Hole, ...]]:
        """Return the holes of each stand-in's screws; those of one that did not move are kept."""
        before = self._before
        known = before.screw_holes if before else {}
        return {
            id_: known[id_] if before and before.placed.get(id_) is placed else tuple(screw_holes(placed))
            for id_, placed in self.placed.items()
        }


def _stay_body(stay: Stay) -> Body | None:
    if stay.height is None:
        return None
    ring = outlines.placed(stay.outline, (0.0, 0.0), 0.0)
    return Body(ring, outlines.polygon(ring), (float("-inf"), stay.height))
