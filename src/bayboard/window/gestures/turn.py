"""A stand-in turned by its clipped corner."""

from math import atan2, degrees

from PySide6.QtCore import QPointF, Qt

from bayboard.edits.turn_gear import TurnGear
from bayboard.window.draw.show import Ghost
from bayboard.window.gestures.gesture import Gesture, Mods
from bayboard.window.made import why_not
from bayboard.window.workplace import Hand, Workplace

COARSE = 15.0  # degrees a drag goes by; with Ctrl by FINE
FINE = 1.0


class Turn(Gesture):
    """A drag of the turning grip, about the piece's own middle."""

    cursor = Qt.CursorShape.ClosedHandCursor

    def __init__(self, place: Workplace, at: QPointF, mods: Mods, piece: str) -> None:
        super().__init__(place, at, mods)
        self.placed = place.scene.placed[piece]

    def _by(self, at: QPointF, mods: Mods) -> float:
        middle = self.place.scale.px(*self.placed.at)
        began = atan2(middle.y() - self.start.y(), self.start.x() - middle.x())
        now = atan2(middle.y() - at.y(), at.x() - middle.x())
        step = FINE if mods & Mods.ControlModifier else COARSE
        turn = self.placed.gear.turn
        by = (degrees(now - began) + 180.0) % 360.0 - 180.0
        return round((turn + by) / step) * step - turn

    def _held(self) -> str:
        """Return why the piece does not turn by hand, "" when it does."""
        gear = self.placed.gear
        if gear.taped:
            return f"{gear.id} is taped down. Press T to lift the tape, then turn it."
        return why_not(self.place.layout, (gear.id,))

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Preview the piece turned, its degrees beside the arc."""
        gear, place = self.placed.gear, self.place
        held = self._held()
        if held:
            place.said.emit(held)
            return
        by = self._by(at, mods)
        ghost = Ghost(tuple((float(x), float(y)) for x, y in self.placed.ring))
        hand = Hand(frozenset((gear.id,)), (ghost,), turning=(gear.turn + by) % 360.0)
        place.preview(TurnGear((gear.id,), by), hand)

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Turn it once."""
        if not self._held():
            self.place.settle(TurnGear((self.placed.id,), self._by(at, mods)))

    def cancel(self) -> None:
        """Leave it as it was."""
        if self.dragging:
            self.place.settle()
