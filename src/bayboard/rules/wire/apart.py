"""Signal leads and the power leads they should keep away from."""

from collections.abc import Iterator

from bayboard.geometry.stretches import Stretches, stretches
from bayboard.routing.route import Route
from bayboard.rules.finding import Unchecked
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed

POWER = ("power", "ground")
SIGNAL = ("signal",)

Batch = tuple[list[Route], list[Route], Stretches, Stretches]


def signal_by_power(scene: Scene, about: frozenset[str] | None) -> Iterator[Batch]:
    """Yield signal routes and power routes to measure all against all, each with its stretches.

    Together they hold every pair, or every pair with a lead of `about`, once.
    """
    power = [route for route in scene.routes.values() if route.kind in POWER]
    signal = [route for route in scene.routes.values() if route.kind in SIGNAL]
    if about is None:
        yield _batch(signal, power)
        return
    yield _batch([r for r in signal if r.lead in about], power)
    yield _batch([r for r in signal if r.lead not in about], [r for r in power if r.lead in about])


def _batch(signal: list[Route], power: list[Route]) -> Batch:
    if not signal or not power:
        return [], [], stretches([]), stretches([])
    return signal, power, stretches([r.points for r in signal]), stretches([r.points for r in power])


def guessed_ports(
    rule: str, scene: Scene, about: frozenset[str] | None, kinds: tuple[str, ...]
) -> Iterator[Unchecked]:
    """Yield a line for each stand-in with guessed ports where a lead of one of the kinds ends."""
    if not any("ports" in placed.card.guessed for placed in scene.placed.values()):
        return
    joined = {
        end.partition(".")[0]
        for lead in scene.layout.leads
        if lead.id in scene.routes and scene.routes[lead.id].kind in kinds
        for end in (lead.from_, lead.to)
    }
    for id_, placed in scene.placed.items():
        if id_ in joined and (about is None or id_ in about):
            yield from guessed(rule, placed, ("ports",))
