"""Check bars: 100 mm and 4 in, along and across, on every sheet, to lay a steel rule on.

Their ends are ticks, measured tick to tick.  They stand over the drawing at the most central place that is
free and so cost no paper; a sheet too narrow for them carries 50 mm and 2 in.
"""

from dataclasses import dataclass
from itertools import product

from bayboard.model.layout import Point
from bayboard.paper.curves import Box, Carry, line, rectangle
from bayboard.paper.ground import FREE, LINE, SOFT, Ground
from bayboard.paper.marks import MEASURED, Fill, Letters, Mark, Stroke, Trace, pt

INCH = 25.4
_APART = 1.2  # mm; between the mm bar and the inch bar
_TICK, _END = 1.8, 3.0  # mm; lengths of ticks
_WORDS = pt(7.0)
_ENDS = 1.0  # mm; white beyond the ends
_HIGH = 13.6  # mm; a pair of bars with its words


@dataclass(frozen=True, slots=True)
class Pair:
    """A mm bar and an inch bar, back to back: their lengths, in mm and whole inches."""

    mm: int
    inches: int

    @property
    def size(self) -> tuple[float, float]:
        """Return (length, height) of the pair with its words."""
        return max(self.mm, self.inches * INCH) + 2 * _ENDS, _HIGH


FULL, HALF = Pair(100, 4), Pair(50, 2)
LONG_PAGE = 600.0  # mm; a longer page carries a pair near either end


def bars(ground: Ground, live: Box, visible: Box) -> tuple[Mark, ...]:
    """Return a pair along and a pair across and take their places; `visible` is what stays after taping."""
    x0, y0, x1, y1 = visible
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    spots = [middle]
    if max(x1 - x0, y1 - y0) > LONG_PAGE:
        wide = x1 - x0 >= y1 - y0
        spots = [_towards(visible, share, wide) for share in (0.15, 0.85)]
    return tuple(
        m
        for spot in spots
        for upright in (False, True)
        for m in _placed(ground, live, visible, spot, upright)
    )


def _towards(box: Box, share: float, wide: bool) -> Point:
    x0, y0, x1, y1 = box
    if wide:
        return x0 + share * (x1 - x0), (y0 + y1) / 2
    return (x0 + x1) / 2, y0 + share * (y1 - y0)


def _placed(ground: Ground, live: Box, visible: Box, spot: Point, upright: bool) -> tuple[Mark, ...]:
    """Return one pair at the free place nearest to the spot; the short pair where the long one finds none."""
    for pair in (FULL, HALF):
        size = pair.size[::-1] if upright else pair.size
        for inside, over in product((visible, live), (FREE, SOFT, LINE)):
            box = ground.nearest(size, spot, inside, over)
            if box is not None:
                ground.take(box)
                return _drawn(pair, box, upright)
    size = HALF.size[::-1] if upright else HALF.size
    box = ground.least_taken(size, live)
    assert box is not None  # every form leaves more room than a short pair needs
    ground.take(box)
    return (Fill((rectangle(box),), white=True), *_drawn(HALF, box, upright))


def _drawn(pair: Pair, box: Box, upright: bool) -> tuple[Mark, ...]:
    """Return a pair in a box; upright bars read from the right, mm on the left."""
    if upright:
        carry = Carry.to(((box[0] + box[2]) / 2, box[1] + _ENDS), 90.0)
    else:
        carry = Carry.to((box[0] + _ENDS, (box[1] + box[3]) / 2))
    half = _APART / 2
    mm = _bar(half, 1.0, [float(v) for v in range(0, pair.mm + 1, 10)])
    inch = _bar(-half, -1.0, [v * INCH / 2 for v in range(pair.inches * 2 + 1)])
    drawn = Stroke(tuple(carry.trace(t) for t in (*mm, *inch)), MEASURED)
    turn = 90.0 if upright else 0.0
    over, under = half + _END + 0.8, -half - _END - 0.8 - 0.67 * _WORDS
    return (
        drawn,
        Letters(f"{pair.mm} mm", carry.point((pair.mm / 2, over)), _WORDS, turn=turn, anchor="middle"),
        Letters(
            f"{pair.inches} in",
            carry.point((pair.inches * INCH / 2, under)),
            _WORDS,
            turn=turn,
            anchor="middle",
        ),
    )


def _bar(y: float, way: float, ticks: list[float]) -> list[Trace]:
    """Return a bar's line and ticks; the first, the middle and the last tick are long."""
    long = {0, len(ticks) // 2, len(ticks) - 1}
    made = [line((ticks[0], y), (ticks[-1], y))]
    return made + [line((x, y), (x, y + way * (_END if i in long else _TICK))) for i, x in enumerate(ticks)]
