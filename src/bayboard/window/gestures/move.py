"""Stand-ins moved by the mouse: a preview while the button is down, one edit when it is let go."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, Qt

from bayboard.edits.move_gear import MoveGear
from bayboard.edits.to_bench import ToBench
from bayboard.model.layout import Point
from bayboard.window.draw.show import Snap
from bayboard.window.gestures.gesture import ADDING, Gesture, Mods, free_of_snap
from bayboard.window.gestures.held import ghosts_of, held_back
from bayboard.window.picking import box_round, pieces_at, under
from bayboard.window.snapping import REACH, levels, snapped
from bayboard.window.spots import boards_after
from bayboard.window.steps import rested
from bayboard.window.workplace import Hand, Workplace


class Move(Gesture):
    """A press on a stand-in: a click selects, a drag moves all that is selected."""

    cursor = Qt.CursorShape.ClosedHandCursor

    def __init__(self, place: Workplace, at: QPointF, mods: Mods, piece: str) -> None:
        super().__init__(place, at, mods)
        self.piece = piece
        self.before = place.selected
        self.ids: tuple[str, ...] = ()
        self.press()

    def press(self) -> None:
        """Select what is pressed at once."""
        if self.piece not in self.before and not self.mods & ADDING:
            self.place.select((self.piece,))

    def click(self) -> None:
        """Select: with Shift or Ctrl one more or one less, on the same spot again what lies under."""
        place = self.place
        if self.mods & ADDING:
            rest = tuple(name for name in self.before if name != self.piece)
            place.select(rest if self.piece in self.before else (*self.before, self.piece))
        elif self.piece in self.before:
            found = pieces_at(place.scene, place.scale.mm(self.start))
            name = under(found, self.before) if len(self.before) == 1 else self.piece
            place.select((name or self.piece,))

    def begin(self) -> None:
        """Take the selected pieces in the hand, unless one of them is taped down or drilled."""
        place = self.place
        if self.piece not in place.selected:
            place.select((*place.selected, self.piece))
        self.ids = tuple(name for name in place.selected if name in place.scene.placed)
        held = held_back(place, self.ids, "move")
        if held:
            place.said.emit(held)
            self.ids = ()
            return
        self.scene = place.scene
        placed = [self.scene.placed[name] for name in self.ids]
        self.box = box_round(placed) or (0.0, 0.0, 0.0, 0.0)
        self.gripped = self.scene.placed[self.piece]
        self.lines = levels(self.scene, frozenset(self.ids))
        self.ghosts = ghosts_of(placed)

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Preview the pieces where the hand is, level with a neighbour when near to it."""
        if not self.ids:
            return
        place, pieces = self.place, frozenset(self.ids)
        if place.ledge_rect.contains(at):
            place.preview(ToBench(self.ids), Hand(pieces, self.ghosts, air=self._in_air(at)))
            return
        edit, snaps, pulled = self._moved(at, mods)
        place.preview(edit, Hand(pieces, self.ghosts, snaps, pulled=pulled))

    def _in_air(self, at: QPointF) -> tuple[tuple[str, float, float], ...]:
        """Return the pieces with the pixels where they are under the hand."""
        by = at - self.start
        spots = ((name, self.place.scale.px(*self.scene.placed[name].at) + by) for name in self.ids)
        return tuple((name, spot.x(), spot.y()) for name, spot in spots)

    def _moved(self, at: QPointF, mods: Mods) -> tuple[MoveGear, tuple[Snap, ...], Point]:
        """Return the move to where the hand is, the lines the pieces are level with, and how far those pull.

        A piece whose middle comes over another board goes onto that one.
        """
        k, units = self.place.scale.px_per_mm, self.place.units
        dx, dy = (at.x() - self.start.x()) / k, (self.start.y() - at.y()) / k
        if free_of_snap(mods):
            return self._edit(dx, dy), (), (0.0, 0.0)
        boards = dict(boards_after(self.scene, (self.piece,), dx, dy))
        there = boards.get(self.piece, self.gripped.board.id)
        dx, dy = rested(self.scene.boards[there].board, units, self.gripped.at, (dx, dy))
        x0, y0, x1, y1 = self.box
        to_x, to_y, snaps = snapped((x0 + dx, y0 + dy, x1 + dx, y1 + dy), self.lines, REACH / k)
        return self._edit(dx + to_x, dy + to_y), snaps, (to_x, to_y)

    def _edit(self, dx: float, dy: float) -> MoveGear:
        return MoveGear(self.ids, dx, dy, boards_after(self.scene, self.ids, dx, dy))

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Move them once, or put them back on the bench when let go over it."""
        if not self.ids:
            return
        if self.place.ledge_rect.contains(at):
            self.place.settle(ToBench(self.ids))
            self.place.select(())
            return
        edit, _, _ = self._moved(at, mods)
        self.place.settle(edit)
        self.place.select(self.ids)

    def cancel(self) -> None:
        """Leave the pieces where they were."""
        if self.dragging:
            self.place.settle()


class MarkMove(Move):
    """A press on a finding's mark that lies on a stand-in: a click asks for the finding, a drag moves."""

    def __init__(
        self, place: Workplace, at: QPointF, mods: Mods, piece: str, ask: Callable[[], None]
    ) -> None:
        super().__init__(place, at, mods, piece)
        self.ask = ask

    def press(self) -> None:
        """Select nothing before it is known what is meant."""

    def click(self) -> None:
        """Ask for the finding."""
        self.ask()

    def begin(self) -> None:
        """Select the stand-in below the mark and take it in the hand."""
        super().press()
        super().begin()
