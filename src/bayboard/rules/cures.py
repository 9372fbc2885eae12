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
from bayboard.rules.alone import Alone
from bayboard.rules.check import Checker, Verdict
from bayboard.rules.finding import Finding, Nudge
from bayboard.rules.judge import Judge, Wanted
from bayboard.rules.levels import MUST, Named, named
from bayboard.rules.nudging import Nudger
from bayboard.rules.other_edits import other_edits
from bayboard.rules.seeking import Seeking, telling, to_end


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

    def __init__(self, layout: Layout, checker: Checker | None = None, looks: int | None = None) -> None:
        """Take the layout, and a checker that stands at it, if there is one: it is not moved.

        `looks` is for those who wait: at how many places of a stand-in, the nearest first, leads are led anew
        for one finding.  None looks at all that the grid has.
        """
        if checker is None or checker.scene.layout is not layout:
            checker = Checker(layout)
        self._judge = Judge(checker)
        self._nudger = Nudger(self._judge, looks=looks)
        self._nudges: dict[Named, Nudge | None] = {}

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Return the findings of the layout, worst first."""
        return self._judge.findings

    def nudge(self, finding: Finding) -> Nudge | None:
        """Return the shortest move on the grid that cures, None where there is none."""
        return to_end(self._seek_nudge(named(finding)))

    def _seek_nudge(self, name: Named) -> Seeking[Nudge | None]:
        if name not in self._nudges:
            self._nudges[name] = yield from self._nudger.seek(Wanted(name))
        return self._nudges[name]

    def cures(self, finding: Finding) -> tuple[Cure, ...]:
        """Return the cures, best first: the nudge; where no move cures, other single edits, one of a kind.

        Where nothing takes a must away, what makes less of it; () where nothing helps.
        """
        return to_end(self.seek(finding))

    def seek(self, finding: Finding) -> Seeking[tuple[Cure, ...]]:
        """Return the cures; yield between steps, so that the search can be called off."""
        nudge = yield from self._seek_nudge(named(finding))
        if nudge is not None:
            return (Cure(_move(nudge), gone=True, nudge=nudge),)
        wanted = Wanted(named(finding))
        cures = yield from self._others(finding, wanted)
        if cures or finding.severity != "must":
            return cures
        wanted = Wanted(named(finding), MUST)
        eased = yield from self._nudger.seek(wanted)
        if eased is not None:
            return (Cure(_move(eased), gone=False),)
        return (yield from self._others(finding, wanted))

    def _others(self, finding: Finding, wanted: Wanted) -> Seeking[tuple[Cure, ...]]:
        """Return the first edit of each kind that does what is wanted."""
        scene, found = self._judge.scene, []
        alone = Alone(scene, wanted.name, self._nudger.ways)
        for kind in other_edits(scene, finding, self._nudger.movers(wanted.name)):
            for edit in kind:
                yield
                if alone.level(edit) < wanted.below and self._judge.cures(edit, wanted):
                    found.append(Cure(edit, gone=wanted.below == 1))
                    break
        return tuple(found)


def _move(nudge: Nudge) -> MoveGear:
    return MoveGear((nudge.gear,), *nudge.by)


def with_nudges(verdict: Verdict, layout: Layout, looks: int | None = None) -> Verdict:
    """Return the verdict of `layout` with the nudge of every finding that has one; `looks` as for `Curer`."""
    curer = Curer(layout, looks=looks)
    return Verdict(tuple(replace(f, nudge=curer.nudge(f)) for f in verdict.findings), verdict.unchecked)


Asked = tuple[Layout, Sequence[Named]]
Cures = dict[Named, tuple[Cure, ...]]

_standing: list[Checker] = []  # the last of this process


def curer_here(layout: Layout, looks: int | None = None) -> Curer:
    """Return a curer that takes over what this process knew of its last layout, mostly a move away."""
    checker = _standing.pop() if _standing else Checker(layout)
    checker.move(layout)
    _standing.append(checker)
    return Curer(layout, checker, looks)


def cures_task(payload: Asked) -> Generator[float, None, Cures]:
    """Yield the share done; return the cures of the findings asked for by rule and subjects.

    A task as `job.runner` runs them.  Names that the layout has no finding of are left out.
    """
    layout, names = payload
    curer = curer_here(layout)
    by_name = {named(finding): finding for finding in curer.findings}
    found: Cures = {}
    for done, name in enumerate(names):
        yield done / len(names)
        if name in by_name:
            found[name] = yield from telling(curer.seek(by_name[name]), done / len(names))
    return found
