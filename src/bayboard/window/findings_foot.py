"""The foot of the Findings: how many rules had nothing to say, and what nobody could look at yet."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.controls import Control
from bayboard.window.draw.marks import paint_tick, paint_unchecked
from bayboard.window.findings_paint import fold_mark
from bayboard.window.lettering import BODY, HELPER, STRONG, Style
from bayboard.window.loud import quiet_rules, unlooked_rules
from bayboard.window.sheet import Wrapped
from bayboard.window.theme import brush, pen
from bayboard.window.to_measure import Errand, errands, in_one_line
from bayboard.window.workplace import Workplace

FOOT = 44.0  # px, with the hairline over it
TASK = 21.0  # px of the line that says what to measure, where the panel is high enough
LINE = 26.0  # px from line to line of what is unfolded
APART = 6.0
SMALLER = Style(px=14, weight=600)  # where the line has little room


class Foot(Control):
    """The line below the list; pressing it unfolds what to measure.  `told`: a line of that stands below."""

    def __init__(self, place: Workplace, parent: QWidget) -> None:
        super().__init__("", parent, "Shows what nobody could look at, and what to measure.")
        self.place = place
        self.told = False
        self.setCheckable(True)

    def follow(self) -> None:
        """Say what the rules say."""
        words = f"{self.quiet_words()} {self.count()} could not look. {self.task()}"
        self.setAccessibleName(words.strip())
        self.setEnabled(self.count() > 0)
        self.update()

    def count(self) -> int:
        """Return how many rules could not look at something."""
        return len(unlooked_rules(self.place.told))

    def quiet_words(self, short: bool = False) -> str:
        """Return how many rules looked at everything and found nothing."""
        count = quiet_rules(self.place.told)
        return f"{count} rule{'' if count == 1 else 's'}{'' if short else ' looked'}, nothing to say."

    def task(self) -> str:
        """Return what there is to measure in one line, "" for nothing."""
        return in_one_line(errands(self.place.told.unchecked))

    def paint(self, p: QPainter) -> None:
        """Paint tick, words, square and the fold's triangle."""
        theme, size, rect = self.theme, self.theme.size, QRectF(self.rect())
        p.fillRect(rect, brush(theme.paper))
        p.fillRect(QRectF(0.0, 0.0, rect.width(), 1.0), brush(theme.rule))
        count, middle = self.count(), FOOT * size / 2 + 1.0
        style, words = STRONG.sized(size), self.quiet_words()
        paint_tick(p, QPointF(10.0 * size, middle), theme, 16.0 * size)
        if count and lettering.width(words, style) > rect.width() - 220.0 * size:
            words = self.quiet_words(short=True)
        if count and lettering.width(words, style) > rect.width() - 190.0 * size:
            style = SMALLER.sized(size)
        room = QRectF(26.0 * size, middle - 10.0, 400.0, 20.0)
        lettering.draw_in(p, room, words, style, theme.ink, "left")
        if count:
            x = 26.0 * size + lettering.width(words, style) + 24.0 * size
            end = self._paint_count(p, x, middle, count, style)
            at = QPointF(rect.right() - 14.0 * size, middle)
            if end < at.x() - 10.0 * size:
                p.fillPath(fold_mark(at, not self.isChecked()), brush(theme.ink2))
        if self.told and count and not self.isChecked():
            line = lettering.elided(self.task(), HELPER.sized(size), rect.width() - 30.0 * size)
            task = QRectF(26.0 * size, middle + 11.0 * size, 10.0, TASK * size)
            lettering.draw_in(p, task, line, HELPER.sized(size), theme.ink2, "left")
        if self.hasFocus():
            p.setPen(pen(theme.blue, 2.0))
            p.drawRoundedRect(rect.adjusted(1.0, 4.0, -1.0, -2.0), 5.0, 5.0)

    def _paint_count(self, p: QPainter, x: float, middle: float, count: int, style: Style) -> float:
        """Paint the square and its words, as far as there is room; return where they end, px."""
        theme, size = self.theme, self.theme.size
        paint_unchecked(p, QPointF(x, middle), count, theme)
        start = x + 18.0 * size
        words = lettering.elided("could not look", style, max(self.width() - start, 0.0))
        lettering.draw_in(p, QRectF(start, middle - 10.0, 10.0, 20.0), words, style, theme.ink2, "left")
        return start + lettering.width(words, style)


class Unlooked(Wrapped):
    """What nobody could look at, as things to do: an open square before each."""

    def __init__(self, place: Workplace) -> None:
        super().__init__(place)
        self.setAccessibleName("What nobody could look at")
        self.follow()

    def said(self) -> tuple[Errand, ...]:
        """Return the things to do."""
        return errands(self.place.told.unchecked)

    def follow(self) -> None:
        """Be as high as there is to say."""
        lines = self._lines()
        self.setMinimumHeight(round(lines[-1][0] + LINE * self.place.theme.size) + 4 if lines else 0)
        self.setAccessibleDescription(". ".join(errand.words() for errand in self.said()))
        self.update()

    def _lines(self) -> list[tuple[float, bool, str]]:
        """Return each line with its top, and whether it begins a thing."""
        size, y = self.place.theme.size, 2.0
        room = max(self.width() - 46.0 * size, 120.0)
        found = []
        for errand in self.said():
            for i, line in enumerate(lettering.wrapped(errand.words(), BODY.sized(size), room)):
                found.append((y, i == 0, line))
                y += LINE * size
            y += APART * size
        return found

    def paint(self, p: QPainter) -> None:
        """Paint the lines."""
        theme, size = self.place.theme, self.place.theme.size
        for top, first, line in self._lines():
            row = QRectF(34.0 * size, top, self.width(), LINE * size)
            lettering.draw_in(p, row, line, BODY.sized(size), theme.ink, "left")
            if first:
                p.setPen(pen(theme.ink2, 1.8))
                p.drawRoundedRect(QRectF(8.0 * size, row.center().y() - 6.5, 13.0, 13.0), 3.0, 3.0)
