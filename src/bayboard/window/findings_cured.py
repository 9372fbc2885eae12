"""The rows of cured findings: each stays two seconds where it stood, so that the list does not jump."""

import time
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from bayboard.rules.finding import Finding
from bayboard.rules.levels import Named, named

STAYS = 2.0  # s that a cured finding's row stays under the finger


@dataclass(frozen=True, slots=True)
class Gone:
    """A finding that is gone, where its row stood, and until when (s) that is shown."""

    finding: Finding
    row: int
    until: float


class Cured:
    """Remembers what was cured since the last edit that was kept.

    What comes and goes while a stand-in is in hand was never there to be cured.
    """

    def __init__(self) -> None:
        self._gone: tuple[Gone, ...] = ()
        self._known: tuple[Finding, ...] = ()
        self._seen: tuple[Finding, ...] = ()

    def forget(self) -> None:
        """Begin anew with another vehicle."""
        self._gone, self._known, self._seen = (), (), ()

    def follow(self, now: Iterable[Finding], rows: Sequence[Finding], kept: bool) -> None:
        """Take over what is found now; `rows` are the findings listed, `kept`: no preview is shown."""
        gone = [g for g in self._gone if g.until > time.monotonic()]
        if tuple(now) != self._seen:
            self._seen = tuple(now)
            gone = self._mourned(gone, {named(f) for f in self._seen})
        self._gone = tuple(sorted(gone, key=lambda g: g.row))
        if kept:
            self._known = tuple(rows)

    def _mourned(self, gone: list[Gone], there: set[Named]) -> list[Gone]:
        """Return what is shown as gone now that other findings are there."""
        gone = [g for g in gone if named(g.finding) not in there]
        told = there | {named(g.finding) for g in gone}
        until = time.monotonic() + STAYS
        return gone + [
            Gone(finding, row, until)
            for row, finding in enumerate(self._known)
            if named(finding) not in told and finding.let_be is None
        ]

    @property
    def gone(self) -> tuple[Gone, ...]:
        """Return what is still shown, in the order of the list."""
        return self._gone

    def wait(self) -> int | None:
        """Return after how many ms the next row goes, None where none is shown."""
        if not self._gone:
            return None
        return max(round((min(g.until for g in self._gone) - time.monotonic()) * 1000), 0) + 1
