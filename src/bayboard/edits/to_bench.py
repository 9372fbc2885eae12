"""Take stand-ins off the board."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.gear import told, with_gear
from bayboard.model.layout import Layout


@dataclass(frozen=True, slots=True)
class ToBench:
    """Put the stand-ins back on the bench; their turn, lift and leads stay, the tape comes off."""

    ids: tuple[str, ...]

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the stand-ins on the bench."""
        return with_gear(
            layout, self.ids, lambda gear: gear if gear.at is None else replace(gear, at=None, taped=False)
        )

    def label(self, _layout: Layout) -> str:
        """Return "Put A2 back on the bench"."""
        return f"Put {told(self.ids)} back on the bench"
