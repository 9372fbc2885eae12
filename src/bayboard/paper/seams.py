"""Where to cut an axis into sheets so that no seam comes near a hole.

The widest clearance is found by bisection: for a tried clearance every hole forbids a stretch of the axis,
and a walk that always jumps as far as the paper reaches, stepping back out of forbidden stretches, shows
whether the seams suffice.  Seams are then evened out within what that clearance allows.
"""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

Span = tuple[float, float]
Seams = tuple[float, ...]

WIDEST = 30.0  # mm; more clearance than this is no better, even sheets are
NARROWEST = 20.0  # mm; no strip between two seams is narrower: it could not be taped
_HALVINGS = 24  # leaves the clearance sure to 0.00001 mm


@dataclass(frozen=True, slots=True)
class Axis:
    """An axis to be cut, in mm.

    The first seam may lie `first` from `start`, a seam `pitch` from the one before, `end` `last` from
    the last seam.  `holes` are the extents of holes; in `closed` no seam may lie at all.
    """

    start: float
    end: float
    first: float
    pitch: float
    last: float
    holes: tuple[Span, ...] = ()
    closed: tuple[Span, ...] = ()

    def reversed(self) -> "Axis":
        """Return the axis read from its end, x' = -x."""
        return Axis(
            -self.end,
            -self.start,
            self.last,
            self.pitch,
            self.first,
            tuple((-b, -a) for a, b in self.holes),
            tuple((-b, -a) for a, b in self.closed),
        )


def fewest(axis: Axis) -> int:
    """Return the fewest seams that reach the end, holes apart."""
    length = axis.end - axis.start
    if length <= axis.first + axis.last - axis.pitch + 1e-9:
        return 0
    return 1 + max(0, ceil((length - axis.first - axis.last) / axis.pitch - 1e-9))


def latest(axis: Axis, count: int, clear: float) -> Seams | None:
    """Return at most `count` seams, each as far along as can be, that keep `clear`; None without any."""
    return _walk(axis, count, _forbidden(axis, clear))


def earliest(axis: Axis, count: int, clear: float) -> Seams | None:
    """Return at most `count` seams, each as near the start as can be, that keep `clear`; None without any."""
    found = latest(axis.reversed(), count, clear)
    return None if found is None else tuple(-s for s in reversed(found))


def best(axis: Axis, count: int) -> tuple[float, Seams] | None:
    """Return the widest clearance of at most `count` seams, `WIDEST` or less, and the seams.

    Negative when one must cut a hole.  None when so few do not reach, or `closed` leaves no place.
    """
    low, high = -max((b - a for a, b in axis.holes), default=0.0) / 2 - 1e-6, WIDEST
    if latest(axis, count, low) is None:
        return None
    if latest(axis, count, high) is not None:
        low = high
    for _ in range(_HALVINGS if low < high else 0):
        middle = (low + high) / 2
        low, high = (low, middle) if latest(axis, count, middle) is None else (middle, high)
    return low, _evened(axis, count, low)


def even(axis: Axis, count: int, clear: float) -> Seams | None:
    """Return at most `count` seams that keep `clear`, as even as that allows; None without any."""
    return None if latest(axis, count, clear) is None else _evened(axis, count, clear)


def through(axis: Axis, at: float, clear: float) -> Seams | None:
    """Return the fewest seams that keep `clear`, one of them at `at`; None when there are none."""
    if any(a < at < b for a, b in _forbidden(axis, clear)):
        return None
    after = _fewest_from(axis, at, clear)
    before = _fewest_from(axis.reversed(), -at, clear)
    if after is None or before is None:
        return None
    return (*(-s for s in reversed(before)), at, *after)


def clearance(seams: Sequence[float], holes: Sequence[Span]) -> float:
    """Return the least distance from a seam to a hole's edge, negative inside a hole, `WIDEST` at most."""
    return min((max(a - s, s - b) for s in seams for a, b in holes), default=WIDEST)


def _fewest_from(axis: Axis, at: float, clear: float) -> Seams | None:
    """Return the seams beyond a seam at `at`."""
    seams: list[float] = []
    forbidden = _forbidden(axis, clear)
    while axis.end - (seams[-1] if seams else at) > axis.last:
        here = seams[-1] if seams else at
        reached = _back(min(here + axis.pitch, axis.end - NARROWEST), forbidden)
        if reached < here + NARROWEST:
            return None
        seams.append(reached)
    return tuple(seams)


def _forbidden(axis: Axis, clear: float) -> list[Span]:
    """Return the open stretches in which no seam may lie, merged, in order."""
    grown = [(a - clear, b + clear) for a, b in axis.holes if b + clear > a - clear]
    merged: list[Span] = []
    for a, b in sorted([*grown, *axis.closed]):
        if merged and a < merged[-1][1]:
            merged[-1] = (merged[-1][0], max(b, merged[-1][1]))
        else:
            merged.append((a, b))
    return merged


def _back(at: float, forbidden: list[Span]) -> float:
    """Return the nearest allowed place at or before `at`."""
    i = bisect_left(forbidden, (at, at)) - 1
    return forbidden[i][0] if i >= 0 and at < forbidden[i][1] else at


def _onward(at: float, forbidden: list[Span]) -> float:
    """Return the nearest allowed place at or after `at`."""
    i = bisect_left(forbidden, (at, at)) - 1
    return forbidden[i][1] if i >= 0 and at < forbidden[i][1] else at


def _walk(axis: Axis, most: int, forbidden: list[Span]) -> Seams | None:
    """Return the seams of a walk that goes as far as it can each time; no more of them than it takes."""
    if not fewest(axis):
        return ()
    seams: list[float] = []
    reach, before = axis.start + axis.first, axis.start
    for _ in range(most):
        at = _back(min(reach, axis.end - NARROWEST), forbidden)
        if at < before + NARROWEST:
            return None
        seams.append(at)
        if at >= axis.end - axis.last - 1e-9:
            return tuple(seams)
        reach, before = at + axis.pitch, at
    return None


def _evened(axis: Axis, most: int, clear: float) -> Seams:
    """Return seams that keep `clear` and part the axis as evenly as that allows."""
    soonest, furthest = earliest(axis, most, clear), latest(axis, most, clear)
    assert furthest is not None
    count = len(furthest)
    if soonest is None or len(soonest) != count:
        return furthest
    forbidden = _forbidden(axis, clear)
    seams: list[float] = []
    before = axis.start
    for i in range(count):
        wanted = axis.start + (i + 1) * (axis.end - axis.start) / (count + 1)
        reach = axis.start + axis.first if i == 0 else before + axis.pitch
        low, high = max(soonest[i], before + NARROWEST), min(reach, furthest[i])
        there = min(max(wanted, low), high)
        places = [p for p in (_back(there, forbidden), _onward(there, forbidden)) if low <= p <= high]
        if not places:
            return furthest
        before = min(places, key=lambda p: abs(p - wanted))
        seams.append(before)
    return tuple(seams)
