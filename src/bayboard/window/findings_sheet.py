"""The rows of the findings as they stand and are painted: worst first, the one spoken of open."""

from PySide6.QtCore import QPointF, QRectF, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.rules.finding import Finding
from bayboard.window.curing import Curing
from bayboard.window.finding_acts import FindingAct, acts_of
from bayboard.window.findings_cured import Cured
from bayboard.window.findings_paint import OLDER, paint_row
from bayboard.window.findings_rows import Fold, Row, Spot, asking_rect, hit, spots
from bayboard.window.listing import listed, own_words
from bayboard.window.reason_field import ReasonField
from bayboard.window.theme import brush
from bayboard.window.trouble import TROUBLE
from bayboard.window.workplace import Key, Workplace, key_of


class FindingsSheet(QWidget):
    """The rows, without hands: what shouts, the folded stages, what was let be, what was just cured."""

    grown = Signal()

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = place
        self.curing: Curing | None = None
        self.asking: Key | None = None
        self.unfolded: set[str] = set()  # the stages whose lines are unfolded
        self.at_fold: str | None = None  # the stage whose line the keys are on
        self.link = -1  # which button or link of the open row the keys are on
        self.hovered: QPointF | None = None
        self.cured = Cured()
        self._sweeper = QTimer(self)
        self._sweeper.setSingleShot(True)
        self._sweeper.timeout.connect(self.follow)
        self.reason = ReasonField(self)
        place.opened.connect(self._start_anew)
        place.changed.connect(self.follow)
        place.looked.connect(self.follow)
        self.dress()

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.reason.dress(self.place.theme)
        self.update()

    def cure_with(self, curing: Curing) -> None:
        """Offer the cures that are found."""
        self.curing = curing
        curing.told.connect(self.follow)
        self.follow()

    # --- rows ---

    def _start_anew(self) -> None:
        self.cured.forget()
        self.asking, self.at_fold = None, None
        self.unfolded.clear()

    def follow(self) -> None:
        """Take over what the rules say now."""
        found = self.place.verdict.findings
        rows = [line.finding for line in self._listed() if isinstance(line, Row)]
        self.cured.follow(found, rows, self.place.shown is self.place.layout)
        wait = self.cured.wait()
        if wait is not None:
            self._sweeper.start(wait)
        self._lay_out()
        self._show_cure()

    def _listed(self) -> list[Row | Fold]:
        return listed(self.place, self.unfolded, self.at_fold)

    def lines(self) -> list[Row | Fold]:
        """Return the rows from the top: what shouts, worst first, the folded stages, what was let be."""
        found = [
            self._filled(line) if isinstance(line, Row) and line.open else line for line in self._listed()
        ]
        for gone in self.cured.gone:
            found.insert(gone.row, Row(gone.finding, None))
        return found

    def rows(self) -> list[Row]:
        """Return the rows that are findings, from the top."""
        return [line for line in self.lines() if isinstance(line, Row)]

    def _filled(self, row: Row) -> Row:
        """Return the open row with its buttons, or what is said in their place."""
        finding, quiet = row.finding, row.finding.let_be is not None
        acts = () if quiet else self.acts(finding)
        hint = "" if acts or self.curing is None else self.curing.hint(finding)
        return Row(
            finding,
            row.number,
            open=True,
            asking=key_of(finding) == self.asking,
            acts=tuple(act.words for act in acts),
            hint=hint,
            own=own_words(finding, self.place.shown),
        )

    def acts(self, finding: Finding) -> tuple[FindingAct, ...]:
        """Return a finding's buttons, the first cure first."""
        return acts_of(finding, self.place.shown) if self.curing is None else self.curing.acts(finding)

    def spots(self) -> list[Spot]:
        """Return where the rows lie."""
        return spots(self.lines(), float(self.width()), self.place.theme)

    def _lay_out(self) -> None:
        found = self.spots()
        high = round(found[-1].rect.bottom()) + 3 if found else 0
        if high != self.minimumHeight():
            self.setMinimumHeight(high)
            self.grown.emit()
        asked = next((s for s in found if isinstance(s.row, Row) and s.row.asking and s.row.open), None)
        if asked is not None:
            self.reason.setGeometry(asking_rect(asked, self.place.theme).toRect())
        elif self.asking is not None:
            self.asking = None
        self.reason.setVisible(asked is not None)
        self.update()

    def open_spot(self) -> Spot | None:
        """Return the open row."""
        return next((spot for spot in self.spots() if spot.open), None)

    # --- painting ---

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows that are seen."""
        with QPainter(self) as p:
            try:
                p.fillRect(event.rect(), brush(self.place.theme.paper))
                p.setRenderHint(QPainter.RenderHint.Antialiasing)
                p.setOpacity(1.0 if self.place.judged else OLDER)
                for spot in self.spots():
                    if spot.rect.intersects(QRectF(event.rect())):
                        self._paint_row(p, spot)
            except Exception as error:
                TROUBLE.report(error)

    def _paint_row(self, p: QPainter, spot: Spot) -> None:
        keys, row = self.hasFocus() and self.at_fold is None, spot.row
        at = self.link if spot.open and keys else -1
        link = spot.targets[at][0] if 0 <= at < len(spot.targets) else None
        by_keys = spot.open and keys and link is None
        current = isinstance(row, Row) and not row.cured
        current = current and (by_keys or key_of(row.finding) == self.place.finding)
        hovered = self.hovered is not None and spot.rect.contains(self.hovered)
        paint_row(p, spot, self.place.theme, current, link, hovered)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Wrap the sentences anew."""
        self._lay_out()

    # --- the cure that is looked at ---

    def _show_cure(self) -> None:
        """Show in chalk where the cure leads that is under the pointer or has the keys."""
        act = self._act_looked_at()
        self.place.show_cure(None if act is None else act.edit)

    def _act_looked_at(self) -> FindingAct | None:
        spot = self.open_spot()
        if spot is None or not isinstance(spot.row, Row) or not spot.acts:
            return None
        under = None if self.hovered is None else hit([spot], self.hovered)
        word = under[1] if under is not None else ""
        if not word and self.hasFocus() and self.at_fold is None:
            word = spot.targets[max(self.link, 0)][0] if self.link < len(spot.targets) else ""
        return next((act for act in self.acts(spot.row.finding) if act.words == word), None)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show what Enter would do."""
        super().focusInEvent(event)
        self.follow()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Forget what Enter would do."""
        super().focusOutEvent(event)
        self.at_fold = None
        self.follow()
