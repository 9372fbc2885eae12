"""One limit on the page: its name, a field with its value, and how to have the usual one again."""

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter
from PySide6.QtWidgets import QWidget

from bayboard.edits.set_limit import SetLimit
from bayboard.model.layout import Units
from bayboard.model.limit_words import read_limit, show_limit, typed_in, unit_words
from bayboard.rules.pages import Told
from bayboard.units.length import show_length
from bayboard.window import lettering
from bayboard.window.controls import Link
from bayboard.window.fields import Field
from bayboard.window.lettering import BODY, HELPER
from bayboard.window.theme import Theme
from bayboard.window.workplace import Workplace

FIELD = 132  # px; room for a fraction and its unit
ROW, NOTE = 44.0, 19.0  # px of the line with the field, and of each line below it
COUNTED = {  # what the bare figure of a field is a count or share of
    "x OD": "Times the lead's thickness.",
    "x d": "Times the thread's diameter.",
    "x drill": "Times the width of the drill.",
    "share": "1 is all of it.",
}


class LimitField(Field):
    """The value of one limit, in the units shown."""

    wide = FIELD

    def __init__(self, told: Told, units: Units, parent: QWidget) -> None:
        self.typed = typed_in(told.usual, told.unit, units)
        bare = told.unit == "eyes" or told.unit in COUNTED
        super().__init__(told.words, "" if bare else unit_words(told.unit, self.typed), parent)
        self.told = told
        self.units = units
        self.setAccessibleDescription(show_limit(told.value, told.unit, units))

    def parse(self, text: str) -> float:
        """Return the value, mm for a length."""
        return read_limit(text, self.told.name, self.typed)

    def spell(self, value: float) -> str:
        """Return the value without its unit, which stands in the field."""
        shown = show_limit(value, self.told.unit, self.typed)
        unit = unit_words(self.told.unit, self.typed)
        return shown.split(" ×")[0].removesuffix("°").removesuffix(f" {unit}")

    def tell(self, value: float, text: str) -> str:
        """Return a length in the other unit."""
        if self.told.unit != "mm":
            return ""
        return f"= {show_length(value, 'mm' if self.typed == 'in' else 'in')}"

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keep with Enter and stay; Escape restores, and leaves the page when nothing was typed."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.keep()
        else:
            super().keyPressEvent(event)


class LimitLine(QWidget):
    """The line.  A limit that no layout may change has no field."""

    left = Signal()

    def __init__(self, place: Workplace, told: Told, parent: QWidget) -> None:
        super().__init__(parent)
        self.place = place
        self.told = told
        self.field = None if told.fixed else LimitField(told, place.units, self)
        usual = show_limit(told.usual, told.unit, place.units)
        self.back = Link(f"back to {usual}", self, "Judges by the usual figure again")
        if self.field is not None:
            self.field.kept.connect(self._keep)
            self.field.read_anew.connect(self.update)
            self.field.left.connect(self.left)
        self.back.clicked.connect(self._usual)
        self.take(told)

    def take(self, told: Told) -> None:
        """Show the limit as it is now."""
        self.told = told
        if self.field is not None:
            self.field.show_value(told.value)
        self.back.setVisible(told.own)
        self.update()

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.back.dress(theme)
        if self.field is not None:
            self.field.dress(theme)

    def stops(self) -> list[QWidget]:
        """Return what Tab stops at."""
        return [part for part in (self.field, self.back) if part is not None]

    def says(self) -> str:
        """Return the line for a screen reader."""
        shown = show_limit(self.told.value, self.told.unit, self.place.units)
        return f"{self.told.words}: {shown}. {' '.join(self.notes())}"

    def notes(self) -> list[str]:
        """Return what stands below: whose it is, what it counts, its source, how sure that is."""
        told = self.told
        usual = show_limit(told.usual, told.unit, self.place.units)
        own = f"Set for this vehicle; all others: {usual}." if told.own else ""
        source = f"{told.source[:1].upper()}{told.source[1:]}; {told.status}." if told.source else ""
        source = source or f"{told.status[:1].upper()}{told.status[1:]}."
        fixed = "The same for every vehicle." if told.fixed else ""
        about = f"{COUNTED.get(told.unit, '')} {source} {fixed}".strip()
        return [note for note in (own, about) if note]

    def _keep(self, value: float) -> None:
        if not self.place.do(SetLimit(self.told.name, value)) and self.field is not None:
            self.field.show_value(self.told.value)

    def _usual(self) -> None:
        self.place.do(SetLimit(self.told.name, None))

    # --- how it looks ---

    def lines(self, wide: float) -> list[str]:
        """Return the lines below the field: what is wrong with what is typed, else the notes."""
        style = HELPER.sized(self.place.theme.size)
        wrong = self.field.wrong if self.field is not None else ""
        texts = [wrong] if wrong else self.notes()
        return [line for text in texts for line in lettering.wrapped(text, style, max(wide - 8.0, 80.0))]

    def high(self, wide: float) -> int:
        """Return how high the line is."""
        size = self.place.theme.size
        return round((ROW + NOTE * len(self.lines(wide)) + 8.0) * size)

    def lay_out(self) -> None:
        """Put the field at the right, the way back beside it."""
        size, high = self.place.theme.size, round(ROW * self.place.theme.size)
        right = self.width()
        if self.field is not None:
            wide = round(FIELD * size)
            self.field.setGeometry(right - wide, 0, wide, high)
            right -= wide + 6
        if self.told.own:
            hint = self.back.sizeHint()
            self.back.setGeometry(
                right - hint.width(), (high - hint.height()) // 2, hint.width(), hint.height()
            )

    def resizeEvent(self, event: object) -> None:
        """Put the parts in their places."""
        self.lay_out()

    def paintEvent(self, event: object) -> None:
        """Paint the name and the notes."""
        theme, size = self.place.theme, self.place.theme.size
        right = self.field.x() if self.field is not None else self.width()
        right = self.back.x() if self.told.own else right
        with QPainter(self) as p:
            name = lettering.elided(self.told.words, BODY.sized(size), right - 8.0)
            lettering.draw_in(
                p, QRectF(0.0, 0.0, 10.0, ROW * size), name, BODY.sized(size), theme.ink, "left"
            )
            if self.field is None:
                shown = show_limit(self.told.value, self.told.unit, self.place.units)
                room = QRectF(0.0, 0.0, self.width() - 6.0, ROW * size)
                lettering.draw_in(p, room, shown, BODY.sized(size), theme.ink, "right")
            wrong = self.field is not None and bool(self.field.wrong)
            for i, line in enumerate(self.lines(float(self.width()))):
                row = QRectF(0.0, (ROW + i * NOTE) * size, 10.0, NOTE * size)
                lettering.draw_in(
                    p, row, line, HELPER.sized(size), theme.must if wrong else theme.ink2, "left"
                )
