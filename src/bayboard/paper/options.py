"""What a person asks of a print."""

from dataclasses import dataclass, replace
from typing import Literal

from bayboard.paper.form import MARGIN
from bayboard.units.length import Units


@dataclass(frozen=True, slots=True)
class Options:
    """The paper and what to put on it.

    `only` None: every kind of sheet that has content.  `margin` in mm is what the printer leaves white.
    `revision` is printed as "revision 12", left out when empty.
    """

    paper: str
    only: tuple[str, ...] | None = None
    margin: float = MARGIN
    face: Literal["front", "back"] = "front"
    units: Units = "mm"
    revision: str = ""

    def with_margin(self, mm: float) -> "Options":
        """Return the options with another margin."""
        return replace(self, margin=mm)

    def with_units(self, units: Units) -> "Options":
        """Return the options with sheets in other units."""
        return replace(self, units=units)
