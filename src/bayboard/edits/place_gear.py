"""Put a stand-in at a place."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.gear import gear_named, standing, whole_turn, with_gear
from bayboard.model.layout import Gear, Layout, Point
from bayboard.model.placed import board_of


@dataclass(frozen=True, slots=True)
class PlaceGear:
    """Put a stand-in at `at` (bay axes, mm), turned by `turn` degrees; from the bench or from elsewhere.

    `turn` None keeps its turn, `board` None its board.
    """

    id: str
    at: Point
    turn: float | None = None
    board: str | None = None

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the stand-in there; raise `KeyError` for an unknown board."""
        if self.board is not None and board_of(layout, self.board) is None:
            raise KeyError(f"there is no board {self.board!r}")
        return with_gear(layout, (self.id,), self._put)

    def _put(self, gear: Gear) -> Gear:
        turn = gear.turn if self.turn is None else whole_turn(self.turn)
        board = gear.board if self.board is None else self.board
        return replace(standing(gear, self.at), turn=turn, board=board)

    def label(self, layout: Layout) -> str:
        """Return "Place A2", or "Move A2" when it already has a place."""
        return f"{'Place' if gear_named(layout, self.id).at is None else 'Move'} {self.id}"
