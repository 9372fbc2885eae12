"""One finding looked at alone: its rule, with no other leads than its own."""

from functools import cached_property

import numpy as np
from msgspec.structs import replace

from bayboard.edits.edit import Edit
from bayboard.edits.to_bench import ToBench
from bayboard.geometry.solids import Flags
from bayboard.geometry.strips import near_path
from bayboard.model.refused import Refused
from bayboard.rules import RULES
from bayboard.rules.finding import Finding
from bayboard.rules.levels import LEVEL, MUST, SILENT, Named, head, named
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene

_RULES = {rule.RULE: rule for rule in RULES}


class Alone:
    """A finding of one scene, looked at after one edit or another; much cheaper than the whole check."""

    def __init__(self, scene: Scene, name: Named) -> None:
        self._scene, self._name = scene, name
        self._benched: dict[str, Scene] = {}
        self._heads = frozenset(head(subject) for subject in name[1])
        self.leads = tuple(lead for lead in scene.layout.leads if lead.id in self._heads)

    @cached_property
    def _before(self) -> Scene:
        """Return the scene with the finding's own leads only; without any the scene as it is."""
        if not self.leads:
            return self._scene
        return Scene(replace(self._scene.layout, leads=self.leads))

    def worth_a_look(self, places: Places, below: int) -> Flags:
        """Return at which places of a stand-in the finding may come under a level, (places,).

        One that is neither a subject nor at an end of a lead changes nothing but the ways of leads that the
        program leads; where it is not in their way they run as if it were not there at all.
        """
        ends = {head(end) for lead in self.leads for end in (lead.from_, lead.to)}
        if not self.leads or places.id in self._heads | ends:
            return np.ones(len(places), dtype=np.bool_)
        near = np.zeros(len(places), dtype=np.bool_)
        led = [lead for lead in self.leads if not lead.via]
        without = self._without(places.id) if led else self._before
        if led and self._told(without) < below:
            return ~near
        for lead in led:
            if lead.id in without.routes:
                route = without.routes[lead.id]
                for ring in (places.model.ring, *(body.ring for body in places.model.bodies)):
                    near |= near_path(places.shapes(ring), route.points, route.od)
        return near

    def _without(self, gear: str) -> Scene:
        """Return the scene with a stand-in on the bench; kept, as it is asked for block by block."""
        if gear not in self._benched:
            self._benched[gear] = Scene(ToBench((gear,)).apply(self._before.layout))
        return self._benched[gear]

    def level(self, edit: Edit) -> int:
        """Return how bad the finding is after the edit, 0 when it is gone; a must where it is refused."""
        before = self._before
        try:
            after = edit.apply(before.layout)
        except Refused:
            return MUST
        return self._told(Scene(after, before, None if self.leads else before.routes))

    def _told(self, scene: Scene) -> int:
        said = _RULES[self._name[0]].look(scene, self._heads)
        same = [s for s in said if isinstance(s, Finding) and named(s) == self._name]
        return max((LEVEL[finding.severity] for finding in same), default=SILENT)
