"""Words beside marks: each label nearest to its own mark, smaller if it must, with a leader at last."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, hypot, radians, sin

import numpy as np

from bayboard.model.layout import Point
from bayboard.paper import lettering
from bayboard.paper.curves import Box, line, rectangle
from bayboard.paper.ground import CELL, FREE, HARD, LINE, SOFT, Ground, sampled
from bayboard.paper.lettering import RISE, SINK
from bayboard.paper.marks import MEASURED, Anchor, Face, Fill, Letters, Mark, Stroke, pt

Line = tuple[str, Face, float]  # text, face, size in mm
LEAST = pt(6.0)  # mm; no text is smaller
PAD = 0.4  # mm; white between words and anything else
CLEARLY = 0.2  # mm; a name is this much nearer to its own mark than to any other
_GAPS = (0.4, 1.6, 3.2, 5.5, 8.0)  # mm; how far from its mark a label is tried
_SHRINK = (1.0, 0.9, 0.8, 0.7)
_LEADERS = (11.0, 15.0, 20.0, 26.0, 34.0, 44.0, 60.0)  # mm


@dataclass(frozen=True, slots=True)
class Block:
    """Lines of text set one under the other; the first is the name."""

    lines: tuple[Line, ...]

    def shrunk(self, by: float) -> "Block":
        """Return the block smaller, no line under the least size."""
        return Block(tuple((t, f, max(LEAST, s * by)) for t, f, s in self.lines))

    @property
    def size(self) -> tuple[float, float]:
        """Return (width, height) in mm."""
        wide = max(lettering.width(t, f, s) for t, f, s in self.lines)
        return wide, sum((RISE + SINK) * s for _, _, s in self.lines)

    def letters(self, box: Box, flush: Anchor = "left") -> tuple[Letters, ...]:
        """Return the lines in a box of the block's size, flush with its left or right side or centred."""
        made, y = [], box[3]
        x = {"left": box[0], "middle": (box[0] + box[2]) / 2, "right": box[2]}[flush]
        for text, face, size in self.lines:
            made.append(Letters(text, (x, y - RISE * size), size, face, anchor=flush))
            y -= (RISE + SINK) * size
        return tuple(made)


@dataclass(frozen=True, slots=True)
class Labelled:
    """A label to place: its words, its mark's centre, how far the solid of the mark and its arms reach."""

    block: Block
    at: Point
    core: float
    arms: float


def place(
    label: Labelled, ground: Ground, inside: Box, others: Sequence[Point]
) -> tuple[tuple[Mark, ...], bool]:
    """Return the marks of a label and whether all its lines are on them, and take their place.

    `others` are the marks its name must not be nearer to.  Tried in turn: close by, smaller, further off on a
    leader that crosses no mark, its name alone, anywhere on a leader.
    """
    name = Labelled(Block(label.block.lines[:1]), label.at, label.core, label.arms)
    whole = close_by(label, ground, inside, others) or _led(label, ground, inside, others, through=LINE)
    if whole:
        return whole, True
    alone = close_by(name, ground, inside, others)
    if alone:
        return alone, len(label.block.lines) == 1
    return _led(label, ground, inside, (), through=HARD) or _forced(label, ground, inside), True


def close_by(label: Labelled, ground: Ground, inside: Box, others: Sequence[Point]) -> tuple[Mark, ...]:
    """Return the marks of a label close to its mark, smaller if it must be; () when there is no room."""
    for by in _SHRINK:
        block = label.block.shrunk(by)
        for over in (FREE, SOFT):
            for box in _close(label, block.size):
                if _good(box, ground, inside, over) and _own(block, box, label.at, others):
                    return _put(block, box, ground, _flush(box, label.at))
    return ()


def words(
    block: Block, ground: Ground, inside: Box, to: Point, over: int = SOFT, pad: float = PAD
) -> tuple[Mark, ...]:
    """Return the marks of free-standing words as near to a point as there is room, () when there is none.

    They stand over soft things only where there is no bare paper and `over` allows it; `pad` is the
    white kept round them.
    """
    w, h = block.size
    size = (w + 2 * pad, h + 2 * pad)
    for level in (FREE, SOFT)[: over + 1]:
        found = ground.nearest(size, to, inside, level)
        if found is not None:
            box = (found[0] + pad, found[1] + pad, found[2] - pad, found[3] - pad)
            return _put(block, box, ground)
    return ()


def line_of_words(letters: Letters, ground: Ground, inside: Box, over: int = SOFT) -> tuple[Mark, ...]:
    """Return a line of text where it stands if that is free, else ()."""
    box = lettering.box(letters)
    padded = _padded(box)
    if not _within(padded, inside) or not ground.free(padded, over):
        return ()
    cleared = not ground.free(padded)
    ground.take(padded)
    return (*((clearing(box),) if cleared else ()), letters)


def clearing(box: Box) -> Fill:
    """Return the white that words over soft things stand on."""
    return Fill((rectangle(_padded(box)),), white=True)


def _put(block: Block, box: Box, ground: Ground, flush: Anchor = "left") -> tuple[Mark, ...]:
    cleared = not ground.free(_padded(box))
    ground.take(_padded(box))
    return (*((clearing(box),) if cleared else ()), *block.letters(box, flush))


def _good(box: Box, ground: Ground, inside: Box, over: int) -> bool:
    padded = _padded(box)
    return _within(padded, inside) and ground.free(padded, over)


def _padded(box: Box) -> Box:
    return box[0] - PAD, box[1] - PAD, box[2] + PAD, box[3] + PAD


def _within(box: Box, inside: Box) -> bool:
    return box[0] >= inside[0] and box[1] >= inside[1] and box[2] <= inside[2] and box[3] <= inside[3]


def _flush(box: Box, at: Point) -> Anchor:
    """Return the side of a label that its lines keep to: the one towards its mark."""
    if box[0] >= at[0]:
        return "left"
    return "right" if box[2] <= at[0] else "middle"


def _own(block: Block, box: Box, at: Point, others: Sequence[Point]) -> bool:
    """Return whether a label's name is clearly nearer to its own mark than to any other."""
    name = lettering.box(block.letters(box, _flush(box, at))[0])
    mine = _off(name, at)
    return all(_off(name, other) > mine + CLEARLY for other in others)


def _off(box: Box, at: Point) -> float:
    dx = max(box[0] - at[0], 0.0, at[0] - box[2])
    dy = max(box[1] - at[1], 0.0, at[1] - box[3])
    return hypot(dx, dy)


def _close(label: Labelled, size: tuple[float, float]) -> Iterator[Box]:
    """Return boxes round a mark, the best to read first: right of it, in its quarters, left, above, below."""
    (x, y), (w, h) = label.at, size
    for gap in _GAPS:
        past, core, arm = label.arms + PAD + gap, label.core + PAD + gap, 0.4 + PAD
        corners = [(x + past, y - h / 2)]
        corners += [
            (x + core, y + arm),
            (x + core, y - arm - h),
            (x - core - w, y + arm),
            (x - core - w, y - arm - h),
        ]
        corners += [
            (x + arm, y + core),
            (x + arm, y - core - h),
            (x - arm - w, y + core),
            (x - arm - w, y - core - h),
        ]
        corners += [(x - past - w, y - h / 2), (x - w / 2, y + past), (x - w / 2, y - past - h)]
        for left, low in corners:
            yield left, low, left + w, low + h


def _led(
    label: Labelled, ground: Ground, inside: Box, others: Sequence[Point], through: int
) -> tuple[Mark, ...]:
    """Return the smallest label on a leader through nothing harder than `through`; () without one."""
    block = label.block.shrunk(0.0)
    w, h = block.size
    for far in _LEADERS:
        for step in range(24):
            way = radians(step * 15.0)
            x, y = label.at[0] + far * cos(way), label.at[1] + far * sin(way)
            box = (x - w / 2, y - h / 2, x + w / 2, y + h / 2)
            if not _good(box, ground, inside, SOFT) or not _own(block, box, label.at, others):
                continue
            start, end = _leader_ends(label, box)
            if through < HARD and not _clear_way(label, ground, start, end):
                continue
            leader = line(start, end)
            marks = _put(block, box, ground, _flush(box, label.at))
            ground.take_points(sampled(leader))
            return (Stroke((leader,), MEASURED), *marks)
    return ()


def _forced(label: Labelled, ground: Ground, inside: Box) -> tuple[Mark, ...]:
    """Return the smallest label where it hides least, on a leader: no label is ever left out."""
    block = label.block.shrunk(0.0)
    w, h = block.size
    found = ground.least_taken(block.size, inside)
    box = found if found is not None else (inside[0], inside[1], inside[0] + w, inside[1] + h)
    return (*_put(block, box, ground), Stroke((line(*_leader_ends(label, box)),), MEASURED))


def _leader_ends(label: Labelled, box: Box) -> tuple[Point, Point]:
    """Return a leader's ends: the label's nearest point and the rim of its mark."""
    x, y = label.at
    near = (min(max(x, box[0] - PAD), box[2] + PAD), min(max(y, box[1] - PAD), box[3] + PAD))
    off = hypot(near[0] - x, near[1] - y) or 1.0
    rim = (x + (near[0] - x) / off * label.core, y + (near[1] - y) / off * label.core)
    return near, rim


def _clear_way(label: Labelled, ground: Ground, start: Point, end: Point) -> bool:
    """Return whether a leader crosses no other mark; what lies within its own mark's arms is its own."""
    points = sampled(line(start, end))
    beyond = np.hypot(points[:, 0] - label.at[0], points[:, 1] - label.at[1]) > label.arms + CELL
    return ground.hardest(points[beyond]) < HARD
