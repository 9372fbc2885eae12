"""A slip of paper on the ledge: what was printed last, which of those sheets are old, the last prints."""

from collections.abc import Iterator

from PySide6.QtCore import QPointF, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from bayboard.mechanics.printed import changed_holes
from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.controls import Switch
from bayboard.window.lettering import HELPER, Style
from bayboard.window.print import words
from bayboard.window.print.desk import PrintDesk
from bayboard.window.print.older import last_lines
from bayboard.window.sheet import Sheet

PAD = 10.0  # px
SWAP, WHOLE = "swap", "all"
SAID, BOLD, SMALL_BOLD = Style(px=15.0), Style(px=15.0, weight=600), Style(px=14.0, weight=600)
LEAD, LOG_LEAD = 19.0, 18.0  # px from line to line
NARROW = 240.0  # px; a narrower slip tells less, in smaller type


class PrintSlip(Sheet):
    """What the print log tells, and the choice between a few sheets and the whole set."""

    changed = Signal()  # there is something to tell now, or nothing any more

    def __init__(self, desk: PrintDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.place, parent)
        self.desk = desk
        self.switch = Switch(
            "Sheets to print", (SWAP, WHOLE), self, "Prints only the sheets that differ, or all of them."
        )
        self.switch.switched.connect(self._choose)
        self.setAccessibleName("Printed before")
        desk.changed.connect(self.follow)
        self._told = False
        self._said = ""
        self.dress()

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.switch.dress(self.place.theme)
        self.follow()

    def _choose(self, word: str) -> None:
        self.desk.choose(whole=word == WHOLE)

    def told(self) -> bool:
        """Return whether anything was printed of this job."""
        return bool(self.desk.older.lines or self.desk.older.lost)

    def follow(self) -> None:
        """Tell what the desk knows."""
        self.switch.hold(WHOLE if self.desk.choices.whole else SWAP)
        said = " ".join(text for text, _ in self.sentences())
        self.setAccessibleDescription(" ".join((said, *(f"{line}." for line in self.log()))))
        if said != self._said:
            self._said = said
            if self.isVisible():
                announce(self, said)
        if self.told() != self._told:
            self._told = self.told()
            self.changed.emit()
        self.lay_out()
        self.update()

    def sentences(self) -> list[tuple[str, bool]]:
        """Return what is said of the sheets on the bench, and which of it is the heading."""
        older = self.desk.older
        if older.lost:
            return [(f"What was printed cannot be had: {older.lost}.", True)]
        if older.bench is None:
            return [("No template was printed yet.", True)] if older.lines else []
        changed = changed_holes(self.place.layout)
        names = [name for holes in changed.values() for name in holes]
        said = [(words.printed_told(older.bench.line, short=self._narrow()), True)]
        said += [(words.holes_told(names), False)] if names else []
        return said + [(text, False) for text in self._advice(bool(names))]

    def _advice(self, holes: bool) -> Iterator[str]:
        """Yield what to do with the sheets on the bench, as far as it is known."""
        desk, found = self.desk, self.desk.older.weighed
        if desk.older.weighing(desk.asked()) is None:
            if "drill" in desk.wanted():
                yield words.OTHER_PAPER
        elif found is None:
            return
        elif found.swap.all_again:
            yield words.ALL_AGAIN
        elif found.swap.sheets:
            yield ("" if holes else f"{words.holes_told(())} ") + words.swap_told(found.swap.sheets)
        else:
            yield words.ALL_HOLD

    def log(self) -> list[str]:
        """Return the last prints in words, newest first."""
        short = self._narrow()
        return [words.logged(line, short=short) for line in last_lines(self.desk.older.lines)]

    # --- where things lie ---

    def _lines(self) -> list[tuple[str, Style]]:
        size, narrow = self.place.theme.size, self._narrow()
        room = self.width() - 2 * PAD * size
        plain, bold = (HELPER, SMALL_BOLD) if narrow else (SAID, BOLD)
        styled = [(text, (bold if heading else plain).sized(size)) for text, heading in self.sentences()]
        return [(line, style) for text, style in styled for line in lettering.wrapped(text, style, room)]

    def lay_out(self) -> None:
        """Put the switch in its place."""
        size = self.place.theme.size
        self.switch.setVisible(self.desk.older.swap() is not None and self._can_swap())
        high = self.switch.sizeHint().height()
        wide = min(self.switch.sizeHint().width(), self.width() - round(8 * size))
        top = min(self._after_lines(), self.height() - high)
        self.switch.setGeometry(round(PAD * size) - 4, round(top), wide, high)

    def _narrow(self) -> bool:
        return self.width() < NARROW * self.place.theme.size

    def _can_swap(self) -> bool:
        return self.desk.older.weighing(self.desk.asked()) is not None

    def _after_lines(self) -> float:
        size = self.place.theme.size
        return (PAD + len(self._lines()) * self._lead()) * size

    def _lead(self) -> float:
        return LEAD - 2.0 if self._narrow() else LEAD

    def ground(self) -> str:
        """Return the colour of the ledge that the slip lies on."""
        return self.place.theme.shelf

    def paint(self, p: QPainter) -> None:
        """Paint what is told; a line that has no room is left off, the sentence before the log never."""
        theme, size = self.place.theme, self.place.theme.size
        y = (PAD + 14.0) * size
        for line, style in self._lines():
            lettering.draw(p, QPointF(PAD * size, y), line, style, theme.ink)
            y += self._lead() * size
        self._paint_log(p)

    def _paint_log(self, p: QPainter) -> None:
        theme, size = self.place.theme, self.place.theme.size
        top = self._after_lines() + 6.0 * size
        if self.switch.isVisibleTo(self):
            top = self.switch.geometry().bottom() + 2.0 * size
        style = HELPER.sized(size)
        for text in self.log():
            top += LOG_LEAD * size
            if top > self.height() - 6.0 * size:
                return
            told = lettering.elided(text, style, self.width() - 2 * PAD * size)
            lettering.draw(p, QPointF(PAD * size, top), told, style, theme.ink2)
