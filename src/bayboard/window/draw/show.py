"""What a view shows besides the layout: what is selected, in hand, chalked, marked.

Points are bay axes in mm, (x, y) on the Wall; what the Section shows stands in `section_show`.  Ids are
those of gear, leads and fixings alike.  All values are frozen, so that a view repaints only when one is
another value.
"""

from dataclasses import dataclass
from typing import Literal

from bayboard.model.layout import Point
from bayboard.rules.finding import Severity

Lever = Literal["up", "folded"]


@dataclass(frozen=True, slots=True)
class Measure:
    """A distance laid on the scene; `severity` None is plain chalk, `number` the finding's."""

    a: Point
    b: Point
    text: str
    severity: Severity | None = None
    number: int | None = None


@dataclass(frozen=True, slots=True)
class Ghost:
    """An outline in chalk: where a piece was, where it would go, where a cure would put it."""

    ring: tuple[Point, ...]
    label: str = ""


@dataclass(frozen=True, slots=True)
class Cure:
    """A cure shown before it is taken: the place it leads to, where from, and its words."""

    ring: tuple[Point, ...]
    start: Point
    end: Point
    text: str = ""


@dataclass(frozen=True, slots=True)
class Snap:
    """A line through two things that were brought level, and what is level in few words."""

    a: Point
    b: Point
    text: str = ""


@dataclass(frozen=True, slots=True)
class Mark:
    """A finding's place on the scene.

    `at` is where it is; None together with `subject` puts it in the subject's clipped corner.
    `short` is the text of its tag, None when the mark stands alone.  `subject` is a gear's or
    lead's id.  `corner`: it concerns a whole stand-in, and sits in its corner in any case.
    `of`: the finding's rule and subjects, by which it is known from frame to frame; () for none.
    """

    number: int
    severity: Severity
    at: Point | None
    short: str | None = None
    subject: str | None = None
    corner: bool = False
    of: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WallShow:
    """The Wall's state.  `turning`: degrees to write beside the turning arc of the selected piece.

    `marquee` is a box (x0, y0, x1, y1) in mm.  `told` are numbers of findings whose tags open
    although they are not among the worst five (hovered, focused, stepped to).  `ends` are picked points
    that a measure goes from and to, `named` the ends of a lead with what they are at.
    """

    selected: frozenset[str] = frozenset()
    focused: str | None = None
    hovered: str | None = None
    in_hand: frozenset[str] = frozenset()
    ghosts: tuple[Ghost, ...] = ()
    measures: tuple[Measure, ...] = ()
    ends: tuple[Point, ...] = ()
    named: tuple[tuple[Point, str], ...] = ()
    snaps: tuple[Snap, ...] = ()
    marquee: tuple[float, float, float, float] | None = None
    marks: tuple[Mark, ...] = ()
    told: frozenset[int] = frozenset()
    chalk_x: float | None = None
    lever: Lever = "up"
    pointer: Point | None = None
    cures: tuple[Cure, ...] = ()
    turning: float | None = None
