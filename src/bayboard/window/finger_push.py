"""One finger on a list: it pushes the list up and down; a tap is a click, resting asks for the menu."""

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, QTimer
from PySide6.QtGui import QContextMenuEvent, QInputDevice, QMouseEvent, QTouchEvent
from PySide6.QtWidgets import QApplication, QScrollArea, QWidget

from bayboard.window.gestures.gesture import HOLD

PUSH = 10.0  # px a finger goes before it pushes
LEFT, NONE = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
PLAIN = Qt.KeyboardModifier.NoModifier


class FingerPush(QObject):
    """Follows the finger on one scroll area, which hands its touches to `take`."""

    def __init__(self, area: QScrollArea) -> None:
        super().__init__(area)
        self.area = area
        self._from: QPointF | None = None  # where the finger came down, on the screen; None when it is spent
        self._value = 0  # how far the list was pushed then
        self._pushed = False
        self._hold = QTimer(self)
        self._hold.setSingleShot(True)
        self._hold.setInterval(HOLD)
        self._hold.timeout.connect(self._rest)
        area.viewport().setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)

    def take(self, event: QEvent) -> bool:
        """Follow a touch; return whether the event was one.  A pad's own touches are left to the system."""
        if not isinstance(event, QTouchEvent) or event.device().type() == QInputDevice.DeviceType.TouchPad:
            return False
        event.accept()
        at = event.points()[0].globalPosition()
        if event.type() == QEvent.Type.TouchBegin:
            self._from, self._value, self._pushed = at, self.area.verticalScrollBar().value(), False
            self._hold.start()
        elif event.type() == QEvent.Type.TouchUpdate:
            self._move(at)
        else:
            self._lift(tapped=event.type() == QEvent.Type.TouchEnd)
        return True

    def _move(self, at: QPointF) -> None:
        if self._from is None:
            return
        far = self._from.y() - at.y()
        if abs(far) > PUSH:
            self._pushed = True
            self._hold.stop()
        if self._pushed:
            self.area.verticalScrollBar().setValue(self._value + round(far))

    def _lift(self, tapped: bool) -> None:
        at, self._from = self._from, None
        self._hold.stop()
        if at is not None and tapped and not self._pushed:
            self._click(at)

    def _click(self, at: QPointF) -> None:
        """Click where the finger came down, as a mouse would."""
        part = self._under(at)
        if part.focusPolicy() & Qt.FocusPolicy.ClickFocus:
            part.setFocus(Qt.FocusReason.MouseFocusReason)
        for kind, held in ((QEvent.Type.MouseButtonPress, LEFT), (QEvent.Type.MouseButtonRelease, NONE)):
            QApplication.sendEvent(part, QMouseEvent(kind, part.mapFromGlobal(at), at, LEFT, held, PLAIN))

    def _rest(self) -> None:
        """Ask for the menu where the finger rests; lifting it does nothing more."""
        at, self._from = self._from, None
        if at is not None:
            part, reason = self._under(at), QContextMenuEvent.Reason.Other
            there = part.mapFromGlobal(at).toPoint()
            QApplication.sendEvent(part, QContextMenuEvent(reason, there, at.toPoint()))

    def _under(self, at: QPointF) -> QWidget:
        room = self.area.viewport()
        return room.childAt(room.mapFromGlobal(at).toPoint()) or room
