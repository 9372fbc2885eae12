"""What all rules together say of a layout: in order, numbered, told once."""

from collections.abc import Iterable, Mapping, Set
from dataclasses import dataclass
from functools import cached_property

from bayboard.model.layout import Layout
from bayboard.rules.finding import SEVERITIES, Finding, Said, Unchecked, heads
from bayboard.rules.let_be import with_reasons
from bayboard.rules.too_close import with_doubt

_RANK = {severity: rank for rank, severity in enumerate(SEVERITIES)}


@dataclass(frozen=True)
class Verdict:
    """What was found, worst first, and what nobody could look at.

    Always true: findings stand in the order of severity, rule, subjects; an unchecked line
    stands once for a rule and its subjects; `counts` has must, should, note, let_be, unchecked.
    """

    findings: tuple[Finding, ...]
    unchecked: tuple[Unchecked, ...]

    @cached_property
    def counts(self) -> dict[str, int]:
        """Return how many there are of each; what was let be counts only as let_be."""
        counts = dict.fromkeys((*SEVERITIES, "let_be", "unchecked"), 0)
        for finding in self.findings:
            counts[finding.severity if finding.let_be is None else "let_be"] += 1
        counts["unchecked"] = len(self.unchecked)
        return counts

    def number(self, finding: Finding) -> int:
        """Return the finding's number, from 1: the same on every screen and sheet."""
        return self._numbers[finding]

    @cached_property
    def _numbers(self) -> dict[Finding, int]:
        numbers: dict[Finding, int] = {}
        for number, finding in enumerate(self.findings, start=1):
            numbers.setdefault(finding, number)
        return numbers

    def apart_from(self, things: Set[str]) -> "Verdict":
        """Return the verdict without what it says of some things, by id; the rest keeps its numbers."""
        left = Verdict(
            tuple(f for f in self.findings if things.isdisjoint(heads(f))),
            tuple(line for line in self.unchecked if things.isdisjoint(heads(line))),
        )
        left.__dict__["_numbers"] = self._numbers
        return left


def judged(layout: Layout, said: Mapping[str, Iterable[Said]]) -> Verdict:
    """Return the verdict of what each rule said: sorted, told once, what was let be marked."""
    findings: list[Finding] = []
    unchecked: dict[tuple[str, tuple[str, ...]], Unchecked] = {}
    for sayings in said.values():
        for saying in sayings:
            if isinstance(saying, Finding):
                findings.append(saying)
            else:
                unchecked.setdefault((saying.rule, saying.subjects), saying)
    findings.sort(key=lambda f: (_RANK[f.severity], f.rule, f.subjects))
    return Verdict(
        tuple(with_reasons(with_doubt(findings, layout), layout.let_be)),
        tuple(unchecked[key] for key in sorted(unchecked)),
    )
