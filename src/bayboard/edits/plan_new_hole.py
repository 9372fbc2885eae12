"""Plan new holes for what was drilled elsewhere."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.made import owner_named, with_fixing, with_screws
from bayboard.model.layout import Gear, Layout


@dataclass(frozen=True, slots=True)
class PlanNewHole:
    """Leave the holes that were drilled in the board for a stand-in or fixing; it gets new ones.

    A fixing drilled in the metal alone gets a new hole there.
    """

    id: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout in which that is still to be drilled; raise `Refused` where it makes no hole."""
        owner = owner_named(layout, self.id)
        if isinstance(owner, Gear):
            return with_screws(layout, replace(owner, drilled=None), {})
        if owner.drilled is None:
            return with_fixing(layout, replace(owner, metal=None))
        return with_fixing(layout, replace(owner, drilled=None))

    def label(self, layout: Layout) -> str:
        """Return "Plan new holes for A2" or "Plan a new hole for H5"."""
        one = any(fixing.id == self.id for fixing in layout.fixings)
        return f"Plan {'a new hole' if one else 'new holes'} for {self.id}"
