"""One finding looked at alone: its rule, with no other leads than its own."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cached_property

import numpy as np
from msgspec.structs import replace

from bayboard.edits.edit import Edit
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.to_bench import ToBench
from bayboard.geometry.solids import Flags
from bayboard.model.layout import Layout, Lead
from bayboard.model.refused import Refused
from bayboard.routing.route import Route
from bayboard.rules import RULES
from bayboard.rules.finding import Finding
from bayboard.rules.levels import LEVEL, MUST, SILENT, Levels, Named, head, named
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.ways import Ways
from bayboard.tables.nudge import TOGETHER

OfEach = Callable[[Layout, Sequence[Route], Sequence[Route]], Levels]
"""What a rule says of a signal lead and a power lead, the ways of both given in many pairs."""

StaysBad = Callable[[Scene, tuple[str, ...], str], bool]
"""Whether a rule's finding about leads stays as it is wherever a stand-in is moved to."""

_RULES = {rule.RULE: rule for rule in RULES}
_OF_EACH: dict[str, OfEach] = {r.RULE: r.of_each for r in RULES if hasattr(r, "of_each")}
_STAYS_BAD: dict[str, StaysBad] = {r.RULE: r.stays_bad for r in RULES if hasattr(r, "stays_bad")}


class Alone:
    """A finding of one scene, looked at after one edit or another; much cheaper than the whole check."""

    def __init__(self, scene: Scene, name: Named, ways: Ways) -> None:
        self._scene, self._name, self._ways = scene, name, ways
        self._heads = frozenset(head(subject) for subject in name[1])
        self._benched: dict[str, int] = {}
        self.leads = tuple(lead for lead in scene.layout.leads if lead.id in self._heads)

    @cached_property
    def _before(self) -> Scene:
        """Return the scene with the finding's own leads only; without any the scene as it is."""
        if not self.leads:
            return self._scene
        now = {lead.id: self._scene.routes[lead.id] for lead in self.leads if lead.id in self._scene.routes}
        return Scene(replace(self._scene.layout, leads=self.leads), None, now)

    def stays_led(self, gear: str) -> bool:
        """Return whether none of the finding's leads goes another way when a stand-in moves."""
        return all(
            lead.via and gear not in (head(lead.from_), head(lead.to)) and lead.id in self._scene.paths
            for lead in self.leads
        )

    def worth_a_look(self, places: Places, below: int) -> Flags:
        """Return at which places of a stand-in the finding may come under a level, (places,).

        One that is not a subject changes nothing but the ways of leads; where it bars none of them, they run
        as if it were not there at all.
        """
        stays_bad = _STAYS_BAD.get(self._name[0]) if self.leads else None
        if stays_bad is not None and stays_bad(self._scene, self._name[1], places.id):
            return np.zeros(len(places), dtype=np.bool_)
        if not self.leads or places.id in self._heads or self._without(places.id) < below:
            return np.ones(len(places), dtype=np.bool_)
        barred = [self._ways.barred(lead, places) for lead in self.leads]
        return np.asarray(np.any(barred, axis=0))

    def cured(self, places: Places, moves: Sequence[MoveGear], below: int) -> Iterator[int | None]:
        """Yield the numbers of the moves, one to each of the places, that bring the finding under a level.

        None after every few that were looked at.
        """
        for first in range(0, len(moves), TOGETHER):
            some = np.arange(first, min(first + TOGETHER, len(moves)))
            levels = self._levels(places.some(some), moves[first : first + TOGETHER])
            yield from (first + np.flatnonzero(levels < below)).tolist()
            yield None

    def _levels(self, places: Places, moves: Sequence[MoveGear]) -> Levels:
        """Return how bad the finding is after each of the moves, one to each of the places."""
        ways = {lead.id: self._ways_of(lead, places, moves) for lead in self.leads}
        of_each = _OF_EACH.get(self._name[0]) if self.leads else None
        if of_each is None:
            led = [{id_: way[n] for id_, way in ways.items()} for n in range(len(moves))]
            return np.array([self._told(move, led[n]) for n, move in enumerate(moves)], dtype=np.int8)
        levels = np.full(len(moves), SILENT, dtype=np.int8)
        pairs = zip(*(ways[id_] for id_ in self._name[1]), strict=True)
        both = {n: (power, signal) for n, (power, signal) in enumerate(pairs) if power and signal}
        power, signal = [p for p, _ in both.values()], [s for _, s in both.values()]
        levels[list(both)] = of_each(self._scene.layout, signal, power)
        return levels

    def _ways_of(self, lead: Lead, places: Places, moves: Sequence[MoveGear]) -> list[Route | None]:
        """Return the way of a lead after each of the moves."""
        if places.id in (head(lead.from_), head(lead.to)):
            return self._ways.all_after(lead, places.id, moves)
        barred = self._ways.barred(lead, places).tolist()
        free = self._ways.without(lead, places.id)
        return [
            self._ways.after(lead, move) if again else free for move, again in zip(moves, barred, strict=True)
        ]

    def level(self, edit: Edit) -> int:
        """Return how bad the finding is after the edit, 0 when it is gone; a must where it is refused."""
        try:
            return self._level(edit)
        except Refused:
            return MUST

    def _level(self, edit: Edit) -> int:
        """Return how bad the finding is after an edit."""
        return self._told(edit, {lead.id: self._ways.after(lead, edit) for lead in self.leads})

    def _without(self, gear: str) -> int:
        """Return how bad the finding is with a stand-in on the bench."""
        if gear not in self._benched:
            self._benched[gear] = self._level(ToBench((gear,)))
        return self._benched[gear]

    def _told(self, edit: Edit, led: Mapping[str, Route | None]) -> int:
        """Return how bad the finding is after an edit, with the ways that its own leads then take."""
        before = self._before
        known = {id_: way for id_, way in led.items() if way is not None} if self.leads else before.routes
        scene = Scene(edit.apply(before.layout), before, known)
        said = _RULES[self._name[0]].look(scene, self._heads)
        same = [s for s in said if isinstance(s, Finding) and named(s) == self._name]
        return max((LEVEL[finding.severity] for finding in same), default=SILENT)
