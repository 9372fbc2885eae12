"""A board reaches beyond the wall.

Why: past the measured wall nobody knows what the board would meet, and it shows or does not go in.
Quiet: the whole board lies within the wall, or reaches out by less than a saw follows.
Speaks: some of it is outside; gives how far the farthest point is out.
"""

from collections.abc import Iterator

from bayboard.geometry import outline as outlines
from bayboard.geometry.rims import ARC_FINE, farthest_out, rim
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.scene import Scene
from bayboard.rules.words import amount
from bayboard.tables.limits import limit

RULE = "off-wall"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each board that is not wholly on the wall."""
    if about is not None:
        return  # no board moved
    if not scene.layout.bay.wall:
        for id_ in scene.boards:
            yield Unchecked(rule=RULE, subjects=(id_,), says=f"Nobody measured the wall behind {id_}.")
        return
    wall = rim(scene.layout.bay.wall)
    for id_, shape in scene.boards.items():
        ring = outlines.rounded(shape.board.outline, shape.board.corner_radius, ARC_FINE)
        (far,) = farthest_out([ring], wall)
        if far >= limit(scene.layout, "outside_silent"):
            shown = amount(float(far), scene.layout.units)
            middle = shape.whole.centroid
            yield Finding(
                rule=RULE,
                severity="must",
                subjects=(id_,),
                measure=float(far),
                limit=0.0,
                unit="mm",
                at=(middle.x, middle.y),
                says=f"{id_} reaches {shown} beyond the wall. It needs to end on it.",
            )
