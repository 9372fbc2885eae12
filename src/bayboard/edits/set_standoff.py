"""Stand a board nearer to the wall or farther off."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.model.layout import Layout
from bayboard.model.raw import LARGEST_NUMBER
from bayboard.model.refused import Refused
from bayboard.model.rounding import rounded
from bayboard.units.length import show_length


@dataclass(frozen=True, slots=True)
class SetStandoff:
    """Set how far the back of a board stands off the plane the bay was measured from, mm.

    The one edit of a board that carries nothing along: what hangs on it keeps its place on it.
    """

    board: str
    mm: float

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the board there; raise `Refused` beyond what a layout holds."""
        if not abs(self.mm) <= LARGEST_NUMBER:
            raise Refused(f"board {self.board} › standoff", "this is more than 100 m", "Correct the figure")
        if all(board.id != self.board for board in layout.boards):
            raise KeyError(f"there is no board {self.board!r}")
        standoff = rounded(self.mm)
        boards = tuple(
            replace(b, standoff=standoff) if b.id == self.board and b.standoff != standoff else b
            for b in layout.boards
        )
        same = all(new is old for new, old in zip(boards, layout.boards, strict=True))
        return layout if same else replace(layout, boards=boards)

    def label(self, layout: Layout) -> str:
        """Return "Standoff 5/8 in", with several boards "Standoff of BD 5/8 in"."""
        whose = f" of {self.board}" if len(layout.boards) > 1 else ""
        return f"Standoff{whose} {show_length(self.mm, layout.units)}"
