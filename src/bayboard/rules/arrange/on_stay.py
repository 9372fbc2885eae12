"""A board covers something of the vehicle that stays.

Why: a board that meets metal does not sit down, and what is covered can no longer be opened, read or reached.
Quiet: the board leaves it free with the room it asks for, or stands high enough over it; fingers still get to
what has to be reached.
Speaks: the board stands too low over it; covers what must never be covered; or no straight way for fingers
leads to what has to be reached.
"""

from collections.abc import Iterator

import numpy as np
from shapely import Polygon

from bayboard.geometry import outline as outlines
from bayboard.geometry.corridor import axis_distance, free_widths
from bayboard.geometry.crowd import HAIR
from bayboard.model.layout import Bay, Stay
from bayboard.rules.boards import BoardShape
from bayboard.rules.covering import covers
from bayboard.rules.finding import Finding, Said, Severity
from bayboard.rules.meetings import body_members
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
        shape = outlines.polygon(stay.outline)
        for board in scene.boards.values():
            if covers(scene, board, shape, stay.clear):
                yield from _covered(scene, stay, board)
        if stay.keep == "reach" and stay.height is not None and scene.boards:
            yield from _unreached(scene, stay, shape, stay.height)


def _covered(scene: Scene, stay: Stay, board: BoardShape) -> Iterator[Said]:
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


def _unreached(scene: Scene, stay: Stay, shape: Polygon, height: float) -> Iterator[Said]:
    """Yield a finding when no corridor for fingers leads along z to the middle of a stay."""
    yield from _unseen(scene)
    x0, y0, x1, y1 = shape.bounds
    start = np.array([[(x0 + x1) / 2.0, (y0 + y1) / 2.0, height]])
    end = start + np.array([0.0, 0.0, limit(scene.layout, "corridor_length")])
    boards = list(scene.boards.values())
    things = [board.prism for board in boards]
    things += [prism for placed in scene.placed.values() for prism in placed.prisms]
    things += [prism for id_, prism in scene.stay_prisms.items() if id_ != stay.id]
    things += scene.folded_prisms.values()
    need = limit(scene.layout, "corridor_fingers")
    counted = np.ones((1, len(things)), dtype=np.bool_)
    wide = float(free_widths(start, end, things, counted, np.array([need]))[0])
    if wide < need - HAIR:
        nearest = min(boards, key=lambda board: float(axis_distance(start, end, board.prism)[0]))
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
