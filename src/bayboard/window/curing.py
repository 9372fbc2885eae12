"""Cures for the findings on screen: looked for while the hands rest, shown in chalk, taken as one step."""

from PySide6.QtCore import QObject, QTimer, Signal

from bayboard.job.cures import Search, still_cures
from bayboard.job.runner import Runner
from bayboard.rules.finding import Finding
from bayboard.window.finding_acts import OWN_ACTS, FindingAct, acts_of
from bayboard.window.loud import heard
from bayboard.window.workplace import Workplace

REST = 150  # ms without a change before cures are looked for
MOST = 12  # findings, the worst first, that are looked at before they are asked for
LOOKING, NONE = "looking for a move…", "No single move cures it."
MOVED_ON = "Things have moved since. That no longer cures it."


class Curing(QObject):
    """Between the workplace and the search: it never looks while something is in the hand."""

    told = Signal()  # something was found

    def __init__(self, place: Workplace, runner: Runner, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.place = place
        self.search = Search(runner, self.told.emit)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST)
        self._rest.timeout.connect(self.look)
        place.changed.connect(self._wait)
        place.looked.connect(self._wait)
        self._wait()

    def _wait(self) -> None:
        """Look for cures when the hands rest."""
        if self._busy():
            self._rest.stop()
            self.search.rest()
        else:
            self._rest.start()

    def _busy(self) -> bool:
        place = self.place
        return bool(place.hand.pieces) or place.shown is not place.layout or place.job.looking

    def look(self) -> None:
        """Look for cures now: of the finding spoken of first, then of the worst that shout."""
        if not self._busy():
            self.search.follow(self.place.layout, self.wanted())

    def wanted(self) -> list[Finding]:
        """Return the findings whose cures are looked for, in order."""
        place = self.place
        spoken = place.spoken_of()
        worst = heard(place.verdict, place.rooms)[:MOST]
        found = worst if spoken is None or spoken.let_be is not None else [spoken, *worst]
        return [f for f in dict.fromkeys(found) if f.rule not in OWN_ACTS]

    def acts(self, finding: Finding) -> tuple[FindingAct, ...]:
        """Return the buttons of a finding as far as they are known."""
        layout = self.place.layout
        shown = self.place.shown
        return acts_of(finding, shown, (self.search.found(finding, layout) or ()) if shown is layout else ())

    def hint(self, finding: Finding) -> str:
        """Return what is said where a finding has no button: one is looked for, or there is none."""
        if finding.rule in OWN_ACTS or finding.let_be is not None or self._busy():
            return ""
        found = self.search.found(finding, self.place.layout)
        if found is None:
            return LOOKING
        return "" if found else NONE

    def take(self, finding: Finding, act: FindingAct) -> bool:
        """Do a finding's cure as one step; one found for another layout is tried first.

        Returns whether it was done; why not is said in a line.
        """
        place = self.place
        if act.edit is None:
            return False
        stale = act.cure is not None and act.found_for is not place.layout
        if stale and act.cure is not None and not still_cures(place.layout, finding, act.cure):
            place.said.emit(MOVED_ON)
            self._wait()
            return False
        return place.do(act.edit)
