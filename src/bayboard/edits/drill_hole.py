"""Say that a hole was drilled, and where."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.made import hole_named, known_screws, made_at, told_at, with_fixing, with_screws
from bayboard.model.drilled import planned_at
from bayboard.model.layout import Fixing, Layout, Point, Pose
from bayboard.model.refused import Refused


@dataclass(frozen=True, slots=True)
class DrillHole:
    """A hole in a board is made: `hole` is `GEAR#n` or a fixing, `at` bay axes, None where it is planned.

    The first hole of a stand-in fixes the pose that it was drilled in: where it stands now.
    """

    hole: str
    at: Point | None = None

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the hole drilled; raise `Refused` where there is no such hole to drill."""
        found = hole_named(layout, self.hole)
        planned = planned_at(layout, self.hole)
        if isinstance(found, Fixing):
            at = made_at(self.hole, found.at if self.at is None else self.at)
            return with_fixing(layout, replace(found, drilled=at))
        gear, number = found
        if planned is None or gear.at is None:
            what = f"gear {gear.id} is on the bench and makes no hole"
            raise Refused(f"hole {self.hole}", what, "Put it on the board first")
        made = known_screws(layout, gear) | {number: made_at(self.hole, self.at or planned)}
        if gear.drilled is None:
            gear = replace(gear, drilled=Pose(at=gear.at, turn=gear.turn))
        return with_screws(layout, gear, made)

    def label(self, layout: Layout) -> str:
        """Return "Drilled H5" or "Drilled A2#3 at 12 3/8, 4 in"."""
        return f"Drilled {self.hole}{told_at(self.at, layout)}"
