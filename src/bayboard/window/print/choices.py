"""What a person chooses of a print, and what one begins with."""

from dataclasses import dataclass
from typing import Literal

from bayboard.model.layout import Units
from bayboard.paper.form import LEAST_MARGIN, MARGIN
from bayboard.window.last import last_paper
from bayboard.window.print import words

MOST_MARGIN = 50.0  # mm; a wider one that was remembered is a slip


@dataclass(frozen=True, slots=True)
class Choices:
    """What a person chose on the Card and the ledge; `units` None are those of the layout.

    `whole`: all sheets are wanted, also where a few could be swapped.
    """

    paper: str
    margin: float = MARGIN
    face: Literal["front", "back"] = "front"
    units: Units | None = None
    off: frozenset[str] = frozenset()
    whole: bool = False


def first_choices(units: Units) -> Choices:
    """Return what one begins with: what was printed with last, else the paper that goes with the units."""
    last = last_paper()
    if last is None or last[0] not in words.PAPERS or not LEAST_MARGIN <= last[1] <= MOST_MARGIN:
        return Choices("letter" if units == "in" else "a4")
    return Choices(*last)
