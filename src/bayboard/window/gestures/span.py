"""Picking the two ends of a measure: by two clicks, or by one drag from end to end."""

from PySide6.QtCore import QPointF, Qt

from bayboard.window.ends import End, end_at
from bayboard.window.gestures.gesture import Gesture, Mods
from bayboard.window.snapping import REACH
from bayboard.window.workplace import Workplace


def picked(place: Workplace, at: QPointF) -> End:
    """Return what a pixel of the Wall picks."""
    scale = place.scale
    return end_at(place.scene, scale.mm(at), REACH / scale.px_per_mm, place.spans.from_end())


class Span(Gesture):
    """A press while a measure is asked for."""

    cursor = Qt.CursorShape.CrossCursor

    def __init__(self, place: Workplace, at: QPointF, mods: Mods) -> None:
        super().__init__(place, at, mods)
        self.began = place.spans.from_end() is None  # this press picks the first end
        if self.began:
            place.spans.pick(picked(place, at))

    def click(self) -> None:
        """Pick the second end where the first was there before."""
        if not self.began:
            self._pick_second(self.start)

    def drag(self, at: QPointF, mods: Mods) -> None:
        """Show the measure up to the pointer."""
        self.place.spans.point(picked(self.place, at))

    def drop(self, at: QPointF, mods: Mods) -> None:
        """Pick the second end where the pointer is let go."""
        self._pick_second(at)

    def _pick_second(self, at: QPointF) -> None:
        place = self.place
        place.spans.pick(picked(place, at))
        told = place.spans.sentence(place.scene)
        if told:
            place.said.emit(told)

    def cancel(self) -> None:
        """Pick nothing."""
        self.place.spans.put_away()
