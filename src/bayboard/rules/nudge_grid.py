"""The moves a nudge may be: eight ways on a fine grid, shortest first."""

from functools import lru_cache
from math import hypot

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.model.layout import Units
from bayboard.model.rounding import rounded
from bayboard.tables.nudge import MOST, STEP

WAYS = ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, 1), (-1, -1), (1, -1))
"""Right, left, up, down, then the diagonals from upper right on, counter-clockwise."""


@lru_cache(maxsize=2)
def moves(units: Units) -> Points:
    """Return every move of the grid, (n, 2) mm, by length, those of one length in the order of `WAYS`."""
    found, step = [], STEP[units]
    for rank, (x, y) in enumerate(WAYS):
        count = 1
        while hypot(x * count * step, y * count * step) <= MOST:
            found.append((count * hypot(x, y), rank, rounded(x * count * step), rounded(y * count * step)))
            count += 1
    return np.array([(dx, dy) for _, _, dx, dy in sorted(found)])
