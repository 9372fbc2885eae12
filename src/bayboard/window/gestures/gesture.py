"""What every mouse gesture is: it starts with a press and ends once, released or called off."""

from math import hypot

from PySide6.QtCore import QPointF, Qt

from bayboard.window.workplace import Workplace

FAR = 4.0  # px; less than this is a click that trembled
HOLD = 450  # ms a finger rests before the menu opens
Mods = Qt.KeyboardModifier
ADDING = Mods.ShiftModifier | Mods.ControlModifier


class Gesture:
    """A press in the Wall that may become a drag.  Points are pixels of the Wall."""

    cursor: Qt.CursorShape | None = None

    def __init__(self, place: Workplace, at: QPointF, mods: Mods) -> None:
        self.place = place
        self.start = at
        self.mods = mods
        self.dragging = False

    def move(self, at: QPointF, mods: Mods) -> None:
        """Follow the pointer; the drag begins once it has gone `FAR`."""
        if not self.dragging and hypot(at.x() - self.start.x(), at.y() - self.start.y()) >= FAR:
            self.dragging = True
            self.begin()
        if self.dragging:
            self.drag(at, mods)

    def release(self, at: QPointF, mods: Mods) -> None:
        """End it: a drag is done, a click is a click."""
        if self.dragging:
            self.drop(at, mods)
        else:
            self.click()

    def begin(self) -> None:
        """Do what starts a drag."""

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Show where the pointer has come to."""

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Keep what the drag did."""

    def click(self) -> None:
        """Do what a press without a drag means."""

    def cancel(self) -> None:
        """Leave everything as it was before the press."""


def free_of_snap(mods: Mods) -> bool:
    """Return whether a drag is free of snap: Ctrl, or Alt where the desktop lets it through."""
    return bool(mods & (Mods.ControlModifier | Mods.AltModifier))
