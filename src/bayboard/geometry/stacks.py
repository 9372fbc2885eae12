"""Boxes that stand over one another."""

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.outline import Points


def room_above(lower: Points, upper: Points) -> Points:
    """Return the mm between the top of each lower box and the foot of each upper, (len(lower), len(upper)).

    Boxes are (x0, y0, x1, y1).  inf where the upper is not wholly above, or they share no width.
    """
    room = upper[None, :, 1] - lower[:, None, 3]
    right = np.minimum(lower[:, None, 2], upper[None, :, 2])
    shared = right - np.maximum(lower[:, None, 0], upper[None, :, 0])
    return np.where((room >= -HAIR) & (shared > HAIR), np.maximum(room, 0.0), np.inf)
