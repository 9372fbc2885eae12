"""A board shuts an air outlet of the cabin.

Why: shut vents keep doors from closing, steam up the glass and stop the fan that should cool the gear.
Quiet: the board leaves the vent free, or so much stays open round it and behind it as the vent needs.
Speaks: the way round the covered part, as high as the board stands off its lining, and what is left uncovered
come to less than the free area; gives the mm2 that are left.
"""

from collections.abc import Iterator
from functools import lru_cache

from bayboard.geometry import outline as outlines
from bayboard.geometry.covered import Cover, cover
from bayboard.geometry.outline import SPECK
from bayboard.model.layout import Vent
from bayboard.rules.boards import BoardShape
from bayboard.rules.finding import Finding, Said
from bayboard.rules.scene import Scene
from bayboard.rules.words import amount
from bayboard.tables.limits import limit
from bayboard.units.figure import show_percent
from bayboard.units.length import show_at_least

RULE = "on-vent"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each vent that a board leaves too little air."""
    if about is not None:
        return  # no board moved
    for vent in scene.layout.bay.vents:
        for board in scene.boards.values():
            covered = _cover(scene, vent, board)
            if covered is not None:
                yield from _judged(scene, vent, board, covered)


def needed(scene: Scene, vent: Vent, board: BoardShape) -> float | None:
    """Return the standoff in mm at which a board leaves a vent its air, None when it leaves it free."""
    covered = _cover(scene, vent, board)
    return None if covered is None else _needed(scene, vent, covered)


def _cover(scene: Scene, vent: Vent, board: BoardShape) -> Cover | None:
    return _covered(vent, board, limit(scene.layout, "overlap_area"))


@lru_cache
def _covered(vent: Vent, board: BoardShape, least: float) -> Cover | None:
    """Return how a board lies over a vent; kept, as no drag changes it."""
    return cover(outlines.polygon(vent.outline), board.true_polygon, least)


def _free_area(vent: Vent) -> float:
    """Return the vent's free area in mm2; the outline's where nobody said."""
    return abs(outlines.signed_area(vent.outline)) if vent.free_area is None else vent.free_area


def _needed(scene: Scene, vent: Vent, covered: Cover) -> float:
    return scene.layout.bay.lined + _free_area(vent) * covered.share / covered.rim


def _judged(scene: Scene, vent: Vent, board: BoardShape, covered: Cover) -> Iterator[Finding]:
    free, units = _free_area(vent), scene.layout.units
    behind = max(board.board.standoff - scene.layout.bay.lined, 0.0)
    left = covered.rim * behind + free * (1.0 - covered.share)
    if left >= free - SPECK:
        return
    middle = outlines.polygon(vent.outline).centroid
    leaves = f"leaves {amount(behind, units)} behind it" if behind else "leaves nothing behind it"
    yield Finding(
        rule=RULE,
        severity="must",
        subjects=(vent.id, board.board.id),
        measure=left,
        limit=free,
        unit="mm2",
        at=(middle.x, middle.y),
        says=f"{board.board.id} covers {show_percent(covered.share)} of vent {vent.id} and {leaves}. "
        f"Air needs a standoff of {show_at_least(_needed(scene, vent, covered), units)} there.",
    )
