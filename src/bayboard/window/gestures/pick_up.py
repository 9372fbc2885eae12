"""A stand-in picked up from the ledge and hung on the wall, in one press, move and release."""

from PySide6.QtCore import QPointF, Qt

from bayboard.edits.place_gear import PlaceGear
from bayboard.model.layout import Point
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
        self.on_wall = False  # the piece is shown on the Wall, not in the air

    def click(self) -> None:
        """Select the piece where it stands on the ledge."""
        self.place.select((self.piece,))

    def begin(self) -> None:
        """Take the piece in the hand."""
        place = self.place
        place.select((self.piece,))
        self.scene = place.scene
        self.placed = standing(place.layout, self.piece, (0.0, 0.0))
        self.lines = levels(self.scene, frozenset((self.piece,)))

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Preview the piece on the board under the pointer, or show it in the hand."""
        place = self.place
        if not place.wall_rect.contains(at):
            if self.on_wall:
                place.job.drop_preview()
            self.on_wall = False
            k = place.scale.px_per_mm
            air = (self.piece, at.x() - self.grip[0] * k, at.y() + self.grip[1] * k)
            place.show_hand(Hand(frozenset((self.piece,)), air=(air,)))
            return
        self.on_wall = True
        spot, snaps, pulled = self._spot(at, mods)
        board = board_at(self.scene, self.piece, spot)
        hand = Hand(frozenset((self.piece,)), (self._pressed(spot),), snaps, pulled=pulled)
        place.preview(PlaceGear(self.piece, spot, board=board), hand)

    def _pressed(self, spot: Point) -> Ghost:
        """Return the place under the piece, pressed into the board as chalk."""
        ring = () if self.placed is None else self.placed.ring
        return Ghost(tuple((float(x) + spot[0], float(y) + spot[1]) for x, y in ring), self.piece)

    def _spot(self, at: QPointF, mods: Mods) -> tuple[Point, tuple[Snap, ...], Point]:
        """Return where the piece's origin comes to stand, what it is level with, and how far that pulls."""
        place, piece = self.place, self.placed
        x, y = place.scale.mm(at)
        spot = (x - self.grip[0], y - self.grip[1])
        if piece is None or free_of_snap(mods):
            return spot, (), (0.0, 0.0)
        there = board_at(self.scene, self.piece, spot) or piece.board.id
        dx, dy = rested(self.scene.boards[there].board, place.units, spot, (0.0, 0.0))
        spot = spot[0] + dx, spot[1] + dy
        x0, y0, x1, y1 = piece.box
        box = (x0 + spot[0], y0 + spot[1], x1 + spot[0], y1 + spot[1])
        to_x, to_y, snaps = snapped(box, self.lines, REACH / place.scale.px_per_mm)
        return (spot[0] + to_x, spot[1] + to_y), snaps, (to_x, to_y)

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Hang it where it is let go, or leave it on the ledge when that is off the Wall."""
        place = self.place
        if not place.wall_rect.contains(at):
            self.cancel()
            return
        spot, _, _ = self._spot(at, mods)
        board = board_at(self.scene, self.piece, spot)
        place.settle(PlaceGear(self.piece, spot, board=board))
        place.select((self.piece,))

    def cancel(self) -> None:
        """Leave it on the ledge."""
        self.place.settle()
