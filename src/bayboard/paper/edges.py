"""What a sheet's edges carry: where to cut, where it is covered, and the rule along the board's own edge."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, floor

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Point
from bayboard.paper.curves import Box, line
from bayboard.paper.face import Face
from bayboard.paper.marks import CUT, HAIR, Letters, Stroke, Trace, pt
from bayboard.paper.tiles import Tile
from bayboard.units.length import Units

HATCH = 6.0  # mm; pitch of the lines over what will be covered
CUT_DASH = (5.0, 2.5)
WORDS = pt(7.5)
FIGURES = pt(7.0)
RULES: dict[Units, tuple[float, int, float]] = {
    "mm": (50.0, 2, 1.0),
    "in": (50.8, 2, 25.4),
}  # tick, number each n, unit
TICK, LONG_TICK = 2.4, 4.0  # mm
SHORTEST_EDGE = 60.0  # mm; a shorter straight edge carries no rule


@dataclass(frozen=True, slots=True)
class EdgeWords:
    """Words that run along a seam: where they may stand, from the best place on."""

    text: str
    upright: bool
    seam: float  # page mm; x of an upright seam, y of a level one
    side: float  # -1: they stand left of or below the seam, 1: right of or above it
    span: tuple[float, float]  # page mm; along the seam


def seam_lines(tile: Tile) -> tuple[Stroke, ...]:
    """Return the seams on the page: dashed where this sheet is cut, solid where it is covered."""
    core, window = tile.carry.box(tile.core), tile.carry.box(tile.window)
    cut, covered = [], []
    if tile.left is not None:
        cut.append(line((core[0], window[1]), (core[0], window[3])))
    if tile.below is not None:
        cut.append(line((window[0], core[1]), (window[2], core[1])))
    if tile.right is not None:
        covered.append(line((core[2], window[1]), (core[2], window[3])))
    if tile.above is not None:
        covered.append(line((window[0], core[3]), (window[2], core[3])))
    made = [Stroke(tuple(cut), CUT, CUT_DASH)] if cut else []
    return (*made, *([Stroke(tuple(covered), CUT)] if covered else []))


def seam_words(tile: Tile) -> Iterator[EdgeWords]:
    """Return what stands along each seam of a sheet."""
    core = tile.carry.box(tile.core)
    across, up = (core[0], core[2]), (core[1], core[3])
    if tile.left is not None:
        yield EdgeWords(f"cut here; this edge lies over {tile.left}", True, core[0], 1.0, up)
    if tile.below is not None:
        yield EdgeWords(f"cut here; this edge lies over {tile.below}", False, core[1], 1.0, across)
    if tile.right is not None:
        yield EdgeWords(f"lies under {tile.right}", True, core[2], -1.0, up)
    if tile.above is not None:
        yield EdgeWords(f"lies under {tile.above}", False, core[3], -1.0, across)


def covered_boxes(tile: Tile) -> tuple[Box, ...]:
    """Return what neighbours will cover, on the page, without overlap."""
    core, window = tile.carry.box(tile.core), tile.carry.box(tile.window)
    boxes: list[Box] = []
    if tile.right is not None:
        boxes.append((core[2], window[1], window[2], window[3]))
    if tile.above is not None:
        boxes.append((window[0], core[3], core[2] if tile.right is not None else window[2], window[3]))
    return tuple(boxes)


def hatching(boxes: tuple[Box, ...]) -> Stroke:
    """Return lines at 45 degrees over boxes of the page, in step from one box to the next."""
    return Stroke(tuple(t for box in boxes for t in _hatch(box)), HAIR)


def _hatch(box: Box) -> Iterator[Trace]:
    x0, y0, x1, y1 = box
    for k in range(ceil((y0 - x1) / HATCH), floor((y1 - x0) / HATCH) + 1):
        c = k * HATCH  # the line y = x + c
        a, b = max(x0, y0 - c), min(x1, y1 - c)
        if b - a > 1.0:
            yield line((a, a + c), (b, b + c))


def ruled_edges(face: Face, tile: Tile, units: Units) -> Iterator[tuple[Trace, Letters | None]]:
    """Return ticks along the board's straight edges on this sheet, with the figures of the long ones.

    They count from the board's left and lower edge as seen from the gear side, on either face.
    """
    window = tile.window
    for edge in _straight_edges(face):
        for tick in _ticks(edge, units):
            at = face.carry.point(tick.at)
            if window[0] <= at[0] <= window[2] and window[1] <= at[1] <= window[3]:
                yield _drawn(face, tile, tick)


@dataclass(frozen=True, slots=True)
class _Edge:
    """A level or upright edge in bay axes: from `low` to `high` along x or y, `inward` its normal."""

    level: bool
    across: float
    low: float
    high: float
    zero: float
    inward: float


@dataclass(frozen=True, slots=True)
class _Tick:
    at: Point
    way: Point
    figure: str


def _straight_edges(face: Face) -> Iterator[_Edge]:
    board = face.board
    x0, y0, _, _ = outlines.box(board.outline)
    corners = outlines.corners(board.outline, board.corner_radius)
    ccw = 1.0 if outlines.signed_area(board.outline) > 0 else -1.0
    for here, after in zip(corners, corners[1:] + corners[:1], strict=True):
        (ax, ay), (bx, by) = map(float, here.end), map(float, after.start)
        if ay == by and abs(bx - ax) >= SHORTEST_EDGE:
            yield _Edge(True, ay, min(ax, bx), max(ax, bx), x0, ccw if bx > ax else -ccw)
        elif ax == bx and abs(by - ay) >= SHORTEST_EDGE:
            yield _Edge(False, ax, min(ay, by), max(ay, by), y0, -ccw if by > ay else ccw)


def _ticks(edge: _Edge, units: Units) -> Iterator[_Tick]:
    step, each, unit = RULES[units]
    for k in range(
        ceil((edge.low - edge.zero) / step + 1e-9), floor((edge.high - edge.zero) / step - 1e-9) + 1
    ):
        s = edge.zero + k * step
        figure = f"{round(k * step / unit)}{' in' if units == 'in' else ''}" if k % each == 0 else ""
        if edge.level:
            yield _Tick((s, edge.across), (0.0, edge.inward), figure)
        else:
            yield _Tick((edge.across, s), (edge.inward, 0.0), figure)


def _drawn(face: Face, tile: Tile, tick: _Tick) -> tuple[Trace, Letters | None]:
    """Return a tick on the page and its figure just inside the edge."""
    x, y = tile.carry.point(face.carry.point(tick.at))
    wx, wy = tick.way[0] * face.carry.a, tick.way[1]
    long = LONG_TICK if tick.figure else TICK
    mark = line((x, y), (x + wx * long, y + wy * long))
    if not tick.figure:
        return mark, None
    if wy:
        low = 1.6 if wy > 0 else -1.6 - 0.67 * FIGURES
        return mark, Letters(tick.figure, (x + 1.4, y + low), FIGURES)
    anchor = "left" if wx > 0 else "right"
    return mark, Letters(tick.figure, (x + wx * 1.8, y + 1.4), FIGURES, anchor=anchor)  # type: ignore[arg-type]
