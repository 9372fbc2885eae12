"""What is pressed on drill day: the big blue field, the holes that come, buttons a glove can hit."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from bayboard.window.controls import Button, Control
from bayboard.window.drill_day.paint_now import paint_press, paint_then
from bayboard.window.drill_day.show import Now, Then


def _by_keys_only(control: Control) -> None:
    """Leave the keys where they are when a control is pressed by mouse: the space bar stays "Drilled"."""
    control.setFocusPolicy(Qt.FocusPolicy.TabFocus)


class PressField(Control):
    """The big field: pressing it anywhere says what it says."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__("Drilled", parent)
        _by_keys_only(self)
        self.now = Now("", "", "")
        self.unit = 1.0

    def tell(self, now: Now, unit: float) -> None:
        """Hold what is said."""
        self.now, self.unit = now, unit
        self.setAccessibleName(now.press or now.press_small)
        self.setAccessibleDescription(now.press_small)
        self.update()

    def paint(self, p: QPainter) -> None:
        """Paint the field."""
        rect = QRectF(self.rect()).adjusted(6.0, 6.0, -6.0, -6.0)
        paint_press(p, rect, self.now, self.theme, self.unit, self.hasFocus(), self.isDown())


class ThenCard(Control):
    """A hole that comes later; pressing it takes it now."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__("", parent, "Takes this hole now.")
        _by_keys_only(self)
        self.then: Then | None = None
        self.unit = 1.0

    def tell(self, then: Then | None, unit: float) -> None:
        """Hold a hole, None for none."""
        self.then, self.unit = then, unit
        self.setVisible(then is not None)
        if then is not None:
            self.setAccessibleName(f"after this: {then.hole}, {then.drill}, {then.what}")
        self.update()

    def paint(self, p: QPainter) -> None:
        """Paint the card."""
        if self.then is None:
            return
        rect = QRectF(self.rect()).adjusted(4.0, 4.0, -4.0, -4.0)
        paint_then(p, rect, self.then, self.theme, self.unit, self.underMouse())
        self.ring(p, rect, 6.0)


class DayButton(Button):
    """A button that does not keep the keys."""

    def __init__(self, text: str, parent: QWidget, act: bool = False, tip: str = "") -> None:
        super().__init__(text, parent, act, tip)
        _by_keys_only(self)
