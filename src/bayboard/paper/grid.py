"""The grid of seams through a face: every form of the paper is tried, the fewest sheets win.

Fewest sheets whose seams keep `CLEAR` from every hole, then the larger overlap, then the shorter seams.
When no grid with at most one more row and column keeps clear, the one that keeps furthest is taken and the
sheets name the hole.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise, product

import numpy as np
import shapely

from bayboard.model.refused import Refused
from bayboard.paper import seams
from bayboard.paper.curves import Box
from bayboard.paper.face import Drilled, Face
from bayboard.paper.form import RIM, Form
from bayboard.paper.seams import Axis, Seams

CLEAR = 8.0  # mm; nearer to a hole's edge a seam hides part of its mark
EDGE_CLEAR = 3.0  # mm; a seam along a sawn edge would leave a sliver to tape
BLANK = 80.0  # mm; where less than this square is missing of a board's box, no sheet will be blank
MOST_SHEETS = 400  # of one board
_SURE = 1e-4  # mm; the solver's own uncertainty
_WIDE_CLEAR = 20.0  # mm; asked of even seams first


@dataclass(frozen=True, slots=True)
class Grid:
    """Seams of one form, the clearance they keep, and the cells (column, row from below) needed."""

    form: Form
    columns: Seams
    rows: Seams
    clear: float
    kept: frozenset[tuple[int, int]]


@dataclass(frozen=True, slots=True)
class _Try:
    """A form with a number of seams across and up."""

    form: Form
    across: Axis
    up: Axis
    columns: int
    rows: int


def grid(face: Face, forms: Sequence[Form]) -> Grid:
    """Return the best grid of a face."""
    _refuse_too_many(face, forms)
    tries = [t for form in forms for t in _tries(face, form)]
    clear = _part_grids(face, tries) if _has_blanks(face) else list(_full_grids(tries))
    if clear:
        return min(clear, key=lambda g: _rank(face, g))
    return min(_near_grids(face, tries), key=lambda g: (-round(g.clear, 3), *_rank(face, g)))


def grid_like(face: Face, forms: Sequence[Form], like: Face) -> Grid | None:
    """Return the grid of `like`, None where the board is another or a seam would come nearer to a hole.

    Nearer: than `CLEAR`, or than the seams of `like` came where even those did not keep that.
    """
    if face.outline != like.outline or face.cutouts != like.cutouts:
        return None
    found = grid(like, forms)
    extents = [_extent(h) for h in face.holes if not h.made]
    across, up = ([(e[i], e[i + 2]) for e in extents] for i in (0, 1))
    clear = min(seams.clearance(found.columns, across), seams.clearance(found.rows, up))
    return replace(found, clear=clear) if clear >= min(CLEAR, found.clear) - _SURE else None


def _refuse_too_many(face: Face, forms: Sequence[Form]) -> None:
    least = min(columns * rows for columns, rows in (cells(face.box, form) for form in forms))
    if least > MOST_SHEETS:
        what = f"needs {least} sheets of {forms[0].paper}, more than anybody tapes together"
        raise Refused(f"board {face.board.id} › outline", what, "Correct the outline or choose larger paper")


def cells(box: Box, form: Form) -> tuple[int, int]:
    """Return (columns, rows) of sheets that a box needs, holes apart."""
    across, up = (_axis(box, form, i) for i in (0, 1))
    return seams.fewest(across) + 1, seams.fewest(up) + 1


def bounds(box: Box, columns: Seams, rows: Seams, column: int, row: int) -> Box:
    """Return a cell's own part of the face's box."""
    xs = (box[0], *columns, box[2])
    ys = (box[1], *rows, box[3])
    return xs[column], ys[row], xs[column + 1], ys[row + 1]


def _rank(face: Face, g: Grid) -> tuple[float, ...]:
    x0, y0, x1, y1 = face.box
    length = len(g.columns) * (y1 - y0) + len(g.rows) * (x1 - x0)
    w, h = g.form.cut_to(x1 - x0 + 2 * RIM, y1 - y0 + 2 * RIM).size
    return (len(g.kept), w * h, -g.form.overlap, length, _uneven(face.box, g), -round(g.clear, 3))


def _uneven(box: Box, g: Grid) -> float:
    """Return how much the widths and the heights of the cells differ, in whole cm."""
    sides = ((box[0], *g.columns, box[2]), (box[1], *g.rows, box[3]))
    steps = [[b - a for a, b in pairwise(side)] for side in sides]
    return sum(round((max(s) - min(s)) / 10.0) for s in steps)


def _tries(face: Face, form: Form) -> Iterator[_Try]:
    """Return the fewest seams of either axis, and one more of each."""
    extents = [_extent(h) for h in face.holes]
    across, up = (
        _axis(
            face.box,
            form,
            i,
            tuple((e[i], e[i + 2]) for e in extents),
            tuple((e - EDGE_CLEAR, e + EDGE_CLEAR) for e in face.edges[i]),
        )
        for i in (0, 1)
    )
    nx, ny = seams.fewest(across), seams.fewest(up)
    for dx, dy in product((0, 1), repeat=2):
        yield _Try(form, across, up, nx + dx, ny + dy)


def _axis(
    box: Box, form: Form, i: int, holes: tuple[seams.Span, ...] = (), closed: tuple[seams.Span, ...] = ()
) -> Axis:
    live = form.live[i]
    first, last = live - form.cover_side - RIM, live - form.cut_side - RIM
    return Axis(box[i], box[i + 2], first, live - form.overlap, last, holes, closed)


def _extent(hole: Drilled) -> Box:
    xs, ys = zip(*hole.discs, strict=True)
    r = hole.radius
    return min(xs) - r, min(ys) - r, max(xs) + r, max(ys) + r


def _open(axis: Axis) -> Axis:
    """Return the axis with sawn edges no longer closed to seams."""
    return Axis(axis.start, axis.end, axis.first, axis.pitch, axis.last, axis.holes)


def _has_blanks(face: Face) -> bool:
    """Return whether so much of the board's box is missing that a sheet may be left out."""
    missing = shapely.difference(shapely.box(*face.box), face.solid)
    boxes = (part.bounds for part in getattr(missing, "geoms", [missing]) if not part.is_empty)
    return any(x1 - x0 >= BLANK and y1 - y0 >= BLANK for x0, y0, x1, y1 in boxes)


def _full_grids(tries: Sequence[_Try]) -> Iterator[Grid]:
    """Return the clear grids with the fewest cells; every cell is needed."""
    able = [t for t in tries if _clear(t.across, t.columns) and _clear(t.up, t.rows)]
    least = min(((t.columns + 1) * (t.rows + 1) for t in able), default=0)
    for t in able:
        if (t.columns + 1) * (t.rows + 1) == least:
            across, up = _best(t.across, t.columns), _best(t.up, t.rows)
            if across is not None and up is not None:
                kept = frozenset(product(range(len(across[1]) + 1), range(len(up[1]) + 1)))
                yield Grid(t.form, across[1], up[1], min(across[0], up[0]), kept)


def _clear(axis: Axis, count: int) -> bool:
    return seams.latest(_open(axis), count, CLEAR) is not None


def _best(axis: Axis, count: int) -> tuple[float, Seams] | None:
    """Return the best seams off sawn edges, or else on them."""
    found = seams.best(axis, count)
    if found is not None and found[0] >= CLEAR:
        return found
    return seams.best(_open(axis), count)


def _part_grids(face: Face, tries: Sequence[_Try]) -> list[Grid]:
    """Return clear grids, blank cells left out, of seams moved about so that more cells are blank."""
    pairs = [
        (t.form, columns, rows, min(clear_across, clear_up))
        for t in tries
        for (clear_across, columns), (clear_up, rows) in product(
            _moved(t.across, t.columns, face.edges[0]), _moved(t.up, t.rows, face.edges[1])
        )
    ]
    kept = _kept(face, [(columns, rows) for _, columns, rows, _ in pairs])
    return [Grid(form, c, r, clear, cells) for (form, c, r, clear), cells in zip(pairs, kept, strict=True)]


def _moved(axis: Axis, count: int, edges: Sequence[float]) -> list[tuple[float, Seams]]:
    """Return seams that keep clear, and how far: even, packed to either end, along a sawn edge."""
    found: dict[Seams, None] = {}
    closed = seams.even(axis, count, _WIDE_CLEAR) or seams.even(axis, count, CLEAR)
    even = closed or seams.even(_open(axis), count, CLEAR)
    if even is not None:
        found[even] = None
    if count:
        packed = (seams.latest(axis, count, CLEAR), seams.earliest(axis, count, CLEAR))
        beside = (seams.through(axis, e + by, CLEAR) for e in edges for by in (-EDGE_CLEAR, EDGE_CLEAR))
        found |= {s: None for s in (*packed, *beside) if s is not None and len(s) <= count}
    return [(seams.clearance(s, axis.holes), s) for s in found]


def _kept(face: Face, grids: Sequence[tuple[Seams, Seams]]) -> list[frozenset[tuple[int, int]]]:
    """Return of each grid the cells in which any of the board, its line included, lies."""
    if not grids:
        return []
    which = [list(product(range(len(c) + 1), range(len(r) + 1))) for c, r in grids]
    boxes = np.array(
        [bounds(face.box, c, r, *cell) for (c, r), cells in zip(grids, which, strict=True) for cell in cells]
    )
    board = face.seen_all_round
    shapely.prepare(board)
    needed = iter(shapely.intersects(board, shapely.box(*boxes.T)).tolist())
    return [frozenset(cell for cell in cells if next(needed)) for cells in which]


def _near_grids(face: Face, tries: Sequence[_Try]) -> Iterator[Grid]:
    """Return the best grid of every try, though its seams come near a hole."""
    for t in tries:
        across, up = seams.best(_open(t.across), t.columns), seams.best(_open(t.up), t.rows)
        if across is not None and up is not None:
            (kept,) = _kept(face, [(across[1], up[1])])
            yield Grid(t.form, across[1], up[1], min(across[0], up[0]), kept)
