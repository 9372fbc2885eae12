"""What the edits of gear share: changed pieces put back in their places, names told together."""

from collections.abc import Callable, Collection, Sequence

from msgspec.structs import replace

from bayboard.model.layout import Gear, Layout, Point
from bayboard.model.raw import LARGEST_NUMBER
from bayboard.model.refused import Refused
from bayboard.model.rounding import rounded, rounded_point


def gear_named(layout: Layout, name: str) -> Gear:
    """Return the gear of that id; raise `KeyError` naming what there is."""
    for gear in layout.gear:
        if gear.id == name:
            return gear
    known = ", ".join(g.id for g in layout.gear) or "none yet"
    raise KeyError(f"there is no gear {name!r}; there is {known}")


def with_gear(layout: Layout, names: Collection[str], change: Callable[[Gear], Gear]) -> Layout:
    """Return the layout with `change` made to the named gear; the same layout when nothing differs."""
    for name in names:
        gear_named(layout, name)
    pieces = tuple(_changed(gear, change) if gear.id in names else gear for gear in layout.gear)
    same = all(new is old for new, old in zip(pieces, layout.gear, strict=True))
    return layout if same else replace(layout, gear=pieces)


def _changed(gear: Gear, change: Callable[[Gear], Gear]) -> Gear:
    new = change(gear)
    return gear if new == gear else new


def standing(gear: Gear, at: Point) -> Gear:
    """Return the gear at a place rounded to 0.000001 mm; raise `Refused` when no layout reaches so far."""
    if not all(abs(figure) <= LARGEST_NUMBER for figure in at):
        raise Refused(f"gear {gear.id} › at", "this is more than 100 m away", "Keep it near the board")
    return replace(gear, at=rounded_point(at))


def whole_turn(turn: float) -> float:
    """Return degrees from 0 up to 360, rounded to 0.000001."""
    return rounded(turn % 360.0) % 360.0


def told(names: Sequence[str]) -> str:
    """Return names as one says them: "A1", "A1 and A2", "3 stand-ins"."""
    return f"{len(names)} stand-ins" if len(names) > 2 else " and ".join(names)
