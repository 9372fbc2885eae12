"""A board does not go in through the door.

Why: a board is sawn in the workshop; one that does not pass the opening is sawn in two on the pavement.
Quiet: held on edge and pushed in lengthwise, the board at its slimmest passes the wider side of the way in.
Speaks: the least width of its outline, over all directions, is more than that; gives how much more.
"""

from collections.abc import Iterator

from bayboard.geometry.crowd import HAIR
from bayboard.geometry.widths import least_width
from bayboard.rules.boards import BoardShape
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.scene import Scene
from bayboard.rules.words import amount, amount_and_need

RULE = "way-in"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each board that is wider than the way in."""
    if about is not None:
        return  # no board moved
    way = scene.layout.bay.way_in
    for id_, board in scene.boards.items():
        if way is None:
            says = f"Nobody measured the opening that {id_} goes in by."
            yield Unchecked(rule=RULE, subjects=(id_,), says=says)
        else:
            wide = least_width(board.board.outline, board.board.corner_radius)
            if wide > max(way) + HAIR:
                yield _finding(scene, board, wide, max(way))


def _finding(scene: Scene, board: BoardShape, wide: float, way: float) -> Finding:
    units, middle = scene.layout.units, board.whole.centroid
    shown, widest = amount_and_need(wide, way, units)
    return Finding(
        rule=RULE,
        severity="should",
        subjects=(board.board.id,),
        measure=wide - way,
        limit=0.0,
        unit="mm",
        at=(middle.x, middle.y),
        says=f"{board.board.id} is {shown} wide at its slimmest and the way in {widest}. "
        f"{amount(wide - way, units)} less, or two pieces, is better.",
    )
