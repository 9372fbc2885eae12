"""Drill bits: how they are told, and how a slot is made with one."""

from math import ceil

from bayboard.mechanics.holes import Hole
from bayboard.tables.reference import thread
from bayboard.units.length import Units, show_length

SLOT_WEB = 1.0  # mm; plastic left between the two holes of a slot, or the second drilling runs into the first
INCH = 25.4


def slot_apart(drill: float, travel: float) -> float:
    """Return how far apart a slot's two holes are: its travel, but never one running into the other."""
    return max(travel, drill + SLOT_WEB)


def drill_figure(mm: float) -> str:
    """Return a drill's diameter in mm with at most two decimals."""
    return f"{mm:.2f}".rstrip("0").rstrip(".")


def inch_drill(mm: float) -> str:
    """Return the smallest drill in 1/64 in that is not under a clearance diameter: 6.6 is 17/64."""
    parts = ceil(mm / INCH * 64 - 0.01)
    return show_length(parts / 64 * INCH, "in").removesuffix(" in")


def tap_drill(name: str, drill: float, units: Units) -> str:
    """Return the tap drill of a thread: its name and mm where it is an inch thread, else mm.

    A metric tap drill keeps its mm in inches too: the next 1/64 up would leave the thread too shallow.
    """
    known = thread(name)
    if known is not None and known.inch:
        return f"{known.tap_drill_name} ({drill_figure(drill)} mm)"
    return drill_figure(drill) + (" mm" if units == "in" else "")


def clear_drill(drill: float, units: Units, what: str = "") -> str:
    """Return a clearance drill in both systems, `what` it is for between: "6.6 for M6 (17/64)"."""
    if units == "in":
        return f"{inch_drill(drill)} in ({drill_figure(drill)} mm){what}"
    return f"{drill_figure(drill)}{what} ({inch_drill(drill)})"


def bit(hole: Hole, units: Units) -> str | None:
    """Return the bit that a hole is drilled with, with its unit, None when it is not known."""
    if hole.drill is None:
        return None
    if hole.make != "tap":
        return clear_drill(hole.drill, units, "" if units == "in" else " mm")
    return tap_drill(hole.thread, hole.drill, "in")
