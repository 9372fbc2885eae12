"""What drill day says: the drill, what is done with it, what must not be drilled, what comes at the end."""

from collections.abc import Sequence
from math import dist

from bayboard.mechanics.bits import drill_figure, inch_drill
from bayboard.mechanics.drill_day import Drilling
from bayboard.mechanics.printed import changed_holes
from bayboard.model.layout import Layout, Units
from bayboard.tables.reference import thread
from bayboard.units.length import show_length
from bayboard.window.drill_day.book import Check

CAUTION = "Wear eye protection. Look behind the panel before you drill the vehicle."
METAL = (
    "Before you drill the vehicle, look behind the panel: tank and fuel lines, brake lines, looms. Keep off"
    " belt anchors and yellow or orange cables; its maker's instructions come first."
)
NAMED = 6  # holes named in a warning; more are counted
_NUMBERS = {1: "one", 2: "two", 3: "three", 4: "four"}
_SPOKEN = {"in": "inch", "mm": "millimetres"}


def figure(one: Drilling, units: Units) -> tuple[str, str]:
    """Return the drill in large: its figure and its unit; a drill known by a name has none."""
    if one.bit is None:
        return "?", ""
    known = thread(one.hole.thread)
    if one.hole.make == "tap":
        if known is not None and known.inch:
            return known.tap_drill_name.removesuffix(" in"), "in" if "/" in known.tap_drill_name else ""
        return drill_figure(one.bit), "mm"
    return (inch_drill(one.bit), "in") if units == "in" else (drill_figure(one.bit), "mm")


def bit_name(one: Drilling, units: Units) -> str:
    """Return the drill as it stands below the bit: "17/64", and "4.2 mm" among inches."""
    shown, unit = figure(one, units)
    return f"{shown} mm" if unit == "mm" and units == "in" else shown


def what(one: Drilling, units: Units) -> str:
    """Return the drill in its other measure and what is done with it: "6.6 mm, right through"."""
    if one.bit is None:
        return f"drill not known: {one.hole.thread} is not in the tables"
    unit = figure(one, units)[1]
    if unit == "mm":
        other = "" if one.hole.make == "tap" else f"{inch_drill(one.bit)} in, "
    else:
        other = f"{drill_figure(one.bit)} mm, "
    if one.hole.make == "tap":
        return f"{other}right through, then tap {one.hole.thread}"
    return f"{other}right through"


def under(one: Drilling, layout: Layout) -> str:
    """Return what stands below the id: which of how many it is."""
    if one.datum:
        return "datum hole, one of two"
    if one.of > 1:
        return f"{('first', 'second')[one.part - 1]} of its two holes"
    owner, mark, number = one.hole.id.partition("#")
    if mark:
        gear = next(gear for gear in layout.gear if gear.id == owner)
        return f"screw {number} of {len(layout.cards[gear.card].screws)}"
    return "one hole, holds still"


def more(one: Drilling, parts: Sequence[Drilling], half: bool, layout: Layout) -> str:
    """Return the third line: the way to a slot's other hole, or what the hole is for."""
    if one.of > 1 and len(parts) == 2:
        apart = show_length(dist(parts[0].at, parts[1].at), layout.units)
        return f"{apart} from the first, then saw between" if half else f"{apart} from here to the second"
    if one.hole.make == "tap":
        owner = next((gear for gear in layout.gear if gear.id == one.hole.owner), None)
        return "" if owner is None else f"for {layout.cards[owner.card].name}"
    if one.datum:
        return f"for {one.hole.thread}; the template is checked by it"
    return f"clear for {one.hole.thread}"


def then_what(one: Drilling, half: bool) -> str:
    """Return a later hole in two words; `half`: the other one of its slot is made, or at hand."""
    if one.hole.make == "tap":
        return f"tap {one.hole.thread}"
    if one.of > 1:
        return "its second hole" if half else "two holes"
    return "datum hole" if one.datum else "one hole"


def plain(mm: float, units: Units) -> str:
    """Return a length without its unit."""
    return show_length(mm, units).removesuffix(f" {units}")


def sentence(one: Drilling, left: float, up: float, units: Units) -> str:
    """Return the next hole for who cannot see it: "next: H5, 17/64 inch, 46 23/32 from the left, 7/8 up"."""
    shown, unit = figure(one, units)
    drill = "drill not known" if one.bit is None else f"{shown} {_SPOKEN.get(unit, '')}".strip()
    which = f", {('first', 'second')[one.part - 1]} of two holes" if one.of > 1 else ""
    return f"next: {one.hole.id}{which}, {drill}, {plain(left, units)} from the left, {plain(up, units)} up"


def check_words(check: Check, units: Units) -> str:
    """Return what the tape must read between the datum holes."""
    return f"check: {show_length(check.apart, units)}, centre to centre"


# --- sheets that are not of this board any longer ---


def differing(layout: Layout) -> tuple[str, ...]:
    """Return the ids of the holes that stand otherwise on the printed sheets, gone ones too."""
    return tuple(name for names in changed_holes(layout).values() for name in names)


def warning(layout: Layout, made: frozenset[str], known: frozenset[str]) -> str:
    """Return what must not be drilled from the printed sheets, "" when they are right.

    `made` are the holes that need no sheet any more, `known` all that the layout has.
    """
    if layout.printed is None:
        return ""
    changed = [name for name in differing(layout) if name not in made]
    here = [name for name in changed if name in known]
    gone = [name for name in changed if name not in known]
    sheets = sheets_of(layout.printed.revision)
    said = []
    if here:
        differ = "hole differs" if len(here) == 1 else "holes differ"
        those = "this one" if len(here) == 1 else "these"
        said.append(
            f"{len(here)} {differ} from {sheets}: {_named(here)}. Do not drill {those} from that paper."
        )
    if gone:
        are = "is" if len(gone) == 1 else "are"
        said.append(f"{_named(gone)} on {sheets if not here else 'it'} {are} no longer wanted.")
    return " ".join(said)


def sheets_of(revision: str) -> str:
    """Return the printed sheets by name."""
    return f"the sheets of revision {revision}" if revision.isdecimal() else "the sheets that were printed"


def not_as_printed(layout: Layout) -> str:
    """Return what is said of a hole that the printed sheets show otherwise."""
    sheets = "the sheets" if layout.printed is None else sheets_of(layout.printed.revision)
    return f"Not as on {sheets}: go by these figures, or print again."


def _named(names: Sequence[str]) -> str:
    if len(names) <= NAMED:
        return ", ".join(names)
    return f"{', '.join(names[: NAMED - 1])} and {len(names) - NAMED + 1} more"


# --- the end ---


def all_made(layout: Layout, count: int) -> tuple[str, str]:
    """Return the closing line and what comes next."""
    slots = any(fixing.slot is not None for fixing in layout.fixings)
    taps = any(layout.cards[gear.card].screws for gear in layout.gear if gear.at is not None)
    acts = [
        *(["saw between the two holes of each slot"] if slots else []),
        *(["cut the threads"] if taps else []),
        "deburr both sides",
    ]
    boards = len(layout.boards)
    where = f"on {boards} boards" if boards > 1 else f"in {layout.boards[0].id}" if boards else ""
    holes = "hole" if count == 1 else "holes"
    listed = ", ".join(acts[:-1]) + (" and " if acts[:-1] else "") + acts[-1]
    return f"{count} {holes} {where}".strip(), f"Next: {listed}."
