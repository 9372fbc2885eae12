"""How wide the way in is for a hand or a driver: the widest of several straight ways to a place.

The straight way is tried first and ends the search when it is wide enough; only where it is not are the
tilted ways measured.  After a move only those hands are measured again that the moved thing was or
comes near to.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from bayboard.geometry.corridor import box_distance, free_widths, ways
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
        near = [p for n in changed for p in (*self.things[n].prisms, *things[n].prisms)]
        again = [
            (n, k)
            for n, thing in enumerate(things)
            for k, hand in enumerate(thing.hands)
            if n in changed or self._near(hand, near)
        ]
        return replace(self, things=_measured(things, again, self.length, self.most))

    def _near(self, hand: Hand, things: Iterable[Prism]) -> bool:
        """Return whether what happens to one of the things may change the hand's width."""
        ends = hand.start + self.length * (hand.ways[:1] if hand.straight else hand.ways)
        starts = np.broadcast_to(hand.start, ends.shape)
        return any(bool(np.any(2.0 * box_distance(starts, ends, *p.span) < hand.need)) for p in things)


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
    hands = [(n, k) for n, thing in enumerate(all_) for k in range(len(thing.hands))]
    return Reach(length, most, _measured(all_, hands, length, most))


def _measured(
    things: Sequence[Holder], which: Sequence[tuple[int, int]], length: float, most: float
) -> tuple[Holder, ...]:
    """Return the things with the hands `which` (thing, place in it) measured."""
    prisms = [p for thing in things for p in thing.prisms]
    owner = np.array([n for n, thing in enumerate(things) for _ in thing.prisms], dtype=np.intp)
    hands = {(n, k): replace(things[n].hands[k], width=0.0, straight=False) for n, k in which}
    ready = [key for key, hand in hands.items() if len(hand.ways)]
    for first in (True, False):
        tried = [hands[key].ways[:1] if first else hands[key].ways for key in ready]
        widths = _widest(ready, hands, tried, prisms, owner, length, most)
        for key, width in zip(ready, widths, strict=True):
            hands[key] = replace(hands[key], width=float(width))
            hands[key] = replace(hands[key], straight=first and hands[key].enough)
        ready = [key for key in ready if not hands[key].enough]
    return tuple(
        replace(thing, hands=tuple(hands.get((n, k), hand) for k, hand in enumerate(thing.hands)))
        for n, thing in enumerate(things)
    )


def _widest(
    keys: Sequence[tuple[int, int]],
    hands: Mapping[tuple[int, int], Hand],
    tried: Sequence[Points],
    prisms: Sequence[Prism],
    owner: Indices,
    length: float,
    most: float,
) -> Points:
    """Return the widest of each hand's tried ways past what it does not sit on, (keys,)."""
    if not keys:
        return np.empty(0)
    counts = [len(w) for w in tried]
    starts = np.repeat([hands[key].start for key in keys], counts, axis=0)
    ends = starts + length * np.vstack(tried)
    own = np.repeat([n for n, _ in keys], counts)
    need = np.repeat([min(hands[key].need, most) for key in keys], counts)
    widths = free_widths(starts, ends, prisms, own[:, None] != owner, need)
    return np.maximum.reduceat(widths, np.concatenate(([0], np.cumsum(counts)[:-1])))
