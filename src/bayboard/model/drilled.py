"""What was really drilled, beside what is planned: places in bay axes, mm.

A stand-in that has `drilled` and none of its screws among `drilled_holes` was drilled whole, as it stood in
that pose; as soon as one of its screws is listed, only the listed ones are drilled.
"""

from msgspec.structs import replace

from bayboard.model.layout import Fixing, Gear, Layout, Point
from bayboard.model.placed import Placed, place

HoleId = str  # `GEAR#n`, n from 1, or a fixing's id


def screw_of(layout: Layout, hole: HoleId) -> tuple[Gear, int] | None:
    """Return the gear of a screw and the screw's number from 1, None when there is no such screw."""
    owner, mark, number = hole.partition("#")
    if not mark or not number.isdecimal() or not number.isascii():
        return None
    for gear in layout.gear:
        if gear.id == owner and 1 <= int(number) <= len(layout.cards[gear.card].screws):
            return gear, int(number)
    return None


def fixing_of(layout: Layout, hole: HoleId) -> Fixing | None:
    """Return the fixing of that id, None when there is none."""
    return next((fixing for fixing in layout.fixings if fixing.id == hole), None)


def planned_at(layout: Layout, hole: HoleId) -> Point | None:
    """Return where a hole is planned, None where there is no such hole; gear on the bench makes none."""
    fixing = fixing_of(layout, hole)
    if fixing is not None:
        return fixing.at
    screw = screw_of(layout, hole)
    return None if screw is None else _screw_at(place(layout, screw[0]), screw[1])


def drilled_at(layout: Layout, hole: HoleId) -> Point | None:
    """Return where a hole was made in the board, None when it was not."""
    fixing = fixing_of(layout, hole)
    if fixing is not None:
        return fixing.drilled
    screw = screw_of(layout, hole)
    return None if screw is None else drilled_screws(layout, screw[0]).get(screw[1])


def drilled_places(layout: Layout) -> dict[HoleId, Point]:
    """Return where every hole that was made in a board is, by its id."""
    screws = {f"{gear.id}#{n}": at for gear in layout.gear for n, at in drilled_screws(layout, gear).items()}
    return screws | {f.id: f.drilled for f in layout.fixings if f.drilled is not None}


def drilled_screws(layout: Layout, gear: Gear) -> dict[int, Point]:
    """Return where screws of a stand-in were drilled, by number from 1; the others are not in it."""
    found = listed_screws(layout, gear)
    if found or gear.drilled is None:
        return found
    there = place(layout, replace(gear, at=gear.drilled.at, turn=gear.drilled.turn))
    made = {n: _screw_at(there, n) for n, _ in enumerate(layout.cards[gear.card].screws, start=1)}
    return {n: at for n, at in made.items() if at is not None}


def listed_screws(layout: Layout, gear: Gear) -> dict[int, Point]:
    """Return where screws of a stand-in were drilled one by one, by number from 1."""
    listed = {
        n: layout.drilled_holes.get(f"{gear.id}#{n}")
        for n, _ in enumerate(layout.cards[gear.card].screws, start=1)
    }
    return {n: at for n, at in listed.items() if at is not None}


def _screw_at(placed: Placed | None, number: int) -> Point | None:
    return None if placed is None else placed.point(placed.card.screws[number - 1].at)


def is_drilled(layout: Layout, name: str) -> bool:
    """Return whether any hole of a stand-in or fixing was made, in the board or in the metal."""
    fixing = fixing_of(layout, name)
    if fixing is not None:
        return fixing.drilled is not None or fixing.metal is not None
    gear = next((gear for gear in layout.gear if gear.id == name), None)
    return gear is not None and (gear.drilled is not None or bool(drilled_screws(layout, gear)))


def with_facts(layout: Layout, of: Layout) -> Layout:
    """Return `layout` with what was printed and drilled according to `of`: facts outlive a plan.

    What both have takes all its facts from `of`; what only `layout` has keeps its own.  A drilled screw that
    its card here no longer has is dropped, and with the last of them the stand-in's drilled pose.
    """
    known, lost = _holes_known(layout, of)
    poses = {gear.id: None if gear.id in lost else gear.drilled for gear in of.gear}
    holes = {fixing.id: (fixing.drilled, fixing.metal) for fixing in of.fixings}
    gear = tuple(
        piece
        if poses.get(piece.id, piece.drilled) == piece.drilled
        else replace(piece, drilled=poses[piece.id])
        for piece in layout.gear
    )
    fixings = tuple(
        fixing if made == (fixing.drilled, fixing.metal) else replace(fixing, drilled=made[0], metal=made[1])
        for fixing in layout.fixings
        for made in [holes.get(fixing.id, (fixing.drilled, fixing.metal))]
    )
    members = {"gear": gear, "fixings": fixings, "drilled_holes": known, "printed": of.printed}
    differ = {member: item for member, item in members.items() if getattr(layout, member) != item}
    return replace(layout, **differ) if differ else layout


def _holes_known(layout: Layout, of: Layout) -> tuple[dict[str, Point], frozenset[str]]:
    """Return the drilled screws that `layout` can have, and the gear of which none is left."""
    there = {gear.id for gear in of.gear}
    own = {hole: at for hole, at in layout.drilled_holes.items() if hole.partition("#")[0] not in there}
    carried = {hole: at for hole, at in of.drilled_holes.items() if screw_of(layout, hole) is not None}
    left = {hole.partition("#")[0] for hole in carried}
    return own | carried, frozenset(hole.partition("#")[0] for hole in of.drilled_holes) - left
