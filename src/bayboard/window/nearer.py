"""Coming nearer to what lies on the Wall: with the wheel, a pad, or two fingers."""

from typing import Protocol

from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QNativeGestureEvent, QWheelEvent
from PySide6.QtWidgets import QPinchGesture

from bayboard.window.workplace import Workplace

ZOOM = 1.0015  # a notch of the wheel is 120 of these


def by_wheel(place: Workplace, event: QWheelEvent) -> None:
    """Zoom at the pointer; two fingers on a pad push the picture."""
    on_pad = not event.pixelDelta().isNull() and event.phase() != Qt.ScrollPhase.NoScrollPhase
    if on_pad and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
        by = event.pixelDelta()
        place.set_scale(place.scale.moved(by.x(), by.y()))
    else:
        at = event.position()
        place.zoom(ZOOM ** event.angleDelta().y(), (at.x(), at.y()))
    event.accept()


class View(Protocol):
    """A widget that shows the workplace; Qt sends it events before its `place` is set."""

    place: Workplace

    def mapFromGlobal(self, at: QPoint, /) -> QPoint:
        """Return a point of the screen in the widget."""
        ...


def by_fingers(view: View, event: QEvent) -> bool:
    """Zoom with two fingers on a screen or a pad; return whether the event was that."""
    if event.type() == QEvent.Type.Gesture:
        pinch = event.gesture(Qt.GestureType.PinchGesture)
        if isinstance(pinch, QPinchGesture):
            at = view.mapFromGlobal(pinch.centerPoint().toPoint())
            view.place.zoom(pinch.scaleFactor(), (at.x(), at.y()))
            return True
    zoom = Qt.NativeGestureType.ZoomNativeGesture
    if isinstance(event, QNativeGestureEvent) and event.gestureType() == zoom:
        at = event.position()
        view.place.zoom(1.0 + event.value(), (at.x(), at.y()))
        return True
    return False
