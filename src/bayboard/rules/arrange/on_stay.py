"""A board covers something of the vehicle that stays.

Why: a board that meets metal does not sit down, and what is covered can no longer be opened, read or reached.
Quiet: the board leaves it free with the room it asks for, or stands high enough over it; fingers still get to
what has to be reached.
Speaks: the board stands too low over it; covers what must never be covered; or no straight way for fingers
leads to what has to be reached.
"""

from collections.abc import Iterator

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR
from bayboard.model.layout import Bay, Stay
from bayboard.rules.boards import BoardShape
from bayboard.rules.corridors import free_at, nearest_board, width_to
from bayboard.rules.covering import covers
from bayboard.rules.finding import Finding, Said, Severity
from bayboard.rules.levels import MUST, SHOULD, Key, Levels
from bayboard.rules.meetings import body_members
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed, no_height, no_section, unknown_bodies
from bayboard.rules.words import amount, amount_and_need
from bayboard.tables.limits import limit
from bayboard.units.length import show_at_least

RULE = "on-stay"
WIDE = True  # anything may stand in the way of fingers


def look(scene: Scene, _about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each stay that a board covers or that fingers cannot get to."""
    for stay, _ in scene.stays.values():
        if stay.height is None and stay.keep != "never-cover":
            yield no_height(RULE, stay.id)
        for board in scene.boards.values():
            yield from _covered(scene, stay, board)
        if stay.keep == "reach" and stay.height is not None and scene.boards:
            yield from _unreached(scene, stay, stay.height)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    if key is None:
        return {}  # what stand-ins bar is never a must
    (stay, _), board, levels = scene.stays[key[0]], scene.boards[key[1]], places.silence
    if stay.keep == "reach" and stay.height is not None and board is nearest_board(scene, stay, stay.height):
        levels[~free_at(scene, places, stay, stay.height)] = SHOULD
    levels[:] = MUST if any(_covered(scene, stay, board)) else levels
    return {key: levels}


def _covered(scene: Scene, stay: Stay, board: BoardShape) -> Iterator[Finding]:
    if not covers(scene, board, outlines.polygon(stay.outline), stay.clear):
        return
    if stay.keep == "never-cover":
        says = f"{board.board.id} covers {_name(stay)}, which has to stay free."
        yield _finding("must", stay, board, None, None, says)
    elif stay.height is not None:
        need = needed(scene.layout.bay, stay, stay.height)
        room = board.board.standoff - need
        if room < -HAIR:
            units = scene.layout.units
            says = f"{board.board.id} comes {amount(-room, units)} too near {_name(stay)}."
            says += f" It needs a standoff of {show_at_least(need, units)} there."
            yield _finding("must", stay, board, room, 0.0, says)


def needed(bay: Bay, stay: Stay, height: float) -> float:
    """Return the least standoff in mm of a board that covers a stay of that height."""
    return bay.lined + height + stay.clear


def _unreached(scene: Scene, stay: Stay, height: float) -> Iterator[Said]:
    """Yield a finding when no corridor for fingers leads along z to the middle of a stay."""
    yield from _unseen(scene)
    need, wide = limit(scene.layout, "corridor_fingers"), width_to(scene, stay, height)
    if wide < need - HAIR:
        nearest = nearest_board(scene, stay, height)
        found, wanted = amount_and_need(wide, need, scene.layout.units)
        fact = (
            f"is {found} wide with the seats folded" if wide > HAIR else "is shut, even with the seats folded"
        )
        says = f"The way to {_name(stay)} {fact}. It needs {wanted} for fingers."
        yield _finding("should", stay, nearest, wide, need, says)


def _unseen(scene: Scene) -> Iterator[Said]:
    """Yield what is unknown among the things that may stand in the way."""
    yield from unknown_bodies(RULE, scene)
    for placed in scene.placed.values():
        yield from guessed(RULE, placed, body_members(placed))
    for seat in scene.layout.bay.seats:
        if seat.folded is None:
            yield no_section(RULE, seat.id, "folded")


def _name(stay: Stay) -> str:
    return f"{stay.name} ({stay.id})"


def _finding(
    severity: Severity, stay: Stay, board: BoardShape, measure: float | None, need: float | None, says: str
) -> Finding:
    middle = outlines.polygon(stay.outline).centroid
    return Finding(
        rule=RULE,
        severity=severity,
        subjects=(stay.id, board.board.id),
        measure=measure,
        limit=need,
        unit="mm",
        at=(middle.x, middle.y),
        says=says,
    )
