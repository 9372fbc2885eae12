"""A signal lead crosses a power lead.

Why: the flatter two leads cross, the more of the one's noise the other picks up.
Quiet: they never cross; meeting at an end of either is no crossing.
Speaks: they cross; gives the acute angle of the flattest crossing, and a should where it is under the limit.
"""

from collections.abc import Iterator, Sequence

import numpy as np

from bayboard.geometry.beside import Crossing, crossings
from bayboard.geometry.stretches import HAIR, stretches
from bayboard.model.layout import Layout
from bayboard.routing.route import Route
from bayboard.rules.finding import Finding, Said
from bayboard.rules.levels import NOTE, SHOULD, SILENT, Levels
from bayboard.rules.scene import Scene
from bayboard.rules.wire.apart import POWER, SIGNAL, guessed_ports, signal_by_power
from bayboard.tables.limits import limit
from bayboard.units.angle import show_two_angles

RULE = "crossing"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each signal lead and power lead that cross."""
    least = limit(scene.layout, "crossing_should")
    for signal, power, these, others in signal_by_power(scene, about):
        for found in crossings(these, others):
            yield _finding(power[found.other].lead, signal[found.path].lead, found, least)
    yield from guessed_ports(RULE, scene, about, (*POWER, *SIGNAL))


def of_each(layout: Layout, signal: Sequence[Route], power: Sequence[Route]) -> Levels:
    """Return how bad it is of the first of both, of the second of both and so on, (n,)."""
    least = limit(layout, "crossing_should")
    these, others = (stretches([route.points for route in routes]) for routes in (signal, power))
    levels = np.full(len(signal), SILENT, dtype=np.int8)
    for found in crossings(these, others, paired=True):
        levels[found.path] = SHOULD if _flat(found, least) else NOTE
    return levels


def _flat(found: Crossing, least: float) -> bool:
    return found.angle < least - HAIR


def _finding(power: str, signal: str, found: Crossing, least: float) -> Finding:
    flat = _flat(found, least)
    angle, wanted = show_two_angles(found.angle, least)
    wish = f" {wanted} or more is better, square is best." if flat else ""
    return Finding(
        rule=RULE,
        severity="should" if flat else "note",
        subjects=(power, signal),
        measure=found.angle,
        limit=least if flat else None,
        unit="deg",
        at=found.at,
        says=f"{signal} crosses power lead {power} at {angle}.{wish}",
    )
