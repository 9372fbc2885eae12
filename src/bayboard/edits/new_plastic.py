"""Start a board anew from fresh plastic."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.model.layout import Layout
from bayboard.model.placed import board_of
from bayboard.model.places import label
from bayboard.model.refused import Refused


@dataclass(frozen=True, slots=True)
class NewPlastic:
    """The board was spoiled: forget what was drilled in it.  The sheet metal stays as it was drilled."""

    board: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with nothing drilled in that board; raise `Refused` for an unknown board."""
        if board_of(layout, self.board) is None:
            raise Refused(f"board {label(self.board)}", "there is no such board", "Name one of the boards")
        bare = {gear.id for gear in layout.gear if self._on(layout, gear.board)}
        gear = tuple(
            replace(g, drilled=None) if g.id in bare and g.drilled is not None else g for g in layout.gear
        )
        fixings = tuple(
            replace(f, drilled=None) if f.drilled is not None and self._on(layout, f.board) else f
            for f in layout.fixings
        )
        holes = {h: at for h, at in layout.drilled_holes.items() if h.partition("#")[0] not in bare}
        members = {"gear": gear, "fixings": fixings, "drilled_holes": holes}
        differ = {name: item for name, item in members.items() if getattr(layout, name) != item}
        return replace(layout, **differ) if differ else layout

    def _on(self, layout: Layout, board: str | None) -> bool:
        there = board_of(layout, board)
        return there is not None and there.id == self.board

    def label(self, _layout: Layout) -> str:
        """Return "New plastic for board B"."""
        return f"New plastic for board {self.board}"
