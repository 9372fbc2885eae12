"""A stand-in picked up from the ledge and hung on the wall, in one press, move and release."""

from PySide6.QtCore import QPointF, Qt

from bayboard.edits.place_gear import PlaceGear
from bayboard.model.layout import Point
from bayboard.model.placed import Placed
from bayboard.window.draw.show import Ghost, Snap
from bayboard.window.gestures.gesture import Gesture, Mods, free_of_snap
from bayboard.window.snapping import REACH, levels, snapped
from bayboard.window.spots import board_at, standing
from bayboard.window.steps import rested
from bayboard.window.workplace import Hand, Workplace


class PickUp(Gesture):
    """A drag that starts on the ledge; its points are pixels of the Wall all the same.

    `grip` is where the piece was gripped, mm from its own middle.
    """

    cursor = Qt.CursorShape.ClosedHandCursor

    def __init__(self, place: Workplace, at: QPointF, mods: Mods, piece: str, grip: Point) -> None:
        super().__init__(place, at, mods)
        self.piece = piece
        self.grip = grip
        self.over: QPointF | None = None  # the pointer while the piece is in the hand, off the Wall

    def click(self) -> None:
        """Select the piece where it stands on the ledge."""
        self.place.select((self.piece,))

    def begin(self) -> None:
        """Take the piece in the hand."""
        self.place.select((self.piece,))
        self.lines = levels(self.place.scene, frozenset((self.piece,)))

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Preview the piece on the board under the pointer, or show it in the hand."""
        place = self.place
        place.job.drop_preview()
        if not place.wall_rect.contains(at):
            self.over = at
            place.show_hand(Hand(pieces=frozenset((self.piece,))))
            return
        self.over = None
        spot, snaps = self._spot(at, mods)
        board = board_at(place.scene, self.piece, spot)
        hand = Hand(frozenset((self.piece,)), (self._pressed(spot),), snaps)
        place.preview(PlaceGear(self.piece, spot, board=board), hand)

    def _piece(self, spot: Point) -> Placed | None:
        return standing(self.place.shown, self.piece, spot)

    def _pressed(self, spot: Point) -> Ghost:
        """Return the place under the piece, pressed into the board as chalk."""
        piece = self._piece(spot)
        return Ghost(() if piece is None else tuple((float(x), float(y)) for x, y in piece.ring))

    def _spot(self, at: QPointF, mods: Mods) -> tuple[Point, tuple[Snap, ...]]:
        place = self.place
        x, y = place.scale.mm(at)
        spot = (x - self.grip[0], y - self.grip[1])
        piece = self._piece(spot)
        if piece is None or free_of_snap(mods):
            return spot, ()
        dx, dy = rested(piece.board, place.units, spot, (0.0, 0.0))
        x0, y0, x1, y1 = piece.box
        box = (x0 + dx, y0 + dy, x1 + dx, y1 + dy)
        to_x, to_y, snaps = snapped(box, self.lines, REACH / place.scale.px_per_mm)
        return (spot[0] + dx + to_x, spot[1] + dy + to_y), snaps

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Hang it where it is let go, or leave it on the ledge when that is off the Wall."""
        place = self.place
        if not place.wall_rect.contains(at):
            self.cancel()
            return
        spot, _ = self._spot(at, mods)
        board = board_at(place.scene, self.piece, spot)
        place.settle(PlaceGear(self.piece, spot, board=board))
        place.select((self.piece,))

    def cancel(self) -> None:
        """Leave it on the ledge."""
        self.over = None
        self.place.settle()
