"""The holes a layout asks for: gear screws, then fixings."""

from dataclasses import dataclass
from typing import Literal

from bayboard.model.layout import Layout, Point, Slot


@dataclass(frozen=True, slots=True)
class Hole:
    """One hole in a board; `at` in bay axes, `drill` the diameter in mm.

    `id` is `GEAR#n` or a fixing's id.  `drill` None: the thread is not in the tables.
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
    """Return every hole to be made, gear first, both in document order."""
    raise NotImplementedError
