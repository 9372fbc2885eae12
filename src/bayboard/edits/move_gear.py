"""Move stand-ins together."""

from dataclasses import dataclass

from bayboard.edits.gear import standing, told, with_gear
from bayboard.model.layout import Gear, Layout
from bayboard.units.length import show_length


@dataclass(frozen=True, slots=True)
class MoveGear:
    """Move the stand-ins by (dx, dy) mm in bay axes; those still on the bench stay there."""

    ids: tuple[str, ...]
    dx: float
    dy: float

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the stand-ins moved."""
        return with_gear(layout, self.ids, self._moved)

    def _moved(self, gear: Gear) -> Gear:
        return gear if gear.at is None else standing(gear, (gear.at[0] + self.dx, gear.at[1] + self.dy))

    def label(self, layout: Layout) -> str:
        """Return "Move A2 left 1/8 in"."""
        ways = ((self.dx, "right", "left"), (self.dy, "up", "down"))
        parts = [
            f"{way if by > 0 else back} {show_length(abs(by), layout.units)}" for by, way, back in ways if by
        ]
        return f"Move {told(self.ids)} {', '.join(parts) or 'nowhere'}"

    def followed_by(self, after: "MoveGear") -> "MoveGear":
        """Return the one move that both make together."""
        return MoveGear(self.ids, self.dx + after.dx, self.dy + after.dy)
