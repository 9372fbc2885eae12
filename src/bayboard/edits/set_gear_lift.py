"""Stand a piece of gear off the board."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.gear import with_gear
from bayboard.model.layout import Layout
from bayboard.model.raw import LARGEST_NUMBER
from bayboard.model.refused import Refused
from bayboard.model.rounding import rounded
from bayboard.units.length import show_length


@dataclass(frozen=True, slots=True)
class SetGearLift:
    """Set how far the underside of a stand-in is from the board's front, mm."""

    id: str
    lift: float

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the stand-in lifted; raise `Refused` beyond what a layout holds."""
        if not abs(self.lift) <= LARGEST_NUMBER:
            raise Refused(f"gear {self.id} › lift", "this is more than 100 m", "Correct the figure")
        return with_gear(layout, (self.id,), lambda gear: replace(gear, lift=rounded(self.lift)))

    def label(self, layout: Layout) -> str:
        """Return "Lift A2 to 12 mm"."""
        return f"Lift {self.id} to {show_length(self.lift, layout.units)}"
