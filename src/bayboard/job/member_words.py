"""The members of a layout as people call them, and how a value of each is read out."""

from collections.abc import Callable
from typing import Any

from bayboard.model.layout import Units
from bayboard.tables.limits import LIMITS
from bayboard.units.figure import show_angle, show_figure, show_mass, show_number
from bayboard.units.length import show_length, show_two

NOT_MEASURED = "not measured"
# words, and how the value is read: "" for one that is told only as changed
_MEMBERS: dict[str, tuple[str, str]] = {
    "height": ("height", "length"),
    "mass": ("mass", "mass"),
    "foot": ("foot", "length"),
    "current": ("current", "A"),
    "fuse": ("fuse", "A"),
    "heat": ("heat", "W"),
    "name": ("name", "text"),
    "note": ("note", ""),
    "kind": ("kind", "text"),
    "outline": ("outline", ""),
    "wall": ("outline", ""),
    "solids": ("solids", ""),
    "screws": ("screws", "count"),
    "ports": ("ports", ""),
    "service": ("dials and fuses", ""),
    "air": ("air round it", ""),
    "guessed": ("guesses", ""),
    "lift": ("lift", "length"),
    "board": ("board", "text"),
    "card": ("card", "text"),
    "corner_radius": ("corner radius", "length"),
    "cutouts": ("cut-outs", ""),
    "material": ("material", "text"),
    "thickness": ("thickness", "length"),
    "standoff": ("standoff", "length"),
    "stock": ("stock", ""),
    "recess": ("recess", "length"),
    "sheet": ("sheet", "length"),
    "behind": ("room behind", "length"),
    "tilt": ("tilt", ""),
    "keep": ("keep", "text"),
    "clear": ("clearance", "length"),
    "x": ("place", ""),
    "up": ("shape when up", ""),
    "folded": ("shape when folded", ""),
    "hinge": ("hinge", ""),
    "swing": ("swing", "deg"),
    "give": ("give", "length"),
    "probes": ("putty lumps", "count"),
    "at": ("place", ""),
    "carries": ("leads it carries", ""),
    "run": ("run", "length"),
    "way": ("way in", ""),
    "to": ("end", "text"),
    "from": ("start", "text"),
    "free_area": ("free area", ""),
    "size": ("size", "text"),
    "conductor": ("conductor", "text"),
    "od": ("jacket", "length"),
    "via": ("way", ""),
    "side": ("side", "text"),
    "thread": ("thread", "text"),
    "into": ("goes into", "text"),
    "slot": ("slot", ""),
    "rated": ("rated load", "N"),
    "lined": ("lining", "length"),
    "lean": ("lean", "deg"),
    "faces": ("facing", "text"),
    "way_in": ("way in", ""),
    "tape": ("tape", "length"),
    "eye": ("eyes", ""),
    "supply": ("supply", ""),
    "steering": ("steering", "text"),
    "units": ("units", "text"),
}


def member_change(member: str, before: Any, after: Any, units: Units) -> str:
    """Return "height 2 1/4 in, was 2 in"; "outline changed" for what has no figure."""
    word, how = _MEMBERS.get(member, (member.replace("_", " "), ""))
    shaped = isinstance(before, dict | list) or isinstance(after, dict | list)
    if how != "count" and (shaped or not how):
        return f"{word} changed"
    then, now = _read(before, after, how, units)
    return f"{word} {now}, was {then}"


def limit_change(name: str, before: Any, after: Any, units: Units) -> str:
    """Return a limit's change in words; None means the usual value."""
    known = LIMITS.get(name)
    how = "length" if known and known.unit == "mm" else known.unit if known else ""
    usual = known.value if known else None
    then, now = _read(usual if before is None else before, usual if after is None else after, how, units)
    return f"{name.replace('_', ' ')} {now}, was {then}{' as usual' if before is None else ''}"


def _read(before: Any, after: Any, how: str, units: Units) -> tuple[str, str]:
    """Return both values read out, with as many figures as it takes that they differ."""
    if how == "length" and before is not None and after is not None:
        return show_two(float(before), float(after), units)
    shown = _one(before, how, units), _one(after, how, units)
    if shown[0] == shown[1] and isinstance(before, float | int) and isinstance(after, float | int):
        return f"{before:g} {how}".strip(), f"{after:g} {how}".strip()
    return shown


def _one(value: Any, how: str, units: Units) -> str:
    if value is None:
        return NOT_MEASURED if how not in ("text", "") else "none"
    readers: dict[str, Callable[[Any], str]] = {
        "length": lambda v: show_length(float(v), units),
        "mass": lambda v: show_mass(float(v), units),
        "count": lambda v: str(len(v or ())),
        "deg": lambda v: show_angle(float(v)),
        "text": lambda v: str(v) or "empty",
        "": lambda v: show_number(float(v), 3),
    }
    read = readers.get(how)
    return read(value) if read is not None else show_figure(float(value), how)
