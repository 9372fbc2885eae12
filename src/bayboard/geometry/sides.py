"""The four sides of a box: where each begins, which way it faces, how wide it is."""

from typing import Literal, NamedTuple

import numpy as np

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points

Side = Literal["left", "right", "up", "down"]
SIDES: tuple[Side, ...] = ("left", "right", "up", "down")
FACING: dict[Side, float] = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}  # deg


class Edge(NamedTuple):
    """A side of a box with a place: its middle, the unit vector out of it, its length in mm."""

    middle: Points  # (2,)
    way: Points  # (2,)
    wide: float


def edge(box: tuple[float, float, float, float], side: Side, at: tuple[float, float], turn: float) -> Edge:
    """Return a side of a box (x0, y0, x1, y1) that is turned about its frame's origin and moved to `at`."""
    x0, y0, x1, y1 = box
    middle = {
        "left": (x0, (y0 + y1) / 2.0),
        "right": (x1, (y0 + y1) / 2.0),
        "up": ((x0 + x1) / 2.0, y1),
        "down": ((x0 + x1) / 2.0, y0),
    }[side]
    wide = y1 - y0 if side in ("left", "right") else x1 - x0
    return Edge(outlines.placed([middle], at, turn)[0], np.array(outlines.unit(FACING[side] + turn)), wide)


def box_ring(box: tuple[float, float, float, float], at: tuple[float, float], turn: float) -> Points:
    """Return the corners of a box that is turned about its frame's origin and moved to `at`, (4, 2)."""
    x0, y0, x1, y1 = box
    return outlines.placed([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], at, turn)


def seen_side(side: Side, turn: float) -> Side:
    """Return the side of the wall that a side of a turned box faces most."""
    quarter = round((FACING[side] + turn) / 90.0) % 4
    return next(name for name, angle in FACING.items() if angle == 90.0 * quarter)
