"""Say lengths in mm or in inches."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.model.layout import Layout, Units

_WORDS = {"mm": "millimetres", "in": "inches"}


@dataclass(frozen=True, slots=True)
class SetUnits:
    """Set the language of every length shown; no length changes."""

    units: Units

    def apply(self, layout: Layout) -> Layout:
        """Return the layout in those units."""
        return layout if layout.units == self.units else replace(layout, units=self.units)

    def label(self, _layout: Layout) -> str:
        """Return "Show inches"."""
        return f"Show {_WORDS[self.units]}"
