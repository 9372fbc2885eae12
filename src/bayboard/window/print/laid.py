"""How the sheets of a template lie on the boards, in bay axes: plain values, small enough to send about."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import hypot
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from bayboard.model.layout import Point
from bayboard.paper.curves import Box, Carry
from bayboard.paper.grid import CLEAR
from bayboard.paper.marks import Trace

if TYPE_CHECKING:  # the sections load the fonts of the paper, which only the making of sheets needs
    from bayboard.paper.section import Section
    from bayboard.paper.tiles import Seam, Tile

_SURE = 1e-4  # mm; the seam solver's own uncertainty
_STEP = 10.0  # mm; how closely outlines are looked at
_GRID = (0.24, 0.37, 0.5, 0.63, 0.76)  # shares of a sheet at which its number may stand


@dataclass(frozen=True, slots=True)
class Nearest:
    """The hole that a sheet's seams come nearest to: `on` the seam, `edge` of the hole, `mm` between them.

    `mm` is negative, and `on` and `edge` are one place, where the seam cuts the hole.
    """

    hole: str
    mm: float
    on: Point
    edge: Point
    near: bool  # so near that the sheet names the hole


@dataclass(frozen=True, slots=True)
class LaidSheet:
    """A sheet on the board: `core` is its own part, `paper` what is left of it once its edges are cut.

    `left`, `right`, `above`, `below` are its neighbours as one stands before the Wall; `over` and `under`
    are those it lies over and under.
    """

    number: int
    core: Box
    paper: Box
    left: int | None
    right: int | None
    above: int | None
    below: int | None
    over: tuple[int, ...]
    under: tuple[int, ...]
    number_at: Point
    nearest: Nearest | None


@dataclass(frozen=True, slots=True)
class LaidHole:
    """A hole: its id, its middle, its centres to drill, its radius (0 where the drill is unknown).

    `made`: it is drilled already.
    """

    id: str
    at: Point
    discs: tuple[Point, ...]
    radius: float
    made: bool = False


@dataclass(frozen=True, slots=True)
class LaidBoard:
    """One board under its sheets.  `columns` are the sheets' numbers in taping order, column by column.

    `order` has the sheets from the lowest to the one that lies on top of all.
    """

    id: str
    back: bool
    rings: tuple[Trace, ...]
    stand_ins: tuple[tuple[str, Trace], ...]
    holes: tuple[LaidHole, ...]
    sheets: tuple[LaidSheet, ...]
    columns: tuple[tuple[int, ...], ...]
    order: tuple[int, ...]
    seams: tuple[tuple[Point, Point], ...]
    stations: tuple[tuple[int, Point], ...]


def laid_board(section: "Section") -> LaidBoard:
    """Return how a board's sheets lie on it; those of the back are seen through the board."""
    face, seen = section.face, section.face.carry  # a mirroring is its own way back to the bay
    columns = tuple(
        tuple(tile.number for tile in column)
        for _, column in groupby(section.plan.tiles, key=lambda tile: tile.core[0])
    )
    crowd = _crowd(section)
    return LaidBoard(
        id=face.board.id,
        back=face.back,
        rings=tuple(seen.trace(t) for t in (face.outline, *(ring for _, ring in face.cutouts))),
        stand_ins=tuple((s.id, seen.trace(s.trace)) for s in face.stand_ins),
        holes=tuple(
            LaidHole(h.id, seen.point(h.at), tuple(seen.point(d) for d in h.discs), h.radius, h.made)
            for h in face.holes
        ),
        sheets=tuple(_sheet(section, tile, crowd) for tile in section.plan.tiles),
        columns=columns,
        order=tuple(number for column in columns for number in reversed(column)),
        seams=tuple((seen.point(s.a), seen.point(s.b)) for s in section.plan.seams),
        stations=tuple((s.number, seen.point(s.at)) for s in section.stations),
    )


def _sheet(section: "Section", tile: "Tile", crowd: NDArray[np.float64]) -> LaidSheet:
    seen, back = section.face.carry, section.face.back
    left, right = (tile.right, tile.left) if back else (tile.left, tile.right)
    return LaidSheet(
        number=tile.number,
        core=seen.box(tile.core),
        paper=seen.box(_paper(section.plan.form.size, tile)),
        left=left,
        right=right,
        above=tile.above,
        below=tile.below,
        over=tuple(n for n in (tile.left, tile.below) if n is not None),
        under=tuple(n for n in (tile.right, tile.above) if n is not None),
        number_at=seen.point(_emptiest(tile.core, crowd)),
        nearest=_nearest(section, tile.number, seen),
    )


def _paper(size: tuple[float, float], tile: "Tile") -> Box:
    """Return the page on the face, less what is cut away at the left and below."""
    x, y = -tile.carry.e, -tile.carry.f  # a sheet is moved to its page, never turned
    return (
        x if tile.left is None else tile.core[0],
        y if tile.below is None else tile.core[1],
        x + size[0],
        y + size[1],
    )


def _crowd(section: "Section") -> NDArray[np.float64]:
    """Return what a sheet's number keeps off, x, y and weight: marks fully, lines half as far."""
    face = section.face
    marks = [*(h.at for h in face.holes), *(s.at for s in section.stations)]
    marks += [_middle(s.outline) for s in face.stand_ins]
    rings = [face.outline, *(ring for _, ring in face.cutouts), *(s.trace for s in face.stand_ins)]
    lines = np.vstack([_along(ring) for ring in rings])
    points = np.vstack((np.reshape(np.array(marks), (len(marks), 2)), lines))
    return np.column_stack((points, np.repeat((1.0, 2.0), (len(marks), len(lines)))))


def _along(ring: Trace) -> NDArray[np.float64]:
    """Return points along a ring, at most `_STEP` apart; a curve counts as its chord."""
    corners = np.array([ring.start, *((step[-2], step[-1]) for step in ring.steps), ring.start])
    far = np.concatenate(([0.0], np.hypot(*np.diff(corners, axis=0).T).cumsum()))
    at = np.linspace(0.0, far[-1], max(round(far[-1] / _STEP), 1) + 1)
    return np.column_stack([np.interp(at, far, corners[:, i]) for i in (0, 1)])


def _middle(points: Sequence[Point]) -> Point:
    xs, ys = zip(*points, strict=True)
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def _emptiest(core: Box, crowd: NDArray[np.float64]) -> Point:
    """Return the place in a sheet that is farthest from the crowd; of equals the one nearest the middle."""
    x0, y0, x1, y1 = core
    spots = np.array([(x0 + a * (x1 - x0), y0 + b * (y1 - y0)) for a in _GRID for b in _GRID])
    off = np.hypot(spots[:, None, 0] - crowd[None, :, 0], spots[:, None, 1] - crowd[None, :, 1])
    far = min(x1 - x0, y1 - y0) / 2  # farther off than this nothing is in the way
    room = np.minimum((off * crowd[None, :, 2]).min(axis=1), far)
    middle = np.hypot(spots[:, 0] - (x0 + x1) / 2, spots[:, 1] - (y0 + y1) / 2)
    best = spots[np.lexsort((middle, -np.round(room, 3)))[0]]
    return float(best[0]), float(best[1])


def _nearest(section: "Section", number: int, seen: Carry) -> Nearest | None:
    """Return the hole nearest to a sheet's seams, None without seams or holes."""
    ways = []
    to_drill = [hole for hole in section.face.holes if not hole.made]
    for seam in (seam for seam in section.plan.seams if number in (seam.over, seam.under)):
        for hole in to_drill:
            for disc in hole.discs:
                on = _on_seam(seam, disc)
                ways.append((hypot(on[0] - disc[0], on[1] - disc[1]) - hole.radius, hole.id, on, disc, seam))
    if not ways:
        return None
    mm, name, on, disc, seam = min(ways, key=lambda way: way[:2])
    far = hypot(on[0] - disc[0], on[1] - disc[1])
    share = (far - mm) / far if mm > 0 else 1.0  # of the way from the hole's middle to the seam
    edge = disc[0] + share * (on[0] - disc[0]), disc[1] + share * (on[1] - disc[1])
    return Nearest(name, mm, seen.point(on), seen.point(edge), mm < CLEAR - _SURE)


def _on_seam(seam: "Seam", at: Point) -> Point:
    """Return the point of a seam, which is level or upright, that is nearest to another."""
    (ax, ay), (bx, by) = seam.a, seam.b
    return min(max(at[0], min(ax, bx)), max(ax, bx)), min(max(at[1], min(ay, by)), max(ay, by))


def sheets_of(boards: Sequence[LaidBoard]) -> Iterator[tuple[LaidBoard, LaidSheet]]:
    """Yield every sheet with its board, in taping order."""
    for board in boards:
        for sheet in board.sheets:
            yield board, sheet


def sheet_at(boards: Sequence[LaidBoard], at: Point) -> int | None:
    """Return the number of the sheet that lies on top at a point of the bay."""
    for board in reversed(boards):
        by_number = {sheet.number: sheet for sheet in board.sheets}
        for number in reversed(board.order):
            x0, y0, x1, y1 = by_number[number].paper
            if x0 <= at[0] <= x1 and y0 <= at[1] <= y1:
                return number
    return None
