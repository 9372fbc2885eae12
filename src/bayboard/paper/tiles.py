"""The sheets of a template: numbered in taping order, each with what it shows and whom it meets.

Sheets are numbered down each column, columns from left to right, so that the long joins are taped last.
The left and the lower edge of a sheet are cut and lie over the neighbour, the right and the upper edge lie
under it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from bayboard.model.layout import Point
from bayboard.paper.curves import Box, Carry
from bayboard.paper.face import Face
from bayboard.paper.form import RIM, Form
from bayboard.paper.grid import Grid, bounds, grid, grid_like
from bayboard.paper.seams import Span

CUT_SPARE, COVER_SPARE, RIM_SPARE = 5.0, 6.0, 4.5  # mm; how much more is shown where paper is left over


@dataclass(frozen=True, slots=True)
class Seam:
    """The join of two sheets: `over` lies over `under`; from `a` to `b` in the face's mm."""

    over: int
    under: int
    a: Point
    b: Point


@dataclass(frozen=True, slots=True)
class Tile:
    """A sheet: `core` is its own part of the face, `window` what it shows, `carry` takes face to page.

    `left`, `right`, `above`, `below` are the numbers of the sheets it meets there.
    """

    number: int
    core: Box
    window: Box
    carry: Carry
    left: int | None
    right: int | None
    above: int | None
    below: int | None


@dataclass(frozen=True, slots=True)
class Plan:
    """All sheets of one face in taping order; both sides of `form.size` are known."""

    form: Form
    tiles: tuple[Tile, ...]
    seams: tuple[Seam, ...]


def plan(face: Face, forms: Sequence[Form], first: int = 1, like: Face | None = None) -> Plan:
    """Return the sheets of a face, numbered from `first`; cut as those of `like` if that still can be."""
    found = (like and grid_like(face, forms, like)) or grid(face, forms)
    x0, y0, x1, y1 = face.box
    form = found.form.cut_to(x1 - x0 + 2 * RIM, y1 - y0 + 2 * RIM)
    order = sorted(found.kept, key=lambda cell: (cell[0], -cell[1]))
    numbers = {cell: first + i for i, cell in enumerate(order)}
    tiles = tuple(_tile(face, found, form, cell, numbers) for cell in order)
    return Plan(form, tiles, tuple(_seams(tiles)))


def _tile(
    face: Face, g: Grid, form: Form, cell: tuple[int, int], numbers: dict[tuple[int, int], int]
) -> Tile:
    column, row = cell
    core = bounds(face.box, g.columns, g.rows, column, row)
    meets = [
        numbers.get(c) for c in ((column - 1, row), (column + 1, row), (column, row + 1), (column, row - 1))
    ]
    # left and lower sides are cut where there is a sheet, right and upper sides are covered
    x = _shown(form, core[0], core[2], column > 0, column < len(g.columns), form.live[0])
    y = _shown(form, core[1], core[3], row > 0, row < len(g.rows), form.live[1])
    window = (x[0], y[0], x[1], y[1])
    at = [
        form.live_at[i] + (form.live[i] - (window[i + 2] - window[i])) / 2 - window[i] for i in (0, 1)
    ]  # what is left over stays white on either side
    return Tile(numbers[cell], core, window, Carry(e=at[0], f=at[1]), *meets)


def _shown(form: Form, low: float, high: float, cut: bool, covered: bool, live: float) -> Span:
    """Return what a sheet shows of one axis: its own part, what seams need, more if paper is left over."""
    before, spare_before = (form.cut_side, CUT_SPARE) if cut else (RIM, RIM_SPARE)
    beyond, spare_beyond = (form.cover_side, COVER_SPARE) if covered else (RIM, RIM_SPARE)
    left_over = max(0.0, live - (high - low) - before - beyond)
    share = min(1.0, left_over / (spare_before + spare_beyond))
    return low - before - share * spare_before, high + beyond + share * spare_beyond


def _seams(tiles: Sequence[Tile]) -> Iterator[Seam]:
    """Return the joins in taping order: those within a column, then those to the next column."""
    for _, column in groupby(tiles, key=lambda tile: tile.core[0]):
        sheets = list(column)
        for tile in sheets:
            x0, y0, x1, _ = tile.core
            if tile.below is not None:
                yield Seam(tile.number, tile.below, (x0, y0), (x1, y0))
        for tile in sheets:
            _, y0, x1, y1 = tile.core
            if tile.right is not None:
                yield Seam(tile.right, tile.number, (x1, y1), (x1, y0))
