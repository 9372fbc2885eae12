"""A board meets the metal that it is to be bolted to.

Why: a board that lies on proud metal does not sit down, bends as it is bolted, and rattles.
Quiet: the board leaves the landing free, or stands off it, the lining between them counted in.
Speaks: the room between the board's back and the metal it covers is under nothing; gives that room.
"""

from collections.abc import Iterator

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR
from bayboard.model.layout import Bay, Landing
from bayboard.rules.boards import BoardShape
from bayboard.rules.covering import covers
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.scene import Scene
from bayboard.rules.words import amount
from bayboard.units.length import show_at_least

RULE = "on-landing"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each landing whose metal a board meets."""
    if about is not None:
        return  # no board moved
    for landing in scene.layout.bay.landings:
        need = needed(scene.layout.bay, landing)
        if need is None:
            says = f"Nobody measured how deep landing {landing.id} lies."
            yield Unchecked(rule=RULE, subjects=(landing.id,), says=says)
            continue
        shape = outlines.polygon(landing.outline)
        for board in scene.boards.values():
            if board.board.standoff < need - HAIR and covers(scene, board, shape):
                yield _finding(scene, landing, board, need)


def needed(bay: Bay, landing: Landing) -> float | None:
    """Return the least standoff in mm of a board that covers a landing, None when its recess is not known."""
    return None if landing.recess is None else bay.lined - landing.recess


def _finding(scene: Scene, landing: Landing, board: BoardShape, need: float) -> Finding:
    units, room = scene.layout.units, board.board.standoff - need
    middle = outlines.polygon(landing.outline).centroid
    says = f"{board.board.id} comes {amount(-room, units)} too near the metal of landing {landing.id}."
    return Finding(
        rule=RULE,
        severity="must",
        subjects=(landing.id, board.board.id),
        measure=room,
        limit=0.0,
        unit="mm",
        at=(middle.x, middle.y),
        says=f"{says} It needs a standoff of {show_at_least(need, units)} there.",
    )
