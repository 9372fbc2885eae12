"""The picture pushed about: middle button, Space and drag, or a finger on the bare wall."""

from PySide6.QtCore import QPointF, Qt

from bayboard.window.gestures.gesture import Gesture, Mods


class Pan(Gesture):
    """A drag of everything."""

    cursor = Qt.CursorShape.ClosedHandCursor

    def begin(self) -> None:
        """Remember the scale."""
        self.before = self.place.scale

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Move the picture with the pointer."""
        by = at - self.start
        self.place.set_scale(self.before.moved(by.x(), by.y()))

    def cancel(self) -> None:
        """Put the picture back."""
        if self.dragging:
            self.place.set_scale(self.before)


class FingerPan(Pan):
    """A finger on the bare wall: a drag pushes the picture, a tap unselects."""

    def click(self) -> None:
        """Unselect."""
        self.place.select(())
