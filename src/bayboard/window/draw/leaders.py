"""Leaders from a tag to its mark: upright, one bend, clear of numbers, of tags and of other leaders."""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from bayboard.window.draw.free_room import INWARD, Boxes

Edges = tuple[float, float, float, float]  # left, top, right, bottom
Leader = tuple[tuple[float, float], ...]  # the corners in pixels, from the tag to the mark
Points = NDArray[np.float64]
Flags = NDArray[np.bool_]
BENDS = np.array([0.12, 0.3, 0.5, 0.7, 0.85])  # where a leader may bend, as shares of its height
MORE = np.array([0.02, 0.2, 0.4, 0.6, 0.78, 0.93])  # where else, when it has to
STARTS = np.array([0.5, 0.0, 1.0])  # where else it may leave the tag, as shares of its length
AIR = 2.0  # px kept round a number
LEVEL = 1e-9  # px; a stretch that goes less far along an axis is level
SINGLY = 6  # of the tags are tried one by one, for mostly one of them will do; the others in a block
MOST_MORE = 24  # of the tags are tried with other leaders


def ways(tags: Boxes, at: tuple[float, float]) -> Points:
    """Return the plain leaders from tags (n, 4) to a mark, (n, ways, 3, 2): upright and then straight.

    Each leaves its tag as near to the mark as it can.
    """
    x = np.clip(at[0], tags[:, 0] + INWARD, tags[:, 2] - INWARD)
    return _lines(tags, np.repeat(x[:, None], len(BENDS), axis=1), BENDS, at)


def more_ways(tags: Boxes, at: tuple[float, float]) -> Points:
    """Return other leaders, which leave the tags anywhere and bend anywhere; shape as of `ways`."""
    near = np.clip(at[0], tags[:, 0] + INWARD, tags[:, 2] - INWARD)
    room = tags[:, 2] - tags[:, 0] - 2 * INWARD
    starts = np.concatenate([near[:, None], tags[:, :1] + INWARD + STARTS * room[:, None]], axis=1)
    bends = np.concatenate([BENDS[1::2], MORE])
    x = np.repeat(starts, len(bends), axis=1)
    return _lines(tags, x, np.tile(bends, starts.shape[1]), at)


def _lines(tags: Boxes, x: Points, bends: Points, at: tuple[float, float]) -> Points:
    start = np.where(at[1] > (tags[:, 1] + tags[:, 3]) / 2, tags[:, 3], tags[:, 1])
    found = np.empty((len(tags), len(bends), 3, 2))
    found[:, :, :2, 0] = x[:, :, None]
    found[:, :, 0, 1] = start[:, None]
    found[:, :, 1, 1] = start[:, None] + bends * (at[1] - start)[:, None]
    found[:, :, 2] = at
    return found


def clear_way(
    tags: Boxes, at: tuple[float, float], boxes: Boxes, others: Sequence[Leader]
) -> tuple[int, Leader] | None:
    """Return the first tag that has a leader which runs through no box and crosses no other, and that leader.

    A box with the mark in it does not count: a mark on a number is reached all the same.
    """
    for row, tag in enumerate(tags[:SINGLY].tolist()):
        plain = _plain_way(tag, at, boxes.tolist(), others)
        if plain is not None:
            return row, plain
    for found, some in ((ways, slice(SINGLY, None)), (more_ways, slice(MOST_MORE))):
        lines = found(tags[some], at)
        if not len(lines):
            continue
        wrong = _through(lines, _beside(boxes, at, lines))
        if others:
            wrong |= _cross(lines, others)
        if not wrong.all():
            row, way = divmod(int(np.argmin(wrong.reshape(-1))), wrong.shape[1])
            line = lines[row, way]
            if abs(line[0, 0] - at[0]) <= 1.0:
                line = line[[0, 2]]
            return row + (some.start or 0), tuple((float(x), float(y)) for x, y in line)
    return None


def _plain_way(
    tag: Sequence[float], at: tuple[float, float], boxes: list[list[float]], others: Sequence[Leader]
) -> Leader | None:
    """Return the first plain leader of one tag that is clear, None for none."""
    left, top, right, bottom = tag
    x, y = at
    near_x = min(max(x, left + INWARD), right - INWARD)
    start = bottom if y > (top + bottom) / 2 else top
    x0, x1, y0, y1 = min(x, near_x) - AIR, max(x, near_x) + AIR, min(y, start) - AIR, max(y, start) + AIR
    near = [
        (a - AIR, b - AIR, c + AIR, d + AIR)
        for a, b, c, d in boxes
        if a < x1 and c > x0 and b < y1 and d > y0 and not (a <= x <= c and b <= y <= d)
    ]
    for bend in BENDS.tolist() if abs(near_x - x) > 1.0 else (1.0,):
        middle = (near_x, start + bend * (y - start))
        line = ((near_x, start), middle, at) if bend < 1.0 else ((near_x, start), at)
        if not any(meets(line, box) for box in near) and not any(_crosses(line, one) for one in others):
            return line
    return None


def _crosses(line: Leader, other: Leader) -> bool:
    """Return whether two lines meet: `_cross` without arrays."""
    return any(
        _turn(a, b, c) * _turn(a, b, d) <= 0.0 and _turn(c, d, a) * _turn(c, d, b) <= 0.0
        for a, b in pairwise(line)
        for c, d in pairwise(other)
    )


def _turn(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _beside(boxes: Boxes, at: tuple[float, float], lines: Points) -> Boxes:
    """Return the boxes, grown by `AIR`, that some line may meet and that do not hold the mark."""
    low, high = lines.min(axis=(0, 1, 2)), lines.max(axis=(0, 1, 2))
    grown = boxes + np.array([-AIR, -AIR, AIR, AIR])
    near = (grown[:, 0] < high[0]) & (grown[:, 2] > low[0]) & (grown[:, 1] < high[1]) & (grown[:, 3] > low[1])
    x, y = at
    holds = (boxes[:, 0] <= x) & (x <= boxes[:, 2]) & (boxes[:, 1] <= y) & (y <= boxes[:, 3])
    return np.asarray(grown[near & ~holds])


def _through(lines: Points, boxes: Boxes) -> Flags:
    """Return which lines run through a box, (n, ways): what is left of a stretch between the four edges."""
    low: Points | float = 0.0
    high: Points | float = 1.0
    for axis in (0, 1):
        a = lines[:, :, :-1, axis, None]
        step = lines[:, :, 1:, axis, None] - a
        step = np.where(np.abs(step) < LEVEL, LEVEL, step)
        first, last = (boxes[:, axis] - a) / step, (boxes[:, axis + 2] - a) / step
        low = np.maximum(low, np.minimum(first, last))
        high = np.minimum(high, np.maximum(first, last))
    met: Flags = (low <= high).any(axis=(2, 3))
    return met


def _cross(lines: Points, others: Sequence[Leader]) -> Flags:
    """Return which lines cross one of the others, (n, bends)."""
    stretches = np.array([(*a, *b) for line in others for a, b in pairwise(line)])
    c, d = stretches[:, :2], stretches[:, 2:]
    a, b = lines[:, :, :-1, None, :], lines[:, :, 1:, None, :]
    over = _side(a, b, c) * _side(a, b, d) <= 0.0
    under = _side(c, d, a) * _side(c, d, b) <= 0.0
    met: Flags = (over & under).any(axis=(2, 3))
    return met


def _side(a: Points, b: Points, c: Points) -> Points:
    """Return on which side of the line from a to b a point lies, as twice an area."""
    turn: Points = (b[..., 0] - a[..., 0]) * (c[..., 1] - a[..., 1]) - (b[..., 1] - a[..., 1]) * (
        c[..., 0] - a[..., 0]
    )
    return turn


def meets(line: Leader, box: Edges) -> bool:
    """Return whether one line runs through one box: `_through` without arrays, for those who ask singly."""
    return any(_meets(a, b, box) for a, b in pairwise(line))


def _meets(a: tuple[float, float], b: tuple[float, float], box: Edges) -> bool:
    low, high = 0.0, 1.0
    for start, step, least, most in (
        (a[0], b[0] - a[0], box[0], box[2]),
        (a[1], b[1] - a[1], box[1], box[3]),
    ):
        if step == 0.0:
            if not least <= start <= most:
                return False
            continue
        first, last = sorted(((least - start) / step, (most - start) / step))
        low, high = max(low, first), min(high, last)
        if low > high:
            return False
    return True
