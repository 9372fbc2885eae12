"""What drill day shows, as frozen values: the painters know nothing else.

Points are bay axes in mm, seen from the gear side.  Words are ready to be lettered.
"""

from dataclasses import dataclass
from typing import Literal

from bayboard.model.layout import Point
from bayboard.rules.boards import BoardShape

State = Literal["to come", "next", "drilled"]


@dataclass(frozen=True, slots=True)
class Dot:
    """One place for the drill: a slot has two.  `across` is the drill, None where it is not known.

    `differs`: the sheets that were printed show it otherwise.  `chosen`: it is the one that is spoken of,
    drilled or not.
    """

    hole: str
    part: int
    at: Point
    across: float | None
    state: State
    differs: bool = False
    chosen: bool = False


@dataclass(frozen=True, slots=True)
class StandIn:
    """Where a piece of gear goes: its number and its outline."""

    id: str
    ring: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Ordinates:
    """The two figures of the next hole, from the board's left edge and from its foot, and their words."""

    at: Point
    foot: Point
    left: str
    up: str


@dataclass(frozen=True, slots=True)
class BoardShow:
    """The board with all its holes; `named` are the fixings whose ids stand beside them.

    `check` are the two datum holes while their distance is measured.
    """

    shape: BoardShape
    stand_ins: tuple[StandIn, ...] = ()
    dots: tuple[Dot, ...] = ()
    named: frozenset[str] = frozenset()
    next: Ordinates | None = None
    check: tuple[Point, Point] | None = None
    check_words: str = ""


@dataclass(frozen=True, slots=True)
class Bit:
    """A drill on the ledge: its diameter in mm, its name below it, and whether it has done its work."""

    across: float
    name: str
    done: bool = False
    now: bool = False


@dataclass(frozen=True, slots=True)
class CloseUp:
    """The next hole as it lies: its places, which of them is next, and what of the board is round it."""

    shape: BoardShape
    dots: tuple[Dot, ...]
    middle: Point
    wide: float  # mm that the picture must show
    pair: tuple[Point, Point] | None = None
    across: float = 0.0


@dataclass(frozen=True, slots=True)
class Then:
    """A hole that comes later: its id, its drill in few figures, what it is."""

    hole: str
    part: int
    drill: str
    what: str


@dataclass(frozen=True, slots=True)
class Now:
    """The large type.  `name` is the hole, or a word; `figure` is a drill or a length with its `unit`.

    `what` and `more` stand below the figure, `under` below the name; `press` is what the blue field says,
    `press_small` below it, `caption` below the close-up.  `astray`: the printed
    sheets show this hole otherwise.
    """

    name: str
    figure: str
    unit: str
    under: str = ""
    what: str = ""
    more: str = ""
    caption: str = ""
    press: str = ""
    press_small: str = ""
    made: bool = False
    astray: bool = False


@dataclass(frozen=True, slots=True)
class DayShow:
    """Everything on screen."""

    vehicle: str
    phrase: str
    count: str
    warning: str
    board: BoardShow | None
    bits: tuple[Bit, ...]
    now: Now
    close: CloseUp | None
    then: tuple[Then, ...]
    says: str = ""  # the whole of it in one sentence, for who cannot see it
