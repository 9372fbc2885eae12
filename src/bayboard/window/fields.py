"""Fields for lengths and angles: what was typed while the keys are there, drawn fractions after."""

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter
from PySide6.QtWidgets import QWidget

from bayboard.model.layout import Units
from bayboard.units.angle import NotAnAngle, read_angle, show_angle
from bayboard.units.length import NotALength, read_length, show_both, show_length, surprise
from bayboard.window import lettering
from bayboard.window.lettering import HELPER, VALUE
from bayboard.window.text_field import TextField


class Field(TextField):
    """A field that tells how it understands what is typed.

    `kept` carries a new value once, with Enter or when the keys leave; `read_anew` says that
    `reading` or `wrong` is another; `left` that the keys want to go back to the Wall.
    """

    lettered = VALUE
    wide = 160  # room for a long fraction
    kept = Signal(float)
    read_anew = Signal()
    left = Signal()

    def __init__(self, name: str, unit: str = "", parent: QWidget | None = None) -> None:
        super().__init__(name, 80, parent)
        self.unit = unit
        self.value: float | None = None
        self.many = 0  # how many different values the selected pieces have, where they are not alike
        self.reading = ""
        self.wrong = ""
        self.textEdited.connect(self._read)

    # --- what a kind of field gives ---

    def parse(self, text: str) -> float:
        """Return the value of a typed text; raise `ValueError` with a sentence."""
        raise TypeError("a field says how it reads")

    def spell(self, value: float) -> str:
        """Return a value as it is typed."""
        raise TypeError("a field says how it writes")

    def tell(self, value: float, text: str) -> str:
        """Return how a value was understood."""
        return ""

    # --- values ---

    def right_margin(self) -> int:
        """Return the room for the unit, px."""
        size = self.theme.size
        return round(lettering.width(self.unit, HELPER.sized(size)) + 18 * size)

    def show_value(self, value: float | None, many: int = 0) -> None:
        """Show a value, or how many there are; what is being typed is left alone."""
        if self.hasFocus() and self.isModified():
            return
        self.value, self.many = value, many
        self._restore()

    def type_in(self, text: str) -> None:
        """Begin to type: the keys go here, what stood here goes."""
        self.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.setText(text)
        self.setModified(True)
        self._read()

    def _restore(self) -> None:
        text = "" if self.value is None else self.spell(self.value)
        self.setText(text)
        self.setModified(False)
        self.wrong = ""
        self.reading = "" if self.value is None else self.tell(self.value, text)
        if self.hasFocus():
            self.selectAll()
        self.read_anew.emit()
        self.update()

    def _read(self) -> None:
        try:
            value = self.parse(self.text())
        except ValueError as error:
            self.reading, self.wrong = "", str(error)
        else:
            self.reading, self.wrong = self.tell(value, self.text()), ""
        self.read_anew.emit()
        self.update()

    def keep(self) -> bool:
        """Keep what was typed; return False, the sentence standing, when it was not understood."""
        if not self.isModified():
            return True
        self._read()
        if self.wrong:
            return False
        value = self.parse(self.text())
        if self.value is None or value != self.value:
            self.value, self.many = value, 0
            self.setModified(False)
            self.kept.emit(value)
        self._restore()
        return True

    # --- keys ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keep with Enter, restore with Escape; both end by going back to the Wall."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.keep():
                self.left.emit()
        elif event.key() == Qt.Key.Key_Escape:
            typed = self.isModified()
            self._restore()
            if not typed:
                self.left.emit()
        elif event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            event.accept()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the value as it is typed, all of it selected."""
        super().focusInEvent(event)
        self.selectAll()
        self.read_anew.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Keep what was typed and understood; anything else goes back to what it was."""
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            if not self.keep():
                self._restore()
            self.deselect()
        super().focusOutEvent(event)
        self.read_anew.emit()

    # --- painting ---

    def shows_text(self) -> bool:
        """Return whether the typed text is shown: while the keys are here."""
        return self.hasFocus()

    def paint_behind(self, p: QPainter, rect: QRectF) -> None:
        """Paint the unit and, while the keys are elsewhere, the value with drawn fractions."""
        theme = self.theme
        room = rect.adjusted(12.0 * theme.size, 0.0, -12.0 * theme.size, 0.0)
        lettering.draw_in(p, room, self.unit, HELPER.sized(theme.size), theme.ink2, "right")
        if not self.hasFocus():
            words = f"{self.many} values" if self.many else self.text()
            lettering.draw_in(p, room, words, VALUE.sized(theme.size), theme.ink, "left")

    def edge(self) -> tuple[str, float]:
        """Return the colour and width of the frame."""
        return (self.theme.must, 2.4) if self.wrong else super().edge()


class LengthField(Field):
    """A length in the units shown; `span` is the longer side of the bay, so that a slip is asked about."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, "mm", parent)
        self.units: Units = "mm"
        self.span = 0.0

    def set_units(self, units: Units, span: float) -> None:
        """Set the units that a bare number means."""
        self.span = span
        if units != self.units:
            self.units, self.unit = units, units
            self.dress(self.theme)
            self._restore()

    def parse(self, text: str) -> float:
        """Return mm."""
        try:
            return read_length(text, self.units)
        except NotALength as error:
            raise ValueError(str(error)) from None

    def spell(self, value: float) -> str:
        """Return the length without its unit, which stands in the field."""
        return show_length(value, self.units).removesuffix(f" {self.units}")

    def tell(self, value: float, text: str) -> str:
        """Return the length in the other unit, in both where more than a figure was typed, or a question."""
        asked = surprise(value, self.span, self.units, text) if text.strip() else None
        if asked:
            return asked
        if text == self.spell(value):
            return f"= {show_length(value, 'mm' if self.units == 'in' else 'in')}"
        return show_both(value)


class AngleField(Field):
    """Degrees, counter-clockwise."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, "R", parent)

    def parse(self, text: str) -> float:
        """Return degrees from 0 up to 360."""
        try:
            return read_angle(text)
        except NotAnAngle as error:
            raise ValueError(str(error)) from None

    def spell(self, value: float) -> str:
        """Return the angle with its sign."""
        return show_angle(value)
