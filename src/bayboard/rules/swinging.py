"""Seats on their way down: how each turns from up to folded, and what stand-ins take up in its section."""

import numpy as np

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.outline import Points
from bayboard.geometry.sections import spans
from bayboard.geometry.swing import Swing, carried, swept
from bayboard.model.layout import Seat, Span


def swing_of(seat: Seat, off: float) -> Swing | float | None:
    """Return the seat's way from up to folded.

    Where hinge and swing carry *up* more than `off` mm from *folded*: by how much.  None where a measure is
    missing, or where no one can tell which way it turns.
    """
    if seat.up is None or seat.folded is None or seat.hinge is None:
        return None
    way = carried(seat.up, seat.folded, seat.hinge, seat.swing)
    if way is None:
        return None
    angle, away = way
    return swept(seat.up, seat.hinge, angle) if away <= off + HAIR else away


def blocks(rings: Points, x: Span, heights: Points) -> Points:
    """Return what bodies take up in a seat's section, (z0, y0, z1, y1) of (n, 4); nothing beside its `x`.

    `rings` (n, points, 2) in plan, `heights` (n, 2).
    """
    y = spans(rings, np.full(len(rings), x[0]), np.full(len(rings), x[1]))
    return np.column_stack((heights[:, 0], y[:, 0], heights[:, 1], y[:, 1]))
