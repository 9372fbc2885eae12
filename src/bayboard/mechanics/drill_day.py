"""The list of a drill day: every hole of every board in the order in which it is drilled."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations
from math import dist

from bayboard.geometry import outline as outlines
from bayboard.mechanics.bits import slot_apart
from bayboard.mechanics.holes import Hole, holes
from bayboard.model.drilled import drilled_at
from bayboard.model.layout import Board, Layout, Point


@dataclass(frozen=True, slots=True)
class Drilling:
    """One setting of the drill: `at` in bay axes, ordinates from left and foot of the board's box, mm.

    A slot is drilled in two parts and sawn out between; part counts from 1, `of` is how many there are.
    `bit` None: the drill is not known.  `datum`: one of the two holes by which the sheets are checked.
    """

    hole: Hole
    part: int
    of: int
    at: Point
    from_left: float
    up: float
    bit: float | None
    drilled: bool
    datum: bool


def drillings(layout: Layout) -> tuple[Drilling, ...]:
    """Return all drillings in working order, board by board in document order, drilled ones too.

    On each board first the two datum holes: the two round holes of known drill that lie farthest apart, the
    one nearer to the board's lower left corner first.  Then bit by bit, the smallest first, unknown ones
    last; within a bit always the nearest next, from the first datum hole.
    """
    known = holes(layout)
    return tuple(
        drilling
        for board in layout.boards
        for drilling in _on_board(layout, board, [hole for hole in known if hole.board == board.id])
    )


def datum_check(layout: Layout, board: str) -> tuple[str, str, float] | None:
    """Return the two datum holes of a board and their distance centre to centre in mm, None without two."""
    found = next((b for b in layout.boards if b.id == board), None)
    pair = None if found is None else _datum(found, [h for h in holes(layout) if h.board == board])
    return None if pair is None else (pair[0].id, pair[1].id, dist(pair[0].at, pair[1].at))


def _on_board(layout: Layout, board: Board, known: list[Hole]) -> Iterator[Drilling]:
    foot = _foot(board)
    datum = _datum(board, known) or ()
    start = datum[0].at if datum else foot
    order = [(hole, parts(hole)) for hole in datum]
    rest = [hole for hole in known if hole not in datum]
    for size in sorted({hole.drill for hole in rest if hole.drill is not None}):
        order += _walk([hole for hole in rest if hole.drill == size], start)
    order += _walk([hole for hole in rest if hole.drill is None], start)
    for hole, spots in order:
        made = drilled_at(layout, hole.id) is not None
        for number, at in enumerate(spots, start=1):
            yield Drilling(
                hole=hole,
                part=number,
                of=len(spots),
                at=at,
                from_left=at[0] - foot[0],
                up=at[1] - foot[1],
                bit=hole.drill,
                drilled=made,
                datum=hole in datum,
            )


def parts(hole: Hole) -> tuple[Point, ...]:
    """Return where a hole is drilled, bay axes: two places for a slot of known drill, else its centre."""
    if hole.slot is None or hole.drill is None:
        return (hole.at,)
    half = slot_apart(hole.drill, hole.slot.travel) / 2.0
    c, s = outlines.unit(hole.slot.angle)
    (x, y), dx, dy = hole.at, half * c, half * s
    return (x - dx, y - dy), (x + dx, y + dy)


def _foot(board: Board) -> Point:
    x0, y0, _, _ = outlines.box(board.outline)
    return x0, y0


def _datum(board: Board, known: Iterable[Hole]) -> tuple[Hole, Hole] | None:
    """Return the two round holes of known drill that lie farthest apart, the first of equals."""
    round_ones = [hole for hole in known if hole.slot is None and hole.drill is not None]
    pair = max(combinations(round_ones, 2), key=lambda two: dist(two[0].at, two[1].at), default=None)
    if pair is None or dist(pair[0].at, pair[1].at) == 0.0:
        return None
    near, far = sorted(pair, key=lambda hole: dist(hole.at, _foot(board)))
    return near, far


def _walk(left: list[Hole], here: Point) -> Iterator[tuple[Hole, tuple[Point, ...]]]:
    """Yield holes with their places in the order of a walk to the nearest; a slot from its nearer end."""
    left = list(left)
    while left:
        hole = min(left, key=lambda hole: min(dist(here, at) for at in parts(hole)))
        left.remove(hole)
        spots = tuple(sorted(parts(hole), key=lambda at: dist(here, at)))
        here = spots[-1]
        yield hole, spots
