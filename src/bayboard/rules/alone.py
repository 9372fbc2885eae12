"""One finding looked at alone: its rule, with no other leads than its own."""

from collections.abc import Iterator, Sequence, Set
from functools import cached_property

import numpy as np
from msgspec.structs import replace

from bayboard.edits.edit import Edit
from bayboard.edits.to_bench import ToBench
from bayboard.geometry.solids import Flags
from bayboard.model.refused import Refused
from bayboard.rules import RULES
from bayboard.rules.finding import Finding
from bayboard.rules.levels import LEVEL, MUST, SILENT, Named, head, named
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.ways import Ways

_RULES = {rule.RULE: rule for rule in RULES}


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
        if not self.leads or places.id in self._heads or self._without(places.id) < below:
            return np.ones(len(places), dtype=np.bool_)
        barred = [self._ways.barred(lead, places) for lead in self.leads]
        return np.asarray(np.any(barred, axis=0))

    def cured(self, places: Places, moves: Sequence[Edit], below: int) -> Iterator[int]:
        """Yield the numbers of the moves, one to each of the places, that bring the finding under a level."""
        barred = {lead.id: self._ways.barred(lead, places) for lead in self.leads}
        for n, move in enumerate(moves):
            free = {id_ for id_, flags in barred.items() if not flags[n]}
            if self._level(move, places.id, free) < below:
                yield n

    def level(self, edit: Edit) -> int:
        """Return how bad the finding is after the edit, 0 when it is gone; a must where it is refused."""
        try:
            return self._level(edit)
        except Refused:
            return MUST

    def _level(self, edit: Edit, gear: str = "", free: Set[str] = frozenset()) -> int:
        """Return how bad the finding is after an edit; leads in `free` run as if `gear` were not there."""
        before = self._before
        after = edit.apply(before.layout)
        if not self.leads:
            return self._told(Scene(after, before, before.routes))
        led = {
            lead.id: self._ways.without(lead, gear) if lead.id in free else self._ways.after(lead, edit)
            for lead in self.leads
        }
        return self._told(Scene(after, before, {id_: way for id_, way in led.items() if way is not None}))

    def _without(self, gear: str) -> int:
        """Return how bad the finding is with a stand-in on the bench."""
        if gear not in self._benched:
            self._benched[gear] = self._level(ToBench((gear,)))
        return self._benched[gear]

    def _told(self, scene: Scene) -> int:
        said = _RULES[self._name[0]].look(scene, self._heads)
        same = [s for s in said if isinstance(s, Finding) and named(s) == self._name]
        return max((LEVEL[finding.severity] for finding in same), default=SILENT)
