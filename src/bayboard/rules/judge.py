"""Whether an edit cures a finding: it is gone, or less, and no new must has come."""

from copy import copy
from typing import NamedTuple

from bayboard.edits.edit import Edit
from bayboard.model.refused import Refused
from bayboard.rules.check import Checker, Verdict
from bayboard.rules.levels import LEVEL, MUST, Named, named


class Wanted(NamedTuple):
    """What a cure has to do: bring one finding under a level; under 1 is to silence it."""

    name: Named
    below: int = 1


class Judge:
    """Looks at one layout after one edit or another."""

    def __init__(self, checker: Checker) -> None:
        self._checker = checker
        self.scene, self.layout = checker.scene, checker.scene.layout
        self.findings = checker.now.findings
        self.levels = levels(checker.now)
        self.musts = _musts(self.levels)

    def cures(self, edit: Edit, wanted: Wanted) -> bool:
        """Return whether the whole check finds that the edit does what is wanted and brings no new must."""
        try:
            after = edit.apply(self.layout)
        except Refused:
            return False
        now = levels(copy(self._checker).move(after))
        return now.get(wanted.name, 0) < wanted.below and _musts(now) <= self.musts


def levels(verdict: Verdict) -> dict[Named, int]:
    """Return how bad each finding is, the worst of a name."""
    found: dict[Named, int] = {}
    for finding in verdict.findings:
        found[named(finding)] = max(LEVEL[finding.severity], found.get(named(finding), 0))
    return found


def _musts(now: dict[Named, int]) -> frozenset[Named]:
    return frozenset(name for name, level in now.items() if level == MUST)
