"""Words beside marks: each label nearest to its own mark, smaller if it must, with a leader at last."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, hypot, radians, sin

from bayboard.model.layout import Point
from bayboard.paper import lettering
from bayboard.paper.curves import Box, line, rectangle
from bayboard.paper.ground import FREE, SOFT, Ground
from bayboard.paper.lettering import RISE, SINK
from bayboard.paper.marks import MEASURED, Anchor, Face, Fill, Letters, Mark, Stroke, pt

Line = tuple[str, Face, float]  # text, face, size in mm
LEAST = pt(6.0)  # mm; no text is smaller
PAD = 0.4  # mm; white between words and anything else
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


def place(label: Labelled, ground: Ground, inside: Box, others: Sequence[Point]) -> tuple[Mark, ...]:
    """Return the marks of a label and take their place; `others` are the marks it must not be nearer to.

    Tried in turn: close by on bare paper, close by over soft things, smaller, then further off with a leader.
    """
    return close_by(label, ground, inside, others) or _with_leader(label, ground, inside, others)


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
    return all(_off(name, other) > mine + 0.5 for other in others)


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


def _with_leader(label: Labelled, ground: Ground, inside: Box, others: Sequence[Point]) -> tuple[Mark, ...]:
    """Return the smallest label on a leader line; its own mark stays the nearest where that can be had."""
    block = label.block.shrunk(0.0)
    w, h = block.size
    for must_own in (True, False):
        for far in _LEADERS:
            for step in range(24):
                way = radians(step * 15.0)
                x, y = label.at[0] + far * cos(way), label.at[1] + far * sin(way)
                box = (x - w / 2, y - h / 2, x + w / 2, y + h / 2)
                if _good(box, ground, inside, SOFT) and (not must_own or _own(block, box, label.at, others)):
                    leader = _leader(label, box)
                    marks = _put(block, box, ground, _flush(box, label.at))
                    ground.take_traces(leader.traces)
                    return (leader, *marks)
    found = ground.least_taken(block.size, inside)
    box = found if found is not None else (inside[0], inside[1], inside[0] + w, inside[1] + h)
    return (*_put(block, box, ground), _leader(label, box))


def _leader(label: Labelled, box: Box) -> Stroke:
    """Return the line from a label's nearest point to the rim of its mark."""
    x, y = label.at
    near = (min(max(x, box[0] - PAD), box[2] + PAD), min(max(y, box[1] - PAD), box[3] + PAD))
    off = hypot(near[0] - x, near[1] - y) or 1.0
    rim = (x + (near[0] - x) / off * label.core, y + (near[1] - y) / off * label.core)
    return Stroke((line(near, rim),), MEASURED)
