"""Tape stand-ins down, or loosen them."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.gear import told, with_gear
from bayboard.model.layout import Layout


@dataclass(frozen=True, slots=True)
class SetTaped:
    """Tape the stand-ins down so that nothing moves them by chance, or loosen them."""

    ids: tuple[str, ...]
    taped: bool

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the stand-ins taped or loose."""
        return with_gear(layout, self.ids, lambda gear: replace(gear, taped=self.taped))

    def label(self, _layout: Layout) -> str:
        """Return "Tape A2 down" or "Loosen A2"."""
        return f"Tape {told(self.ids)} down" if self.taped else f"Loosen {told(self.ids)}"
