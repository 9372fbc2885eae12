"""Rectangles laid on sheets with little waste.

Each sheet keeps the largest free rectangles it has left, overlapping ones included; a piece goes where the
shorter left-over side is least.  Several orders of the pieces are tried and the fewest sheets win.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from bayboard.paper.curves import Box

GAP = 3.0  # mm; between pieces, for the knife
_TOUCH = 1e-9


@dataclass(frozen=True, slots=True)
class Spot:
    """Where piece `which` lies: its lower left corner, and whether it is turned by 90 degrees."""

    which: int
    x: float
    y: float
    turned: bool


def nest(sizes: Sequence[tuple[float, float]], sheet: tuple[float, float]) -> list[list[Spot]]:
    """Return the pieces of each sheet; every piece must fit the empty sheet one way or the other.

    Raises `ValueError` when one does not.
    """
    orders = (
        lambda i: (-sizes[i][0] * sizes[i][1], i),
        lambda i: (-max(sizes[i]), -min(sizes[i]), i),
        lambda i: (-min(sizes[i]), -max(sizes[i]), i),
        lambda i: (-sum(sizes[i]), i),
    )
    found = [_filled(sizes, sheet, sorted(range(len(sizes)), key=order)) for order in orders]
    return min(found, key=len)


def _filled(
    sizes: Sequence[tuple[float, float]], sheet: tuple[float, float], order: list[int]
) -> list[list[Spot]]:
    # a piece carries its gap on the right and above, so the sheet is that much larger
    whole: Box = (0.0, 0.0, sheet[0] + GAP, sheet[1] + GAP)
    free: list[list[Box]] = []
    laid: list[list[Spot]] = []
    for which in order:
        w, h = sizes[which][0] + GAP, sizes[which][1] + GAP
        tried = ((on, _best(rooms, which, w, h)) for on, rooms in enumerate([*free, [whole]]))
        on, spot = next(((on, spot) for on, spot in tried if spot is not None), (0, None))
        if spot is None:
            raise ValueError(f"a piece of {w - GAP:g} x {h - GAP:g} mm does not fit a sheet")
        if on == len(free):
            free.append([whole])
            laid.append([])
        laid[on].append(spot)
        wide, high = (h, w) if spot.turned else (w, h)
        free[on] = _less(free[on], (spot.x, spot.y, spot.x + wide, spot.y + high))
    return laid


def _best(rooms: Sequence[Box], which: int, w: float, h: float) -> Spot | None:
    """Return the place that leaves the shortest strip, None when there is no room."""
    best: tuple[tuple[float, ...], Spot] | None = None
    for x0, y0, x1, y1 in rooms:
        for turned, (wide, high) in ((False, (w, h)), (True, (h, w))):
            over = x1 - x0 - wide, y1 - y0 - high
            if min(over) < -_TOUCH:
                continue
            rank = (min(over), max(over), y0, x0, float(turned))
            if best is None or rank < best[0]:
                best = rank, Spot(which, x0, y0, turned)
    return best[1] if best else None


def _less(rooms: Sequence[Box], taken: Box) -> list[Box]:
    """Return the largest free rectangles once `taken` is gone."""
    x0, y0, x1, y1 = taken
    cut: list[Box] = []
    for a, b, c, d in rooms:
        if x0 >= c - _TOUCH or x1 <= a + _TOUCH or y0 >= d - _TOUCH or y1 <= b + _TOUCH:
            cut.append((a, b, c, d))
            continue
        cut += [r for r in ((a, b, x0, d), (x1, b, c, d), (a, b, c, y0), (a, y1, c, d)) if _roomy(r)]
    return [
        r for i, r in enumerate(cut) if not any(_within(r, s, i > j) for j, s in enumerate(cut) if i != j)
    ]


def _roomy(room: Box) -> bool:
    return room[2] - room[0] > GAP + 1.0 and room[3] - room[1] > GAP + 1.0


def _within(room: Box, other: Box, later: bool) -> bool:
    """Return whether a rectangle adds nothing to another; of two equal ones the later."""
    inside = room[0] >= other[0] and room[1] >= other[1] and room[2] <= other[2] and room[3] <= other[3]
    return inside and (room != other or later)
