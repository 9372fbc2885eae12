"""Findings that the fabricator chose to leave, until they get worse."""

from collections.abc import Iterable

import msgspec

from bayboard.model.layout import LetBe
from bayboard.rules.finding import Finding

SMALLER_IS_WORSE = frozenset(
    ("gap", "air", "seat-depth", "reach", "crossing", "warm-stack", "fixing-reach", "screw", "on-stay")
)
NULL_IS_WORST = frozenset(("sight",))  # null there: seen from nowhere
SLACK = 0.0001  # in the finding's unit; figures are told to this much


def with_reasons(findings: Iterable[Finding], left: Iterable[LetBe]) -> list[Finding]:
    """Return the findings, those let be with the reason; a must and a worse finding stay as they are."""
    by_subject: dict[tuple[str, tuple[str, ...]], list[LetBe]] = {}
    for entry in left:
        by_subject.setdefault((entry.rule, entry.subjects), []).append(entry)
    if not by_subject:
        return list(findings)
    return [_with_reason(f, by_subject.get((f.rule, f.subjects), [])) for f in findings]


def _with_reason(finding: Finding, entries: list[LetBe]) -> Finding:
    if finding.severity == "must":
        return finding
    for entry in entries:
        if not worse(finding.rule, finding.measure, entry.measure):
            return msgspec.structs.replace(finding, let_be=entry.reason)
    return finding


def worse(rule: str, now: float | None, then: float | None) -> bool:
    """Return whether a measure has got worse, by more than `SLACK`, than when it was let be."""
    if then is None:
        return False
    if now is None:
        return rule in NULL_IS_WORST
    return (then - now if rule in SMALLER_IS_WORSE else now - then) > SLACK
