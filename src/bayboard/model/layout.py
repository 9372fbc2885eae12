"""The layout document as frozen values, one class for each thing of the trade.

Lengths are mm, angles degrees counter-clockwise from +x, masses kg, areas mm2.  `None` means
"not measured": whoever needs the figure reports *unchecked*.  Values read from a file are
checked in `model.check`; code that builds them directly vouches for them.  The member order is the order of
the document, and the writer relies on it.
"""

from typing import Any, Literal

import msgspec

Point = tuple[float, float]
Outline = tuple[Point, ...]
Span = tuple[float, float]

PortKind = Literal[
    "power", "ground", "remote", "signal-in", "signal-out", "speaker-in", "speaker-out", "data"
]
LeadKind = Literal["power", "ground", "remote", "signal", "speaker", "data"]
LEAD_KINDS: tuple[LeadKind, ...] = ("power", "ground", "remote", "signal", "speaker", "data")
CardKind = Literal["amplifier", "processor", "fuse block", "distribution", "other"]
Material = Literal[
    "hdpe",
    "uhmw",
    "abs",
    "pvc-foam",
    "acrylic",
    "polycarbonate",
    "birch-ply",
    "mdf",
    "aluminium",
]
Units = Literal["mm", "in"]


class Value(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Base of every part of a layout: frozen, named members only, unknown members refused."""


class Vehicle(Value, kw_only=True, frozen=True):
    """Whose layout this is."""

    name: str
    note: str = ""
    steering: Literal["left", "right"] | None = None


class Landing(Value, kw_only=True, frozen=True):
    """Flat metal that can take an insert; metal stands at z = -recess."""

    id: str
    outline: Outline
    recess: float | None
    sheet: float | None = None
    behind: float | None = None
    tilt: Point = (0.0, 0.0)


class Stay(Value, kw_only=True, frozen=True):
    """Something of the vehicle that stays: solid from minus infinity to `height`."""

    id: str
    name: str
    outline: Outline
    height: float | None
    keep: Literal["solid", "reach", "never-cover"] = "solid"
    clear: float = 0.0


class Lining(Value, kw_only=True, frozen=True):
    """Trim or carpet over the metal."""

    id: str
    name: str
    outline: Outline
    thickness: float | None


class Vent(Value, kw_only=True, frozen=True):
    """An air outlet of the cabin; `free_area` None means the area of the outline."""

    id: str
    outline: Outline
    free_area: float | None = None


class NoDrill(Value, kw_only=True, frozen=True):
    """A region behind which something must not be hit."""

    id: str
    name: str
    outline: Outline


class Seat(Value, kw_only=True, frozen=True):
    """A rigid part that folds: `up` and `folded` are (z, y) sections over `x`."""

    id: str
    x: Span
    up: Outline | None
    folded: Outline | None
    hinge: Point | None = None
    swing: float | None = None
    give: float = 0.0
    probes: tuple[tuple[float, float, float], ...] = ()


class Eye(Value, kw_only=True, frozen=True):
    """The box from which a person looks at the board; None members take their default."""

    x: Span | None = None
    y: Span | None = None
    z: Span | None = None


class Entry(Value, kw_only=True, frozen=True):
    """A place where leads come into the bay."""

    id: str
    name: str
    at: Point
    carries: tuple[LeadKind, ...]
    run: float | None
    way: str | None = None
    to: Literal["battery", "chassis"] | None = None


class Supply(Value, kw_only=True, frozen=True):
    """Supply voltage, coldest and hottest air and the temperature at fitting."""

    volts: float = 13.8
    air: Span = (-20.0, 70.0)
    fit: float = 20.0


class Bay(Value, kw_only=True, frozen=True):
    """All that was measured in the vehicle."""

    wall: Outline
    landings: tuple[Landing, ...] = ()
    stays: tuple[Stay, ...] = ()
    linings: tuple[Lining, ...] = ()
    vents: tuple[Vent, ...] = ()
    no_drill: tuple[NoDrill, ...] = ()
    seats: tuple[Seat, ...] = ()
    eye: Eye = Eye()
    entries: tuple[Entry, ...] = ()
    lined: float = 0.0
    lean: float = 0.0
    faces: Literal["forward", "rearward", "left", "right"] | None = None
    way_in: Span | None = None
    tape: float = 3.0
    supply: Supply = Supply()


class CutOut(Value, kw_only=True, frozen=True):
    """A hole sawn in a board."""

    id: str
    outline: Outline


class Board(Value, kw_only=True, frozen=True):
    """A board; its front is at standoff + thickness.  `stock` None means (thickness,)."""

    id: str
    outline: Outline
    corner_radius: float = 0.0
    cutouts: tuple[CutOut, ...] = ()
    material: Material = "hdpe"
    thickness: float
    standoff: float
    stock: tuple[float, ...] | None = None

    @property
    def front(self) -> float:
        """Return the z of the face that carries the gear."""
        return self.standoff + self.thickness


class Solid(Value, kw_only=True, frozen=True):
    """A part of a stand-in's body: an outline between two heights over the underside."""

    outline: Outline
    z: Span


class Screw(Value, kw_only=True, frozen=True):
    """A screw of a piece of gear, in the card's frame."""

    at: Point
    thread: str


class Port(Value, kw_only=True, frozen=True):
    """A place where a lead is plugged in; `towards` is the way out of it."""

    id: str
    kind: PortKind
    at: Point
    z: float
    towards: float | Literal["out"]
    plug: float
    plug_wide: float = 14.0
    ways: int = 1
    stud: str | None = None


class Service(Value, kw_only=True, frozen=True):
    """A place a person must see or reach with the seat folded."""

    id: str
    kind: Literal["dial", "fuse", "cover", "plug", "light"]
    at: Point
    z: float
    facing: float | Literal["out"]
    tool: Literal["fingers", "screwdriver", "none"] = "none"


class Air(Value, kw_only=True, frozen=True):
    """Clear air asked for beyond the outline's box, card axes before turn."""

    out: float = 0.0
    left: float = 0.0
    right: float = 0.0
    up: float = 0.0
    down: float = 0.0


class Card(Value, kw_only=True, frozen=True):
    """The description of a kind of gear; its frame's origin is the middle of the outline's box."""

    name: str
    kind: CardKind
    outline: Outline
    height: float | None
    mass: float | None
    foot: float | None
    solids: tuple[Solid, ...] = ()
    screws: tuple[Screw, ...] = ()
    ports: tuple[Port, ...] = ()
    service: tuple[Service, ...] = ()
    air: Air = Air()
    current: float | None
    fuse: float | None
    heat: float | None
    guessed: tuple[str, ...] = ()


class Pose(Value, kw_only=True, frozen=True):
    """Where a piece was really drilled."""

    at: Point
    turn: float


class Gear(Value, kw_only=True, frozen=True):
    """A stand-in; `at` None means it waits on the bench.

    `board` is always the id of a board once a layout with boards has been read; the writer
    leaves it out where it is the first board's.
    """

    id: str
    card: str
    board: str | None = None
    at: Point | None
    turn: float = 0.0
    lift: float = 0.0
    taped: bool = False
    drilled: Pose | None = None


class LeadFuse(Value, kw_only=True, frozen=True):
    """A fuse in a lead, `from_start` mm from its `from` end, the entry's run included."""

    rating: float
    from_start: float


class Lead(Value, kw_only=True, frozen=True):
    """A cable between two ends; an end is `GEAR.PORT` or the id of an entry."""

    id: str
    from_: str = msgspec.field(name="from")
    to: str
    size: str | None
    conductor: Literal["copper", "cca10", "cca15"] = "copper"
    od: float | None = None
    fuse: LeadFuse | None = None
    via: tuple[Point, ...] = ()
    side: Literal["front", "back"] = "front"


class Slot(Value, kw_only=True, frozen=True):
    """A slotted hole: centre travel and the direction of it."""

    travel: float
    angle: float


class Fixing(Value, kw_only=True, frozen=True):
    """A bolt through the board into the vehicle; `board` as for `Gear`."""

    id: str
    board: str | None = None
    at: Point
    thread: str
    into: Literal["insert", "factory", "stud", "through"] = "insert"
    slot: Slot | None = None
    rated: float | None = None
    taped: bool = False
    drilled: Point | None = None
    metal: Point | None = None


class LetBe(Value, kw_only=True, frozen=True):
    """A finding that the fabricator chose to leave, with the reason."""

    rule: str
    subjects: tuple[str, ...]
    measure: float | None
    reason: str


class PhotoPoint(Value, kw_only=True, frozen=True):
    """A pixel of a photo whose place in the bay is known."""

    px: Point
    at: Point


class Photo(Value, kw_only=True, frozen=True):
    """A photo of the bay, a board or a card; pixels live in the job file."""

    id: str
    file: str
    size: tuple[int, int]
    turned: Literal[0, 90, 180, 270]
    shows: str
    points: tuple[PhotoPoint, ...]
    k1: float | None
    note: str = ""


class PrintedHole(Value, kw_only=True, frozen=True):
    """A hole as it stood on the sheets that were printed."""

    id: str
    at: Point
    make: Literal["tap", "clear", "slot"]
    drill: float
    slot: Slot | None


class Printed(Value, kw_only=True, frozen=True):
    """What was printed last, and from which revision."""

    revision: str
    holes: tuple[PrintedHole, ...]


class Layout(Value, kw_only=True, frozen=True):
    """One vehicle's layout, whole.  Always true once read: every check of `model.check`."""

    bayboard: int = 1
    vehicle: Vehicle
    units: Units = "mm"
    bay: Bay
    boards: tuple[Board, ...]
    cards: dict[str, Card] = {}
    gear: tuple[Gear, ...] = ()
    leads: tuple[Lead, ...] = ()
    fixings: tuple[Fixing, ...] = ()
    drilled_holes: dict[str, Point] = {}
    let_be: tuple[LetBe, ...] = ()
    photos: tuple[Photo, ...] = ()
    printed: Printed | None = None
    limits: dict[str, float] = {}
    x: dict[str, Any] = {}
