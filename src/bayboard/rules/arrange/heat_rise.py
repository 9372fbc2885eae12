"""All that is warm on a board together heats it.

Why: a closed seat holds the warm air in; every box then starts from warmer air than it was made for.
Quiet: the heat of all that hangs on the board is little for its faces.
Speaks: about how many K the faces run over the air is more than is worth a note: K = W / (h A), Newton's law
of cooling, h = 5 W/m2K (cooling.csv, from memory), A = the board's front plus the faces of its gear.  An
estimate: it may raise a caution, and clears nothing.
"""

from collections.abc import Iterator

import shapely

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR
from bayboard.mechanics.heat import rise
from bayboard.rules.boards import BoardShape
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed
from bayboard.tables.limits import limit

RULE = "heat-rise"
WIDE = False  # who hangs on a board, not where, decides


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a note for each board that runs warm, and a line for each stand-in of unknown heat."""
    for id_, placed in scene.placed.items():
        if about is None or id_ in about:
            if placed.card.heat is None:
                yield Unchecked(
                    rule=RULE, subjects=(id_,), says=f"Nobody knows how much heat {id_} gives off."
                )
            yield from guessed(RULE, placed, ("outline", "heat"))
    for board in scene.boards.values() if about is None else ():
        yield from _judged(scene, board)


def _judged(scene: Scene, board: BoardShape) -> Iterator[Finding]:
    here = [placed for placed in scene.placed.values() if placed.board is board.board]
    watts = sum(placed.card.heat or 0.0 for placed in here)
    # by the cards, not the places: a move changes no digit of it
    tops = shapely.area([outlines.polygon(placed.card.outline) for placed in here])
    face = board.polygon.area + float(tops.sum())
    warmer = rise(watts, face)
    if warmer <= limit(scene.layout, "rise_note") + HAIR:
        return
    middle = board.polygon.representative_point()
    yield Finding(
        rule=RULE,
        severity="note",
        subjects=(board.board.id,),
        measure=warmer,
        limit=None,
        unit="K",
        at=(middle.x, middle.y),
        says=f"{watts:g} W on {board.board.id} warms its faces by about {warmer:.0f} °C over the air. "
        "Leave a way in and out for air.",
    )
