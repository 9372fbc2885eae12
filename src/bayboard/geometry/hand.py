"""How wide the way in is for a hand or a driver: the widest of several straight ways to a place.

The straight way is tried first and ends the search when it is wide enough; only where it is not are the
tilted ways measured.  After a move only those hands are measured again that the moved thing was or
comes near to.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from bayboard.geometry.corridor import box_distances, free_widths, ways
from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Prism
from bayboard.geometry.solids import Indices

HAIR = 1e-9  # mm; what floating point leaves over
TILTS = (15.0, 30.0, 45.0)  # degrees a hand may lean from the straight way
AROUND = 12  # ways round each tilt


@dataclass(frozen=True, eq=False, slots=True)
class Hand:
    """A place to be reached from `start`: along `ways` (n, 3), unit vectors; `need` mm wide.

    `width` is the widest free diameter found, `need` or less; `straight` tells that the first way
    alone is wide enough.
    """

    start: Points
    ways: Points
    need: float
    width: float = 0.0
    straight: bool = False

    @property
    def enough(self) -> bool:
        """Return whether the widest way is as wide as needed."""
        return self.width >= self.need - HAIR


@dataclass(frozen=True, eq=False, slots=True)
class Holder:
    """Something that stands in the way of others' hands and may have places to be reached."""

    prisms: tuple[Prism, ...]
    hands: tuple[Hand, ...]


@dataclass(frozen=True, eq=False, slots=True)
class Reach:
    """All hands of all things, measured past all other things; `most` is the widest told."""

    length: float
    most: float
    things: tuple[Holder, ...]

    def moved(self, changed: Mapping[int, Holder]) -> "Reach":
        """Return the reach with some things, by number, put elsewhere; the same as measuring afresh."""
        things = [changed.get(n, thing) for n, thing in enumerate(self.things)]
        there = [p for n in changed for p in (*self.things[n].prisms, *things[n].prisms)]
        others = [(n, k) for n, k in _places(things) if n not in changed]
        near = self._near([things[n].hands[k] for n, k in others], there)
        again = [key for key, is_near in zip(others, near, strict=True) if is_near]
        again += [(n, k) for n, k in _places(things) if n in changed]
        return replace(self, things=_measured(things, again, self.length, self.most))

    def _near(self, hands: Sequence[Hand], things: Sequence[Prism]) -> list[bool]:
        """Return for each hand whether what happens to one of the things may change its width."""
        if not hands or not things:
            return [False] * len(hands)
        axes = _axes(hands, [h.ways[:1] if h.straight else h.ways for h in hands], self.length)
        apart = box_distances(axes.starts, axes.ends, things).min(axis=1)
        need = np.array([h.need for h in hands])
        near = 2.0 * apart < need[axes.hand]
        return [bool(found) for found in np.bincount(axes.hand, near, len(hands)) > 0]


class _Axes(NamedTuple):
    """Axes to be measured, and the number of the hand each belongs to."""

    starts: Points
    ends: Points
    hand: Indices


def _axes(hands: Sequence[Hand], tried: Sequence[Points], length: float) -> _Axes:
    hand_of = np.repeat(np.arange(len(hands)), [len(ways) for ways in tried])
    starts = np.array([h.start for h in hands]).reshape(-1, 3)[hand_of]
    return _Axes(starts, starts + length * np.vstack([np.empty((0, 3)), *tried]), hand_of)


def _places(things: Sequence[Holder]) -> list[tuple[int, int]]:
    return [(n, k) for n, thing in enumerate(things) for k in range(len(thing.hands))]


def hand(start: Points, facing: Points, first: Points, length: float, floor: float, need: float) -> Hand:
    """Return the hand that reaches `length` mm along `facing` or tilted from it.

    The first tilted way of each round leans towards `first`.  Ways that end below z `floor` do
    not count.
    """
    every = ways(facing, first, TILTS, AROUND)
    return Hand(start, every[start[2] + every[:, 2] * length >= floor - HAIR], need)


def reached(things: Iterable[Holder], length: float, most: float) -> Reach:
    """Return the reach of all hands along axes `length` mm long."""
    all_ = list(things)
    return Reach(length, most, _measured(all_, _places(all_), length, most))


def _measured(
    things: Sequence[Holder], which: Sequence[tuple[int, int]], length: float, most: float
) -> tuple[Holder, ...]:
    """Return the things with the hands `which` (thing, place in it) measured."""
    prisms = [p for thing in things for p in thing.prisms]
    owner = np.array([n for n, thing in enumerate(things) for _ in thing.prisms], dtype=np.intp)
    hands = {(n, k): replace(things[n].hands[k], width=0.0, straight=False) for n, k in which}
    ready = [key for key, hand in hands.items() if len(hand.ways)]
    for first in (True, False):
        tried = [hands[key] for key in ready]
        axes = _axes(tried, [h.ways[:1] if first else h.ways for h in tried], length)
        own = np.array([n for n, _ in ready], dtype=np.intp)[axes.hand]
        cap = np.array([min(h.need, most) for h in tried])[axes.hand]
        widths = free_widths(axes.starts, axes.ends, prisms, own[:, None] != owner, cap)
        first_axes = np.flatnonzero(np.diff(axes.hand, prepend=-1))
        widest = np.maximum.reduceat(widths, first_axes).tolist() if ready else []
        for key, width in zip(ready, widest, strict=True):
            wide = replace(hands[key], width=width)
            hands[key] = replace(wide, straight=first and wide.enough)
        ready = [key for key in ready if not hands[key].enough]
    return tuple(
        replace(thing, hands=tuple(hands.get((n, k), hand) for k, hand in enumerate(thing.hands)))
        if any((n, k) in hands for k in range(len(thing.hands)))
        else thing
        for n, thing in enumerate(things)
    )
