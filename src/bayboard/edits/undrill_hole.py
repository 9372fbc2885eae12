"""Take back that a hole was drilled."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.made import hole_named, known_screws, with_fixing, with_screws
from bayboard.model.layout import Fixing, Layout


@dataclass(frozen=True, slots=True)
class UndrillHole:
    """The hole was not made after all: a mis-press.  What was drilled in the metal stays."""

    hole: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the hole to be drilled; a stand-in's drilled pose goes with its last hole.

        Raises `Refused` where there is no such hole.
        """
        found = hole_named(layout, self.hole)
        if isinstance(found, Fixing):
            return with_fixing(layout, replace(found, drilled=None))
        gear, number = found
        made = known_screws(layout, gear)
        if number not in made:
            return layout
        del made[number]
        return with_screws(layout, gear if made else replace(gear, drilled=None), made)

    def label(self, _layout: Layout) -> str:
        """Return "H5 is not drilled yet"."""
        return f"{self.hole} is not drilled yet"
