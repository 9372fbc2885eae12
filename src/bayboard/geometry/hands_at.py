"""Hands at many places: their own stand-in moves, or another that may stand in the way.

Moving a thing one way is moving the axes of a hand the other way, so nothing is built anew for a place.
"""

from collections.abc import Iterator, Sequence

import numpy as np

from bayboard.geometry.corridor import free_widths
from bayboard.geometry.hand import AROUND, HAIR, Hand
from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Prism
from bayboard.geometry.solids import Flags


def wide_enough(hand: Hand, shifts: Points, things: Sequence[Prism], length: float, most: float) -> Flags:
    """Return at which shifts of a hand in plan, (n, 2), it is wide enough past things that stay, (n,)."""
    enough = np.zeros(len(shifts), dtype=np.bool_)
    for ways in _rounds(hand):
        left = np.flatnonzero(~enough)
        enough[left] = _open(hand, shifts[left], ways, things, length, most).any(axis=1)
    return enough


def wide_past(
    hand: Hand, shifts: Points, moving: Sequence[Prism], rest: Sequence[Prism], length: float, most: float
) -> Flags:
    """Return at which shifts of other things, (n, 2), a hand is wide enough past them and the rest, (n,)."""
    enough = np.zeros(len(shifts), dtype=np.bool_)
    for ways in _rounds(hand):
        free = ways[_open(hand, np.zeros((1, 2)), ways, rest, length, most)[0]]
        if len(free):
            left = np.flatnonzero(~enough)
            enough[left] = _open(hand, -shifts[left], free, moving, length, most).any(axis=1)
    return enough


def _rounds(hand: Hand) -> Iterator[Points]:
    """Yield the hand's ways: the straight one, which mostly does, then round by round."""
    if len(hand.ways):
        yield hand.ways[:1]
        for first in range(1, len(hand.ways), AROUND):
            yield hand.ways[first : first + AROUND]


def _open(
    hand: Hand, shifts: Points, ways: Points, things: Sequence[Prism], length: float, most: float
) -> Flags:
    """Return which ways are wide enough at which shifts, (shifts, ways)."""
    starts = np.repeat(hand.start + np.column_stack((shifts, np.zeros(len(shifts)))), len(ways), axis=0)
    ends = starts + length * np.tile(ways, (len(shifts), 1))
    counted = np.ones((1, len(things)), dtype=np.bool_)
    wide = free_widths(starts, ends, things, counted, np.full(len(starts), min(hand.need, most)))
    return np.asarray(wide >= hand.need - HAIR).reshape(len(shifts), len(ways))


def comes_near(hand: Hand, shifts: Points, moving: Sequence[Prism], length: float) -> bool:
    """Return whether things that are shifted come so near to any way of the hand that they may matter."""
    ends = np.vstack([hand.start, hand.start + length * hand.ways])
    low, high = ends.min(axis=0) - hand.need, ends.max(axis=0) + hand.need
    first, last = np.append(shifts.min(axis=0), 0.0), np.append(shifts.max(axis=0), 0.0)
    return any(
        bool(np.all(p.low_corner + first <= high) and np.all(p.high_corner + last >= low)) for p in moving
    )
