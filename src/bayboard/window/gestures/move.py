"""Stand-ins moved by the mouse: a preview while the button is down, one edit when it is let go."""

from PySide6.QtCore import QPointF, Qt

from bayboard.edits.move_gear import MoveGear
from bayboard.edits.to_bench import ToBench
from bayboard.window.draw.show import Ghost, Snap
from bayboard.window.gestures.gesture import ADDING, Gesture, Mods, free_of_snap
from bayboard.window.made import why_not
from bayboard.window.picking import box_round, pieces_at, under
from bayboard.window.snapping import REACH, levels, snapped
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
        if piece not in self.before and not mods & ADDING:
            place.select((piece,))

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
        taped = [name for name in self.ids if place.scene.placed[name].gear.taped]
        held = f"{taped[0]} is taped down. Press T to lift the tape, then move it." if taped else ""
        held = held or why_not(place.layout, self.ids)
        if held:
            place.said.emit(held)
            self.ids = ()
            return
        placed = [place.scene.placed[name] for name in self.ids]
        self.box = box_round(placed) or (0.0, 0.0, 0.0, 0.0)
        self.middle = place.scene.placed[self.piece].at
        self.board = place.scene.placed[self.piece].board
        self.lines = levels(place.scene, frozenset(self.ids))
        self.ghosts = tuple(Ghost(tuple((float(x), float(y)) for x, y in p.ring)) for p in placed)

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Preview the pieces where the hand is, level with a neighbour when near to it."""
        if not self.ids:
            return
        place = self.place
        if place.ledge_rect.contains(at):
            place.preview(ToBench(self.ids), Hand(frozenset(self.ids), self.ghosts))
            return
        dx, dy, snaps = self._way(at, mods)
        place.preview(MoveGear(self.ids, dx, dy), Hand(frozenset(self.ids), self.ghosts, snaps))

    def _way(self, at: QPointF, mods: Mods) -> tuple[float, float, tuple[Snap, ...]]:
        """Return how far the pieces go, and the lines they are level with."""
        k = self.place.scale.px_per_mm
        dx, dy = (at.x() - self.start.x()) / k, (self.start.y() - at.y()) / k
        if free_of_snap(mods):
            return dx, dy, ()
        dx, dy = rested(self.board, self.place.units, self.middle, (dx, dy))
        x0, y0, x1, y1 = self.box
        to_x, to_y, snaps = snapped((x0 + dx, y0 + dy, x1 + dx, y1 + dy), self.lines, REACH / k)
        return dx + to_x, dy + to_y, snaps

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Move them once, or put them back on the bench when let go over it."""
        if not self.ids:
            return
        if self.place.ledge_rect.contains(at):
            self.place.settle(ToBench(self.ids))
            self.place.select(())
            return
        dx, dy, _ = self._way(at, mods)
        self.place.settle(MoveGear(self.ids, dx, dy))
        self.place.select(self.ids)

    def cancel(self) -> None:
        """Leave the pieces where they were."""
        if self.dragging:
            self.place.settle()
