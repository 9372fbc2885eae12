"""The list of a drill day: every hole of every board in the order in which it is drilled."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import dist

import numpy as np

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR
from bayboard.mechanics.bits import slot_apart
from bayboard.mechanics.holes import Hole, holes
from bayboard.model.drilled import drilled_places
from bayboard.model.layout import Board, Layout, Point

Spots = tuple[Point, ...]  # where a hole is drilled, one or two places


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
    known, made = holes(layout), drilled_places(layout)
    return tuple(
        drilling
        for board in layout.boards
        for drilling in _on_board(board, [hole for hole in known if hole.board == board.id], made)
    )


def datum_check(layout: Layout, board: str) -> tuple[str, str, float] | None:
    """Return the two datum holes of a board and their distance centre to centre in mm, None without two."""
    found = next((b for b in layout.boards if b.id == board), None)
    pair = None if found is None else _datum(found, [h for h in holes(layout) if h.board == board])
    return None if pair is None else (pair[0].id, pair[1].id, dist(pair[0].at, pair[1].at))


def _on_board(board: Board, known: list[Hole], made: Mapping[str, Point]) -> Iterator[Drilling]:
    foot, datum = _foot(board), _datum(board, known) or ()
    for hole, spots in _in_order(known, datum, foot):
        for number, at in enumerate(spots, start=1):
            yield Drilling(
                hole=hole,
                part=number,
                of=len(spots),
                at=at,
                from_left=at[0] - foot[0],
                up=at[1] - foot[1],
                bit=hole.drill,
                drilled=hole.id in made,
                datum=hole in datum,
            )


def _in_order(known: list[Hole], datum: Sequence[Hole], foot: Point) -> Iterator[tuple[Hole, Spots]]:
    """Yield the holes of a board with the places of each, in working order."""
    yield from ((hole, parts(hole)) for hole in datum)
    start = datum[0].at if datum else foot
    rest = [hole for hole in known if hole not in datum]
    sizes: list[float | None] = [*sorted({hole.drill for hole in rest if hole.drill is not None}), None]
    for size in sizes:
        yield from _walk([hole for hole in rest if hole.drill == size], start)


def parts(hole: Hole) -> Spots:
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
    at = np.array([hole.at for hole in round_ones]).reshape(-1, 2)
    farthest, pair = 0.0, None
    for i, hole in enumerate(round_ones[:-1]):
        apart = np.hypot(*(at[i + 1 :] - at[i]).T)
        if apart.max() > farthest + HAIR:
            farthest = float(apart.max())
            pair = hole, round_ones[i + 1 + int(np.argmax(apart >= farthest - HAIR))]
    if pair is None:
        return None
    near, far = sorted(pair, key=lambda hole: dist(hole.at, _foot(board)))
    return near, far


def _walk(holes: list[Hole], here: Point) -> Iterator[tuple[Hole, Spots]]:
    """Yield holes with their places in the order of a walk to the nearest; a slot from its nearer end.

    Of equally near ones the first comes first.
    """
    spots = [parts(hole) for hole in holes]
    ends = np.array([(places[0], places[-1]) for places in spots]).reshape(-1, 2, 2)
    left = np.ones(len(holes), dtype=np.bool_)
    for _ in holes:
        apart = np.hypot(*np.moveaxis(ends - np.array(here), 2, 0))
        nearer = np.where(left, apart.min(axis=1), np.inf)
        i = int(np.argmax(nearer <= nearer.min() + HAIR))
        left[i] = False
        places = spots[i] if apart[i, 0] <= apart[i, 1] + HAIR else spots[i][::-1]
        here = places[-1]
        yield holes[i], places
