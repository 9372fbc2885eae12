"""How bad a finding is, as a number, so that many are compared at once."""

import numpy as np
from numpy.typing import NDArray

from bayboard.rules.finding import SEVERITIES, Finding, Severity

Key = tuple[str, ...]
"""The subjects of a finding."""

Named = tuple[str, Key]
"""A finding's rule and subjects: what it is known by."""

Levels = NDArray[np.int8]
"""How bad something is at each of many places."""

LEVEL: dict[Severity, int] = {severity: n for n, severity in enumerate(reversed(SEVERITIES), start=1)}
SILENT, NOTE, SHOULD, MUST = 0, LEVEL["note"], LEVEL["should"], LEVEL["must"]


def named(finding: Finding) -> Named:
    """Return what a finding is known by."""
    return finding.rule, finding.subjects


def head(subject: str) -> str:
    """Return the id of the thing a subject belongs to: `A1` for `A1.dial` and for `A1#2`."""
    return subject.partition(".")[0].partition("#")[0]
