"""Fingers on the Wall: one does what a hand does, two push the picture and make it larger or smaller."""

from math import hypot
from typing import Protocol

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QEventPoint, QInputDevice, QTouchEvent

from bayboard.window.gestures.gesture import Gesture
from bayboard.window.workplace import Workplace

PLAIN = Qt.KeyboardModifier.NoModifier
ENDED = QEventPoint.State.Released


class Touched(Protocol):
    """The view that is touched."""

    place: Workplace
    gesture: Gesture | None

    def press(self, at: QPointF, mods: Qt.KeyboardModifier, finger: bool = False) -> None:
        """Begin what a press at a place means."""
        ...

    def let_go(self, at: QPointF, mods: Qt.KeyboardModifier) -> None:
        """End what was begun."""
        ...

    def call_off(self) -> bool:
        """End what was begun without effect."""
        ...


class Fingers:
    """Follows the fingers on one view; a second finger calls off what the first began."""

    def __init__(self, view: Touched) -> None:
        self.view = view
        self._two: tuple[QPointF, float] | None = None  # the middle between two fingers, and how far apart
        self._spent = False  # two fingers were down: nothing begins before all are up

    def take(self, event: QEvent) -> bool:
        """Follow a touch; return whether the event was one.  A pad's own touches are left to the system."""
        if not isinstance(event, QTouchEvent) or event.device().type() == QInputDevice.DeviceType.TouchPad:
            return False
        event.accept()
        points = event.points()
        down = [point.position() for point in points if point.state() != ENDED]
        if event.type() == QEvent.Type.TouchCancel:
            self._end()
            self.view.call_off()
        elif event.type() == QEvent.Type.TouchEnd or not down:
            self._lift(points[0].position())
        elif len(down) >= 2:
            self._by_two(down[0], down[1])
        else:
            self._by_one(down[0], event.type() == QEvent.Type.TouchBegin)
        return True

    def _by_one(self, at: QPointF, begins: bool) -> None:
        self._two = None
        if begins:
            self._end()
            self.view.press(at, PLAIN, finger=True)
        elif self.view.gesture is not None and not self._spent:
            self.view.gesture.move(at, PLAIN)

    def _by_two(self, a: QPointF, b: QPointF) -> None:
        """Keep what lies under the two fingers under them."""
        place, middle, apart = self.view.place, (a + b) / 2, max(hypot(a.x() - b.x(), a.y() - b.y()), 1.0)
        if not self._spent:
            self.view.call_off()
            self._spent = True
        if self._two is not None:
            was, were_apart = self._two
            place.zoom(apart / were_apart, (was.x(), was.y()))
            place.set_scale(place.scale.moved(middle.x() - was.x(), middle.y() - was.y()))
        self._two = (middle, apart)

    def _lift(self, at: QPointF) -> None:
        if not self._spent:
            self.view.let_go(at, PLAIN)
        self._end()

    def _end(self) -> None:
        self._two, self._spent = None, False
