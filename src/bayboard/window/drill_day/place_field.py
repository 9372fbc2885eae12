"""A field that asks where a hole went: a figure from the board's corner, or how far off its plan."""

import re

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from bayboard.units.length import show_both
from bayboard.window.fields import LengthField

_TWO = re.compile(r"(?P<here>.*?)[,;]\s*(?P<there>(?:left|right|up|down)\b.*)", re.IGNORECASE)


def beyond(way: str) -> str:
    """Return the way off a place as a sentence says it: "right of", "above"."""
    return {"up": "above", "down": "below"}.get(way, f"{way} of")


class PlaceField(LengthField):
    """A length from the board's left edge or foot; `right 2` or `down 1/16` counts from the plan.

    `less` and `more` are the two words of its axis.  What is typed for the other axis behind a comma,
    `right 2, up 1`, is passed on by `beside`.
    """

    beside = Signal(str)
    entered = Signal()

    def __init__(self, name: str, less: str, more: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self.less, self.more = less, more
        self.planned = 0.0  # mm from the edge or foot
        self.textEdited.connect(self._pass_on)

    def plan(self, value: float) -> None:
        """Start from where the hole was planned."""
        self.planned = value
        self.setModified(False)
        self.show_value(value)

    def off(self) -> float | None:
        """Return how far what is typed lies from the plan, None while it is not understood."""
        if not self.isModified() and self.value is not None:
            return self.value - self.planned  # the text may show it rounded
        try:
            return self.parse(self.text()) - self.planned
        except ValueError:
            return None

    def parse(self, text: str) -> float:
        """Return mm from the edge or foot."""
        two = _TWO.fullmatch(text.strip())
        here = two["here"] if two else text
        sign, rest = self._signed(here)
        if sign is None:
            return super().parse(here)
        return self.planned + sign * abs(super().parse(rest))

    def tell(self, value: float, text: str) -> str:
        """Return which of the two it was read as, in both units."""
        if self._signed(text)[0] is None:
            return super().tell(value, text)
        off = value - self.planned
        return f"{show_both(abs(off))} {beyond(self.more if off >= 0 else self.less)} the plan"

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Say with Enter that the question is answered; Escape takes back what was typed, then leaves."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.entered.emit()
        else:
            super().keyPressEvent(event)

    def take(self, text: str) -> None:
        """Take a text that was typed beside it."""
        self.setText(text)
        self.setModified(True)
        self._read()

    def _signed(self, text: str) -> tuple[float | None, str]:
        """Return +1 or -1 and the length behind its word, None for a plain place."""
        word, _, rest = text.strip().partition(" ")
        signs: dict[str, float] = {self.more: 1.0, self.less: -1.0}
        return signs.get(word.lower()), rest

    def _pass_on(self, text: str) -> None:
        two = _TWO.fullmatch(text.strip())
        if two:
            self.beside.emit(two["there"])
