"""A hole in metal behind which something must not be hit.

Why: behind it lie wires, pipes, tanks or airbags, and a drill that breaks through does not stop.
Quiet: well away from every region, or nothing is drilled because the thread or stud is there already.
Speaks: the centre is inside, or within the margin of the rim; gives how deep inside it is, negative outside.
"""

from collections.abc import Iterator

import numpy as np

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR
from bayboard.geometry.rims import depths
from bayboard.model.layout import Fixing, NoDrill
from bayboard.rules.finding import Finding, Said
from bayboard.rules.scene import Scene
from bayboard.rules.words import amount, amount_and_need
from bayboard.tables.limits import limit

RULE = "no-drill"
WIDE = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each drilled fixing in or near a no-drill region."""
    regions = scene.layout.bay.no_drill
    drilled = [
        f
        for f in scene.layout.fixings
        if f.into in ("insert", "through") and (about is None or f.id in about)
    ]
    if not drilled:
        return
    deep = depths(np.array([f.at for f in drilled]), [outlines.polygon(region.outline) for region in regions])
    margin = limit(scene.layout, "no_drill_margin")
    for i, j in np.argwhere(deep > HAIR - margin):
        yield _finding(scene, drilled[i], regions[j], float(deep[i, j]), margin)


def _finding(scene: Scene, fixing: Fixing, region: NoDrill, deep: float, margin: float) -> Finding:
    inside = deep > HAIR
    name = f"{region.name} ({region.id})"
    if inside:
        shown = amount(deep, scene.layout.units)
        says = f"{fixing.id} drills {shown} inside the no-drill region {name}. Nothing may be drilled there."
    else:
        shown, wanted = amount_and_need(-deep, margin, scene.layout.units)
        where = f"{shown} beside" if deep < -HAIR else "on the rim of"
        says = f"{fixing.id} drills {where} the no-drill region {name}. {wanted} beside it is better."
    return Finding(
        rule=RULE,
        severity="must" if inside else "should",
        subjects=(fixing.id, region.id),
        measure=deep,
        limit=0.0 if inside else margin,
        unit="mm",
        at=fixing.at,
        says=says,
    )
