"""What is drilled already is planned somewhere else now.

Why: a hole cannot follow a plan; the stand-in or the board will not go on as drawn.
Quiet: nothing of it was drilled, or it stands where it was drilled.
Speaks: it has moved or turned away from a hole that was made, in the board or in the metal; gives how far.
"""

from collections.abc import Iterator
from math import dist
from typing import NamedTuple

import numpy as np

from bayboard.edits.put_back import is_back
from bayboard.geometry.crowd import HAIR
from bayboard.mechanics.off_holes import off_holes, off_turn
from bayboard.model.drilled import listed_screws
from bayboard.model.layout import Fixing, Point
from bayboard.model.placed import Placed
from bayboard.model.rounding import rounded
from bayboard.rules.finding import Finding, Said
from bayboard.rules.levels import MUST, Key, Levels
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed
from bayboard.rules.words import amount_and_need
from bayboard.tables.limits import fixed
from bayboard.units.angle import show_two_angles

RULE = "drilled"
WIDE = False


class _Off(NamedTuple):
    """How far something is planned from a hole that was made: mm, the planned place, and which hole."""

    far: float
    at: Point
    hole: str = ""


def look(scene: Scene, about: frozenset[str] | None = None) -> Iterator[Said]:
    """Yield a finding for each stand-in and fixing that is not where it was drilled."""
    for id_, placed in scene.placed.items():
        if about is None or id_ in about:
            screws = listed_screws(scene.layout, placed.gear)
            if screws:
                yield from guessed(RULE, placed, ("screws",))
            yield from _of_gear(scene, placed, screws)
    for fixing in scene.layout.fixings:
        if about is None or fixing.id in about:
            yield from _of_fixing(scene, fixing)


def at_places(scene: Scene, places: Places, _key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad it is with a stand-in at many places, as `places.AtPlaces` tells."""
    off = off_holes(scene.layout, places.model, places.at) > fixed("drilled_off") + HAIR
    off |= off_turn(places.model.gear) > fixed("drilled_turn") + HAIR
    return {(places.id,): MUST * off.astype(np.int8)}


def _of_gear(scene: Scene, placed: Placed, screws: dict[int, Point]) -> Iterator[Finding]:
    pose = placed.gear.drilled
    offs = [] if pose is None else [_Off(dist(placed.at, pose.at), placed.at)]
    for number, made in screws.items():
        planned = placed.point(placed.card.screws[number - 1].at)
        offs.append(_Off(dist(planned, made), planned, f"{placed.id}#{number}"))
    worst = max(offs, key=lambda off: rounded(off.far), default=None)
    if worst is not None and worst.far > fixed("drilled_off") + HAIR:
        amount = _amount(scene, worst)
        if is_back(scene.layout, placed.id):
            rest = f"{worst.hole or placed.id} is still {amount} off"
            says = f"{placed.id} is back on its holes as well as it fits them; {rest}. Plan new holes."
            yield _finding(placed.id, worst, "mm", says)
            return
        moved = f"has moved {amount}" + (f" at {worst.hole}" if worst.hole else "")
        yield _finding(placed.id, worst, "mm", _moved_words(placed.id, moved, "new holes"))
        return
    turned = off_turn(placed.gear)
    if turned > fixed("drilled_turn") + HAIR:
        off = _Off(turned, placed.at)
        words = f"has turned {show_two_angles(turned, fixed('drilled_turn'))[0]}"
        yield _finding(placed.id, off, "deg", _moved_words(placed.id, words, "new holes"))


def _amount(scene: Scene, off: _Off) -> str:
    """Return how far off it is; a hair more than allowed does not read like what is allowed."""
    return amount_and_need(off.far, fixed("drilled_off"), scene.layout.units)[0]


def _of_fixing(scene: Scene, fixing: Fixing) -> Iterator[Finding]:
    made = {"": fixing.drilled, " from its hole in the metal": fixing.metal}
    offs = [_Off(dist(fixing.at, at), fixing.at, which) for which, at in made.items() if at is not None]
    worst = max(offs, key=lambda off: rounded(off.far), default=None)
    if worst is not None and worst.far > fixed("drilled_off") + HAIR:
        amount = _amount(scene, worst)
        says = _moved_words(fixing.id, f"has moved {amount}{worst.hole}", "a new hole")
        if is_back(scene.layout, fixing.id):
            says = f"{fixing.id} is back on its hole, {amount}{worst.hole}. Plan a new hole."
        yield _finding(fixing.id, worst, "mm", says)


def _moved_words(name: str, moved: str, other: str) -> str:
    return f"{name} is already drilled and {moved}. Put {name} back, or plan {other}."


def _finding(name: str, off: _Off, unit: str, says: str) -> Finding:
    return Finding(
        rule=RULE,
        severity="must",
        subjects=(name,),
        measure=off.far,
        limit=fixed("drilled_off" if unit == "mm" else "drilled_turn"),
        unit=unit,
        at=off.at,
        says=says,
    )
