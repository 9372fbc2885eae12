"""Where the Section's tags stand: each at the best free spot near what it speaks of, none over another.

All spots of a fine grid are weighed at once.  A tag never leaves the view, never covers another tag or a
lettered number; it would rather not cover what is cut, a line of sight or the leader of another.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from bayboard.rules.finding import Severity
from bayboard.window.draw.marks import MARK, paint_mark
from bayboard.window.draw.strokes import cased, segment
from bayboard.window.draw.tags import paint_name, paint_tag, tag_size
from bayboard.window.theme import Theme

TOP, SIDE = 44.0, 8.0  # px left free of tags: the title line, and at the other edges
AIR = 4.0  # px between two tags
NEAR = 18.0  # px; a tag nearer to its own place than this would lie on what it tells
COVERS, INKS, CROSSES = 460.0, 9.0, 120.0  # what covering matter, a line's dot, a leader costs, in px of way
GOOD, WORTH = 50.0, 20.0  # px of way: as good as need be; what a shorter text must save
INK, CELL = 10.0, 8.0  # px between the dots that stand for a line; side of the cells they are counted in

Boxes = NDArray[np.float64]  # (n, 4): left, top, right, bottom


@dataclass(frozen=True, slots=True)
class Word:
    """What a tag says: texts of falling length, of what, in which colour.  A name has no leader.

    A name that finds no room within `reach` pixels is left off.
    """

    texts: tuple[str, ...]
    at: QPointF
    token: str
    severity: Severity | None = None
    number: int | None = None
    name: bool = False
    reach: float = 1e9

    @property
    def marked(self) -> bool:
        """Return whether the tag wears a finding's sign."""
        return self.severity is not None and self.number is not None


@dataclass(frozen=True, slots=True)
class Tag:
    """A word with its place; `text` "" where only its sign is shown, and no rectangle where not even that."""

    word: Word
    text: str
    rect: QRectF


class Field:
    """The room that tags share: what they may not cover, and what they had better not."""

    def __init__(self, rect: QRectF, theme: Theme) -> None:
        self.theme = theme
        self.within = rect.adjusted(SIDE, TOP * theme.size, -SIDE, -SIDE)
        self.taken: list[QRectF] = []
        self.matter: list[QRectF] = []
        self._inks = np.zeros((int(rect.height() / CELL) + 2, int(rect.width() / CELL) + 2))
        self._origin = np.array([rect.left(), rect.top()])
        self._summed: Boxes | None = None

    def draw_line(self, a: QPointF, b: QPointF) -> None:
        """Take note of a line that is better not covered."""
        count = min(max(int(hypot(b.x() - a.x(), b.y() - a.y()) / INK), 1), 400)
        share = np.linspace(0.0, 1.0, count + 1)[:, None]
        start, end = np.array([a.x(), a.y()]), np.array([b.x(), b.y()])
        column, row = np.floor((start + share * (end - start) - self._origin) / CELL).astype(int).T
        rows, columns = self._inks.shape
        seen = (row >= 0) & (row < rows) & (column >= 0) & (column < columns)
        np.add.at(self._inks, (row[seen], column[seen]), 1.0)
        self._summed = None

    def put(self, word: Word) -> Tag:
        """Return a word's tag at the best spot there is, and take the room."""
        best: tuple[float, str, QRectF] | None = None
        for text in word.texts:
            found = self._best(word, *tag_size(text, self.theme, word.marked))
            if found is not None and (best is None or found[0] < best[0] - WORTH):
                best = (found[0], text, found[1])
            if best is not None and best[0] < GOOD:
                break
        if best is None or (word.name and best[0] > word.reach):
            return self.sign(word)
        self.taken.append(best[2])
        if not word.name:
            self.draw_line(_leaves(word.at, best[2]), word.at)
        return Tag(word, best[1], best[2])

    def sign(self, word: Word) -> Tag:
        """Return a word of which no more than its sign is shown, and that only where it covers nothing."""
        half = MARK * self.theme.size / 2
        rect = QRectF(word.at.x() - half, word.at.y() - half, 2 * half, 2 * half)
        free = self.within.contains(rect) and not any(rect.intersects(held) for held in self.taken)
        if not (word.marked and free):
            return Tag(word, "", QRectF())
        self.taken.append(rect)
        return Tag(word, "", rect)

    def _best(self, word: Word, wide: float, high: float) -> tuple[float, QRectF] | None:
        """Return what the best spot costs and where it is, None where a tag of that size finds no room."""
        room = self.within
        if wide > room.width() or high > room.height():
            return None
        lefts = _steps(room.left(), room.right() - wide, word.at.x() - wide / 2)
        tops = _steps(room.top(), room.bottom() - high, word.at.y() - high / 2)
        left, top = (grid.ravel() for grid in np.meshgrid(lefts, tops))
        free = ~_meet(left - AIR, top - AIR, wide + 2 * AIR, high + 2 * AIR, self.taken).any(axis=1)
        left, top = left[free], top[free]
        if not len(left):
            return None
        cost = self._cost(word, left, top, wide, high)
        i = int(cost.argmin())
        return float(cost[i]), QRectF(float(left[i]), float(top[i]), wide, high)

    def _cost(self, word: Word, left: Boxes, top: Boxes, wide: float, high: float) -> Boxes:
        x, y = word.at.x(), word.at.y()
        dx = np.maximum(np.maximum(left - x, x - left - wide), 0.0)
        dy = np.maximum(np.maximum(top - y, y - top - high), 0.0)
        away = np.hypot(dx, dy)
        # one spot is as good as another but for how far it lies off; the middle breaks ties
        cost: Boxes = away + 0.02 * np.hypot(left + wide / 2 - x, top + high / 2 - y)
        if not word.name:
            cost += np.where(away < NEAR, 3.0 * (NEAR - away), 0.0)
            ends = np.clip(x, left + 14.0, left + wide - 14.0), np.where(top > y, top, top + high)
            for share in (0.2, 0.4, 0.6, 0.8):  # a leader that runs under another tag
                px, py = ends[0] + share * (x - ends[0]), ends[1] + share * (y - ends[1])
                cost += CROSSES * _meet(px, py, 0.0, 0.0, self.taken).any(axis=1)
        cost += COVERS * _shared(left, top, wide, high, self.matter)
        cost += INKS * self._dots(left, top, wide, high)
        return cost

    def _dots(self, left: Boxes, top: Boxes, wide: float, high: float) -> Boxes:
        """Return how many dots of lines lie in the cells that each spot touches, at most 12."""
        if self._summed is None:
            self._summed = np.pad(self._inks.cumsum(axis=0).cumsum(axis=1), ((1, 0), (1, 0)))
        most = np.array(self._summed.shape) - 1
        x0, x1 = (_cells(at, self._origin[0], most[1]) for at in (left, left + wide + CELL))
        y0, y1 = (_cells(at, self._origin[1], most[0]) for at in (top, top + high + CELL))
        table = self._summed
        count = table[y1, x1] - table[y0, x1] - table[y1, x0] + table[y0, x0]
        found: Boxes = np.minimum(count, 12.0)
        return found


def _steps(low: float, high: float, through: float) -> Boxes:
    """Return places from low to high, fine near `through` and coarse far from it."""
    if high <= low:
        return np.array([low])
    near = through + 10.0 * np.arange(-7, 8)
    far = np.arange(low, high, 32.0)
    every = np.concatenate((near[(near >= low) & (near <= high)], far, [high]))
    found: Boxes = np.unique(every)
    return found


def _boxes(rects: Sequence[QRectF]) -> Boxes:
    return np.array([(r.left(), r.top(), r.right(), r.bottom()) for r in rects]).reshape(-1, 4)


def _meet(left: Boxes, top: Boxes, wide: float, high: float, rects: Sequence[QRectF]) -> NDArray[np.bool_]:
    """Return which of the spots meet which of the rectangles, (spots, rectangles)."""
    x0, y0, x1, y1 = _boxes(rects).T
    across = (left[:, None] < x1) & (left[:, None] + wide > x0)
    return np.asarray(across & (top[:, None] < y1) & (top[:, None] + high > y0))


def _shared(left: Boxes, top: Boxes, wide: float, high: float, rects: Sequence[QRectF]) -> Boxes:
    """Return the share of each spot that lies over rectangles, counted for each of them."""
    x0, y0, x1, y1 = _boxes(rects).T
    across = np.minimum(left[:, None] + wide, x1) - np.maximum(left[:, None], x0)
    up = np.minimum(top[:, None] + high, y1) - np.maximum(top[:, None], y0)
    area: Boxes = (np.maximum(across, 0.0) * np.maximum(up, 0.0)).sum(axis=1) / (wide * high)
    return area


def _cells(at: Boxes, origin: float, most: int) -> NDArray[np.int_]:
    return np.clip(np.floor((at - origin) / CELL), 0, most).astype(int)


def _leaves(at: QPointF, rect: QRectF) -> QPointF:
    """Return where a leader leaves its tag."""
    x = min(max(at.x(), rect.left() + 14.0), rect.right() - 14.0)
    if rect.top() <= at.y() <= rect.bottom():
        return QPointF(rect.left() if at.x() < rect.left() else rect.right(), rect.center().y())
    return QPointF(x, rect.top() if rect.top() > at.y() else rect.bottom())


def paint_tags(p: QPainter, tags: Sequence[Tag], theme: Theme) -> None:
    """Paint the tags with their leaders; a finding without room keeps its sign where it is."""
    for tag in tags:
        if tag.text and not tag.word.name and not tag.rect.contains(tag.word.at):
            start = _leaves(tag.word.at, tag.rect)
            if hypot(start.x() - tag.word.at.x(), start.y() - tag.word.at.y()) > 6.0:
                cased(p, segment(start, tag.word.at), _colour(tag.word, theme), 1.8, theme)
    for tag in tags:
        word = tag.word
        if not tag.text:
            if word.severity is not None and not tag.rect.isEmpty():
                paint_mark(p, tag.rect.center(), word.severity, word.number, theme, MARK * theme.size)
        elif word.name:
            paint_name(p, tag.rect, tag.text, theme, word.token)
        else:
            paint_tag(p, tag.rect, tag.text, theme, word.severity, word.number, token=word.token)


def _colour(word: Word, theme: Theme) -> str:
    return theme.severity(word.severity) if word.severity else word.token
