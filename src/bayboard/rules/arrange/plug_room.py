"""A plug and the bend of its lead have no room.

Why: a plug that meets the next box cannot be pushed in, and a lead bent too sharply breaks or works loose.
Quiet: straight out of the port the way is free for the plug and its lead's bend.
Speaks: another body, a stay or the seat stands in that strip; gives the free distance to the nearest.
"""

from collections.abc import Iterable, Iterator

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.model.layout import Lead
from bayboard.model.placed import Placed
from bayboard.rules.ahead import called
from bayboard.rules.ahead_at import Asking, levels_ahead
from bayboard.rules.cables import known_od, no_size
from bayboard.rules.finding import Finding, Said
from bayboard.rules.levels import MUST, Key, Levels
from bayboard.rules.meetings import body_members
from bayboard.rules.places import Places
from bayboard.rules.plugging import Blocked, Outlet, blocked, looked
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed, no_section, unknown_bodies
from bayboard.rules.words import amount_and_need
from bayboard.tables.limits import limit

RULE = "plug-room"
WIDE = True  # whoever leaves may bare the next solid behind


def look(scene: Scene, _about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each port that meets a solid too near; always for all ports."""
    plugs = any(placed.plugs for placed in scene.placed.values())
    for placed in scene.placed.values():
        yield from guessed(RULE, placed, (*body_members(placed), "ports") if plugs else ("ports",))
    if not plugs:
        return
    yield from _unlooked(scene)
    for found in blocked(scene, _outlets(scene, scene.placed.values())):
        yield _finding(scene, found)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    standing = (places.model if id_ == places.id else placed for id_, placed in scene.placed.items())
    outlets = [outlet for outlet in _outlets(scene, standing) if key is None or outlet.subject == key[0]]
    found: dict[Key, Levels] = {}
    for group, looks in looked(outlets):
        asking = Asking(looks, np.arange(len(group)), [o.subject for o in group], [o.need for o in group])
        found |= levels_ahead(scene, places, asking, lambda free, _: np.full(len(free), MUST, dtype=np.int8))
    return found


def _outlets(scene: Scene, standing: Iterable[Placed]) -> list[Outlet]:
    joined = _leads_by_port(scene)
    return [
        Outlet(placed, plug, _need(scene, plug.port.plug, joined.get(f"{placed.id}.{plug.port.id}", [])))
        for placed in standing
        for plug in placed.plugs
    ]


def _unlooked(scene: Scene) -> Iterator[Said]:
    yield from unknown_bodies(RULE, scene)
    for seat in scene.layout.bay.seats:
        if seat.up is None:
            yield no_section(RULE, seat.id, "up")
    for lead in scene.layout.leads:
        at_port = any(end.partition(".")[0] in scene.placed for end in (lead.from_, lead.to))
        if at_port and known_od(scene, lead) is None:
            yield no_size(RULE, lead)


def _leads_by_port(scene: Scene) -> dict[str, list[Lead]]:
    joined: dict[str, list[Lead]] = {}
    for lead in scene.layout.leads:
        for end in (lead.from_, lead.to):
            joined.setdefault(end, []).append(lead)
    return joined


def _need(scene: Scene, plug: float, leads: list[Lead]) -> float:
    """Return the plug's length and the largest bend radius of its leads, mm."""
    thick = max((known_od(scene, lead) or 0.0 for lead in leads), default=0.0)
    return plug + limit(scene.layout, "bend_od") * thick


def _finding(scene: Scene, found: Blocked) -> Finding:
    outlet = found.outlet
    free, need = amount_and_need(found.free, outlet.need, scene.layout.units)
    solid = called(scene, found.solid)
    fact = f"has {free} before {solid}" if found.free > HAIR else f"runs straight into {solid}"
    bend = " with the bend of its lead" if outlet.need > outlet.plug.port.plug else ""
    x, y, _ = outlet.plug.at
    dx, dy, _ = outlet.plug.way
    return Finding(
        rule=RULE,
        severity="must",
        subjects=(outlet.subject, found.solid),
        measure=found.free,
        limit=outlet.need,
        unit="mm",
        at=(x + dx * found.free, y + dy * found.free),
        says=f"The plug at {outlet.subject} {fact}. It needs {need}{bend}.",
    )
