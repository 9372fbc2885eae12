"""Which spots of a page are taken, so that words find a place of their own.

A grid of small square cells, each with what lies there: nothing, something soft that may run behind a word
(dashed outlines, hatching), a line that only a check bar may cross at need (sawn edges, seams), or
something hard (marks, words).
"""

from collections.abc import Iterable
from math import ceil, floor, hypot

import numpy as np
from numpy.typing import NDArray

from bayboard.model.layout import Point
from bayboard.paper.curves import Box
from bayboard.paper.marks import Trace

CELL = 0.5  # mm
COARSE = 4  # cells to a step when a whole page is searched; four bytes are looked at as one number
FREE, SOFT, LINE, HARD = 0, 1, 2, 3
SIGN = 9.0  # mm; a trace no larger is taken as its box


class Ground:
    """The cells of a rectangle of the page; what lies outside it is hard."""

    def __init__(self, box: Box) -> None:
        self.x, self.y = box[0], box[1]
        high, wide = ceil((box[3] - box[1]) / CELL), ceil((box[2] - box[0]) / CELL)
        self.cells: NDArray[np.uint8] = np.full((_whole(high), _whole(wide)), HARD, dtype=np.uint8)
        self.cells[:high, :wide] = FREE

    def take(self, box: Box, what: int = HARD) -> None:
        """Take a box."""
        x0, y0, x1, y1 = self._cells(box)
        spot = self.cells[max(y0, 0) : max(y1, 0), max(x0, 0) : max(x1, 0)]
        np.maximum(spot, what, out=spot)

    def take_traces(self, traces: Iterable[Trace], what: int = HARD) -> None:
        """Take the cells that traces run through; of a small sign the whole box."""
        for trace in traces:
            box = _box_of(trace)
            if (box[2] - box[0] <= SIGN and box[3] - box[1] <= SIGN) or box[0] == box[2] or box[1] == box[3]:
                self.take(box, what)
            else:
                self.take_points(sampled(trace), what)

    def take_points(self, xy: NDArray[np.float64], what: int = HARD) -> None:
        """Take the cells in which points lie, shape (n, 2)."""
        i, j = self._cells_of(xy)
        self.cells[i, j] = np.maximum(self.cells[i, j], what)

    def hardest(self, xy: NDArray[np.float64]) -> int:
        """Return the hardest thing at any of the points that lie on the page, `FREE` without any."""
        return int(self.cells[self._cells_of(xy)].max(initial=FREE))

    def free(self, box: Box, over: int = FREE) -> bool:
        """Return whether a box is wholly on the page, with nothing harder than `over` in it."""
        x0, y0, x1, y1 = self._cells(box)
        if x0 < 0 or y0 < 0 or y1 > self.cells.shape[0] or x1 > self.cells.shape[1]:
            return False
        return bool(self.cells[y0:y1, x0:x1].max() <= over)

    def nearest(self, size: tuple[float, float], to: Point, inside: Box, over: int = FREE) -> Box | None:
        """Return the box of that size whose middle is nearest to a point, None if there is none.

        It lies inside `inside` with nothing harder than `over` in it; tried in steps of `COARSE` cells.
        """
        found = self._boxes(size, inside, over)
        if found is None:
            return None
        counts, x, y = found
        free = counts == 0
        if not free.any():
            return None
        off = (x[None, :] + size[0] / 2 - to[0]) ** 2 + (y[:, None] + size[1] / 2 - to[1]) ** 2
        return _box_at(np.where(free, off, np.inf), x, y, size)

    def least_taken(self, size: tuple[float, float], inside: Box) -> Box | None:
        """Return the box of that size that covers the fewest hard cells, None when it does not fit at all."""
        found = self._boxes(size, inside, LINE)
        if found is None:
            return None
        counts, x, y = found
        return _box_at(counts, x, y, size)

    def _boxes(
        self, size: tuple[float, float], inside: Box, over: int
    ) -> tuple[NDArray[np.int64], NDArray[np.float64], NDArray[np.float64]] | None:
        """Return how many coarse cells each box takes, and the boxes' left and lower sides."""
        taken = _coarse(self.cells > over)
        step = CELL * COARSE
        wide, high = ceil(size[0] / step - 1e-9) + 1, ceil(size[1] / step - 1e-9) + 1
        j0, i0 = max(0, ceil((inside[0] - self.x) / step)), max(0, ceil((inside[1] - self.y) / step))
        j1 = min(taken.shape[1], floor((inside[2] - self.x) / step))
        i1 = min(taken.shape[0], floor((inside[3] - self.y) / step))
        if j1 - j0 < wide or i1 - i0 < high:
            return None
        sums = np.zeros((i1 - i0 + 1, j1 - j0 + 1), dtype=np.int64)
        sums[1:, 1:] = taken[i0:i1, j0:j1].cumsum(axis=0, dtype=np.int64).cumsum(axis=1)
        counts = sums[high:, wide:] - sums[:-high, wide:] - sums[high:, :-wide] + sums[:-high, :-wide]
        spare_x, spare_y = (wide * step - size[0]) / 2, (high * step - size[1]) / 2
        x = self.x + (j0 + np.arange(counts.shape[1])) * step + spare_x
        y = self.y + (i0 + np.arange(counts.shape[0])) * step + spare_y
        return counts, x.astype(np.float64), y.astype(np.float64)

    def _cells_of(self, xy: NDArray[np.float64]) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
        i = np.floor((xy[:, 1] - self.y) / CELL).astype(np.int64)
        j = np.floor((xy[:, 0] - self.x) / CELL).astype(np.int64)
        on = (i >= 0) & (j >= 0) & (i < self.cells.shape[0]) & (j < self.cells.shape[1])
        return i[on], j[on]

    def _cells(self, box: Box) -> tuple[int, int, int, int]:
        return (
            floor((box[0] - self.x) / CELL),
            floor((box[1] - self.y) / CELL),
            floor((box[2] - self.x) / CELL) + 1,
            floor((box[3] - self.y) / CELL) + 1,
        )


def sampled(trace: Trace) -> NDArray[np.float64]:
    """Return points along a trace, less than a cell apart, shape (n, 2)."""
    pieces = [np.array([trace.start])]
    here = trace.start
    for step in (*trace.steps, trace.start) if trace.closed else trace.steps:
        end = (step[-2], step[-1])
        reach = hypot(end[0] - here[0], end[1] - here[1]) + sum(
            hypot(step[k] - here[0], step[k + 1] - here[1]) for k in range(0, len(step) - 2, 2)
        )
        t = np.linspace(0.0, 1.0, max(2, ceil(reach / (CELL * 0.8)) + 1))[1:, None]
        pieces.append(_along(here, step, t))
        here = end
    return np.vstack(pieces)


def _box_of(trace: Trace) -> Box:
    xs = [trace.start[0], *(v for step in trace.steps for v in step[0::2])]
    ys = [trace.start[1], *(v for step in trace.steps for v in step[1::2])]
    return min(xs), min(ys), max(xs), max(ys)


def _along(start: Point, step: tuple[float, ...], t: NDArray[np.float64]) -> NDArray[np.float64]:
    a = np.array(start)
    if len(step) == 2:
        return np.asarray(a + (np.array(step) - a) * t)
    b, c, d = (np.array(step[k : k + 2]) for k in (0, 2, 4))
    u = 1.0 - t
    return np.asarray(a * u**3 + 3 * b * u**2 * t + 3 * c * u * t**2 + d * t**3)


def _whole(cells: int) -> int:
    """Return the count rounded up to whole coarse steps."""
    return ceil(cells / COARSE) * COARSE


def _coarse(taken: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Return whether any cell of each coarse block is taken."""
    rows = taken.view(np.uint32)  # four cells at once; COARSE is 4
    return np.asarray((rows[0::4] | rows[1::4] | rows[2::4] | rows[3::4]) != 0)


def _box_at(
    cost: NDArray[np.float64] | NDArray[np.int64],
    x: NDArray[np.float64],
    y: NDArray[np.float64],
    size: tuple[float, float],
) -> Box:
    i, j = np.unravel_index(int(np.argmin(cost)), cost.shape)
    left, low = float(x[j]), float(y[i])
    return left, low, left + size[0], low + size[1]
