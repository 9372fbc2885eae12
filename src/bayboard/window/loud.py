"""Which rules shout on a stage: those of its own rooms.  What others say folds, a line for each stage."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from bayboard.rules import RULES
from bayboard.rules.check import Verdict
from bayboard.rules.finding import SEVERITIES, Finding

HOMES = {"measure": "Measure", "arrange": "Arrange", "keep": "Arrange", "wire": "Wire", "fix": "Fix"}
"""The stage that each room of rules belongs to."""


@lru_cache(maxsize=1)
def _rooms() -> dict[str, str]:
    return {rule.RULE: getattr(rule, "__name__", "").split(".")[-2] for rule in RULES}


def room_of(rule: str) -> str:
    """Return the room of a rule, the folder it lies in: "wire"; "" for a rule that is not."""
    return _rooms().get(rule, "")


def home_of(rule: str) -> str:
    """Return the stage a rule belongs to: "Wire"."""
    return HOMES.get(room_of(rule), "")


@dataclass(frozen=True, slots=True)
class Folded:
    """What the rules of another stage found, as one line."""

    stage: str
    findings: tuple[Finding, ...]

    def words(self) -> str:
        """Return the line: "Wire: 3 must, 2 should"."""
        return f"{self.stage}: {counted(self.findings)}"


def open_findings(verdict: Verdict) -> list[tuple[int, Finding]]:
    """Return the findings that were not let be, each with its number, worst first."""
    return [(verdict.number(f), f) for f in verdict.findings if f.let_be is None]


def is_loud(finding: Finding, rooms: Sequence[str]) -> bool:
    """Return whether a finding shouts on a stage with these rooms."""
    return room_of(finding.rule) in rooms


def heard(verdict: Verdict, rooms: Sequence[str]) -> list[Finding]:
    """Return the open findings as they are walked: those that shout, worst first, then the others."""
    found = [f for _, f in open_findings(verdict)]
    return sorted(found, key=lambda f: not is_loud(f, rooms))


def folded(verdict: Verdict, rooms: Sequence[str]) -> tuple[Folded, ...]:
    """Return the open findings that do not shout, one line for each stage they belong to."""
    found: dict[str, list[Finding]] = {}
    for _, finding in open_findings(verdict):
        if not is_loud(finding, rooms):
            found.setdefault(home_of(finding.rule), []).append(finding)
    order = dict.fromkeys((*HOMES.values(), ""))
    return tuple(Folded(stage, tuple(found[stage])) for stage in order if stage in found)


def counted(findings: Iterable[Finding]) -> str:
    """Return how many findings there are: "1 must, 2 should"; what was let be is counted apart."""
    every = tuple(findings)
    told = []
    for severity in SEVERITIES:
        count = sum(f.severity == severity and f.let_be is None for f in every)
        if count:
            told.append(f"{count} {severity}{'s' if severity == 'note' and count > 1 else ''}")
    let_be = sum(f.let_be is not None for f in every)
    return ", ".join([*told, *([f"{let_be} let be"] if let_be else [])])


def unlooked_rules(verdict: Verdict, rooms: Sequence[str] | None = None) -> frozenset[str]:
    """Return the rules that could not look at something, of these rooms or of all."""
    rules = frozenset(line.rule for line in verdict.unchecked)
    return rules if rooms is None else frozenset(rule for rule in rules if room_of(rule) in rooms)


def quiet_rules(verdict: Verdict) -> int:
    """Return how many rules looked at everything and have nothing to say.

    These, those that could not look at something, and the others that speak are all rules there are.
    """
    spoke = {f.rule for f in verdict.findings} | unlooked_rules(verdict)
    return sum(rule.RULE not in spoke for rule in RULES)
