"""Where a lead that starts too near to a thing, or in its own stand-in, first comes clear of it.

A shortest path turns there only where something kept it from turning sooner: on the line past a corner of
the thing, or on the line over the last point of its own stand-in that is still within the plug's length.
From inside a thing it goes out over the nearest point of an edge.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely

from bayboard.geometry.outline import Points
from bayboard.routing.bed import HAIR, RIM, Obstacle
from bayboard.routing.excuse import Excuse, Excuses, paid
from bayboard.routing.floor import Floor
from bayboard.routing.walls import GRAZE, Walls, crossings, holding, spans, together

FAR = 1e4  # mm; longer than any thing on a board

NOWHERE: tuple[Points, Points] = (np.zeros((0, 2)), np.zeros(0))


def exits(floor: Floor, start: Points, known: Excuses) -> tuple[Points, Points]:
    """Return the points, (k, 2), at which paths from a tip at `start` may first turn clear of all things.

    With them what is paid on top for getting there, (k,).
    """
    near = [number for number, excuse in known.items() if excuse.holds]
    leaving = [_leaving(floor, start, known, near)] if near else []
    rim = floor.numbers.get(RIM)
    if rim in known:
        leaving.append(_onto_the_board(floor, start, known[rim]))
    return _open(floor, start, known, np.concatenate(leaving)) if leaving else NOWHERE


def _open(floor: Floor, start: Points, known: Excuses, found: Points) -> tuple[Points, Points]:
    """Return those of the points that a straight stretch from `start` reaches, and what that pays."""
    open_ = np.ones(len(found), dtype=np.bool_)
    open_[holding(found, floor.rows)[0]] = False
    starts, extra = np.broadcast_to(start, found.shape), np.zeros(len(found))
    stretch, thing = crossings(starts, found, floor.rows)
    open_[stretch[~np.isin(thing, list(known))]] = False
    for excuse in known.values():
        if excuse.rows is not None:
            open_[crossings(starts, found, excuse.rows, (excuse.free, 0.0))[0]] = False
        extra += paid(starts, found, excuse)
    return found[open_], extra[open_]


def _onto_the_board(floor: Floor, start: Points, excuse: Excuse) -> Points:
    """Return where paths from off the board may turn first: past a corner off it, as soon as they are on it.

    A tip that has no business off the board goes to the nearest point of it.
    """
    beyond = floor.obstacles[floor.numbers[RIM]].polygon
    if excuse.costly is not None:
        nearest = shapely.shortest_line(beyond.boundary, shapely.Point(start))
        return shapely.get_coordinates(nearest)[:1]
    past = floor.off_board
    way = past - start
    ends = past + FAR * way / np.maximum(np.hypot(way[:, 0], way[:, 1]), GRAZE)[:, None]
    lines = shapely.linestrings(np.stack([past, ends], axis=1))
    met = shapely.shortest_line(shapely.points(past), shapely.intersection(lines, beyond.boundary))
    return shapely.get_coordinates(met)[1::2]  # where a line misses the board there are none


def _leaving(floor: Floor, start: Points, known: Excuses, near: Sequence[int]) -> Points:
    """Return where paths from near things, or from in them, may turn first."""
    aims = np.concatenate([_aims(floor.obstacles[number], start, known[number]) for number in near]) - start
    length = np.hypot(aims[:, 0], aims[:, 1])
    way = aims[length > GRAZE] / length[length > GRAZE, None]
    far = _clear(start, way, together([floor.obstacles[number].shape.rows for number in near]))
    return np.asarray(start + way * far[:, None])


def _aims(thing: Obstacle, start: Points, excuse: Excuse) -> Points:
    """Return what the lines to the exits go through."""
    if excuse.rows is None:
        return _feet(thing, start)
    past = [thing.bare.corners.at]
    if excuse.free > 0:
        past.append(_on_circle(thing, start, excuse.free))
    return np.concatenate(past)


def _feet(thing: Obstacle, start: Points) -> Points:
    """Return the point nearest to `start` on each edge of the thing."""
    found = []
    for ring in thing.rims:
        ahead = np.roll(ring, -1, axis=0) - ring
        share = np.sum((start - ring) * ahead, axis=1) / np.sum(ahead * ahead, axis=1)
        found.append(ring + np.clip(share, 0.0, 1.0)[:, None] * ahead)
    return np.concatenate(found)


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
