"""A drag step: what the rules cost while one stand-in moves, against the plain recheck of the whole layout.

Both see the same layouts: 40 stand-ins and 120 leads, and 100 with 300.  The plain recheck is given the
routes; the step finds its own.
Sight is measured apart, on the same bay without leads.
"""

import random
import statistics
import time
from typing import Any

import figures
import msgspec
from tests.bays import bay
from tests.plain.recheck import RULES as PLAIN
from tests.plain.recheck import recheck

from bayboard.model.layout import Layout
from bayboard.model.read import from_document
from bayboard.model.write import write
from bayboard.routing.route import routes
from bayboard.rules import RULES
from bayboard.rules.check import Checker, check

FIGURES = ("drag step at 40", "sight after a move at 40", "drag step at 100", "sight after a move at 100")
ROOMS = ("geometry", "mechanics", "model/placed.py", "routing", "rules")
SIGHT_ROOMS = (
    "geometry/outline.py",
    "geometry/prism.py",
    "geometry/sight.py",
    "geometry/solids.py",
    "model/placed.py",
    "rules/arrange/sight.py",
    "rules/check.py",
    "rules/looking.py",
    "rules/scene.py",
)
PIECES, PAIRS, STEPS, SEED = 40, 5, 40, 7
MANY = 100  # one plain recheck is all that time allows
RUNS = 3  # a p95 goal takes the best of three; 15 pairs in all
ALL_BUT_SIGHT = tuple(rule for rule in RULES if rule.RULE != "sight")
SIGHT = tuple(rule for rule in RULES if rule.RULE == "sight")


def main() -> None:
    """Measure the four figures and keep them."""
    measure_both(PIECES, 8, 1 / 40, RUNS, PAIRS)
    measure_both(MANY, 12, 1 / 120, 1, 1)


def measure_both(pieces: int, across: int, goal: float, runs: int, pairs: int) -> None:
    """Keep the drag step of a bay with so many stand-ins, and its sight."""
    start = from_document(bay(pieces, SEED, across=across))
    known = [rule.RULE for rule in ALL_BUT_SIGHT if rule.RULE in PLAIN]
    name, baseline = f"drag step at {pieces}", "plain recheck without sight"
    measure(name, start, ALL_BUT_SIGHT, known, baseline, goal, ROOMS, runs, pairs)
    name, bare = f"sight after a move at {pieces}", msgspec.structs.replace(start, leads=())
    measure(name, bare, SIGHT, ["sight"], "plain sight of all", 1 / 250, SIGHT_ROOMS, runs, pairs)


def measure(
    name: str,
    start: Layout,
    rules: Any,
    plain: list[str],
    baseline: str,
    goal: float,
    rooms: Any,
    runs: int,
    pairs: int,
) -> None:
    """Keep p95 of the steps over the median of the plain rechecks, the best of the runs."""
    done = [_run(start, rules, plain, SEED + n, pairs) for n in range(runs)]
    best = min(done, key=lambda run: run["value"])
    if pairs > 1:
        parts = {rule: round(_plain_seconds(start, [rule]), 3) for rule in plain}
        print(f"plain parts in s: {parts}", flush=True)
    values = [run["value"] for run in done]
    figures.keep(
        name,
        rooms,
        baseline=baseline,
        goal=goal,
        value=best["value"],
        median=best["median"],
        spread=[min(values), max(values)],
        baseline_spread=best["baseline_spread"],
        count=runs * pairs * STEPS,
        seed=SEED,
    )


def _run(start: Layout, rules: Any, plain: list[str], seed: int, pairs: int) -> dict[str, Any]:
    dice, layout, checker = random.Random(seed), start, Checker(start, rules)
    steps, wholes = [], []
    for _ in range(pairs):
        for _ in range(STEPS):
            layout = nudged(layout, dice)
            steps.append(_seconds(lambda: checker.move(layout)))  # noqa: B023
        wholes.append(_plain_seconds(layout, plain))
        fresh = check(layout, rules)
        assert (checker.now.findings, checker.now.unchecked) == (fresh.findings, fresh.unchecked)
    whole = statistics.median(wholes)
    return {
        "value": round(sorted(steps)[int(0.95 * len(steps))] / whole, 5),
        "median": round(statistics.median(steps) / whole, 5),
        "baseline_spread": round(max(wholes) / min(wholes), 2),
    }


def nudged(layout: Layout, dice: random.Random) -> Layout:
    """Return the layout with one stand-in a few millimetres farther."""
    n = dice.randrange(len(layout.gear))
    piece = layout.gear[n]
    assert piece.at is not None
    at = (piece.at[0] + dice.uniform(-6, 6), piece.at[1] + dice.uniform(-6, 6))
    moved = msgspec.structs.replace(piece, at=at)
    return msgspec.structs.replace(layout, gear=(*layout.gear[:n], moved, *layout.gear[n + 1 :]))


def _plain_seconds(layout: Layout, rules: list[str]) -> float:
    """Return how long the plain recheck takes once it has the document and the routes."""
    document = msgspec.json.decode(write(layout))
    paths = {name: [tuple(p) for p in route.points.tolist()] for name, route in routes(layout).items()}
    return _seconds(lambda: recheck(document, paths, tuple(rules)))


def _seconds(act: Any) -> float:
    begin = time.perf_counter()
    act()
    return time.perf_counter() - begin


if __name__ == "__main__":
    main()
