"""The widest straight way in to a place: which way it runs, and how wide it is.

`hand.Reach` stops looking as soon as a way is wide enough; here all of them are measured, over the same ways
and past the same things, so that `min(width, need)` is what it found.
"""

from typing import NamedTuple

import numpy as np

from bayboard.geometry.corridor import free_widths
from bayboard.geometry.hand import Reach
from bayboard.geometry.outline import Points


class WayIn(NamedTuple):
    """A way in: the unit vector it runs along from the place, and its free diameter in mm."""

    way: Points
    width: float


def widest(reach: Reach, thing: int, place: int) -> WayIn | None:
    """Return the widest way to a thing's place, the first of equals, never told wider than `reach.most`.

    None where every way falls behind the board's front.
    """
    hand = reach.things[thing].hands[place]
    if not len(hand.ways):
        return None
    others = [p for n, holder in enumerate(reach.things) if n != thing for p in holder.prisms]
    starts = np.repeat(hand.start[None], len(hand.ways), axis=0)
    counted = np.ones((len(starts), len(others)), dtype=np.bool_)
    most = np.full(len(starts), reach.most)
    widths = free_widths(starts, starts + reach.length * hand.ways, others, counted, most)
    best = int(widths.argmax())
    return WayIn(hand.ways[best], float(widths[best]))
