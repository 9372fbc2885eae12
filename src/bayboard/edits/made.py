"""What the edits of drilling share: the hole that is meant, what is known of it, places in labels."""

from msgspec.structs import replace

from bayboard.model.drilled import drilled_screws, fixing_of, screw_of
from bayboard.model.layout import Fixing, Gear, Layout, Point
from bayboard.model.places import label
from bayboard.model.raw import LARGEST_NUMBER
from bayboard.model.refused import Refused
from bayboard.model.rounding import rounded_point
from bayboard.units.length import show_length


def hole_named(layout: Layout, hole: str) -> Fixing | tuple[Gear, int]:
    """Return the fixing, or the gear and its screw's number; raise `Refused` where there is no such hole."""
    found = fixing_of(layout, hole) or screw_of(layout, hole)
    if found is None:
        raise Refused(f"hole {label(hole)}", "there is no such hole", "Name a fixing, or a screw as GEAR#n")
    return found


def owner_named(layout: Layout, name: str) -> Fixing | Gear:
    """Return the fixing or the gear with screws of that id; raise `Refused` for what makes no hole."""
    found = fixing_of(layout, name) or next((gear for gear in layout.gear if gear.id == name), None)
    if found is None:
        raise Refused(label(name), "this is neither gear nor a fixing", "Name what makes the holes")
    if isinstance(found, Gear) and not layout.cards[found.card].screws:
        raise Refused(f"gear {name}", "its card has no screws, so it makes no holes", "Choose another")
    return found


def made_at(hole: str, at: Point) -> Point:
    """Return a place rounded to 0.000001 mm; raise `Refused` when no layout reaches so far."""
    if not all(abs(figure) <= LARGEST_NUMBER for figure in at):
        raise Refused(f"hole {hole}", "this is more than 100 m away", "Measure it again")
    return rounded_point(at)


def with_fixing(layout: Layout, fixing: Fixing) -> Layout:
    """Return the layout with the fixing in place of the one of its id; the same where it is equal."""
    old = fixing_of(layout, fixing.id)
    if old == fixing:
        return layout
    return replace(layout, fixings=tuple(fixing if known is old else known for known in layout.fixings))


def with_screws(layout: Layout, gear: Gear, made: dict[int, Point]) -> Layout:
    """Return the layout with the gear in place of the one of its id, and just these screws of it drilled."""
    names = {f"{gear.id}#{n}": at for n, at in sorted(made.items())}
    others = layout.drilled_holes.items()
    kept = {hole: names.get(hole, at) for hole, at in others if hole in names or not _of(gear, hole)}
    holes = kept | names
    if holes != layout.drilled_holes:
        layout = replace(layout, drilled_holes=holes)
    if gear in layout.gear:
        return layout
    return replace(layout, gear=tuple(gear if known.id == gear.id else known for known in layout.gear))


def known_screws(layout: Layout, gear: Gear) -> dict[int, Point]:
    """Return where the screws of a stand-in were drilled, rounded so that they can be listed."""
    return {n: rounded_point(at) for n, at in drilled_screws(layout, gear).items()}


def _of(gear: Gear, hole: str) -> bool:
    return hole.partition("#")[0] == gear.id


def told_at(at: Point | None, layout: Layout) -> str:
    """Return " at 12 3/8, 4 in" for a place in bay axes, "" where it is the planned one."""
    if at is None:
        return ""
    x, y = (show_length(figure, layout.units) for figure in at)
    return f" at {x.rpartition(' ')[0]}, {y}"
