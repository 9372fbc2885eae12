"""Cures looked for beside the window: in order, one finding after the other, for one layout only."""

from collections.abc import Callable, Generator, Sequence
from dataclasses import dataclass
from itertools import count
from typing import TYPE_CHECKING

from bayboard.job.runner import Runner, Ticket
from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.rules.finding import Finding
from bayboard.rules.levels import Named, named
from bayboard.tables.nudge import WINDOW_LOOKS

if TYPE_CHECKING:
    from bayboard.rules.cures import Cure, Curer

_DRAFTS = count(1)


@dataclass(frozen=True, slots=True)
class Asked:
    """A finding to be cured; `draft` numbers its layout, so that one process works it out once."""

    draft: int
    layout: Layout
    finding: Finding


class _Last:
    """What the last finding needed, kept for the next one of the same draft."""

    draft = 0
    curer: "Curer | None" = None


def look_for(asked: Asked) -> "Generator[float, None, tuple[Cure, ...]]":
    """Return what cures a finding, best first; () when no single edit does.  It can be stopped on the way."""
    from bayboard.rules.cures import curer_here  # noqa: PLC0415  only where cures are looked for
    from bayboard.rules.seeking import telling  # noqa: PLC0415

    yield 0.0
    if _Last.curer is None or _Last.draft != asked.draft:
        _Last.draft, _Last.curer = asked.draft, curer_here(asked.layout, WINDOW_LOOKS)
    return (yield from telling(_Last.curer.seek(asked.finding), 0.0))


class Search:
    """The search for cures of one layout at a time.

    Always true: what `found` gives is of the layout last followed; one task runs at most.  `tell` is called
    when something was found, or found not to be.
    """

    def __init__(self, runner: Runner, tell: Callable[[], None]) -> None:
        self._runner = runner
        self._tell = tell
        self._layout: Layout | None = None
        self._draft = 0
        self._found: dict[Named, tuple[Cure, ...]] = {}
        self._wanted: list[Finding] = []
        self._ticket: Ticket | None = None
        self._at: Named | None = None

    def follow(self, layout: Layout, wanted: Sequence[Finding]) -> None:
        """Look for cures of these findings of the layout, in this order; what is known of it stays."""
        if layout is not self._layout:
            self.rest()
            self._layout, self._draft, self._found = layout, next(_DRAFTS), {}
        self._wanted = [f for f in wanted if named(f) not in self._found and named(f) != self._at]
        self._next()

    def rest(self) -> None:
        """Look no further until the next `follow`: something is in the hand."""
        if self._ticket is not None:
            self._ticket.stop()
        self._ticket, self._at, self._wanted = None, None, []

    def found(self, finding: Finding, layout: Layout) -> "tuple[Cure, ...] | None":
        """Return the cures of a finding of this layout, () for none, None while nobody knows."""
        return self._found.get(named(finding)) if layout is self._layout else None

    def looking(self, finding: Finding) -> bool:
        """Return whether cures of this finding are being looked for."""
        return named(finding) == self._at or any(named(f) == named(finding) for f in self._wanted)

    def broke(self) -> None:
        """Give the finding up whose search broke, which was reported, and go on with the next."""
        if self._at is not None:
            self._take(self._at, ())

    def _next(self) -> None:
        if self._ticket is not None or not self._wanted or self._layout is None:
            return
        finding = self._wanted.pop(0)
        self._at = key = named(finding)
        draft = self._draft

        def done(cures: "tuple[Cure, ...]") -> None:
            """Take the answer, unless another layout is followed by now."""
            if draft == self._draft and self._at == key:
                self._take(key, cures)

        self._ticket = Ticket()  # a runner in place is done before it gives its own
        ticket = self._runner.start(look_for, Asked(draft, self._layout, finding), done)
        if self._at == key and draft == self._draft:
            self._ticket = ticket

    def _take(self, key: Named, cures: "tuple[Cure, ...]") -> None:
        self._found[key] = cures
        self._at = self._ticket = None
        self._tell()
        self._next()


def still_cures(layout: Layout, finding: Finding, cure: "Cure") -> bool:
    """Return whether a cure does on `layout` what was said of it: the finding goes, or eases; no new must.

    For a cure that was found for another layout; False also where its edit cannot be done.
    """
    from bayboard.rules.check import check  # noqa: PLC0415

    try:
        after = check(cure.edit.apply(layout))
    except (Refused, KeyError):
        return False
    musts = {named(f) for f in check(layout).findings if f.severity == "must"}
    if any(f.severity == "must" and named(f) not in musts for f in after.findings):
        return False
    left = next((f for f in after.findings if named(f) == named(finding)), None)
    return left is None or (not cure.gone and finding.severity == "must" and left.severity != "must")
