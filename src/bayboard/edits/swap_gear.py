"""Swap two stand-ins."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.gear import gear_named, with_gear
from bayboard.model.layout import Gear, Layout, Point


@dataclass(frozen=True, slots=True)
class SwapGear:
    """Let two stand-ins exchange their places, middle for middle; each keeps its turn and its lift.

    A board goes with its place.  One that waits on the bench swaps with one on a board just so.
    """

    a: str
    b: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the two swapped."""
        places = {one: self._place(layout, other) for one, other in ((self.a, self.b), (self.b, self.a))}

        def _swapped(gear: Gear) -> Gear:
            at, board = places[gear.id]
            return replace(gear, at=at, board=board)

        return with_gear(layout, (self.a, self.b), _swapped)

    def _place(self, layout: Layout, name: str) -> tuple[Point | None, str | None]:
        gear = gear_named(layout, name)
        return gear.at, gear.board

    def label(self, _layout: Layout) -> str:
        """Return "Swap A1 and A2"."""
        return f"Swap {self.a} and {self.b}"
