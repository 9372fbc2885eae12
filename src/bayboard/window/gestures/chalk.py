"""The blue chalk line drawn along the wall: the Section is cut where it stands."""

from PySide6.QtCore import QPointF, Qt

from bayboard.window.gestures.gesture import Gesture, Mods


class Chalk(Gesture):
    """A drag of the chalk line, or a press on the tape below that brings it there."""

    cursor = Qt.CursorShape.SizeHorCursor

    def begin(self) -> None:
        """Remember where the line was, and where it was gripped."""
        self.before = self.place.chalk_x
        line = self.place.scale.px(self.before or 0.0, 0.0).x()
        self.grip = self.start.x() - line if self.before is not None else 0.0

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Draw the line where the pointer is."""
        x, _ = self.place.scale.mm(QPointF(at.x() - self.grip, at.y()))
        self.place.set_chalk(x)

    def cancel(self) -> None:
        """Draw the line where it was."""
        if self.dragging and self.before is not None:
            self.place.set_chalk(self.before)
