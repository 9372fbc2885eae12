"""A page as a value: marks in page mm from the lower left corner, y up.

Whoever draws a sheet makes these; only `press` turns them into a PDF.  Type sizes are mm of the
em, made from points by `pt`.
"""

from dataclasses import dataclass
from typing import Literal

from bayboard.model.layout import Point

POINT = 25.4 / 72  # mm; the typographic point of PDF
Step = tuple[float, ...]  # (x, y): a line there; six numbers: a Bezier curve, two handles and its end
Face = Literal["text", "bold", "pencil"]
Anchor = Literal["left", "middle", "right"]

HAIR = 0.1  # mm; hatching only: thinner breaks up at 300 dpi
MEASURED = 0.18  # mm; what a rule or an eye is laid on
DRILLED = 0.25  # mm; what the drill goes by
CUT = 0.35  # mm; what the saw or the knife follows


def pt(points: float) -> float:
    """Return a type size in mm."""
    return points * POINT


@dataclass(frozen=True, slots=True)
class Trace:
    """One unbroken line of the pen: where it starts, its steps, and whether it closes."""

    start: Point
    steps: tuple[Step, ...]
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Stroke:
    """Traces drawn with one pen, `width` mm; white is the casing under something else."""

    traces: tuple[Trace, ...]
    width: float
    dash: tuple[float, ...] = ()
    white: bool = False


@dataclass(frozen=True, slots=True)
class Fill:
    """Traces filled in black, or in white to clear what lies below."""

    traces: tuple[Trace, ...]
    white: bool = False


@dataclass(frozen=True, slots=True)
class Letters:
    """A line of text with its baseline's left end, middle or right end at `at`."""

    text: str
    at: Point
    size: float  # mm of the em
    face: Face = "text"
    turn: float = 0.0  # degrees
    anchor: Anchor = "left"


@dataclass(frozen=True, slots=True)
class Clipped:
    """Marks of which only the part inside `region` is seen; never holds Letters."""

    region: Trace
    marks: "tuple[Stroke | Fill | Clipped, ...]"


Mark = Stroke | Fill | Letters | Clipped


@dataclass(frozen=True, slots=True)
class Shown:
    """One thing of the map: where its own origin lies and how its own +x axis is turned.

    `part`: the polygon of the page that belongs to a stand-in cut into several.
    """

    what: Literal["hole", "stand-in", "mark", "outline"]
    id: str
    at: Point
    turn: float = 0.0
    part: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class Page:
    """One sheet of paper: its kind, its size (width, height), what is drawn and what it shows.

    `number` is that of a sheet of the template, 0 for others; `foot`: how many of the last marks are its
    information strip.
    """

    sheet: str
    size: tuple[float, float]
    marks: tuple[Mark, ...]
    shows: tuple[Shown, ...]
    number: int = 0
    foot: int = 0

    @property
    def body(self) -> tuple[Mark, ...]:
        """Return what is drawn, the information strip aside."""
        return self.marks[: len(self.marks) - self.foot]
