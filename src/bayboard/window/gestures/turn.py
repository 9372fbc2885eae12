"""Stand-ins turned by their grip: one about its own middle, several about the middle of their box."""

from math import atan2, degrees

from PySide6.QtCore import QPointF, Qt

from bayboard.edits.turn_gear import TurnGear
from bayboard.model.layout import Point
from bayboard.window.gestures.gesture import Gesture, Mods
from bayboard.window.gestures.held import ghosts_of, held_back
from bayboard.window.picking import box_round
from bayboard.window.workplace import Hand, Workplace

COARSE = 15.0  # degrees a drag goes by; with Ctrl by FINE
FINE = 1.0


class Turn(Gesture):
    """A drag of the turning grip of all that is selected."""

    cursor = Qt.CursorShape.ClosedHandCursor

    def __init__(self, place: Workplace, at: QPointF, mods: Mods) -> None:
        super().__init__(place, at, mods)
        self.pieces = [place.scene.placed[n] for n in place.selected if n in place.scene.placed]
        self.ids = tuple(piece.id for piece in self.pieces)
        self.ghosts = ghosts_of(self.pieces)
        self.held = ""

    def begin(self) -> None:
        """Take hold, unless one of the pieces is taped down or drilled."""
        self.held = held_back(self.place, self.ids, "turn")
        if self.held:
            self.place.said.emit(self.held)

    def _about(self) -> Point:
        """Return what the pieces turn about."""
        x0, y0, x1, y1 = box_round(self.pieces) or (0.0, 0.0, 0.0, 0.0)
        return self.pieces[0].at if len(self.pieces) == 1 else ((x0 + x1) / 2, (y0 + y1) / 2)

    def _by(self, at: QPointF, mods: Mods) -> float:
        """Return the degrees to turn by: one piece comes to rest on a whole step, several go by steps."""
        middle = self.place.scale.px(*self._about())
        began = atan2(middle.y() - self.start.y(), self.start.x() - middle.x())
        now = atan2(middle.y() - at.y(), at.x() - middle.x())
        step = FINE if mods & Mods.ControlModifier else COARSE
        turn = self.pieces[0].gear.turn if len(self.pieces) == 1 else 0.0
        by = (degrees(now - began) + 180.0) % 360.0 - 180.0
        return round((turn + by) / step) * step - turn

    def _edit(self, at: QPointF, mods: Mods) -> TurnGear:
        about = None if len(self.pieces) == 1 else self._about()
        return TurnGear(self.ids, self._by(at, mods), about)

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Preview the pieces turned, the degrees on a tag."""
        if self.held:
            return
        edit = self._edit(at, mods)
        turn = (self.pieces[0].gear.turn + edit.by) % 360.0 if len(self.pieces) == 1 else edit.by
        self.place.preview(edit, Hand(frozenset(self.ids), self.ghosts, turning=turn))

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Turn them once."""
        if not self.held:
            self.place.settle(self._edit(at, mods))

    def cancel(self) -> None:
        """Leave them as they were."""
        if self.dragging:
            self.place.settle()
