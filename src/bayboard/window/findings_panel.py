"""The Findings: what is wrong, worst first, and below what was looked at and what nobody could look at."""

from PySide6.QtCore import QPointF, QRectF, Signal
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.rules import RULES
from bayboard.rules.check import Verdict
from bayboard.rules.finding import Unchecked
from bayboard.window import lettering
from bayboard.window.controls import Control
from bayboard.window.draw.marks import paint_mark, paint_tick, paint_unchecked
from bayboard.window.findings_list import FindingsList
from bayboard.window.lettering import BODY, STRONG, Style
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.scroll import Scroll
from bayboard.window.sheet import Sheet
from bayboard.window.theme import brush, pen
from bayboard.window.workplace import Workplace

TOP, FOOT = 44.0, 44.0
EMPTY = (
    "Nothing yet. From the first stand-in on, whatever would not fit, clear the seat, "
    "be seen or be reached shows up here."
)
LEAST_PITCH = 23.0  # px from one line of the legend to the next
LEGEND = (
    ("must", "Must", "stop and put it right"),
    ("should", "Should", "better put right"),
    ("note", "Note", "good to know"),
)


def quiet_rules(verdict: Verdict) -> int:
    """Return how many rules looked and have nothing to say."""
    spoke = {f.rule for f in verdict.findings} | {u.rule for u in verdict.unchecked}
    return sum(rule.RULE not in spoke for rule in RULES)


def counted(verdict: Verdict) -> str:
    """Return how many findings there are: "1 must, 2 should"."""
    counts = verdict.counts
    words = [
        f"{counts[s]} {s}{'s' if s == 'note' and counts[s] > 1 else ''}" for s in ("must", "should", "note")
    ]
    shown = [w for w in words if not w.startswith("0 ")]
    if counts["let_be"]:
        shown.append(f"{counts['let_be']} let be")
    return ", ".join(shown)


class Foot(Control):
    """The line below the list: what looked, and what could not; pressing it unfolds what to measure."""

    def __init__(self, place: Workplace, parent: QWidget) -> None:
        super().__init__("", parent, "Shows what nobody could look at, and what to measure")
        self.place = place
        self.setCheckable(True)

    def follow(self) -> None:
        """Say what the rules say."""
        verdict = self.place.verdict
        count = verdict.counts["unchecked"]
        words = f"{quiet_rules(verdict)} rules looked, nothing to say. {count} could not look."
        self.setAccessibleName(words)
        self.setEnabled(count > 0)
        self.update()

    def paint(self, p: QPainter) -> None:
        """Paint tick, words, square and the fold's triangle."""
        theme, size, rect = self.theme, self.theme.size, QRectF(self.rect())
        p.fillRect(rect, brush(theme.paper))
        p.fillRect(QRectF(0.0, 0.0, rect.width(), 1.0), brush(theme.rule))
        verdict, middle = self.place.verdict, rect.center().y() + 1.0
        count, quiet = verdict.counts["unchecked"], quiet_rules(verdict)
        paint_tick(p, QPointF(10.0 * size, middle), theme, 16.0 * size)
        style, words = STRONG.sized(size), f"{quiet} rules looked, nothing to say."
        if count and lettering.width(words, style) > rect.width() - 220.0 * size:
            words = f"{quiet} rules, nothing to say."
        room = QRectF(26.0 * size, middle - 10.0, 400.0, 20.0)
        lettering.draw_in(p, room, words, style, theme.ink, "left")
        if not count:
            return
        x = 26.0 * size + lettering.width(words, style) + 24.0 * size
        paint_unchecked(p, QPointF(x, middle), count, theme)
        lettering.draw_in(
            p, room.translated(x - 8.0 * size, 0.0), "could not look", style, theme.ink2, "left"
        )
        self._paint_fold(p, QPointF(rect.right() - 14.0 * size, middle))
        if self.hasFocus():
            p.setPen(pen(theme.blue, 2.0))
            p.drawRoundedRect(rect.adjusted(1.0, 4.0, -1.0, -2.0), 5.0, 5.0)

    def _paint_fold(self, p: QPainter, at: QPointF) -> None:
        sense = -1.0 if self.isChecked() else 1.0
        path = QPainterPath(QPointF(at.x() - 7.0, at.y() - 4.0 * sense))
        path.lineTo(at.x() + 7.0, at.y() - 4.0 * sense)
        path.lineTo(at.x(), at.y() + 5.0 * sense)
        path.closeSubpath()
        p.fillPath(path, brush(self.theme.ink2))


class Unlooked(QWidget):
    """What nobody could look at, each with what to measure."""

    def __init__(self, place: Workplace) -> None:
        super().__init__()
        self.place = place
        self.setAccessibleName("What nobody could look at")
        self.follow()

    def said(self) -> tuple[Unchecked, ...]:
        """Return the sayings, each sentence once."""
        return tuple({said.says: said for said in self.place.verdict.unchecked}.values())

    def follow(self) -> None:
        """Be as high as there is to say."""
        self.setMinimumHeight(round(len(self._lines()) * 30.0 * self.place.theme.size) + 4)
        self.setAccessibleDescription(" ".join(said.says for said in self.said()))
        self.update()

    def _lines(self) -> list[tuple[bool, str]]:
        style = BODY.sized(self.place.theme.size)
        room = max(self.width() - 46.0 * self.place.theme.size, 120.0)
        wrapped = (lettering.wrapped(said.says, style, room) for said in self.said())
        return [(i == 0, line) for lines in wrapped for i, line in enumerate(lines)]

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Wrap the lines anew."""
        self.follow()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint a line each, an open square before it."""
        theme, size = self.place.theme, self.place.theme.size
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(theme.paper))
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            for i, (first, line) in enumerate(self._lines()):
                row = QRectF(34.0 * size, i * 30.0 * size, self.width(), 30.0 * size)
                lettering.draw_in(p, row, line, BODY.sized(size), theme.ink, "left")
                if first:
                    p.setPen(pen(theme.ink2, 1.8))
                    p.drawRoundedRect(QRectF(8.0 * size, row.center().y() - 6.5, 13.0, 13.0), 3.0, 3.0)


class FindingsPanel(Sheet):
    """The middle panel."""

    chosen = Signal(object)

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self.list = FindingsList(place)
        self.unlooked = Unlooked(place)
        self.scroll = Scroll(self.list, self)
        self.below = Scroll(self.unlooked, self)
        self.foot = Foot(place, self)
        self.list.chosen.connect(self.chosen)
        self.list.grown.connect(self._show_open)
        self.foot.toggled.connect(self._fold)
        place.changed.connect(self.follow)
        place.looked.connect(self._show_open)
        self.dress()
        self._fold(False)

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.list.dress()
        for area in (self.scroll, self.below):
            area.dress(self.place.theme)
        self.foot.dress(self.place.theme)
        self.follow()

    def follow(self) -> None:
        """Say what the rules say now."""
        self.foot.follow()
        self.foot.setVisible(not self.place.first_start)
        self.unlooked.follow()
        if not self.foot.isEnabled():
            self.foot.setChecked(False)
        self.scroll.setVisible(not self.foot.isChecked() and bool(self.list.rows()))
        self.update()

    def _fold(self, unfolded: bool) -> None:
        self.below.setVisible(unfolded)
        self.follow()

    def _show_open(self) -> None:
        spot = self.list.open_spot()
        self.scroll.setVisible(not self.foot.isChecked() and bool(self.list.rows()))
        if spot is not None and self.place.finding is not None:
            self.scroll.ensureVisible(0, round(spot.rect.bottom()), 0, 4)
            self.scroll.ensureVisible(0, round(spot.rect.top()), 0, 4)

    def lay_out(self) -> None:
        """Put list and foot in their places."""
        size, wide, high = self.place.theme.size, self.width(), self.height()
        top, foot = round(TOP * size), round(FOOT * size)
        for area in (self.scroll, self.below):
            area.setGeometry(7, top, wide - 12, high - top - foot - 4)
        self.foot.setGeometry(16, high - foot - 3, wide - 32, foot)

    def paint(self, p: QPainter) -> None:
        """Paint the title, and what is said when there is nothing."""
        words = "what nobody could look at" if self.foot.isChecked() else counted(self.place.verdict)
        paint_panel_title(p, "Findings", words, self.place.theme, float(self.width()))
        if not self.list.rows() and not self.foot.isChecked():
            self._paint_nothing(p)

    def nothing(self) -> str:
        """Return what the panel says when there is no finding."""
        return "Nothing to put right." if self.place.scene.placed else EMPTY

    def _paint_nothing(self, p: QPainter) -> None:
        theme, size = self.place.theme, self.place.theme.size
        started = bool(self.place.scene.placed)
        y = 68.0 * size
        for line in lettering.wrapped(self.nothing(), BODY.sized(size), self.width() - 32.0 * size):
            lettering.draw(p, QPointF(16.0 * size, y), line, BODY.sized(size), theme.ink)
            y += 24.0 * size
        if not started:
            self._paint_legend(p, y + 2.0 * size)

    def _paint_legend(self, p: QPainter, top: float) -> None:
        """Paint what the marks mean, between `top` and the foot; nothing where that is too little."""
        theme, size = self.place.theme, self.place.theme.size
        floor = self.height() if self.place.first_start else self.foot.y()
        y = max(top, floor - 80.0 * size)
        pitch = min((floor - 13.0 * size - y) / (len(LEGEND) - 1), 32.0 * size)
        if pitch < LEAST_PITCH * size:
            return
        for severity, word, meaning in LEGEND:
            paint_mark(p, QPointF(30.0 * size, y), severity, None, theme, 22.0 * size, cased=False)
            bold = Style(px=15.0, weight=600).sized(size)
            row = QRectF(50.0 * size, y - 10.0, 10.0, 20.0)
            lettering.draw_in(p, row, word, bold, theme.severity(severity), "left")
            lettering.draw_in(
                p, row.translated(64.0 * size, 0.0), meaning, BODY.sized(size), theme.ink2, "left"
            )
            y += pitch
