"""Where leads lie that they cannot: in stand-ins, over cut-outs, under washers, off their boards."""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry.prism import prism
from bayboard.geometry.solids import grouped, solids
from bayboard.geometry.stretches import stretches
from bayboard.geometry.trespass import along, inside_bodies, inside_circles, middle, off_board, total
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.paths import Parts, Path
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit
from bayboard.tables.reference import thread
from bayboard.units.length import show_length

LEAD_PATH = "lead-path"  # the rule that says it


def through_gear(scene: Scene, leads: list[Path], gear: list[Placed]) -> Iterator[Finding]:
    """Yield a finding for each lead and each of these stand-ins that it lies in, its own plugs excepted."""
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


def over_cutouts(scene: Scene, leads: list[Path]) -> Iterator[Finding]:
    """Yield a finding for each lead and each cut-out of its boards that it lies over."""
    cutouts = [cutout for board in scene.layout.boards for cutout in board.cutouts]
    openings = solids([prism(cutout.outline, -1, 1) for cutout in cutouts])
    level = np.tile([-1.0, 1.0], (len(leads), 1))
    for found in inside_bodies(stretches([path.route.points for path in leads]), level, openings):
        path, cutout = leads[found.path], cutouts[found.owner]
        if any(cutout in shape.board.cutouts for shape in path.boards):
            yield from _judged(scene, path, cutout.id, found.parts, f"over cut-out {cutout.id}")


def under_washers(scene: Scene, leads: list[Path], whole: bool) -> Iterator[Said]:
    """Yield a finding for each lead and each washer that it lies under; `whole`: and what no table has."""
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
            yield Unchecked(rule=LEAD_PATH, subjects=(fixing.id,), says=says)


def off_its_board(scene: Scene, path: Path) -> Iterator[Finding]:
    """Yield a finding for a lead that leaves its board where it may not."""
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
        rule=LEAD_PATH,
        severity="must",
        subjects=subjects,
        measure=length,
        limit=0.0,
        unit="mm",
        at=at,
        says=f"{subjects[0]} runs {shown} {where}. It needs another way round.",
    )
