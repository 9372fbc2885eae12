"""What is seen of a stand-in's service points, and which way in a hand has, with all seats folded.

Everything comes from the measures that the rules judge: `scene.sight` and `scene.reach`.
"""

from dataclasses import dataclass
from functools import lru_cache

from bayboard.geometry.hand import Hand, Reach
from bayboard.geometry.sight import View
from bayboard.geometry.stopped import stopped
from bayboard.geometry.way_in import WayIn, widest
from bayboard.model.layout import Service
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding
from bayboard.rules.reaching import handled
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit
from bayboard.window.draw.section_show import Sightedness
from bayboard.window.marking import open_findings
from bayboard.window.workplace import Workplace

Spot = tuple[float, float, float]  # x, y, z in mm
Said = tuple[int, Finding]
_WAYS = ("right", "up right", "up", "up left", "left", "down left", "down", "down right")


@dataclass(frozen=True, eq=False)
class SeenPoint:
    """A service point of a stand-in that hangs: how it is seen, and what the rules say of it.

    `view` is None where nobody can look, `hand` where nothing has to reach it.
    """

    piece: Placed
    service: Service
    view: View | None
    hand: Hand | None
    place_in_reach: tuple[int, int] | None
    most: float  # degrees; flatter than this it cannot be read
    sight: Said | None = None
    reach: Said | None = None

    @property
    def subject(self) -> str:
        """Return what the rules call it: "A2.fuses"."""
        return f"{self.piece.id}.{self.service.id}"

    @property
    def at(self) -> Spot:
        """Return where it is."""
        return self.piece.service_at(self.service)

    @property
    def verdict(self) -> Sightedness | None:
        """Return how it is seen, None where nobody can look."""
        if self.view is None or not len(self.view.order):
            return None
        if self.view.angle is None:
            return "blocked"
        return "clear" if self.view.within(self.most) else "steep"

    @property
    def facing(self) -> str:
        """Return which way it looks, as one says it before the wall: "out", "down"."""
        if self.service.facing == "out":
            return "out"
        return _WAYS[round((float(self.service.facing) + self.piece.gear.turn) / 45.0) % 8]

    @property
    def name(self) -> str:
        """Return what one calls it: its id, with its kind where the id is no word."""
        own, kind = self.service.id, self.service.kind
        return own if len(own) > 2 else f"{kind} {own}"


def points_of(place: Workplace, name: str) -> tuple[SeenPoint, ...]:
    """Return the service points of a stand-in that hangs, in card order; () for any other."""
    scene = place.scene
    piece = scene.placed.get(name)
    if piece is None:
        return ()
    said = {(f.rule, f.subjects[0]): (n, f) for n, f in open_findings(place.heard) if f.subjects}
    number, reached = list(scene.placed).index(name), handled(piece)
    sight = scene.sight
    views = None if isinstance(sight, str) else sight.views[number]
    hands = scene.reach.things[number].hands
    most = limit(scene.layout, "sight_angle")
    found = []
    for i, service in enumerate(piece.card.service):
        k = next((k for k, one in enumerate(reached) if one is service), None)
        subject = f"{name}.{service.id}"
        found.append(
            SeenPoint(
                piece,
                service,
                None if views is None else views[i],
                None if k is None else hands[k],
                None if k is None else (number, k),
                most,
                said.get(("sight", subject)),
                said.get(("reach", subject)),
            )
        )
    return tuple(found)


def best_eye(scene: Scene, point: SeenPoint) -> Spot | None:
    """Return the eye that sees a point best; for one that is hidden, the eye nearest to its facing."""
    if point.verdict is None or point.view is None or isinstance(scene.sight, str):
        return None
    view = point.view
    best = view.order[0 if view.angle is None else view.first]
    x, y, z = scene.sight.eyes[best].tolist()
    return x, y, z


def stop_of(scene: Scene, point: SeenPoint) -> tuple[Spot, str] | None:
    """Return where the line to a hidden point's eye is stopped, and by what: "A2 itself", "the latch"."""
    if point.verdict != "blocked" or point.view is None or isinstance(scene.sight, str):
        return None
    found = stopped(point.view.start, scene.sight.eyes[point.view.order[0]], scene.sight.rows)
    if found is None:
        return None
    x, y, z = found.at.tolist()
    return (x, y, z), _owner_name(scene, found.owner, point.piece.id)


def _owner_name(scene: Scene, owner: int, own: str) -> str:
    gear = list(scene.placed)
    if owner < len(gear):
        return f"{own} itself" if gear[owner] == own else gear[owner]
    stays = list(scene.stay_prisms)
    if owner < len(gear) + len(stays):
        return f"the {scene.stays[stays[owner - len(gear)]][0].name}"
    return "the folded seat"


def way_in(scene: Scene, point: SeenPoint) -> WayIn | None:
    """Return the widest way in to a point, None where none counts or nothing has to reach it."""
    if point.place_in_reach is None:
        return None
    return _widest(scene.reach, *point.place_in_reach)


@lru_cache(maxsize=48)
def _widest(reach: Reach, thing: int, place: int) -> WayIn | None:
    """Return the widest way in; kept, as the panel, the Section and a screen reader ask for the same."""
    return widest(reach, thing, place)
