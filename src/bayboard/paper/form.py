"""The form of a sheet: paper, which way it lies, where its strip stands and how much neighbours overlap."""

from dataclasses import dataclass
from math import ceil, inf
from typing import Literal

from bayboard.model.refused import Refused
from bayboard.paper.curves import Box
from bayboard.tables.reference import paper

PAPERS: dict[str, str] = {
    "a4": "A4",
    "a3": "A3",
    "letter": "Letter (ANSI A)",
    "tabloid": "Tabloid (ANSI B)",
    "roll-610": "roll 24 in",
}
ROLL = "roll-610"
STRIP = 12.0  # mm; the information strip, its rule included
MARGIN = 10.0  # mm; what most printers can reach (shared/reference/paper_rules.csv)
LEAST_MARGIN = 4.0  # mm; nearer to the edge no printer of the table prints
LEAST_LIVE = 120.0  # mm; a 4 in check bar and its words need this much
SHORTEST_ROLL, LONGEST_ROLL = 300.0, 5000.0  # mm; a PDF page is at most 5080 mm long (PDF 1.7, annex C)

OVERLAPS = {15.0: (4.0, 11.0), 12.0: (3.0, 9.0), 10.0: (3.0, 7.0)}  # mm: left of the cut, right of it
RIM = 1.5  # mm; shown beyond the board's edge, so that the whole of its line is on paper


@dataclass(frozen=True, slots=True)
class Form:
    """One way to lay out a sheet; of a roll `size` is the longest, `cut_to` what is used."""

    paper: str
    size: tuple[float, float]
    margin: float
    strip: Literal["below", "beside"]  # beside: along the right edge, read from the right
    overlap: float = 10.0

    @property
    def live(self) -> tuple[float, float]:
        """Return the width and height left for the drawing."""
        w, h = self.size[0] - 2 * self.margin, self.size[1] - 2 * self.margin
        return (w, h - STRIP) if self.strip == "below" else (w - STRIP, h)

    @property
    def live_at(self) -> tuple[float, float]:
        """Return the lower left corner of the drawing."""
        return self.margin, self.margin + (STRIP if self.strip == "below" else 0.0)

    @property
    def live_box(self) -> Box:
        """Return the box left for the drawing; every side must be known."""
        (x, y), (w, h) = self.live_at, self.live
        return x, y, x + w, y + h

    @property
    def cut_side(self) -> float:
        """Return how much is shown before a seam, to be cut away."""
        return OVERLAPS[self.overlap][0]

    @property
    def cover_side(self) -> float:
        """Return how much is shown beyond a seam, to lie under the neighbour."""
        return OVERLAPS[self.overlap][1]

    def cut_to(self, wide: float, high: float) -> "Form":
        """Return the form; that of a roll cut so that a drawing of that size just fits, if it is shorter."""
        if self.paper != ROLL:
            return self
        w, h = self.size
        if w == LONGEST_ROLL:
            w = _roll_length(wide + 2 * self.margin + (STRIP if self.strip == "beside" else 0.0))
        else:
            h = _roll_length(high + 2 * self.margin + (STRIP if self.strip == "below" else 0.0))
        return Form(self.paper, (w, h), self.margin, self.strip, self.overlap)


def _roll_length(mm: float) -> float:
    return min(max(SHORTEST_ROLL, float(ceil(mm - 1e-6))), LONGEST_ROLL)


def forms(name: str, margin: float) -> tuple[Form, ...]:
    """Return every form of a paper, larger overlaps first; raise `Refused` when the margin leaves no room."""
    if not LEAST_MARGIN <= margin < inf:
        raise Refused(
            "--margin", f"a margin of {margin:g} mm is one that no printer keeps", "Ask for 4 mm or more"
        )
    made = tuple(
        Form(name, size, margin, strip, o) for o in OVERLAPS for size in _sizes(name) for strip in _STRIPS
    )
    if any(min(form.live) < LEAST_LIVE for form in made):
        most = (min(_sizes(name)[0]) - STRIP - LEAST_LIVE) / 2
        raise Refused(
            "--margin",
            f"a margin of {margin:g} mm leaves no room for the check bars on {name}",
            f"Ask for {most:.0f} mm or less",
        )
    return made


_STRIPS: tuple[Literal["below", "beside"], ...] = ("below", "beside")


def _sizes(name: str) -> tuple[tuple[float, float], tuple[float, float]]:
    """Return the paper upright and lying; the long side of a roll is inf."""
    short, long = paper(PAPERS[name])
    long = min(long, LONGEST_ROLL)
    return (short, long), (long, short)
