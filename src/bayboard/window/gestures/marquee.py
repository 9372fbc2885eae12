"""A box drawn from the bare wall: whatever it touches is selected."""

from PySide6.QtCore import QPointF

from bayboard.window.gestures.gesture import ADDING, Gesture, Mods
from bayboard.window.picking import Box, touched
from bayboard.window.workplace import Hand


class Marquee(Gesture):
    """A press on the bare wall: a click unselects, a drag gathers what the box touches."""

    def _box(self, at: QPointF) -> Box:
        ax, ay = self.place.scale.mm(self.start)
        bx, by = self.place.scale.mm(at)
        return min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)

    def click(self) -> None:
        """Unselect, unless pieces are being added."""
        if not self.mods & ADDING:
            self.place.select(())

    def begin(self) -> None:
        """Remember what was selected."""
        self.before = self.place.selected if self.mods & ADDING else ()

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Show the box and ring what it touches."""
        box = self._box(at)
        found = touched(self.place.scene, box)
        wanted = tuple(dict.fromkeys((*self.before, *found)))
        if wanted != self.place.selected:
            self.place.select(wanted)
        self.place.show_hand(Hand(marquee=box))

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Keep what is ringed."""
        self.place.settle()

    def cancel(self) -> None:
        """Ring what was ringed before."""
        if self.dragging:
            self.place.select(self.before)
            self.place.settle()
