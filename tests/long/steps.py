"""Random edits of every kind: after each, the check that goes along says what a fresh check says."""

from random import Random

import figures
from tests.any_edit import MAKERS, any_edit
from tests.bays import bay

from bayboard.edits.move_gear import MoveGear
from bayboard.model.layout import Layout
from bayboard.model.read import from_document
from bayboard.rules.check import Checker, check

FIGURES = ("steps that differ from a fresh check",)
ROOMS = ("rules", "geometry", "routing", "model", "mechanics", "edits", "tables")
WALKS, STEPS, SEED = 40, 50, 900
KINDS = sorted(MAKERS, key=lambda kind: kind.__name__)


def main() -> None:
    """Walk, and count the steps after which the two differ; a walk begins anew where one does."""
    differing = 0
    for walk in range(WALKS):
        start = from_document(bay(4 + walk % 6, SEED + walk, across=3))
        differing += _walked(start, Random(SEED + walk))
        print(f"walk {walk}: {differing} differ", flush=True)
    figures.keep(
        FIGURES[0],
        ROOMS,
        baseline="steps after which the verdict is not that of a fresh check, some looks left half way",
        goal=0,
        value=differing,
        count=WALKS * STEPS,
        seed=SEED,
    )


def _walked(start: Layout, dice: Random) -> int:
    layout, checker, differing = start, Checker(start), 0
    for _ in range(STEPS):
        if dice.random() < 0.3:  # begun, and left for another
            checker.begin(any_edit(dice, layout, checker.now, MoveGear))
            for _ in range(dice.randrange(13)):
                checker.go_on(0.0)
        kind = MoveGear if dice.random() < 0.5 else dice.choice(KINDS)
        layout = any_edit(dice, layout, checker.now, kind)
        now, fresh = checker.move(layout), check(layout)
        if (now.findings, now.unchecked) != (fresh.findings, fresh.unchecked):
            differing += 1
            checker = Checker(layout)
    return differing


if __name__ == "__main__":
    main()
