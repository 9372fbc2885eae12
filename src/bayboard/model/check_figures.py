"""Figures that cannot be: a thickness of nothing, a span the wrong way round, a limit of no rule."""

from collections.abc import Iterable
from typing import Any

from bayboard.model.layout import (
    Air,
    Bay,
    Board,
    Card,
    Entry,
    Eye,
    Fixing,
    Landing,
    Layout,
    Lead,
    LeadFuse,
    Lining,
    Photo,
    Port,
    PrintedHole,
    Seat,
    Slot,
    Solid,
    Stay,
    Supply,
    Value,
    Vent,
)
from bayboard.model.places import label, quoted, spoken, step_to
from bayboard.model.refused import Refused
from bayboard.model.things import Thing
from bayboard.tables.limits import LIMITS

LONGEST_EYE = 10_000.0  # mm; a box that nobody can look from, and too many eye points to try
FINEST_EYE_STEP = 10.0  # mm

_ABOVE_ZERO: dict[type[Value], tuple[str, ...]] = {
    Landing: ("sheet",),
    Vent: ("free_area",),
    Supply: ("volts",),
    Bay: ("way_in",),
    Board: ("thickness", "stock"),
    Card: ("height", "fuse"),
    Port: ("plug", "plug_wide", "ways"),
    Lead: ("od",),
    LeadFuse: ("rating",),
    Fixing: ("rated",),
    Slot: ("travel",),
    Photo: ("size",),
    PrintedHole: ("drill",),
}
_NOT_BELOW_ZERO: dict[type[Value], tuple[str, ...]] = {
    Landing: ("behind",),
    Stay: ("clear",),
    Lining: ("thickness",),
    Seat: ("give",),
    Entry: ("run",),
    Bay: ("lined", "tape"),
    Board: ("corner_radius",),
    Card: ("mass", "foot", "current", "heat"),
    Air: ("out", "left", "right", "up", "down"),
    LeadFuse: ("from_start",),
}
_RISING: dict[type[Value], tuple[str, ...]] = {Seat: ("x",), Solid: ("z",), Supply: ("air",)}
_WITHIN: dict[type[Value], tuple[tuple[str, float], ...]] = {
    Landing: (("tilt", 89.0),),
    Bay: (("lean", 180.0),),
    Seat: (("swing", 360.0),),
}


def check_figures(layout: Layout, found: Iterable[Thing]) -> None:
    """Raise `Refused` for the first figure that no bay, board or gear can have."""
    for place, thing in found:
        kind = type(thing)
        for member in _ABOVE_ZERO.get(kind, ()):
            if any(figure <= 0 for figure in _figures(thing, member)):
                raise _refused(place, thing, member, "is not more than 0")
        for member in _NOT_BELOW_ZERO.get(kind, ()):
            if any(figure < 0 for figure in _figures(thing, member)):
                raise _refused(place, thing, member, "is less than 0")
        for member in _RISING.get(kind, ()):
            low, high = getattr(thing, member)
            if not low < high:
                raise _not_rising(step_to(place, member), low, high)
        for member, most in _WITHIN.get(kind, ()):
            if any(abs(figure) > most for figure in _figures(thing, member)):
                raise _refused(place, thing, member, f"is more than {most:g} degrees either way")
        if isinstance(thing, Eye):
            _eye(place, thing)
    _limits(layout)


def _figures(thing: Value, member: str) -> tuple[float, ...]:
    """Return the figures of a member, () when it is not known."""
    item: Any = getattr(thing, member)
    return () if item is None else item if isinstance(item, tuple) else (item,)


def _refused(place: str, thing: Value, member: str, what: str) -> Refused:
    worst = min(_figures(thing, member)) if "0" in what[-2:] else max(_figures(thing, member), key=abs)
    return Refused(step_to(place, member), f"{spoken(worst)} {what}", _ADVICE[_may_be_null(thing, member)])


_ADVICE = {True: "Correct it, or write null where it is not known", False: "Correct the figure"}


def _may_be_null(thing: Value, member: str) -> bool:
    return "None" in str(type(thing).__annotations__.get(member, ""))


def _not_rising(place: str, low: float, high: float) -> Refused:
    return Refused(place, f"{spoken(low)} is not below {spoken(high)}", "Write the smaller figure first")


def _eye(place: str, eye: Eye) -> None:
    for member in ("x", "y", "z"):
        span = getattr(eye, member)
        if span is None:
            continue
        if span[0] > span[1]:
            raise _not_rising(step_to(place, member), *span)
        if span[1] - span[0] > LONGEST_EYE:
            raise Refused(
                step_to(place, member), "this is longer than 10 m", "Say where a person's eyes can be"
            )


def _limits(layout: Layout) -> None:
    for name, value in layout.limits.items():
        if name not in LIMITS:
            raise Refused("limits", f"there is no limit {quoted(name)}", "Leave it out, or correct its name")
        least = FINEST_EYE_STEP if name == "eye_step" else 0.0
        if value < least:
            raise Refused(
                step_to("limits", label(name)),
                f"{spoken(value)} is less than {least:g}",
                "Correct the figure",
            )
