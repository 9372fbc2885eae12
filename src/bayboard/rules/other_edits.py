"""Single edits that may put right what no move can: turned, swapped, lifted, another standoff, put back.

They only seem to: each is looked at alone here, and the whole check has the last word.
"""

from collections.abc import Iterator
from itertools import product
from math import ceil, floor

from bayboard.edits.edit import Edit
from bayboard.edits.put_back import PutBack, is_back
from bayboard.edits.set_gear_lift import SetGearLift
from bayboard.edits.set_standoff import SetStandoff
from bayboard.edits.swap_gear import SwapGear
from bayboard.edits.turn_gear import TurnGear
from bayboard.geometry.crowd import HAIR
from bayboard.model.drilled import is_drilled
from bayboard.model.placed import Placed
from bayboard.rules.finding import Finding
from bayboard.rules.levels import head
from bayboard.rules.scene import Scene
from bayboard.rules.standoffs import curing_standoff
from bayboard.tables.nudge import LIFT_MOST, QUARTER, TAPE_STEP


def other_edits(scene: Scene, finding: Finding, movers: list[Placed]) -> Iterator[Iterator[Edit]]:
    """Yield kinds of edits to try for a finding, each kind the likeliest first.

    `movers` are the stand-ins whose place may change the finding.
    """
    about = [placed for placed in movers if placed.id in _heads(finding)]
    yield _back(scene, finding)
    yield (TurnGear((placed.id,), by) for placed, by in product(movers, (QUARTER, -QUARTER)))
    yield _standoffs(scene, finding)
    yield _swaps(scene, about)
    yield (SetGearLift(placed.id, lift) for placed in about for lift in _lifts(scene, placed))


def _heads(finding: Finding) -> frozenset[str]:
    return frozenset(head(subject) for subject in finding.subjects)


def _back(scene: Scene, finding: Finding) -> Iterator[Edit]:
    for name in finding.subjects if finding.rule == "drilled" else ():
        if is_drilled(scene.layout, name) and not is_back(scene.layout, name):
            yield PutBack(name)


def _swaps(scene: Scene, about: list[Placed]) -> Iterator[Edit]:
    """Yield swaps of what the finding is about with all that is loose, each pair once."""
    asked = {placed.id for placed in about}
    loose = [placed.id for placed in scene.placed.values() if not placed.gear.taped]
    for n, first in enumerate(loose):
        for second in loose[n + 1 :]:
            if first in asked or second in asked:
                yield SwapGear(first, second)


def _lifts(scene: Scene, placed: Placed) -> Iterator[float]:
    """Yield other lifts of a stand-in in tape steps, the nearest to its own first."""
    step = TAPE_STEP[scene.layout.units]
    steps = (n * step for n in range(floor(LIFT_MOST / step) + 1))
    other = [lift for lift in steps if abs(lift - placed.gear.lift) > HAIR]
    yield from sorted(other, key=lambda lift: abs(lift - placed.gear.lift))


def _standoffs(scene: Scene, finding: Finding) -> Iterator[Edit]:
    """Yield the least standoff that leaves room behind the board, or the largest that leaves it before."""
    step = TAPE_STEP[scene.layout.units]
    least = curing_standoff(scene, finding)
    if least is not None:
        yield SetStandoff(finding.subjects[1], ceil(least / step - HAIR) * step)
    board = _board_under(scene, finding)
    if board is not None:
        now = scene.boards[board].board.standoff
        for n in range(ceil(now / step - HAIR) - 1, -1, -1):
            yield SetStandoff(board, n * step)


def _board_under(scene: Scene, finding: Finding) -> str | None:
    """Return the board that a seat comes too near to, by its gear or leads; None for other findings."""
    seats = {seat.id for seat in scene.layout.bay.seats}
    thing, other = (*finding.subjects, "")[:2]
    if other not in seats:
        return None
    name = head(thing)
    if name in scene.placed:
        return scene.placed[name].board.id
    return scene.routes[name].board if name in scene.routes else None
