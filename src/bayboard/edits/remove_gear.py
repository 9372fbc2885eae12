"""Take a piece of gear out of the layout."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.gear import gear_named
from bayboard.model.layout import Layout, LetBe


@dataclass(frozen=True, slots=True)
class RemoveGear:
    """Take a piece of gear out, with its leads, its drilled screws and what was let be about them."""

    id: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout without the gear."""
        gear_named(layout, self.id)
        gone = {self.id} | {lead.id for lead in layout.leads if self._ends(lead.from_, lead.to)}
        return replace(
            layout,
            gear=tuple(gear for gear in layout.gear if gear.id != self.id),
            leads=tuple(lead for lead in layout.leads if lead.id not in gone),
            drilled_holes={
                hole: at for hole, at in layout.drilled_holes.items() if hole.partition("#")[0] != self.id
            },
            let_be=tuple(entry for entry in layout.let_be if not _about(entry, gone)),
        )

    def _ends(self, *names: str) -> bool:
        return any(name.startswith(f"{self.id}.") for name in names)

    def label(self, _layout: Layout) -> str:
        """Return "Remove A2"."""
        return f"Remove {self.id}"


def _about(entry: LetBe, gone: set[str]) -> bool:
    return any(subject.partition(".")[0].partition("#")[0] in gone for subject in entry.subjects)
