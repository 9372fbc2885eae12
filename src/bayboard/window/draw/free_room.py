"""Where on the scene there is still room: a coarse raster of what may not be covered, asked for rectangles.

Cells are `CELL` px; whatever touches a cell holds all of it, so that nothing that is found free is not.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF

CELL = 6.0  # px
OVER = 0.35  # px of way that each cell of a stand-in counts for that a tag would lie on
NAME = 6  # cells of a stand-in that a cell of a port's name counts for
OFF_BAND = 90.0  # px of way that a place over the boards counts for: tags belong in the bands beside them
INWARD = 12.0  # px from a tag's end within which no leader leaves it
STEPS = 48  # places that are tried with their leaders

Boxes = NDArray[np.float64]  # (n, 4): left, top, right, bottom in pixels
Cells = NDArray[np.int32]


def boxes_of(rects: list[QRectF]) -> Boxes:
    """Return rectangles as an array."""
    return np.array([(r.left(), r.top(), r.right(), r.bottom()) for r in rects]).reshape(-1, 4)


@dataclass(frozen=True, eq=False)
class Room:
    """The raster over `rect`: how many things hold each cell, and where stand-ins and boards lie."""

    rect: QRectF
    held: Cells
    soft: Cells  # summed up to each corner: cells of stand-ins, and those with names more
    bands: Cells  # summed up to each corner: cells of boards

    @classmethod
    def over(cls, rect: QRectF, held: Boxes, pieces: Boxes, names: Boxes, boards: Boxes) -> "Room":
        """Return the raster with these boxes held, lying on pieces, with names, and on boards."""
        shape = _shape(rect)
        return cls(
            rect,
            _counted(rect, held, shape),
            _summed((_counted(rect, pieces, shape) > 0) + NAME * (_counted(rect, names, shape) > 0)),
            _summed(_counted(rect, boards, shape) > 0),
        )

    def hold(self, boxes: Boxes, by: int = 1) -> None:
        """Hold boxes from now on, or let go of them with -1."""
        for row0, col0, row1, col1 in _cells(self.rect, boxes, self.held.shape):
            self.held[row0:row1, col0:col1] += by

    def hold_line(self, line: tuple[tuple[float, float], ...]) -> None:
        """Hold the cells that a line runs over."""
        for (ax, ay), (bx, by) in pairwise(line):
            count = max(int(max(abs(bx - ax), abs(by - ay)) / CELL) + 1, 2)
            cols = ((np.linspace(ax, bx, count) - self.rect.left()) // CELL).astype(int)
            rows = ((np.linspace(ay, by, count) - self.rect.top()) // CELL).astype(int)
            seen = (cols >= 0) & (rows >= 0) & (rows < self.held.shape[0]) & (cols < self.held.shape[1])
            self.held[rows[seen], cols[seen]] += 1

    def places(self, at: QPointF, wide: float, high: float, most: float) -> Boxes:
        """Return free rectangles of a size near a point, the best first; none is more than `most` px off."""
        down, across = int(np.ceil(high / CELL)) + 1, int(np.ceil(wide / CELL)) + 1
        rows, cols = self.held.shape
        if down >= rows or across >= cols:
            return np.empty((0, 4))
        top, left, bottom, right = self._near(at, down, across, most)
        if bottom <= top or right <= left:
            return np.empty((0, 4))
        part = slice(top, bottom + down), slice(left, right + across)
        taken = _inside(_summed(self.held[part] > 0), down, across)
        whole = slice(top, bottom + down + 1), slice(left, right + across + 1)
        cost = self._way(at, wide, high, top, left, taken.shape)
        cost[cost > most] = np.inf
        cost += OVER * _inside(self.soft[whole], down, across)
        cost += OFF_BAND * (_inside(self.bands[whole], down, across) > 0)
        cost[taken > 0] = np.inf
        spots = _spread(cost, at.x() - self.rect.left() - left * CELL, across)
        y = self.rect.top() + (top + spots[:, 0]) * CELL + (down * CELL - high) / 2
        x = self.rect.left() + (left + spots[:, 1]) * CELL + (across * CELL - wide) / 2
        return np.stack([x, y, x + wide, y + high], axis=1)

    def _near(self, at: QPointF, down: int, across: int, most: float) -> tuple[int, int, int, int]:
        """Return the range of corner cells that may be looked at: top, left, bottom, right."""
        rows, cols = self.held.shape
        x, y = (at.x() - self.rect.left()) / CELL, (at.y() - self.rect.top()) / CELL
        far = most / CELL
        top, left = max(int(y - far) - down, 0), max(int(x - far) - across, 0)
        return top, left, min(int(y + far) + 1, rows - down), min(int(x + far) + 1, cols - across)

    def _way(
        self, at: QPointF, wide: float, high: float, top: int, left: int, shape: tuple[int, int]
    ) -> NDArray[np.float64]:
        """Return how far each place lies from the point, infinite where it is beside it."""
        y = self.rect.top() + (top + np.arange(shape[0])) * CELL - at.y()
        x = self.rect.left() + (left + np.arange(shape[1])) * CELL - at.x()
        dy = np.maximum(np.maximum(y, -(y + high)), 0.0)
        dx = np.maximum(np.maximum(x + INWARD, -(x + wide - INWARD)), 0.0)
        way = np.sqrt(np.add.outer(dy * dy, dx * dx))
        middle = 0.05 * np.abs(x + wide / 2)[None, :]
        return np.where(dy[:, None] > 0.0, way + middle, np.inf)


def way_to(rect: QRectF, at: QPointF) -> float:
    """Return how far a rectangle lies from a point above or below it, infinite where it is beside it."""
    dy = max(rect.top() - at.y(), at.y() - rect.bottom())
    dx = max(rect.left() + INWARD - at.x(), at.x() - rect.right() + INWARD, 0.0)
    return float(np.hypot(dx, dy)) if dy > 0.0 else np.inf


def _spread(cost: NDArray[np.float64], x: float, across: int) -> NDArray[np.int64]:
    """Return the cells of the best places, (n, 2), of each row left of, over and right of a point."""
    edge = min(max(int(x / CELL) - across + 3, 1), cost.shape[1] - 1)
    other = min(max(int(x / CELL) - 2, edge + 1), cost.shape[1])
    found = []
    for low, high in ((0, edge), (edge, other), (other, cost.shape[1])):
        if high > low:
            col = np.argmin(cost[:, low:high], axis=1) + low
            found.append(np.stack([np.arange(len(col)), col], axis=1))
    spots = np.concatenate(found)
    worth = cost[spots[:, 0], spots[:, 1]]
    order = np.argsort(worth, kind="stable")[:STEPS]
    return spots[order[np.isfinite(worth[order])]]


def _shape(rect: QRectF) -> tuple[int, int]:
    return max(int(rect.height() / CELL), 1), max(int(rect.width() / CELL), 1)


def _cells(rect: QRectF, boxes: Boxes, shape: tuple[int, ...]) -> NDArray[np.int64]:
    """Return the cells that boxes touch: first row and column, and those past the last."""
    if not len(boxes):
        return np.empty((0, 4), dtype=np.int64)
    rows, cols = shape[0], shape[1]
    start = np.array([rect.top(), rect.left()])
    low = np.floor((boxes[:, [1, 0]] - start) / CELL)
    high = np.ceil((boxes[:, [3, 2]] - start) / CELL)
    ends = np.array([rows, cols])
    return np.concatenate([np.clip(low, 0, ends), np.clip(high, 0, ends)], axis=1).astype(np.int64)


def _counted(rect: QRectF, boxes: Boxes, shape: tuple[int, int]) -> Cells:
    """Return how many boxes touch each cell."""
    corners = np.zeros((shape[0] + 1, shape[1] + 1), dtype=np.int32)
    cells = _cells(rect, boxes, shape)
    for rows, cols, by in ((0, 1, 1), (2, 1, -1), (0, 3, -1), (2, 3, 1)):
        np.add.at(corners, (cells[:, rows], cells[:, cols]), by)
    counted: Cells = corners.cumsum(axis=0).cumsum(axis=1)[:-1, :-1].astype(np.int32)
    return counted


def _summed(cells: NDArray[np.bool_] | NDArray[np.int_]) -> Cells:
    """Return the sum of all cells above and left of each corner."""
    summed = np.zeros((cells.shape[0] + 1, cells.shape[1] + 1), dtype=np.int32)
    np.cumsum(np.cumsum(cells, axis=0, dtype=np.int32), axis=1, out=summed[1:, 1:])
    return summed


def _inside(summed: Cells, down: int, across: int) -> Cells:
    """Return how many cells hold in each rectangle of so many cells, by its first cell."""
    inside: Cells = (
        summed[down:, across:] - summed[:-down, across:] - summed[down:, :-across] + summed[:-down, :-across]
    )
    return inside
