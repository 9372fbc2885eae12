"""Turn stand-ins where they stand."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.gear import told, whole_turn, with_gear
from bayboard.model.layout import Gear, Layout


@dataclass(frozen=True, slots=True)
class TurnGear:
    """Turn each stand-in about its own middle by `by` degrees, counter-clockwise."""

    ids: tuple[str, ...]
    by: float

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the stand-ins turned; a turn that is changed lies from 0 up to 360."""
        return with_gear(layout, self.ids, self._turned) if self.by % 360.0 else layout

    def _turned(self, gear: Gear) -> Gear:
        return replace(gear, turn=whole_turn(gear.turn + self.by))

    def label(self, _layout: Layout) -> str:
        """Return "Turn A2 left 90°" for a turn counter-clockwise."""
        return f"Turn {told(self.ids)} {'left' if self.by > 0 else 'right'} {abs(self.by):g}°"
