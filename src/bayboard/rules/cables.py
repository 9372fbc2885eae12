"""How thick a lead is, and the line for those that nobody knows."""

from bayboard.model.layout import Lead
from bayboard.routing.ends import port_of
from bayboard.routing.route import diameter
from bayboard.rules.finding import Unchecked
from bayboard.rules.paths import THICK
from bayboard.rules.scene import Scene
from bayboard.tables.reference import lead_od


def known_od(scene: Scene, lead: Lead) -> float | None:
    """Return a lead's outside diameter in mm, None for a power or ground lead of unknown size."""
    route = scene.routes.get(lead.id)
    thick = route.kind in THICK if route else _meets_thick(scene, lead)
    return None if thick and lead_od(lead.size, lead.od) is None else diameter(scene.layout, lead)


def _meets_thick(scene: Scene, lead: Lead) -> bool:
    """Return whether a lead without a path ends at a power or ground port of a stand-in with a place."""
    for end in (lead.from_, lead.to):
        gear, _, port_id = end.partition(".")
        placed = scene.placed.get(gear)
        port = port_of(placed.card, port_id) if placed else None
        if port is not None:
            return port.kind in THICK
    return False


def no_size(rule: str, lead: Lead) -> Unchecked:
    """Return the line for a lead whose thickness is not known."""
    return Unchecked(rule=rule, subjects=(lead.id,), says=f"Nobody said how thick lead {lead.id} is.")
