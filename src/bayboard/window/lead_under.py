"""The lead under a pointer, and what it joins in words."""

import numpy as np
import shapely

from bayboard.model.layout import Layout, Point
from bayboard.rules.scene import Scene
from bayboard.window.draw.words import PORT_WORDS

FELT = 6.0  # px beside its jacket within which a lead is meant


class LeadUnder:
    """Finds the lead at a spot; the paths are kept until there are others."""

    def __init__(self) -> None:
        self._scene: Scene | None = None
        self._names: tuple[str, ...] = ()
        self._paths = np.empty(0, dtype=object)
        self._thick = np.empty(0)

    def at(self, scene: Scene, spot: Point, px_per_mm: float) -> str | None:
        """Return the id of the nearest lead that is felt at a spot (mm), None where there is none."""
        if self._scene is not scene:
            self._take(scene)
        if not self._names:
            return None
        off = shapely.distance(self._paths, shapely.Point(spot)) - self._thick
        nearest = int(off.argmin())
        return self._names[nearest] if off[nearest] <= FELT / px_per_mm else None

    def _take(self, scene: Scene) -> None:
        self._scene = scene
        routes = [(name, route) for name, route in scene.routes.items() if len(route.points) > 1]
        self._names = tuple(name for name, _ in routes)
        self._paths = np.array([shapely.LineString(route.points[:, :2]) for _, route in routes], dtype=object)
        self._thick = np.array([route.od / 2 for _, route in routes])


def end_names(scene: Scene, name: str | None) -> tuple[tuple[Point, str], ...]:
    """Return where a lead's ends are and what they are at: "A2, 12 V"; () for what is no lead with a way."""
    lead = next((lead for lead in scene.layout.leads if lead.id == name), None)
    route = None if lead is None else scene.routes.get(lead.id)
    if lead is None or route is None:
        return ()
    spots: list[Point] = [(float(x), float(y)) for x, y in route.points[[0, -1], :2]]
    return (spots[0], _at(scene.layout, lead.from_)), (spots[1], _at(scene.layout, lead.to))


def _at(layout: Layout, end: str) -> str:
    """Return what a lead's end is at, as the Wall calls it: a stand-in with its port, or an entry."""
    piece, _, port = end.partition(".")
    card = next((layout.cards[gear.card] for gear in layout.gear if gear.id == piece), None)
    if card is None:
        return next((entry.name for entry in layout.bay.entries if entry.id == end), end)
    kind = next((found.kind for found in card.ports if found.id == port), "")
    words = PORT_WORDS.get(kind, port)
    return f"{piece}, {words}" if words else piece
