"""What the Section shows besides the layout: depths, lines of sight, the way in, the seat on its way.

Points are (z, y) in mm, bay axes.  All values are frozen, so that a view repaints only when one is another.
A text has `shorter` ones for where there is no room for it.
"""

from dataclasses import dataclass
from typing import Literal

from bayboard.model.layout import Point
from bayboard.rules.finding import Severity
from bayboard.window.draw.show import Lever

Sightedness = Literal["clear", "steep", "blocked"]
Ring = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Sight:
    """A line of sight from a service point to an eye; `stopped` is where a blocked one ends.

    `chosen`: it is the one that is spoken of.
    """

    point: Point
    eye: Point
    verdict: Sightedness
    text: str = ""
    severity: Severity | None = None
    number: int | None = None
    stopped: Point | None = None
    shorter: tuple[str, ...] = ()
    chosen: bool = False


@dataclass(frozen=True, slots=True)
class Depth:
    """The least room between a piece's front and the seat: from `front` to `seat`; `subject`: of what."""

    front: Point
    seat: Point
    text: str
    severity: Severity | None = None
    number: int | None = None
    shorter: tuple[str, ...] = ()
    subject: str = ""


@dataclass(frozen=True, slots=True)
class Fan:
    """Within what angle a service point can be read: `facing` and `spread` in degrees.

    `facing` counts from +z, up is 90; `spread` is the limit to each side.
    """

    at: Point
    facing: float
    spread: float


@dataclass(frozen=True, slots=True)
class Tube:
    """The way in to a service point from `start` to `end`: `width` mm free, `need` mm needed."""

    start: Point
    end: Point
    width: float
    need: float
    text: str = ""
    severity: Severity | None = None
    number: int | None = None
    shorter: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Eyes:
    """The box the eyes look from: low and high corner, and its words."""

    low: Point
    high: Point
    text: str = ""
    shorter: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Swing:
    """A seat's way from up to folded: its hinge and what it sweeps; `dig` where it digs in deepest.

    `dig` is the seat's section at that moment; its words stand on a tag at `at`.
    """

    hinge: Point
    swept: tuple[Ring, ...]
    angle: float  # degrees from up to folded, counter-clockwise in (z, y)
    radius: float  # mm from the hinge to the seat's farthest corner
    first: float  # degrees of that corner while the seat is up
    dig: Ring = ()
    at: Point | None = None
    text: str = ""
    severity: Severity | None = None
    number: int | None = None


@dataclass(frozen=True, slots=True)
class SectionShow:
    """The Section's state; it looks left from `chalk_x`, None where there is nothing to cut.

    `folding`: the share of its way that the seat has gone from up to folded, None at rest.
    """

    chalk_x: float | None
    lever: Lever = "up"
    selected: frozenset[str] = frozenset()
    sights: tuple[Sight, ...] = ()
    depths: tuple[Depth, ...] = ()
    fans: tuple[Fan, ...] = ()
    eyes: Eyes | None = None
    tubes: tuple[Tube, ...] = ()
    swings: tuple[Swing, ...] = ()
    folding: float | None = None
