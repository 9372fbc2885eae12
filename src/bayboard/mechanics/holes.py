"""The holes a layout asks for: gear screws, then fixings."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from bayboard.model.layout import Fixing, Layout, Point, Slot
from bayboard.model.placed import Placed, board_of, place
from bayboard.tables.reference import thread


@dataclass(frozen=True, slots=True)
class Hole:
    """One hole in a board; `at` in bay axes, `drill` the diameter in mm.

    `id` is `GEAR#n` (card order, from 1) or a fixing's id.  `drill` None: the thread is not in the tables.
    """

    id: str
    board: str
    at: Point
    owner: str
    make: Literal["tap", "clear", "slot"]
    thread: str
    drill: float | None
    slot: Slot | None = None


def holes(layout: Layout) -> tuple[Hole, ...]:
    """Return every hole to be made, gear first, both in document order; gear on the bench makes none."""
    standing = [place(layout, gear) for gear in layout.gear]
    screws = [hole for placed in standing if placed for hole in screw_holes(placed)]
    return (*screws, *fixing_holes(layout))


def screw_holes(placed: Placed) -> Iterator[Hole]:
    """Yield the tapped holes of a stand-in (tap drill: ISO 2306, ASME B1.1 through threads.csv)."""
    for number, screw in enumerate(placed.card.screws, start=1):
        known = thread(screw.thread)
        drill = known.tap_drill if known else None
        at = placed.point(screw.at)
        yield Hole(f"{placed.id}#{number}", placed.board.id, at, placed.id, "tap", screw.thread, drill)


def fixing_holes(layout: Layout) -> Iterator[Hole]:
    """Yield the clearance holes and slots of the fixings, in document order."""
    for fixing in layout.fixings:
        yield from _fixing_holes(layout, fixing)


def _fixing_holes(layout: Layout, fixing: Fixing) -> Iterator[Hole]:
    board = board_of(layout, fixing.board)
    if board is None:
        return
    known = thread(fixing.thread)
    drill = known.clear_medium if known else None  # ISO 273 medium, ASME B18.2.8 normal
    make: Literal["clear", "slot"] = "slot" if fixing.slot else "clear"
    yield Hole(fixing.id, board.id, fixing.at, fixing.id, make, fixing.thread, drill, fixing.slot)
