"""Make an old revision the draft: the one edit that puts a whole layout in place of another."""

from dataclasses import dataclass

from bayboard.model.layout import Layout


@dataclass(frozen=True, slots=True)
class GoBack:
    """Take `layout`, a revision with what was printed and drilled since carried over, for the draft."""

    number: int
    layout: Layout

    def apply(self, layout: Layout) -> Layout:
        """Return the old layout; the draft itself where it is the same."""
        return layout if layout == self.layout else self.layout

    def label(self, _layout: Layout) -> str:
        """Return "Go back to revision 4"."""
        return f"Go back to revision {self.number}"
