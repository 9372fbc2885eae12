"""Measure cures: all that the grid finds, how much of what any place cures, and how long one nudge takes."""

import random
import statistics
import time
from collections.abc import Iterator
from copy import copy
from itertools import count, islice

import numpy as np
from tests.long.figures import keep
from tests.plain.random_layouts import random_document
from tests.rules.nudges_by_trying import levels, nudges

from bayboard.edits.move_gear import MoveGear
from bayboard.model.layout import Layout
from bayboard.model.read import from_document
from bayboard.rules.check import Checker
from bayboard.rules.cures import Curer
from bayboard.rules.judge import Judge, Wanted
from bayboard.rules.levels import named
from bayboard.rules.nudge_grid import moves
from bayboard.rules.nudging import Nudger

FIGURES = ("nudges-of-the-grid", "nudges-of-any-place", "nudge-time", "nudges-wrong")
ROOMS = ("rules", "geometry", "routing", "model", "edits", "mechanics", "tables")
TRIED, LAYOUTS, SEED = 4, 200, 5000
LOOSE = 8  # stand-ins that may move in a layout of which every place is tried: each costs a thousand checks
PLACES, FAR = 400, 80.0


def main() -> None:
    """Measure and keep all four figures."""
    _by_trying()
    _of_any_place()


def _by_trying() -> None:
    """Try every place of the grid on small layouts; the nudge must be the one that trying finds."""
    missed, found = [], 0
    for seed, layout in islice(_small(), TRIED):
        checker, curer = Checker(layout), Curer(layout)
        tried = nudges(layout, moves(layout.units), lambda after, known=checker: copy(known).move(after))
        ours = {named(f): curer.nudge(f) for f in checker.now.findings}
        ours = {name: (nudge.gear, nudge.by) for name, nudge in ours.items() if nudge}
        found += len(tried)
        missed += [(seed, name) for name in tried.keys() | ours.keys() if tried.get(name) != ours.get(name)]
        print(seed, len(tried), "found by trying", missed, flush=True)
    keep(
        FIGURES[0],
        ROOMS,
        baseline=f"{found} nudges found by the check at every place of the grid, {TRIED} layouts "
        f"of at most {LOOSE} stand-ins that may move",
        goal=0,
        value=len(missed),
        count=found,
        seed=SEED,
    )


def _small() -> Iterator[tuple[int, Layout]]:
    """Yield the layouts with few stand-ins that may move, from the first seed on."""
    for seed in count(SEED):
        layout = from_document(random_document(seed))
        if sum(gear.at is not None and not gear.taped for gear in layout.gear) <= LOOSE:
            yield seed, layout


def _any_places(dice: random.Random) -> np.ndarray:
    """Return moves to anywhere within reach, by length."""
    far, way = [np.array([dice.random() for _ in range(PLACES)]) for _ in range(2)]
    far, way = FAR * np.sqrt(far), 2 * np.pi * way
    by = np.round(np.column_stack([far * np.cos(way), far * np.sin(way)]), 6)
    return by[np.argsort(np.hypot(*by.T))]


def _of_any_place() -> None:
    cured, curable, ratios, wrong = 0, 0, [], []
    for seed in range(SEED, SEED + LAYOUTS):
        layout = from_document(random_document(seed))
        check_seconds = min(_seconds(lambda: Checker(layout)) for _ in range(2))  # noqa: B023
        checker = Checker(layout)
        judge = Judge(checker)
        anywhere = Nudger(judge, _any_places(random.Random(seed)))
        for finding in checker.now.findings:
            begin = time.perf_counter()
            nudge = Curer(layout, checker).nudge(finding)
            ratios.append((time.perf_counter() - begin) / check_seconds)
            if nudge is not None and not _holds(layout, finding, nudge):
                wrong.append((seed, finding.rule, finding.subjects))
            cured += nudge is not None
            curable += nudge is not None or anywhere.shortest(Wanted(named(finding))) is not None
        print(seed, cured, "of", curable, "p50", round(statistics.median(ratios), 2), wrong, flush=True)
    _keep(cured, curable, ratios, wrong)


def _keep(cured: int, curable: int, ratios: list[float], wrong: list[object]) -> None:
    keep(
        FIGURES[1],
        ROOMS,
        baseline=f"findings that the grid or one of {PLACES} places within 80 mm cures; share missed",
        goal=0.2,
        value=round(1 - cured / curable, 4),
        count=curable,
        seed=SEED,
    )
    keep(
        FIGURES[2],
        ROOMS,
        baseline="one full check of the same layout, p50 over every finding; "
        f"p90 {statistics.quantiles(ratios, n=10)[-1]:.1f}",
        goal=3.0,
        value=round(statistics.median(ratios), 3),
        spread=[round(min(ratios), 3), round(max(ratios), 3)],
        count=len(ratios),
        seed=SEED,
    )
    keep(
        FIGURES[3],
        ROOMS,
        baseline="nudges after which a fresh check still has the finding, or a new must",
        goal=0,
        value=len(wrong),
        count=cured,
        seed=SEED,
    )


def _holds(layout, finding, nudge) -> bool:
    before, after = levels(layout), levels(MoveGear((nudge.gear,), *nudge.by).apply(layout))
    new = [name for name, level in after.items() if level == 3 and before.get(name) != 3]
    return named(finding) not in after and not new


def _seconds(act) -> float:
    begin = time.perf_counter()
    act()
    return time.perf_counter() - begin


if __name__ == "__main__":
    main()
