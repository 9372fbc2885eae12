"""The holes as they stood on the sheets that were printed, and which have changed since."""

from collections.abc import Iterable, Iterator
from math import hypot

from bayboard.geometry.crowd import HAIR
from bayboard.mechanics.holes import Hole, holes
from bayboard.model.layout import Layout, Printed, PrintedHole
from bayboard.model.rounding import rounded_point
from bayboard.tables.limits import fixed


def printed_of(layout: Layout, revision: str) -> Printed:
    """Return what the drill sheets of `layout` show, for `Layout.printed`; places rounded to 0.000001 mm.

    A hole whose drill is not known is left out: the document writes a drill as a number, and such a hole
    is no more than a cross on the sheet.
    """
    shown = (_printed(hole, hole.drill) for hole in holes(layout) if hole.drill is not None)
    return Printed(revision=revision, holes=tuple(shown))


def _printed(hole: Hole, drill: float) -> PrintedHole:
    return PrintedHole(id=hole.id, at=rounded_point(hole.at), make=hole.make, drill=drill, slot=hole.slot)


def changed_holes(layout: Layout) -> dict[str, tuple[str, ...]]:
    """Return by board the ids of the holes that differ from the printed ones, {} where none was printed."""
    return changed_among(layout, holes(layout)) if layout.printed else {}


def changed_among(layout: Layout, planned: Iterable[Hole]) -> dict[str, tuple[str, ...]]:
    """Return what `changed_holes` does, of holes that are at hand already: those of `layout`, in order.

    Boards in document order, only those with a change; on each the holes of the layout in order, then those
    that are gone, as printed.  A hole that is gone counts on the board of the gear or fixing whose it was,
    else on the first.  A hole whose drill is not known and that is not among the printed ones is left out.
    """
    if layout.printed is None or not layout.boards:
        return {}
    printed = {hole.id: hole for hole in layout.printed.holes}
    found: dict[str, list[str]] = {board.id: [] for board in layout.boards}
    for hole in planned:
        was = printed.pop(hole.id, None)
        if hole.drill is not None if was is None else _differs(hole, was):
            found[hole.board].append(hole.id)
    for name, board in _homes(layout, printed):
        found[board].append(name)
    return {board: tuple(names) for board, names in found.items() if names}


def _differs(hole: Hole, was: PrintedHole) -> bool:
    off = hypot(hole.at[0] - was.at[0], hole.at[1] - was.at[1])
    if off > fixed("reprint_off") + HAIR or (hole.make, hole.slot) != (was.make, was.slot):
        return True
    return hole.drill is None or abs(hole.drill - was.drill) > fixed("reprint_drill") + HAIR


def _homes(layout: Layout, names: Iterable[str]) -> Iterator[tuple[str, str]]:
    """Yield each hole that is gone with the board it counts on."""
    boards = {gear.id: gear.board for gear in layout.gear}
    boards |= {fixing.id: fixing.board for fixing in layout.fixings}
    for name in names:
        yield name, boards.get(name.partition("#")[0]) or layout.boards[0].id
