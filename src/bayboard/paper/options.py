"""What a person asks of a print."""

from dataclasses import dataclass, field, replace
from typing import Literal

from bayboard.model.layout import Layout
from bayboard.paper.form import MARGIN
from bayboard.units.length import Units

DRAFT = "draft"  # the revision of what is not kept

Stay = tuple[tuple[str, tuple[int, ...]], ...]  # set words, and the numbers of the sheets that bear them


@dataclass(frozen=True, slots=True)
class SwapSheets:
    """The drill sheets to be put in the place of older ones in a set that was printed before.

    `stay`: which of the older sheets go with the new ones.
    """

    numbers: tuple[int, ...]
    stay: Stay


@dataclass(frozen=True, slots=True)
class Options:
    """The paper and what to put on it.

    `only` None: every kind of sheet that has content.  `margin` in mm is what the printer leaves white.
    `revision` is printed as "revision 12", left out when empty, and `DRAFT` as "not kept".  `like`: the
    layout of a set that was printed before; its seams stay where they still keep clear of every hole.
    `swap` None: all drill sheets.
    """

    paper: str
    only: tuple[str, ...] | None = None
    margin: float = MARGIN
    face: Literal["front", "back"] = "front"
    units: Units = "mm"
    revision: str = ""
    like: Layout | None = field(default=None, repr=False)
    swap: SwapSheets | None = None

    def with_margin(self, mm: float) -> "Options":
        """Return the options with another margin."""
        return replace(self, margin=mm)

    def with_units(self, units: Units) -> "Options":
        """Return the options with sheets in other units."""
        return replace(self, units=units)

    def with_revision(self, revision: str) -> "Options":
        """Return the options with sheets that name a revision."""
        return replace(self, revision=revision)

    def with_seams_of(self, like: Layout) -> "Options":
        """Return the options with the seams of a set that was printed of `like`."""
        return replace(self, like=like)

    def with_swap(self, swap: SwapSheets) -> "Options":
        """Return the options for a few drill sheets."""
        return replace(self, swap=swap)
