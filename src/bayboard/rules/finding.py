"""What a rule says."""

from typing import Literal

import msgspec

Severity = Literal["must", "should", "note"]
SEVERITIES: tuple[Severity, ...] = ("must", "should", "note")


class Nudge(msgspec.Struct, frozen=True):
    """A move of one stand-in that cures a finding: mm in bay axes."""

    gear: str
    by: tuple[float, float]


class Finding(msgspec.Struct, frozen=True, kw_only=True):
    """One thing that is wrong, how much, and where (bay axes, mm).

    `limit` is the value whose crossing gives the severity.  `let_be` is the reason when the
    fabricator chose to leave it.
    """

    rule: str
    severity: Severity
    subjects: tuple[str, ...]
    measure: float | None
    limit: float | None
    unit: str
    at: tuple[float, float] | None
    says: str
    let_be: str | None = None
    nudge: Nudge | None = None


class Unchecked(msgspec.Struct, frozen=True, kw_only=True):
    """A rule could not look at something because a measure is missing."""

    rule: str
    subjects: tuple[str, ...]
    says: str


Said = Finding | Unchecked


def heads(said: Said) -> tuple[str, ...]:
    """Return the ids of the things a saying is about: `A1` for `A1.dial` and for `A1#2`."""
    return tuple(subject.partition(".")[0].partition("#")[0] for subject in said.subjects)
