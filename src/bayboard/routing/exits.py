"""Where a lead that starts too near to a thing, or in its own stand-in, first comes clear of it.

A shortest path turns there only where something kept it from turning sooner: on the line past a corner of
the thing, or on the line over the last point of its own stand-in that is still within the plug's length.
"""

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.routing.bed import HAIR, Obstacle
from bayboard.routing.excuse import Excuses
from bayboard.routing.floor import Floor
from bayboard.routing.walls import GRAZE, Walls, crossings, holding, spans, together

FAR = 1e4  # mm; longer than any thing on a board


def exits(floor: Floor, start: Points, known: Excuses) -> Points:
    """Return the points, (k, 2), at which paths from a tip at `start` may first turn clear of all things."""
    near = {number: floor.obstacles[number] for number, excuse in known.items() if excuse.holds}
    if not near:
        return np.zeros((0, 2))
    aims = _aims(start, near, {number: excuse.free for number, excuse in known.items()}) - start
    length = np.hypot(aims[:, 0], aims[:, 1])
    way = aims[length > GRAZE] / length[length > GRAZE, None]
    far = _clear(start, way, together([thing.shape.rows for thing in near.values()]))
    found = start + way * far[:, None]
    open_ = np.ones(len(found), dtype=np.bool_)
    open_[holding(found, floor.rows)[0]] = False
    starts = np.broadcast_to(start, found.shape)
    stretch, thing = crossings(starts, found, floor.rows)
    open_[stretch[~np.isin(thing, list(known))]] = False
    for excuse in known.values():
        if excuse.rows is not None:
            open_[crossings(starts, found, excuse.rows, (excuse.free, 0.0))[0]] = False
    return found[open_]


def _aims(start: Points, near: Mapping[int, Obstacle], free: Mapping[int, float]) -> Points:
    aims = [thing.bare.corners.at for thing in near.values()]
    aims += [_on_circle(thing, start, free[number]) for number, thing in near.items() if free[number]]
    return np.concatenate(aims)


def _on_circle(thing: Obstacle, centre: Points, radius: float) -> Points:
    """Return where the thing's own rims meet a circle."""
    found = []
    for ring in thing.rims:
        ahead, back = np.roll(ring, -1, axis=0) - ring, ring - centre
        a, b = np.sum(ahead * ahead, axis=1), np.sum(ahead * back, axis=1)
        root = b * b - a * (np.sum(back * back, axis=1) - radius * radius)
        for sign in (-1.0, 1.0):
            share = (sign * np.sqrt(np.maximum(root, 0.0)) - b) / a
            on = (root >= 0) & (share >= 0) & (share <= 1)
            found.append(ring[on] + share[on, None] * ahead[on])
    return np.concatenate(found)


def _clear(start: Points, way: Points, rows: Walls) -> Points:
    """Return how far along each way, unit vectors, the pieces around `start` end, mm."""
    # a hair outside the true rims: from farther in, stretches along a rim would seem to cut into it
    rows = replace(rows, offsets=rows.offsets + GRAZE + HAIR)
    line, row = (side.ravel() for side in np.indices((len(way), len(rows))))
    into, out = spans(np.broadcast_to(start, way.shape), start + FAR * way, rows, line, row)
    into, out = into.reshape(len(way), -1), out.reshape(len(way), -1)
    found = np.zeros(len(way))
    for _ in range(len(rows)):
        reached = (into <= found[:, None]) & (out > into)
        farther = np.where(reached, out, 0.0).max(axis=1, initial=0.0)
        if np.all(farther <= found):
            break
        found = np.maximum(found, farther)
    return found * FAR
