"""The list of findings: worst first, the one spoken of open, the others one line each."""

import time
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from bayboard.edits.let_finding_be import LetFindingBe, LetFindingSpeak
from bayboard.rules.finding import Finding
from bayboard.window import lettering
from bayboard.window.finding_acts import FindingAct, acts_of
from bayboard.window.findings_rows import Row, Spot, asking_rect, paint_row, spots
from bayboard.window.lettering import BODY
from bayboard.window.theme import brush
from bayboard.window.trouble import TROUBLE
from bayboard.window.workplace import Key, Workplace, key_of

STAYS = 2.0  # s that a cured finding's row stays, so that the list does not jump under the finger


@dataclass(frozen=True, slots=True)
class _Cured:
    finding: Finding
    row: int  # where it stood in the list
    until: float


class ReasonField(QLineEdit):
    """One line that says why a finding may be."""

    given = Signal(str)
    left = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Give the reason with Enter, leave with Escape."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.text().strip():
                self.given.emit(self.text().strip())
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)


class FindingsList(QWidget):
    """The rows.  Up and Down walk, Enter goes there, Tab walks the links of the open row."""

    chosen = Signal(object)  # a finding to go to
    stage_wanted = Signal(str)  # the stage that a finding's button goes to
    grown = Signal()

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = place
        self.why: Key | None = None
        self.asking: Key | None = None
        self.link = -1  # which link of the open row the keys are on
        self.hovered: QPointF | None = None
        self._cured: list[_Cured] = []
        self._known: list[Finding] = []
        self._seen: list[Finding] = []
        self._sweeper = QTimer(self)
        self._sweeper.setSingleShot(True)
        self._sweeper.timeout.connect(self.follow)
        self.reason = ReasonField(self)
        self.reason.setPlaceholderText("Why is it all right? Enter keeps it.")
        self.reason.setAccessibleName("Why this finding may be")
        self.reason.setMaxLength(200)
        self.reason.hide()
        self.reason.given.connect(self._let_be)
        self.reason.left.connect(self._stop_asking)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Findings")
        place.opened.connect(self._start_anew)
        place.changed.connect(self.follow)
        place.looked.connect(self.follow)
        self.dress()

    def dress(self) -> None:
        """Wear the workplace's colours."""
        theme = self.place.theme
        self.reason.setFont(lettering.font(BODY.sized(theme.size), hinted=True))
        self.reason.setStyleSheet(
            f"QLineEdit {{ border: 2px solid {theme.blue}; border-radius: 5px; padding: 0 9px;"
            f" background: {theme.field}; color: {theme.ink}; selection-background-color: {theme.blue}; }}"
        )
        self.update()

    # --- rows ---

    def _start_anew(self) -> None:
        self._cured, self._known, self._seen, self.why, self.asking = [], [], [], None, None

    def follow(self) -> None:
        """Take over what the rules say now."""
        now = list(self.place.verdict.findings)
        if now != self._seen:
            self._mourn(now)
            self._seen = now
        if self.place.shown is self.place.layout:
            self._known = now
        alive = [c for c in self._cured if c.until > time.monotonic()]
        if len(alive) != len(self._cured):
            self._cured = alive
        if self._cured:
            self._sweeper.start(round((min(c.until for c in self._cured) - time.monotonic()) * 1000) + 1)
        self._lay_out()

    def _mourn(self, now: list[Finding]) -> None:
        """Remember what was cured since the last edit that was kept, and where it stood.

        What comes and goes while a stand-in is in hand was never there to be cured.
        """
        keys = {key_of(f) for f in now}
        self._cured = [c for c in self._cured if key_of(c.finding) not in keys]
        told = {key_of(c.finding) for c in self._cured}
        for row, finding in enumerate(self._known):
            if key_of(finding) not in keys | told and finding.let_be is None:
                self._cured.append(_Cured(finding, row, time.monotonic() + STAYS))

    def rows(self) -> list[Row]:
        """Return the rows from the top: the worst first, what was let be last."""
        verdict = self.place.verdict
        found = sorted(verdict.findings, key=lambda f: f.let_be is not None)
        opened = self._open_key(found)
        rows = [
            Row(
                f,
                verdict.number(f),
                open=key_of(f) == opened,
                why=key_of(f) == self.why,
                asking=key_of(f) == self.asking,
                acts=self._acts(f) if key_of(f) == opened and f.let_be is None else (),
            )
            for f in found
        ]
        for cured in sorted(self._cured, key=lambda c: c.row):
            rows.insert(cured.row, Row(cured.finding, None))
        return rows

    def _acts(self, finding: Finding) -> tuple[str, ...]:
        return tuple(act.words for act in acts_of(finding, self.place.shown))

    def _open_key(self, found: list[Finding]) -> Key | None:
        keys = [key_of(f) for f in found]
        if self.place.finding in keys:
            return self.place.finding
        return keys[0] if found and found[0].let_be is None else None

    def spots(self) -> list[Spot]:
        """Return where the rows lie."""
        return spots(self.rows(), float(self.width()), self.place.theme)

    def _lay_out(self) -> None:
        found = self.spots()
        high = round(found[-1].rect.bottom()) + 3 if found else 0
        if high != self.minimumHeight():
            self.setMinimumHeight(high)
            self.grown.emit()
        asked = next((s for s in found if s.row.asking and s.row.open), None)
        if asked is not None:
            self.reason.setGeometry(asking_rect(asked, self.place.theme).toRect())
        elif self.asking is not None:
            self.asking = None
        self.reason.setVisible(asked is not None)
        self.update()

    def open_spot(self) -> Spot | None:
        """Return the open row."""
        return next((spot for spot in self.spots() if spot.row.open), None)

    # --- painting ---

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows that are seen."""
        theme = self.place.theme
        with QPainter(self) as p:
            try:
                p.fillRect(event.rect(), brush(theme.paper))
                p.setRenderHint(QPainter.RenderHint.Antialiasing)
                for spot in self.spots():
                    if not spot.rect.intersects(QRectF(event.rect())):
                        continue
                    link = None
                    if spot.row.open and self.hasFocus() and 0 <= self.link < len(spot.targets):
                        link = spot.targets[self.link][0]
                    current = key_of(spot.row.finding) == self.place.finding or (
                        spot.row.open and self.hasFocus() and link is None
                    )
                    hovered = self.hovered is not None and spot.rect.contains(self.hovered)
                    paint_row(p, spot, theme, current and not spot.row.cured, link, hovered)
            except Exception as error:
                TROUBLE.report(error)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Wrap the sentences anew."""
        self._lay_out()

    # --- hands ---

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show what the pointer is over."""
        self.hovered = event.position()
        on_link = any(felt.contains(self.hovered) for s in self.spots() for _, felt in s.targets)
        self.setCursor(Qt.CursorShape.PointingHandCursor if on_link else Qt.CursorShape.ArrowCursor)
        self.update()

    def leaveEvent(self, event: object) -> None:
        """Forget the pointer."""
        self.hovered = None
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to the finding that is pressed, or do what its link says."""
        if event.button() != Qt.MouseButton.LeftButton:
            return
        for spot in self.spots():
            for word, felt in spot.targets:
                if felt.contains(event.position()):
                    self._do_link(spot.row, word)
                    return
            if spot.rect.contains(event.position()) and not spot.row.cured:
                self.go_to(spot.row.finding)
                return

    def go_to(self, finding: Finding) -> None:
        """Open a finding and have it shown on the Wall."""
        self.link = -1
        self.chosen.emit(finding)

    def _do_link(self, row: Row, word: str) -> None:
        key = key_of(row.finding)
        act = next((a for a in acts_of(row.finding, self.place.shown) if a.words == word), None)
        if act is not None:
            self.link = -1
            self._do_act(act)
        elif word == "Why?":
            self.why = None if self.why == key else key
        elif word == "Let it be":
            self.ask(row.finding)
        elif word == "Let it speak":
            self.place.do(LetFindingSpeak(row.finding.rule, row.finding.subjects))
        self.follow()

    def _do_act(self, act: FindingAct) -> None:
        if act.edit is not None:
            self.place.do(act.edit)
        if act.stage:
            self.stage_wanted.emit(act.stage)

    def ask(self, finding: Finding) -> None:
        """Ask why a should or a note may be; a must is never let be."""
        if finding.severity == "must" or finding.let_be is not None:
            return
        self.place.take_up(finding)
        self.asking = key_of(finding)
        self.reason.clear()
        self.follow()
        self.reason.setFocus(Qt.FocusReason.OtherFocusReason)

    def _let_be(self, reason: str) -> None:
        finding = next((f for f in self.place.verdict.findings if key_of(f) == self.asking), None)
        self._stop_asking()
        if finding is not None:
            self.place.do(LetFindingBe(finding.rule, finding.subjects, finding.measure, reason))

    def _stop_asking(self) -> None:
        self.asking = None
        self.setFocus(Qt.FocusReason.OtherFocusReason)  # before the field that has the keys is hidden
        self.reason.hide()
        self.follow()

    # --- keys ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk with Up and Down; Enter does what the button or link says, else goes to the finding.

        In an open row with buttons it is the first of them, until Tab has chosen another; Space goes there.
        """
        key = event.key()
        if key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self._step(-1 if key == Qt.Key.Key_Up else 1)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            spot = self.open_spot()
            if spot is None:
                return
            targets = spot.targets
            if 0 <= self.link < len(targets):
                self._do_link(spot.row, targets[self.link][0])
            elif spot.acts and key != Qt.Key.Key_Space:
                self._do_link(spot.row, spot.acts[0][0])
            else:
                self.go_to(spot.row.finding)
        else:
            event.ignore()

    def _step(self, by: int) -> None:
        found = [row.finding for row in self.rows() if not row.cured]
        spot = self.open_spot()
        if not found:
            return
        at = found.index(spot.row.finding) + by if spot is not None else 0
        self.link = -1
        self.place.take_up(found[min(max(at, 0), len(found) - 1)])

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk the links of the open row before the keys go on."""
        spot = self.open_spot()
        count = 0 if spot is None or self.reason.isVisible() else len(spot.targets)
        at = self.link + (1 if forward else -1)
        if self.hasFocus() and -1 <= at < count and at != self.link and count:
            self.link = at
            self.update()
            return True
        self.link = -1
        return super().focusNextPrevChild(forward)
