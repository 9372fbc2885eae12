"""How far one path runs beside another, and how flatly they cross.

A stretch is beside another where it lies within flat-ended rectangles on both sides of it and is nearly
parallel to it.
"""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from bayboard.geometry.outline import Points
from bayboard.geometry.solids import Flags, Indices
from bayboard.geometry.stretches import Stretches, boxes_meet, covered

TOUCH = 1e-6  # mm; paths that come that near touch
EVEN = 1e-9  # sine of an angle below which two stretches are parallel and never cross


class Beside(NamedTuple):
    """Two paths, by number, that run side by side for `length` mm; `at` is the middle of the longest run."""

    path: int
    other: int
    length: float
    at: tuple[float, float]


class Crossing(NamedTuple):
    """Two paths, by number, that cross at an acute `angle` in degrees; the shallowest of the two's."""

    path: int
    other: int
    angle: float
    at: tuple[float, float]


def runs_beside(
    these: Stretches, others: Stretches, aside: float, angle: float, paired: bool = False
) -> Iterator[Beside]:
    """Yield for each two paths how much of the first lies within `aside` of the other.

    `paired`: only the first of these with the first of the others, the second with the second.
    Counted are stretches within `angle` degrees of parallel, between the flat ends of the other's
    stretch; what lies beside several stretches of the other counts once.
    """
    i, j = _meeting(these, others, aside, paired)
    way, along = these.way[i], others.way[j]
    sine = np.abs(_cross(way, along)) / (these.length[i] * others.length[j])
    near = sine <= np.sin(np.radians(angle)) + EVEN
    i, j, way = i[near], j[near], way[near]
    unit = others.way[j] / others.length[j][:, None]
    into = these.start[i] - others.start[j]
    low, high = np.zeros(len(i)), np.ones(len(i))
    _clip(_dot(into, unit), _dot(way, unit), np.zeros(len(i)), others.length[j], low, high)
    _clip(_cross(unit, into), _cross(unit, way), np.full(len(i), -aside), np.full(len(i), aside), low, high)
    inside = low < high
    yield from _united(these, others, i[inside], j[inside], low[inside], high[inside])


def _clip(offset: Points, rate: Points, least: Points, most: Points, low: Points, high: Points) -> None:
    """Narrow low … high, in place, to where `least` ≤ offset + t · rate ≤ `most`."""
    level = np.abs(rate) <= EVEN
    safe = np.where(level, 1.0, rate)
    first, second = (least - offset) / safe, (most - offset) / safe
    np.maximum(low, np.where(level, 0.0, np.minimum(first, second)), out=low)
    np.minimum(high, np.where(level, 1.0, np.maximum(first, second)), out=high)
    outside = level & ((offset < least - TOUCH) | (offset > most + TOUCH))
    high[outside] = -1.0


def _united(
    these: Stretches, others: Stretches, i: Indices, j: Indices, low: Points, high: Points
) -> Iterator[Beside]:
    """Yield the sums of what is covered, by pair of paths."""
    parts: dict[tuple[int, int], dict[int, list[tuple[float, float]]]] = {}
    for row, other, a, b in zip(
        i.tolist(), others.path[j].tolist(), low.tolist(), high.tolist(), strict=True
    ):
        parts.setdefault((int(these.path[row]), other), {}).setdefault(row, []).append((a, b))
    for (path, other), rows in parts.items():
        runs = [
            ((b - a) * float(these.length[row]), row, (a + b) / 2)
            for row, spans in sorted(rows.items())
            for a, b in covered(spans)
        ]
        _, row, share = max(runs, key=lambda run: run[0])
        yield Beside(path, other, sum(run[0] for run in runs), these.at(row, share))


def crossings(these: Stretches, others: Stretches, paired: bool = False) -> Iterator[Crossing]:
    """Yield for each two paths that cross the shallowest crossing.

    `paired` as in `runs_beside`.
    A touch at an end of either path is none, a touch at a corner of a path is one.
    """
    i, j = _meeting(these, others, TOUCH, paired)
    way, along, between = these.way[i], others.way[j], others.start[j] - these.start[i]
    turn = _cross(way, along)
    real = np.abs(turn) > EVEN * these.length[i] * others.length[j]
    turn = np.where(real, turn, 1.0)
    s, t = _cross(between, along) / turn, _cross(between, way) / turn
    real &= _on(these, i, s) & _on(others, j, t)
    angle = np.degrees(np.arctan2(np.abs(turn), np.abs(_dot(way, along))))
    best: dict[tuple[int, int], Crossing] = {}
    for k in np.flatnonzero(real).tolist():
        pair = int(these.path[i[k]]), int(others.path[j[k]])
        if pair not in best or angle[k] < best[pair].angle:
            best[pair] = Crossing(*pair, float(angle[k]), these.at(int(i[k]), float(s[k])))
    yield from best.values()


def _meeting(these: Stretches, others: Stretches, margin: float, paired: bool) -> tuple[Indices, Indices]:
    i, j = boxes_meet(these, others, margin)
    own = these.path[i] == others.path[j]
    return (i[own], j[own]) if paired else (i, j)


def _on(rows: Stretches, which: Indices, share: Points) -> Flags:
    """Return whether a share of a stretch lies on it and at no end of its path."""
    hair = TOUCH / rows.length[which]
    low = np.where(rows.opens[which], share > hair, share >= -hair)
    high = np.where(rows.closes[which], share < 1.0 - hair, share <= 1.0 + hair)
    return np.asarray(low & high)


def _cross(a: Points, b: Points) -> Points:
    return a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]


def _dot(a: Points, b: Points) -> Points:
    return a[:, 0] * b[:, 0] + a[:, 1] * b[:, 1]
