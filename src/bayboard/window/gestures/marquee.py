"""A box drawn from the bare wall: whatever it touches is selected."""

from collections.abc import Callable

from PySide6.QtCore import QPointF

from bayboard.window.gestures.gesture import ADDING, Gesture, Mods
from bayboard.window.picking import Box, touched
from bayboard.window.workplace import Hand, Workplace

SEEN = 14.0  # px each side of a finger that has rested: the box that it may draw larger


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


class HeldMarquee(Marquee):
    """A finger that has rested on the bare wall: a drag draws the box, lifted it asks for the menu."""

    def __init__(self, place: Workplace, at: QPointF, mods: Mods, tapped: Callable[[QPointF], None]) -> None:
        super().__init__(place, at, mods)
        self.tapped = tapped
        off = QPointF(SEEN, SEEN)
        (x0, y1), (x1, y0) = place.scale.mm(at - off), place.scale.mm(at + off)
        place.show_hand(Hand(marquee=(x0, y0, x1, y1)))

    def click(self) -> None:
        """Ask for the menu."""
        self.place.settle()
        self.tapped(self.start)

    def cancel(self) -> None:
        """Take the box off."""
        super().cancel()
        self.place.settle()
