"""Give this vehicle a limit of its own, or take the usual one again."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.model.check import check
from bayboard.model.layout import Layout
from bayboard.model.limit_words import WORDS, show_limit, sound
from bayboard.tables.limits import LIMITS


@dataclass(frozen=True, slots=True)
class SetLimit:
    """Judge by `value` where the usual figure would be; None, or that figure itself, takes it again."""

    name: str
    value: float | None

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with its own limit; refuse one that is unknown, below 0 or larger than can be."""
        usual = None if self.name not in LIMITS else LIMITS[self.name].value
        value = self.value if self.value is not None or usual is None else usual
        sound(self.name, 0.0 if value is None else value, layout.units)
        own = {name: known for name, known in layout.limits.items() if name != self.name}
        if value is not None and value != usual:
            own[self.name] = value
        if own == layout.limits:
            return layout
        after = replace(layout, limits=own)
        check(after)
        return after

    def label(self, layout: Layout) -> str:
        """Return "Set a limit to 9 mm: room between two pieces, at least"."""
        known = LIMITS[self.name]
        value = known.value if self.value is None else self.value
        shown = show_limit(value, known.unit, layout.units)
        return f"Set a limit {'back ' if self.value is None else ''}to {shown}: {WORDS[self.name]}"
