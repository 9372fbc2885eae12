"""A signal lead runs beside a power lead for too long.

Why: a long parallel run lets the alternator whine into the signal.
Quiet: they cross, turn apart, or run together for less than the limit.
Speaks: the signal lies within a strip on either side of the power lead for longer than the limit, or both
come into the bay by the same way; gives the length.
"""

from collections.abc import Iterator, Sequence

import numpy as np

from bayboard.geometry.beside import Beside, runs_beside
from bayboard.geometry.stretches import HAIR, stretches
from bayboard.model.layout import Entry, Layout
from bayboard.routing.route import Route
from bayboard.rules.finding import Finding, Said, Severity, Unchecked
from bayboard.rules.levels import LEVEL, SILENT, Levels
from bayboard.rules.scene import Scene
from bayboard.rules.wire.apart import POWER, SIGNAL, guessed_ports, signal_by_power
from bayboard.tables.limits import limit
from bayboard.units.length import show_length, show_two

RULE = "beside"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each signal lead too long beside a power lead, and for shared ways in."""
    aside, angle = limit(scene.layout, "beside_d"), limit(scene.layout, "beside_angle")
    for signal, power, these, others in signal_by_power(scene, about):
        for run in runs_beside(these, others, aside, angle):
            yield from _judged(scene, power[run.other].lead, signal[run.path].lead, run)
    if about is None:
        yield from _shared_ways(scene)
    yield from guessed_ports(RULE, scene, about, (*POWER, *SIGNAL))


def of_each(layout: Layout, signal: Sequence[Route], power: Sequence[Route]) -> Levels:
    """Return how bad it is of the first of both, of the second of both and so on, (n,)."""
    aside, angle = limit(layout, "beside_d"), limit(layout, "beside_angle")
    these, others = (stretches([route.points for route in routes]) for routes in (signal, power))
    levels = np.full(len(signal), SILENT, dtype=np.int8)
    for run in runs_beside(these, others, aside, angle, paired=True):
        severity, _ = _severity(layout, run)
        levels[run.path] = SILENT if severity is None else LEVEL[severity]
    return levels


def _severity(layout: Layout, run: Beside) -> tuple[Severity | None, float]:
    """Return how bad a run is, and the limit that it crosses, or the one it does not."""
    must, should = limit(layout, "beside_must"), limit(layout, "beside_should")
    severity: Severity = "must" if run.length > must + HAIR else "should"
    crossed = must if severity == "must" else should
    return (severity if run.length > crossed + HAIR else None), crossed


def _judged(scene: Scene, power: str, signal: str, run: Beside) -> Iterator[Finding]:
    severity, crossed = _severity(scene.layout, run)
    if severity is None:
        return
    found, most = show_two(run.length, crossed, scene.layout.units)
    wish = f"It must stay under {most}" if severity == "must" else f"Under {most} is better"
    yield Finding(
        rule=RULE,
        severity=severity,
        subjects=(power, signal),
        measure=run.length,
        limit=crossed,
        unit="mm",
        at=run.at,
        says=f"{signal} runs {found} beside power lead {power}. {wish}.",
    )


def _shared_ways(scene: Scene) -> Iterator[Said]:
    entries = [entry for entry in scene.layout.bay.entries if entry.way is not None]
    for n, first in enumerate(entries):
        for second in entries[n + 1 :]:
            if first.way == second.way and _is_power(first) and _is_signal(second):
                yield from _shared_way(scene, first, second)
            elif first.way == second.way and _is_power(second) and _is_signal(first):
                yield from _shared_way(scene, second, first)


def _is_power(entry: Entry) -> bool:
    return any(kind in POWER for kind in entry.carries)


def _is_signal(entry: Entry) -> bool:
    return any(kind in SIGNAL for kind in entry.carries)


def _shared_way(scene: Scene, power: Entry, signal: Entry) -> Iterator[Said]:
    for entry in (power, signal):
        if entry.run is None:
            says = f"Nobody measured the run behind {entry.id}, which shares {power.way} with another."
            yield Unchecked(rule=RULE, subjects=(entry.id,), says=says)
    if power.run is None or signal.run is None:
        return
    shared = min(power.run, signal.run)
    length = show_length(shared, scene.layout.units)
    yield Finding(
        rule=RULE,
        severity="note",
        subjects=(power.id, signal.id),
        measure=shared,
        limit=None,
        unit="mm",
        at=signal.at,
        says=f"{power.id} and {signal.id} both come by {power.way}: up to {length} side by side.",
    )
