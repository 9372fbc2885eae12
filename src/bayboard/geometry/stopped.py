"""Where a line is stopped on its way: the first solid that it runs into."""

from typing import NamedTuple

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.geometry.solids import Solids, inside, near


class Stop(NamedTuple):
    """Where a line is stopped, (3,), and the owner of the solid that stops it."""

    at: Points
    owner: int


def stopped(start: Points, end: Points, rows: Solids) -> Stop | None:
    """Return where the segment first runs inside a solid for some length, None where it is free.

    The same lines are free as for `solids.blocked`: one that grazes a rim is.
    """
    segment, piece = near(start[None], end[None], rows)
    starts, ends = start[None][segment], end[None][segment]
    into, out = inside(starts, ends, rows, piece)
    enters = np.where(np.maximum(into, 0.0) < np.minimum(out, 1.0), np.maximum(into, 0.0), np.inf)
    if not len(enters) or not np.isfinite(enters.min()):
        return None
    first = int(enters.argmin())
    return Stop(start + enters[first] * (end - start), int(rows.owner[piece[first]]))
