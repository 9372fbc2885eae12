"""One finding looked at alone: its rule, with no other leads than its own."""

from functools import cached_property

from msgspec.structs import replace

from bayboard.edits.edit import Edit
from bayboard.rules import RULES
from bayboard.rules.finding import Finding
from bayboard.rules.levels import LEVEL, SILENT, Named, head, named
from bayboard.rules.scene import Scene

_RULES = {rule.RULE: rule for rule in RULES}


class Alone:
    """A finding of one scene, looked at after one edit or another; much cheaper than the whole check."""

    def __init__(self, scene: Scene, name: Named) -> None:
        self._scene, self._name = scene, name
        self._heads = frozenset(head(subject) for subject in name[1])
        self.leads = tuple(lead for lead in scene.layout.leads if lead.id in self._heads)

    @cached_property
    def _before(self) -> Scene:
        """Return the scene with the finding's own leads only; without any the scene as it is."""
        if not self.leads:
            return self._scene
        return Scene(replace(self._scene.layout, leads=self.leads))

    def level(self, edit: Edit) -> int:
        """Return how bad the finding is after the edit, 0 when it is gone."""
        before = self._before
        routes = None if self.leads else before.routes
        after = Scene(edit.apply(before.layout), before, routes)
        said = _RULES[self._name[0]].look(after, self._heads)
        same = [s for s in said if isinstance(s, Finding) and named(s) == self._name]
        return max((LEVEL[finding.severity] for finding in same), default=SILENT)
