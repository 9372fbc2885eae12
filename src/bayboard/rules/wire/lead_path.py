"""A lead lies where it cannot: through a stand-in, over a cut-out or washer, or off its board.

Why: a cable cannot pass through a box, hangs free over an opening, and is crushed under a washer.
Quiet: it runs over its board only; within its own piece for the plug's length; straight in from an entry off
the board; behind the board it meets no gear.
Speaks: some of its centre line lies elsewhere; gives how much.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import chain

from bayboard.rules.cables import no_size
from bayboard.rules.finding import Said
from bayboard.rules.levels import head
from bayboard.rules.meetings import body_members
from bayboard.rules.scene import Scene
from bayboard.rules.through_at import through_at
from bayboard.rules.trespassing import off_its_board, over_cutouts, through_gear, under_washers
from bayboard.rules.unlooked import doubtful

RULE = "lead-path"
WIDE = False
at_places = through_at


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each lead and each thing it lies in, and for each lead off its board."""
    every = list(scene.paths.values())
    moved = [path for path in every if about is None or path.lead.id in about]
    rest = [path for path in every if about is not None and path.lead.id not in about]
    gear = list(scene.placed.values())
    yield from through_gear(scene, moved, gear)
    yield from through_gear(scene, rest, [p for p in gear if about is not None and p.id in about])
    yield from over_cutouts(scene, moved)
    for path in moved:
        yield from off_its_board(scene, path)
        if path.on_front and path.od is None:
            yield no_size(RULE, path.lead)
    yield from under_washers(scene, moved, whole=about is None)
    for placed in gear if every else ():
        if about is None or placed.id in about:
            yield from doubtful(RULE, placed, (*body_members(placed), "ports"))


def stays_bad(scene: Scene, subjects: tuple[str, ...], gear: str) -> bool:
    """Return whether a lead with given bends lies where it cannot wherever one of its stand-ins is moved to.

    So it is where the stretches that do not go with that stand-in are bad enough.  False where `gear` or
    another stand-in of the lead is a subject.
    """
    path = scene.paths.get(subjects[0])
    if path is None or not path.lead.via:
        return False
    heads = head(path.lead.from_), head(path.lead.to)
    if {gear, *heads} & set(subjects[1:]):
        return False
    points = path.route.points[heads[0] == gear : len(path.route.points) - (heads[1] == gear)]
    if len(points) < 2:
        return False
    rest = [replace(path, route=replace(path.route, points=points))]
    said = chain(
        through_gear(scene, rest, list(scene.placed.values())),
        over_cutouts(scene, rest),
        off_its_board(scene, rest[0]),
        under_washers(scene, rest, whole=False),
    )
    return any(one.subjects == subjects for one in said)
