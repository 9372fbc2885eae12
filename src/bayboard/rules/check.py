"""All that the rules say of a layout, at once or step by step while something moves."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from bayboard.model.layout import Layout
from bayboard.routing.route import Route
from bayboard.rules import RULES
from bayboard.rules.finding import SEVERITIES, Finding, Said, Unchecked, heads
from bayboard.rules.let_be import with_reasons
from bayboard.rules.rule import Rule
from bayboard.rules.scene import Scene
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


def check(layout: Layout, rules: Sequence[Rule] = RULES) -> Verdict:
    """Return all that the rules say of the layout."""
    return judged(layout, _look_at_all(Scene(layout), rules))


def _look_at_all(scene: Scene, rules: Sequence[Rule]) -> dict[str, list[Said]]:
    return {rule.RULE: list(rule.look(scene)) for rule in rules}


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


class Checker:
    """A check that goes along with a layout: what a moved stand-in does not touch is kept.

    Always true: `now` equals `check` of the layout last given.
    """

    def __init__(self, layout: Layout, rules: Sequence[Rule] = RULES) -> None:
        self._rules = rules
        self._start(layout)

    @property
    def scene(self) -> Scene:
        """Return the layout last given as the rules saw it, with all they derived."""
        return self._scene

    @property
    def routes(self) -> Mapping[str, Route]:
        """Return the path of each lead of the layout last given, as the rules saw it."""
        return self._scene.routes

    def _start(self, layout: Layout) -> None:
        self._scene = Scene(layout)
        self._said = _look_at_all(self._scene, self._rules)
        self.now = judged(layout, self._said)

    def move(self, layout: Layout) -> Verdict:
        """Return the verdict of `layout`; quick when only places of gear differ from the last."""
        moved = moved_gear(self._scene.layout, layout)
        if moved is None:
            self._start(layout)
        else:
            self._step(layout, moved)
        return self.now

    def _step(self, layout: Layout, moved: frozenset[str]) -> None:
        scene = Scene(layout, self._scene)
        changed = moved | changed_leads(self._scene.routes, scene.routes)
        said = {rule.RULE: self._again(rule, scene, changed) for rule in self._rules}
        scene.forget_before()
        self._scene, self._said = scene, said
        self.now = judged(layout, said)

    def _again(self, rule: Rule, scene: Scene, changed: frozenset[str]) -> list[Said]:
        """Return what the rule says now: all anew, or what it said before but for what changed."""
        before = self._said[rule.RULE]
        if not changed:
            return before
        if rule.WIDE:
            return list(rule.look(scene))
        return [s for s in before if changed.isdisjoint(heads(s))] + list(rule.look(scene, changed))


_UNJUDGED = frozenset(("gear", "let_be", "photos", "x"))  # members that no rule's look depends on, gear apart


def moved_gear(before: Layout, after: Layout) -> frozenset[str] | None:
    """Return the ids of gear that differs, None when more than places differ."""
    for member in Layout.__struct_fields__:
        was, now = getattr(before, member), getattr(after, member)
        if member not in _UNJUDGED and was is not now and was != now:
            return None
    if len(before.gear) != len(after.gear):
        return None
    pairs = [(a, b) for a, b in zip(before.gear, after.gear, strict=True) if a is not b]
    if any((a.id, a.card, a.board) != (b.id, b.card, b.board) or None in (a.at, b.at) for a, b in pairs):
        return None
    return frozenset(a.id for a, b in pairs if a != b)


def changed_leads(before: Mapping[str, Route], after: Mapping[str, Route]) -> frozenset[str]:
    """Return the ids of leads whose path came, went or changed."""
    return frozenset(
        lead for lead in before.keys() | after.keys() if not _same_path(before.get(lead), after.get(lead))
    )


def _same_path(a: Route | None, b: Route | None) -> bool:
    if a is b:
        return True
    return a is not None and b is not None and np.array_equal(a.points, b.points)
