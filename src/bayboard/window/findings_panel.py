"""The Findings: what is wrong, worst first, and below what was looked at and what nobody could look at."""

from PySide6.QtCore import QPointF, QRectF, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from bayboard.job.runner import Runner
from bayboard.rules.check import Verdict
from bayboard.rules.finding import Finding
from bayboard.window import lettering
from bayboard.window.beside import Beside
from bayboard.window.controls import Link
from bayboard.window.curing import LOOKING, Curing
from bayboard.window.draw.marks import paint_mark
from bayboard.window.findings_foot import FOOT, TASK, Foot, Unlooked
from bayboard.window.findings_list import FindingsList
from bayboard.window.lettering import BODY, Style
from bayboard.window.loud import counted as counted_of
from bayboard.window.loud import is_loud
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.scroll import Scroll
from bayboard.window.sheet import Sheet
from bayboard.window.why.page import WhyPage
from bayboard.window.workplace import Workplace

TOP = 44.0
HIGH = 270.0  # px; a panel as high as that has room for a line of what to measure
EMPTY = (
    "Nothing yet. From the first stand-in on, whatever would not fit, cool, reach or wire shows up here, "
    "with a way to cure it."
)
LEAST_PITCH = 23.0  # px from one line of the legend to the next
LEGEND = (
    ("must", "Must", "stop and put it right"),
    ("should", "Should", "better put right"),
    ("note", "Note", "good to know"),
)


def counted(verdict: Verdict) -> str:
    """Return how many findings there are: "1 must, 2 should"."""
    return counted_of(verdict.findings)


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
        self.more = Link("", self, "Shows the findings further down.")
        self.page = WhyPage(place, self)
        self.page.hide()
        self.list.chosen.connect(self.chosen)
        self.list.why_wanted.connect(self.tell_why)
        self.list.grown.connect(self._show_open)
        self.page.left.connect(self.leave_page)
        self.foot.toggled.connect(self._fold)
        self.more.clicked.connect(self._on)
        self.scroll.verticalScrollBar().valueChanged.connect(self._count_more)
        self.scroll.verticalScrollBar().rangeChanged.connect(self._count_more)
        place.changed.connect(self.follow)
        place.looked.connect(self._show_open)
        place.opened.connect(self.page.hide)
        self.dress()
        self._fold(False)

    def cure_beside(self, runner: Runner) -> Curing:
        """Have cures looked for by a runner, and offer what is found."""
        curing = Curing(self.place, runner, self)
        self.list.cure_with(curing)
        if isinstance(runner, Beside):
            runner.broke.connect(curing.search.broke)
        return curing

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.list.dress()
        for area in (self.scroll, self.below):
            area.dress(self.place.theme)
        for part in (self.foot, self.more):
            part.dress(self.place.theme)
        self.page.dress()
        self.lay_out()
        self.follow()

    def follow(self) -> None:
        """Say what the rules say now."""
        self.foot.follow()
        self.foot.setVisible(not self.place.first_start)
        self.unlooked.follow()
        if not self.foot.isEnabled():
            self.foot.setChecked(False)
        self._show_list()
        self._count_more()
        self.update()

    def _show_list(self) -> None:
        self.scroll.setVisible(not self.foot.isChecked() and bool(self.list.lines()))

    def _fold(self, unfolded: bool) -> None:
        self.below.setVisible(unfolded)
        self.follow()

    def _show_open(self) -> None:
        self._show_list()
        if self.page.isVisible():
            return
        spots = self.list.spots()
        fold = next((s for s in spots if getattr(s.row, "current", False)), None)
        spot = fold or (self.list.open_spot() if self.place.finding is not None else None)
        if spot is not None:
            self.scroll.ensureVisible(0, round(spot.rect.bottom()), 0, 4)
            self.scroll.ensureVisible(0, round(spot.rect.top()), 0, 4)
        self._count_more()

    # --- what lies further down ---

    def hidden_rows(self) -> int:
        """Return how many rows lie below what is seen of the list."""
        if not self.scroll.isVisibleTo(self):
            return 0
        floor = self.scroll.verticalScrollBar().value() + self.scroll.viewport().height()
        return sum(spot.rect.bottom() > floor + 6.0 for spot in self.list.spots())

    def _count_more(self) -> None:
        count = self.hidden_rows()
        self.more.setText(f"{count} more")
        self.more.setAccessibleName(f"{count} more findings below")
        self.more.setVisible(count > 0)
        self._lay_foot()

    def _on(self) -> None:
        """Show the next rows."""
        bar = self.scroll.verticalScrollBar()
        bar.setValue(bar.value() + bar.pageStep() - round(30.0 * self.place.theme.size))

    def still_looking(self) -> bool:
        """Return whether a cure of the finding spoken of is being looked for."""
        spoken, curing = self.list.place.spoken_of(), self.list.curing
        return spoken is not None and curing is not None and curing.hint(spoken) == LOOKING

    # --- why ---

    def tell_why(self, finding: Finding) -> None:
        """Tell the rule of a finding on one page, in place of the list."""
        self.list.hovered = None
        self.place.show_cure(None)
        if self.page.open(finding):
            self.page.setGeometry(self.rect())
            self.page.raise_()

    def leave_free(self, spare: int) -> None:
        """Leave px free at the right end of the page's title line, for a word of the window's."""
        if self.page.spare != spare:
            self.page.spare = spare
            self.page.lay_out()

    def leave_page(self) -> None:
        """Show the findings again."""
        had = self.page.isVisible() and self.page.has_keys()
        if had:
            self.list.setFocus()
        self.page.hide()
        self.follow()

    # --- how it looks ---

    def lay_out(self) -> None:
        """Put list, foot and page in their places."""
        size, wide, high = self.place.theme.size, self.width(), self.height()
        self.foot.told = high >= HIGH * size
        top, foot = round(TOP * size), round((FOOT + (TASK if self.foot.told else 0.0)) * size)
        for area in (self.scroll, self.below):
            area.setGeometry(7, top, wide - 12, high - top - foot - 4)
        self.page.setGeometry(self.rect())
        self._count_more()

    def _lay_foot(self) -> None:
        size, wide, high = self.place.theme.size, self.width(), self.height()
        foot = round((FOOT + (TASK if self.foot.told else 0.0)) * size)
        aside = self.more.sizeHint().width() + 6 if self.more.isVisibleTo(self) else 0
        self.more.setGeometry(10, high - foot - 1, aside, round(FOOT * size) - 2)
        self.foot.setGeometry(16 + aside, high - foot - 3, wide - 32 - aside, foot)

    def paint(self, p: QPainter) -> None:
        """Paint the title, and what is said when there is nothing."""
        place = self.place
        loud = [f for f in place.told.findings if f.let_be is not None or is_loud(f, place.rooms)]
        words = "what nobody could look at" if self.foot.isChecked() else counted_of(loud)
        paint_panel_title(p, "Findings", words, place.theme, float(self.width()))
        if not self.list.lines() and not self.foot.isChecked():
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
