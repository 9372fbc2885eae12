"""What a seat may meet: bodies, plugs and leads, each a plan ring and the z of its front."""

from collections.abc import Iterator
from typing import NamedTuple

from bayboard.geometry.outline import Points
from bayboard.geometry.strips import band
from bayboard.model.layout import Lead
from bayboard.model.placed import Placed, board_of
from bayboard.rules.cables import known_od
from bayboard.rules.scene import Scene


class Front(NamedTuple):
    """A plan ring and the z of its front; `name` is how a sentence calls it."""

    subject: str
    name: str
    ring: Points
    z: float


def gear_fronts(scene: Scene, about: frozenset[str] | None) -> Iterator[Front]:
    """Yield the fronts of bodies and plugs of the stand-ins asked about."""
    for id_, placed in scene.placed.items():
        if about is None or id_ in about:
            yield from fronts_of(placed)


def fronts_of(placed: Placed) -> Iterator[Front]:
    """Yield the fronts of a stand-in's bodies and plugs."""
    for body in placed.bodies:
        yield Front(placed.id, placed.id, body.ring, body.z[1])
    for plug in placed.plugs:
        if plug.port.plug > 0:
            subject = f"{placed.id}.{plug.port.id}"
            yield Front(subject, f"The plug at {subject}", plug.ring, plug.z[1])


def lead_fronts(scene: Scene, about: frozenset[str] | None) -> Iterator[Front]:
    """Yield the fronts of the leads asked about: bands as wide and high as the lead, over its board."""
    for lead in scene.layout.leads:
        od = known_od(scene, lead) if on_front(scene, lead, about) else None
        if od is not None:
            route = scene.routes[lead.id]
            board = board_of(scene.layout, route.board)
            assert board is not None  # on_front
            for ring in band(route.points, od):
                yield Front(lead.id, f"Lead {lead.id}", ring, board.front + od)


def on_front(scene: Scene, lead: Lead, about: frozenset[str] | None) -> bool:
    """Return whether a lead is asked about and has a path on the front of a board."""
    route = scene.routes.get(lead.id) if about is None or lead.id in about else None
    return route is not None and route.board is not None and lead.side == "front"
