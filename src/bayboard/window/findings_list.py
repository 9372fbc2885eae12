"""The list of findings under hands and keys: going to one, its cures, its menu, letting it be."""

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from bayboard.edits.let_finding_be import LetFindingBe, LetFindingSpeak
from bayboard.rules.finding import Finding
from bayboard.window.finding_acts import FindingAct
from bayboard.window.finding_menu import SHOW_IT, finding_lines
from bayboard.window.findings_rows import LET_BE, LET_SPEAK, WHY, Fold, Row, hit
from bayboard.window.findings_sheet import FindingsSheet
from bayboard.window.workplace import Workplace, key_of


class FindingsList(FindingsSheet):
    """The rows.  Up and Down walk, Enter takes the first cure, Tab walks the buttons of the open row."""

    chosen = Signal(object)  # a finding to go to
    why_wanted = Signal(object)  # a finding whose rule is to be told
    menu_wanted = Signal(QPoint)  # global place of a menu for the open finding
    stage_wanted = Signal(str)  # the stage that a finding's button goes to

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self.reason.given.connect(self._let_be)
        self.reason.left.connect(self._stop_asking)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Findings")

    # --- hands ---

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show what the pointer is over."""
        self.hovered = event.position()
        under = hit(self.spots(), self.hovered)
        on_link = under is not None and (under[1] or isinstance(under[0].row, Fold))
        self.setCursor(Qt.CursorShape.PointingHandCursor if on_link else Qt.CursorShape.ArrowCursor)
        self._show_cure()
        self.update()

    def leaveEvent(self, event: object) -> None:
        """Forget the pointer."""
        self.hovered = None
        self._show_cure()
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to the finding that is pressed, or do what its link says."""
        under = hit(self.spots(), event.position())
        if event.button() != Qt.MouseButton.LeftButton or under is None:
            return
        spot, word = under
        if isinstance(spot.row, Fold):
            self.unfold(spot.row.stage)
        elif word:
            self._do_target(spot.row, word)
        elif not spot.row.cured:
            self.go_to(spot.row.finding)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of the finding there, or, from the keyboard, of the open one."""
        by_keys = event.reason() == QContextMenuEvent.Reason.Keyboard
        under = None if by_keys else hit(self.spots(), event.pos().toPointF())
        spot = self.open_spot() if under is None else under[0]
        if spot is not None and isinstance(spot.row, Row) and not spot.row.cured:
            self.place.take_up(spot.row.finding)
            at = spot.rect.center().toPoint() if by_keys else event.pos()
            self.menu_wanted.emit(self.mapToGlobal(at))

    def menu_lines(self) -> list[tuple[str, str, str]]:
        """Return the menu of the open finding: what its buttons and links do, and where it is."""
        return finding_lines(self.open_spot(), self.place.verdict)

    def do_word(self, word: str) -> bool:
        """Do a line of the open finding's menu; return whether it was one of its own."""
        spot = self.open_spot()
        own = () if spot is None else [SHOW_IT, *(known for known, _ in spot.targets)]
        if spot is None or not isinstance(spot.row, Row) or word not in own:
            return False
        if word == SHOW_IT:
            self.go_to(spot.row.finding)
        else:
            self._do_target(spot.row, word)
        return True

    def go_to(self, finding: Finding) -> None:
        """Open a finding and have it shown on the Wall."""
        self.link, self.at_fold = -1, None
        self.chosen.emit(finding)

    def unfold(self, stage: str) -> None:
        """Unfold what another stage's rules found, or fold it again."""
        shown = next((ln for ln in self._listed() if isinstance(ln, Fold) and ln.stage == stage), None)
        if shown is not None and shown.unfolded:
            self.unfolded.discard(stage)
            self.place.take_up(None)
        else:
            self.unfolded.add(stage)
        self.follow()

    def _do_target(self, row: Row, word: str) -> None:
        act = next((a for a in self.acts(row.finding) if a.words == word), None)
        if act is not None:
            self.link = -1
            self._do_act(row.finding, act)
        elif word == WHY:
            self.why_wanted.emit(row.finding)
        elif word == LET_BE:
            self.ask(row.finding)
        elif word == LET_SPEAK:
            self.place.do(LetFindingSpeak(row.finding.rule, row.finding.subjects))
        self.follow()

    def _do_act(self, finding: Finding, act: FindingAct) -> None:
        if act.cure is not None and self.curing is not None:
            self.curing.take(finding, act)
        elif act.edit is not None:
            self.place.do(act.edit)
        if act.stage:
            self.stage_wanted.emit(act.stage)

    def cure_now(self) -> bool:
        """Take the first cure of the finding spoken of; return whether it has one."""
        spoken = self.place.spoken_of()
        acts = () if spoken is None or spoken.let_be is not None else self.acts(spoken)
        if spoken is None or not acts:
            return False
        self._do_act(spoken, acts[0])
        self.follow()
        return True

    # --- letting be ---

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
            self._enter(key == Qt.Key.Key_Space)
        else:
            event.ignore()

    def _enter(self, space: bool) -> None:
        spot = self.open_spot()
        if self.at_fold is not None:
            self.unfold(self.at_fold)
        elif spot is not None and isinstance(spot.row, Row):
            if 0 <= self.link < len(spot.targets):
                self._do_target(spot.row, spot.targets[self.link][0])
            elif spot.acts and not space:
                self._do_target(spot.row, spot.acts[0][0])
            else:
                self.go_to(spot.row.finding)

    def _step(self, by: int) -> None:
        stops = [ln for ln in self.lines() if isinstance(ln, Fold) or not ln.cured]
        if not stops:
            return
        here = next((i for i, ln in enumerate(stops) if self._here(ln)), None)
        stop = stops[0 if here is None else min(max(here + by, 0), len(stops) - 1)]
        self.link = -1
        self.at_fold = stop.stage if isinstance(stop, Fold) else None
        if isinstance(stop, Row):
            self.place.take_up(stop.finding)
        else:
            self.follow()
            self.grown.emit()

    def _here(self, line: Row | Fold) -> bool:
        if self.at_fold is not None:
            return isinstance(line, Fold) and line.stage == self.at_fold
        return isinstance(line, Row) and line.open

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk the buttons and links of the open row before the keys go on."""
        spot = self.open_spot()
        away = spot is None or self.reason.isVisible() or self.at_fold is not None
        count = 0 if away or spot is None else len(spot.targets)
        at = self.link + (1 if forward else -1)
        if self.hasFocus() and -1 <= at < count and at != self.link and count:
            self.link = at
            self._show_cure()
            self.update()
            return True
        self.link = -1
        return super().focusNextPrevChild(forward)
