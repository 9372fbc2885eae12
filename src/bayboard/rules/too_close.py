"""Findings that a tape cannot settle: nearer to their limit than the bay was measured."""

from collections.abc import Iterable

import msgspec

from bayboard.geometry.crowd import HAIR
from bayboard.model.layout import Layout
from bayboard.rules.finding import Finding
from bayboard.tables.limits import limit

ALWAYS = frozenset(
    ("off-wall", "seat-depth", "seat-swing", "on-stay", "on-landing", "way-in", "insert-landing", "no-drill")
)
BESIDE_THE_BAY = frozenset(("overlap", "air", "plug-room"))  # in the bay when a stay or seat is a subject
TOLD = ", too close to call."


def with_doubt(findings: Iterable[Finding], layout: Layout) -> list[Finding]:
    """Return the findings, in order; those within the tape's doubt of their limit say so."""
    bay = layout.bay
    measured = frozenset([stay.id for stay in bay.stays] + [seat.id for seat in bay.seats])
    return [_doubted(f) if _in_doubt(f, layout, measured) else f for f in findings]


def _in_doubt(finding: Finding, layout: Layout, measured: frozenset[str]) -> bool:
    """Return whether the measure rests on the bay and lies within its tape of what it is held against."""
    if finding.measure is None or not _rests_on_the_bay(finding, measured):
        return False
    doubt = layout.bay.tape + HAIR
    return any(abs(finding.measure - held) <= doubt for held in _held_against(finding, layout))


def _held_against(finding: Finding, layout: Layout) -> tuple[float, ...]:
    """Return the values whose crossing changes the verdict: in three rules a should becomes a must."""
    if finding.limit is None:
        return ()
    if finding.rule == "seat-depth":
        return finding.limit, 0.0
    if finding.rule == "no-drill":
        return -finding.limit, 0.0  # negative outside
    if finding.rule == "air":
        return finding.limit, finding.limit * limit(layout, "air_must_share")
    return (finding.limit,)


def _rests_on_the_bay(finding: Finding, measured: frozenset[str]) -> bool:
    if finding.rule in ALWAYS:
        return True
    return finding.rule in BESIDE_THE_BAY and not measured.isdisjoint(finding.subjects)


def _doubted(finding: Finding) -> Finding:
    return msgspec.structs.replace(finding, says=finding.says.removesuffix(".") + TOLD)
