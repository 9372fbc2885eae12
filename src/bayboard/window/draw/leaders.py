"""Leaders from a tag to its mark: upright, one bend, clear of numbers and of other leaders."""

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF

Leader = tuple[tuple[float, float], ...]  # the corners in pixels, from the tag to the mark
Edges = tuple[float, float, float, float]  # left, top, right, bottom
BENDS = (0.12, 0.3, 0.5, 0.7, 0.85)  # where a leader may bend, as shares of its height
AIR = 2.0  # px kept round a number


def leader(tag: QRectF, at: QPointF, bend: float) -> Leader:
    """Return the line from a tag to its mark: upright for the share `bend` of its height, then straight."""
    x = min(max(at.x(), tag.left() + 12.0), tag.right() - 12.0)
    start = tag.bottom() if at.y() > tag.center().y() else tag.top()
    end = (at.x(), at.y())
    if abs(x - at.x()) <= 1.0:
        return (x, start), end
    return (x, start), (x, start + bend * (at.y() - start)), end


def clear_leader(tag: QRectF, at: QPointF, numbers: Sequence[QRectF], others: Sequence[Leader]) -> Leader:
    """Return the leader that bends where it crosses no number and no other leader, if there is one."""
    left, right = min(tag.left(), at.x()) - AIR, max(tag.right(), at.x()) + AIR
    top, bottom = min(tag.top(), at.y()) - AIR, max(tag.bottom(), at.y()) + AIR
    boxes = [
        (n.left() - AIR, n.top() - AIR, n.right() + AIR, n.bottom() + AIR)
        for n in numbers
        if n.left() < right and n.right() > left and n.top() < bottom and n.bottom() > top
        if not n.contains(at)  # a mark on a number is reached all the same
    ]
    for bend in BENDS:
        line = leader(tag, at, bend)
        if not any(meets(line, box) for box in boxes) and not any(cross(line, other) for other in others):
            return line
    return leader(tag, at, BENDS[0])


def meets(line: Leader, box: Edges) -> bool:
    """Return whether a line runs through a box."""
    return any(_through(a, b, box) for a, b in pairwise(line))


def _through(a: tuple[float, float], b: tuple[float, float], box: Edges) -> bool:
    """Return whether a stretch runs through a box: what is left of it between the four edges."""
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


def cross(line: Leader, other: Leader) -> bool:
    """Return whether two lines cross."""
    return any(_cross(*one, *two) for one in pairwise(line) for two in pairwise(other))


def _cross(
    a: tuple[float, float], b: tuple[float, float], c: tuple[float, float], d: tuple[float, float]
) -> bool:
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0


def _turn(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    """Return twice the area of a triangle, positive when it turns one way."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
