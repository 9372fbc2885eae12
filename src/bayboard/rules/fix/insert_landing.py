"""An insert or washer does not sit whole on a landing.

Why: a flange that hangs over the edge of its metal tilts, spins and pulls out.
Quiet: the flange, or washer, and a margin round it lie on one landing.
Speaks: the centre is too near the edge, or on no landing; gives its distance from the edge, negative off
the metal.
"""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from bayboard.geometry import outline as outlines
from bayboard.geometry.crowd import HAIR
from bayboard.geometry.rims import depths
from bayboard.model.layout import Fixing
from bayboard.rules.finding import Finding, Said, Unchecked
from bayboard.rules.scene import Scene
from bayboard.rules.words import amount, amount_and_need
from bayboard.tables.limits import limit
from bayboard.tables.reference import insert, thread

RULE = "insert-landing"
WIDE = False


class _Seat(NamedTuple):
    """What has to lie flat on the metal: its name and diameter in mm, and whether that is a guess."""

    what: str
    across: float
    about: bool = False


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each fixing whose flange or washer does not sit whole on a landing."""
    layout, landings = scene.layout, scene.layout.bay.landings
    fixings = [f for f in layout.fixings if about is None or f.id in about]
    if not fixings:
        return
    shapes = [outlines.polygon(landing.outline) for landing in landings]
    deep = depths(np.array([f.at for f in fixings]), shapes)
    for fixing, row in zip(fixings, deep, strict=True):
        seat = _seat(scene, fixing)
        if not landings:
            yield _unlooked(fixing, f"Nobody measured the metal behind {fixing.id}.")
        elif seat is None:
            yield _unlooked(
                fixing, f"No table has {fixing.thread}, so nobody knows what {fixing.id} rests on."
            )
        else:
            need = seat.across / 2.0 + limit(layout, "insert_margin")
            if row.max() < need - HAIR:
                yield _finding(scene, fixing, seat, float(row.max()), need)


def _unlooked(fixing: Fixing, says: str) -> Unchecked:
    return Unchecked(rule=RULE, subjects=(fixing.id,), says=says)


def _seat(scene: Scene, fixing: Fixing) -> _Seat | None:
    """Return what rests on the metal, None when the tables do not know the thread."""
    known = thread(fixing.thread)
    if fixing.into != "insert":
        return _Seat("washer", known.large_washer_od) if known else None
    nut = insert(fixing.thread)
    if nut is not None and nut.flange_od is not None:
        return _Seat("insert flange", nut.flange_od)
    return (
        _Seat("insert flange", limit(scene.layout, "flange_d") * known.major_d, about=True) if known else None
    )


def _finding(scene: Scene, fixing: Fixing, seat: _Seat, deep: float, need: float) -> Finding:
    units = scene.layout.units
    shown, wanted = amount_and_need(deep, need, units)
    roughly = "about " if seat.about else ""
    if deep < -HAIR:
        fact = f"{fixing.id} is on no landing: the nearest is {amount(-deep, units)} away."
    elif deep > HAIR:
        fact = f"{fixing.id} is {shown} inside the edge of its landing."
    else:
        fact = f"{fixing.id} is on the edge of its landing."
    return Finding(
        rule=RULE,
        severity="must",
        subjects=(fixing.id,),
        measure=deep,
        limit=need,
        unit="mm",
        at=fixing.at,
        says=f"{fact} Its {seat.what} needs {roughly}{wanted} to sit square.",
    )
