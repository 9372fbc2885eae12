"""Move stand-ins together."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.gear import standing, told, with_gear
from bayboard.model.layout import Gear, Layout
from bayboard.model.placed import board_of
from bayboard.units.length import show_length


@dataclass(frozen=True, slots=True)
class MoveGear:
    """Move the stand-ins by (dx, dy) mm in bay axes; those still on the bench stay there.

    `onto`: (gear, board) for each of them that comes to hang on another board.
    """

    ids: tuple[str, ...]
    dx: float
    dy: float
    onto: tuple[tuple[str, str], ...] = ()

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the stand-ins moved; raise `KeyError` for an unknown board."""
        for _, board in self.onto:
            if board_of(layout, board) is None:
                raise KeyError(f"there is no board {board!r}")
        return with_gear(layout, self.ids, self._moved)

    def _moved(self, gear: Gear) -> Gear:
        if gear.at is None:
            return gear
        moved = standing(gear, (gear.at[0] + self.dx, gear.at[1] + self.dy))
        board = dict(self.onto).get(gear.id)
        return moved if board is None else replace(moved, board=board)

    def label(self, layout: Layout) -> str:
        """Return "Move A2 left 1/8 in", "Move A2 right 12 in onto board B2"."""
        ways = ((self.dx, "right", "left"), (self.dy, "up", "down"))
        parts = [
            f"{way if by > 0 else back} {show_length(abs(by), layout.units)}" for by, way, back in ways if by
        ]
        boards = dict.fromkeys(board for _, board in self.onto)
        onto = [f"onto board {' and '.join(boards)}"] if boards else []
        way = [", ".join(parts)] if parts else []
        return " ".join((f"Move {told(self.ids)}", *(way + onto or ["nowhere"])))

    def followed_by(self, after: "MoveGear") -> "MoveGear":
        """Return the one move that both make together."""
        onto = tuple((dict(self.onto) | dict(after.onto)).items())
        return MoveGear(self.ids, self.dx + after.dx, self.dy + after.dy, onto)
