"""Several edits as one step."""

from dataclasses import dataclass

from bayboard.edits.edit import Edit
from bayboard.model.layout import Layout


@dataclass(frozen=True, slots=True)
class Several:
    """Edits made one after the other and taken back together; `words` is the label."""

    edits: tuple[Edit, ...]
    words: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout after the last of them."""
        for edit in self.edits:
            layout = edit.apply(layout)
        return layout

    def label(self, _layout: Layout) -> str:
        """Return the words given."""
        return self.words
