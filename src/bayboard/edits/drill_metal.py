"""Say that the hole of a fixing was made in the metal, and where."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.made import hole_named, made_at, told_at, with_fixing
from bayboard.model.layout import Fixing, Layout, Point
from bayboard.model.refused import Refused


@dataclass(frozen=True, slots=True)
class DrillMetal:
    """The hole of a fixing is made in the vehicle's metal: `at` in bay axes, None where it is planned."""

    fixing: str
    at: Point | None = None

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the metal drilled; raise `Refused` where there is no such fixing."""
        found = hole_named(layout, self.fixing)
        if not isinstance(found, Fixing):
            raise Refused(f"hole {self.fixing}", "a screw of gear ends in the board", "Name a fixing")
        at = made_at(self.fixing, found.at if self.at is None else self.at)
        return with_fixing(layout, replace(found, metal=at))

    def label(self, layout: Layout) -> str:
        """Return "Drilled the metal for H5"."""
        return f"Drilled the metal for {self.fixing}{told_at(self.at, layout)}"
