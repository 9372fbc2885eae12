"""How far a stand-in at many places would be off the holes that were drilled for it."""

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.model.drilled import listed_screws
from bayboard.model.layout import Gear, Layout
from bayboard.model.placed import Placed
from bayboard.units.angle import short_way


def off_holes(layout: Layout, model: Placed, at: Points) -> Points:
    """Return how far it is at each place (n, 2) from the worst of its drilled pose and its holes, mm.

    `model` is the stand-in as it would stand at (0, 0); 0.0 where nothing of it was drilled.
    """
    made = listed_screws(layout, model.gear)
    planned = [model.point(model.card.screws[n - 1].at) for n in made]
    holes = list(made.values())
    if model.gear.drilled is not None:
        planned.append((0.0, 0.0))
        holes.append(model.gear.drilled.at)
    off = at[:, None, :] + np.array(planned).reshape(-1, 2) - np.array(holes).reshape(-1, 2)
    return np.asarray(np.hypot(off[..., 0], off[..., 1]).max(axis=1, initial=0.0))


def off_turn(gear: Gear) -> float:
    """Return how far a stand-in is turned from the pose that it was drilled in, degrees; 0.0 without one."""
    return 0.0 if gear.drilled is None else abs(short_way(gear.drilled.turn, gear.turn))
