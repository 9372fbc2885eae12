"""All that the rules say of a layout, at once or step by step while something moves."""

from collections.abc import Generator, Mapping, Sequence
from math import inf
from time import perf_counter

import numpy as np

from bayboard.model.layout import Layout
from bayboard.routing.route import Route
from bayboard.rules import RULES
from bayboard.rules.finding import Said, heads
from bayboard.rules.rule import Rule
from bayboard.rules.scene import Scene
from bayboard.rules.verdict import Verdict, judged

__all__ = ["Checker", "Verdict", "changed_leads", "check", "judged", "moved_gear"]


def check(layout: Layout, rules: Sequence[Rule] = RULES) -> Verdict:
    """Return all that the rules say of the layout."""
    return judged(layout, _look_at_all(Scene(layout), rules))


def _look_at_all(scene: Scene, rules: Sequence[Rule]) -> dict[str, list[Said]]:
    return {rule.RULE: list(rule.look(scene)) for rule in rules}


class Checker:
    """A check that goes along with a layout: what a moved stand-in does not touch is kept.

    Always true: `now`, `scene` and `routes` are those of the layout last looked at to the end, and `now`
    equals `check` of it.  That is the one last given, unless it was only begun.
    """

    def __init__(self, layout: Layout, rules: Sequence[Rule] = RULES) -> None:
        self._rules = rules
        self._start(layout)

    @property
    def scene(self) -> Scene:
        """Return the layout as the rules saw it, with all they derived."""
        return self._scene

    @property
    def routes(self) -> Mapping[str, Route]:
        """Return the path of each lead, as the rules saw it."""
        return self._scene.routes

    def _start(self, layout: Layout) -> None:
        self._step: Generator[None, None, None] | None = None
        self._scene = Scene(layout)
        self._said = _look_at_all(self._scene, self._rules)
        self.now = judged(layout, self._said)

    def move(self, layout: Layout) -> Verdict:
        """Return the verdict of `layout`; quick when only places of gear differ from the last."""
        self.begin(layout)
        self.go_on()
        return self.now

    def begin(self, layout: Layout) -> tuple[Scene, frozenset[str]]:
        """Begin to look at a layout in place of any other begun before; `go_on` does the rest.

        Returns its scene and the gear that moved.  Where more than places of gear differ, all is done
        at once.
        """
        moved = moved_gear(self._scene.layout, layout)
        if moved is None:
            self._start(layout)
            return self._scene, frozenset()
        scene = Scene(layout, self._scene)
        self._step = self._look_again(scene, moved)
        return scene, moved

    def go_on(self, seconds: float = inf) -> bool:
        """Look on for about so long, a bit at least; return whether all is looked at."""
        until = perf_counter() + seconds
        while self._step is not None:
            if next(self._step, self) is self:
                self._step = None
            elif perf_counter() >= until:
                return False
        return True

    def _look_again(self, scene: Scene, moved: frozenset[str]) -> Generator[None, None, None]:
        """Look at what a move touches, bit by bit; at the end take it over."""
        yield from scene.lead_again()
        changed = moved | changed_leads(self._scene.routes, scene.routes)
        said = {}
        for rule in self._rules:
            said[rule.RULE] = self._again(rule, scene, changed)
            yield
        scene.forget_before()
        self._scene, self._said = scene, said
        self.now = judged(scene.layout, said)

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
