"""What puts a finding right: the shortest move of one stand-in, or one other edit.

A cure is an edit, so that what a button says and what it does come from the same value.  Each is proved by
the whole check: the finding is gone, or less, and no new must has come.
"""

from collections.abc import Generator, Sequence
from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.edits.edit import Edit
from bayboard.edits.move_gear import MoveGear
from bayboard.model.layout import Layout
from bayboard.rules.check import Checker, Verdict
from bayboard.rules.finding import Finding, Nudge
from bayboard.rules.judge import Judge, Wanted
from bayboard.rules.levels import MUST, Named, named
from bayboard.rules.nudging import Nudger


@dataclass(frozen=True)
class Cure:
    """An edit that takes a finding away, or (`gone` False) makes a should or a note of a must.

    `nudge` is the contract's, where the edit is one.
    """

    edit: Edit
    gone: bool
    nudge: Nudge | None = None


class Curer:
    """Finds cures in one layout; what one finding needed is kept for the next."""

    def __init__(self, layout: Layout, checker: Checker | None = None) -> None:
        """Take the layout, and a checker that stands at it, if there is one: it is not moved."""
        if checker is None or checker.scene.layout is not layout:
            checker = Checker(layout)
        self._judge = Judge(checker)
        self._nudger = Nudger(self._judge)
        self._nudges: dict[Named, Nudge | None] = {}

    def nudge(self, finding: Finding) -> Nudge | None:
        """Return the shortest move on the grid that cures, None where there is none."""
        name = named(finding)
        if name not in self._nudges:
            self._nudges[name] = self._nudger.shortest(Wanted(name))
        return self._nudges[name]

    def cures(self, finding: Finding) -> tuple[Cure, ...]:
        """Return the cures, best first: the nudge, other single edits, then what only eases a must."""
        nudge = self.nudge(finding)
        found = [] if nudge is None else [_by_moving(nudge, gone=True)]
        if not found and finding.severity == "must":
            eased = self._nudger.shortest(Wanted(named(finding), MUST))
            found += [] if eased is None else [_by_moving(eased, gone=False)]
        return tuple(found)


def _by_moving(nudge: Nudge, gone: bool) -> Cure:
    return Cure(MoveGear((nudge.gear,), *nudge.by), gone, nudge if gone else None)


def with_nudges(verdict: Verdict, layout: Layout) -> Verdict:
    """Return the verdict of `layout` with the nudge of every finding that has one."""
    curer = Curer(layout)
    return Verdict(tuple(replace(f, nudge=curer.nudge(f)) for f in verdict.findings), verdict.unchecked)


Asked = tuple[Layout, Sequence[Named]]
Cures = dict[Named, tuple[Cure, ...]]

_standing: list[Checker] = []  # the last of this process: the next layout mostly differs by a move


def cures_task(payload: Asked) -> Generator[float, None, Cures]:
    """Yield the share done; return the cures of the findings asked for by rule and subjects.

    A task as `job.runner` runs them.  Names that the layout has no finding of are left out.
    """
    layout, names = payload
    checker = _standing.pop() if _standing else Checker(layout)
    checker.move(layout)
    _standing.append(checker)
    curer = Curer(checker.scene.layout, checker)
    by_name = {named(finding): finding for finding in checker.now.findings}
    found: Cures = {}
    for done, name in enumerate(names):
        yield done / len(names)
        if name in by_name:
            found[name] = curer.cures(by_name[name])
    return found
