"""A board or a stand-in sits so deep that the lining behind it has to be cut.

Why: trim that was cut out cannot be put back, so it is said before the knife comes out.
Quiet: boards and gear stay in front of the lining's face, or beside it; lining inside a cut-out stays whole.
Speaks: a board's back, or a stand-in sunk below its board's front, lies deeper than the lining is thick;
gives the area that has to go.
"""

from collections.abc import Iterator
from functools import lru_cache

import numpy as np
from shapely.geometry.base import BaseGeometry

from bayboard.geometry import outline as outlines
from bayboard.geometry.covered import area_with, under
from bayboard.geometry.crowd import HAIR
from bayboard.model.layout import Lining
from bayboard.model.placed import Placed
from bayboard.rules.boards import BoardShape
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.levels import NOTE, Key, Levels
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed
from bayboard.tables.limits import limit
from bayboard.units.figure import show_area

RULE = "lining-cut"
WIDE = True  # a stand-in changes what is cut without being a subject


def look(scene: Scene, _about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a note for each lining that boards or stand-ins go into."""
    for lining in scene.layout.bay.linings:
        if lining.thickness is None:
            says = f"Nobody measured how thick {lining.name} ({lining.id}) is."
            yield Unchecked(rule=RULE, subjects=(lining.id,), says=says)
            continue
        boards, sunk = _deeper(scene, lining.thickness)
        for placed in sunk:
            yield from guessed(RULE, placed, ("outline",))
        if boards or sunk:
            yield from _cut(scene, lining, boards, sunk)


def at_places(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    found: dict[Key, Levels] = {}
    for lining in scene.layout.bay.linings if key else ():  # never a must
        if key == (lining.id,) and lining.thickness is not None:
            boards, sunk = _deeper(scene, lining.thickness)
            covered, region = _under_boards(lining, boards), outlines.polygon(lining.outline)
            still = [placed.polygon for placed in sunk if placed.id != places.id]
            if len(still) == len(sunk):
                area = np.full(len(places), area_with(covered, region, still))
            else:
                there = places.shapes(places.model.ring)
                area = np.array([area_with(covered, region, [*still, shape]) for shape in there])
            found[key] = NOTE * (area > limit(scene.layout, "overlap_area")).astype(np.int8)
    return found


def _deeper(scene: Scene, thickness: float) -> tuple[tuple[BoardShape, ...], list[Placed]]:
    """Return the boards and the stand-ins that lie deeper than a lining is thick."""
    deep = thickness - HAIR
    boards = tuple(board for board in scene.boards.values() if board.board.standoff < deep)
    return boards, [placed for placed in scene.placed.values() if placed.under < deep]


def _cut(
    scene: Scene, lining: Lining, boards: tuple[BoardShape, ...], sunk: list[Placed]
) -> Iterator[Finding]:
    region = outlines.polygon(lining.outline)
    area = area_with(_under_boards(lining, boards), region, [placed.polygon for placed in sunk])
    if area > limit(scene.layout, "overlap_area"):
        middle = region.centroid
        shown = show_area(area, scene.layout.units)
        yield Finding(
            rule=RULE,
            severity="note",
            subjects=(lining.id,),
            measure=area,
            limit=None,
            unit="mm2",
            at=(middle.x, middle.y),
            says=f"{shown} of {lining.name} ({lining.id}) has to be cut away.",
        )


@lru_cache
def _under_boards(lining: Lining, boards: tuple[BoardShape, ...]) -> BaseGeometry:
    """Return what of a lining lies under boards; kept, as no drag changes it."""
    return under(outlines.polygon(lining.outline), [board.true_polygon for board in boards])
