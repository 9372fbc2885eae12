"""A lead lies where it cannot: through a stand-in, over a cut-out or washer, or off its board.

Why: a cable cannot pass through a box, hangs free over an opening, and is crushed under a washer.
Quiet: it runs over its board only; within its own piece for the plug's length; straight in from an entry off
the board; behind the board it meets no gear.
Speaks: some of its centre line lies elsewhere; gives how much.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import chain

import numpy as np

from bayboard.geometry.prism import prism
from bayboard.geometry.solids import grouped, solids
from bayboard.geometry.stretches import stretches
from bayboard.geometry.trespass import along, inside_bodies, inside_circles, middle, off_board, total
from bayboard.model.placed import Placed
from bayboard.rules.cables import no_size
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.levels import head
from bayboard.rules.meetings import body_members
from bayboard.rules.paths import Parts, Path
from bayboard.rules.scene import Scene
from bayboard.rules.through_at import through_at
from bayboard.rules.unlooked import doubtful
from bayboard.tables.limits import limit
from bayboard.tables.reference import thread
from bayboard.units.length import show_length

RULE = "lead-path"
WIDE = False
at_places = through_at


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each lead and each thing it lies in, and for each lead off its board."""
    every = list(scene.paths.values())
    moved = [path for path in every if about is None or path.lead.id in about]
    rest = [path for path in every if about is not None and path.lead.id not in about]
    gear = list(scene.placed.values())
    yield from _through_gear(scene, moved, gear)
    yield from _through_gear(scene, rest, [p for p in gear if about is not None and p.id in about])
    yield from _over_cutouts(scene, moved)
    for path in moved:
        yield from _off_board(scene, path)
        if path.on_front and path.od is None:
            yield no_size(RULE, path.lead)
    yield from _under_washers(scene, moved, whole=about is None)
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
        _through_gear(scene, rest, list(scene.placed.values())),
        _over_cutouts(scene, rest),
        _off_board(scene, rest[0]),
        _under_washers(scene, rest, whole=False),
    )
    return any(one.subjects == subjects for one in said)


def _through_gear(scene: Scene, leads: list[Path], gear: list[Placed]) -> Iterator[Finding]:
    if not leads or not gear:
        return
    names = list(scene.placed)
    some = [names.index(placed.id) for placed in gear]
    every = len(some) == len(names)
    bodies = scene.solids if every else grouped([placed.prisms for placed in gear], some)
    z = np.array([path.z for path in leads])
    for found in inside_bodies(stretches([path.route.points for path in leads]), z, bodies):
        path, id_ = leads[found.path], names[found.owner]
        yield from _judged(scene, path, id_, path.beyond_plugs(id_, found.parts), f"through {id_}")


def _over_cutouts(scene: Scene, leads: list[Path]) -> Iterator[Finding]:
    cutouts = [cutout for board in scene.layout.boards for cutout in board.cutouts]
    openings = solids([prism(cutout.outline, -1, 1) for cutout in cutouts])
    level = np.tile([-1.0, 1.0], (len(leads), 1))
    for found in inside_bodies(stretches([path.route.points for path in leads]), level, openings):
        path, cutout = leads[found.path], cutouts[found.owner]
        if any(cutout in shape.board.cutouts for shape in path.boards):
            yield from _judged(scene, path, cutout.id, found.parts, f"over cut-out {cutout.id}")


def _under_washers(scene: Scene, leads: list[Path], whole: bool) -> Iterator[Said]:
    known = [(fixing, thread(fixing.thread)) for fixing in scene.layout.fixings]
    washers = [(fixing, row.large_washer_od / 2) for fixing, row in known if row is not None]
    centres = np.array([fixing.at for fixing, _ in washers]).reshape(-1, 2)
    radii = np.array([radius for _, radius in washers])
    for found in inside_circles(stretches([path.route.points for path in leads]), centres, radii):
        path, (fixing, _) = leads[found.path], washers[found.owner]
        if any(shape.board.id == fixing.board for shape in path.boards):
            yield from _judged(scene, path, fixing.id, found.parts, f"across the washer of {fixing.id}")
    for fixing, row in known:
        if row is None and whole and scene.routes:
            says = f"No table has {fixing.thread}, so nobody knows how wide the washer of {fixing.id} is."
            yield Unchecked(rule=RULE, subjects=(fixing.id,), says=says)


def _off_board(scene: Scene, path: Path) -> Iterator[Finding]:
    off = off_board(path.route.points, path.ground, path.from_off, path.to_off)
    if off.length > limit(scene.layout, "lead_path_silent"):
        yield _finding(scene, (path.lead.id,), off.length, middle(off), "off its board")


def _judged(scene: Scene, path: Path, thing: str, parts: Parts, where: str) -> Iterator[Finding]:
    length = total(parts)
    if length > limit(scene.layout, "lead_path_silent"):
        low, high = max(parts, key=lambda part: part[1] - part[0])
        at = along(path.route.points, (low + high) / 2)
        yield _finding(scene, (path.lead.id, thing), length, at, where)


def _finding(
    scene: Scene, subjects: tuple[str, ...], length: float, at: tuple[float, float], where: str
) -> Finding:
    shown = show_length(length, scene.layout.units)
    return Finding(
        rule=RULE,
        severity="must",
        subjects=subjects,
        measure=length,
        limit=0.0,
        unit="mm",
        at=at,
        says=f"{subjects[0]} runs {shown} {where}. It needs another way round.",
    )
