"""Frames of a drag: with all rules live, against the same drawing with none, and what the rules take of one.

Two windows show the same bay of 40 stand-ins; the same hand drags the same piece in both, frame by frame in
turn.  In one of them nothing is judged: it keeps the first verdict and paints it.  Processor time of the
window's thread, the collector frozen.
"""

import gc
import os
import random
import statistics
import tempfile
import time
from typing import Any

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
_SCRATCH = tempfile.mkdtemp(prefix="bayboard-frames-")
os.environ |= dict.fromkeys(("XDG_DATA_HOME", "XDG_CONFIG_HOME", "BAYBOARD_SHELF"), _SCRATCH)

import figures  # noqa: E402
from PySide6.QtCore import QPointF  # noqa: E402
from tests.bays import bay  # noqa: E402
from tests.window.hands import Hands  # noqa: E402

from bayboard.job.change import Shown  # noqa: E402
from bayboard.job.job import Job  # noqa: E402
from bayboard.job.looking import Looking  # noqa: E402
from bayboard.model.read import from_document  # noqa: E402
from bayboard.rules.check import Checker  # noqa: E402
from bayboard.rules.scene import Scene  # noqa: E402
from bayboard.window.picking import pieces_at  # noqa: E402

FIGURES = ("frames with rules", "slowest frame", "rules' share of a frame")
ROOMS = (
    "geometry",
    "mechanics",
    "model/placed.py",
    "routing",
    "rules",
    "job/looking.py",
    "window/canvas.py",
    "window/draw",
    "window/judging.py",
    "window/place_view.py",
    "window/showing.py",
    "window/wall_view.py",
    "window/workplace.py",
)
PIECES, SEED, FRAMES, RUNS, WARM = 40, 7, 120, 3, 4


class Blind(Looking):
    """Looks once and never again: what is painted moves, and nothing is judged."""

    def __init__(self, layout: Any) -> None:
        super().__init__()
        self.first = Checker(layout)
        self.shown = Shown(layout, self.first.now, self.first.routes, self.first.scene)

    def take_up(self, layout: Any, within: float = 0.0) -> Shown:
        scene = Scene(layout, self.first.scene, self.first.routes)
        scene.routes = scene.carried
        scene.forget_before()
        self.shown = Shown(layout, self.first.now, scene.routes, scene)
        return self.shown

    def go_on(self, within: float = 0.0) -> Shown:
        assert self.shown is not None
        return self.shown


class Timed:
    """Sums the time that the rules take of the frame under way."""

    def __init__(self) -> None:
        self.seconds = 0.0
        for name in ("preview", "judge"):
            setattr(Job, name, self._timed(getattr(Job, name)))

    def _timed(self, act: Any) -> Any:
        def run(*words: Any) -> Any:
            begin = time.thread_time()
            try:
                return act(*words)
            finally:
                self.seconds += time.thread_time() - begin

        return run


def main() -> None:
    """Measure and keep the three figures, the best of three runs."""
    timed = Timed()
    runs = [_run(timed, SEED + n) for n in range(RUNS)]
    for name, key, goal, baseline in (
        (FIGURES[0], "frames", 1.5, "the same frames with no rules, median of pairs"),
        (FIGURES[1], "slowest", 3.0, "the median frame with rules; p99"),
        (FIGURES[2], "share", 1.0, "the median time of painting the same frame; p95 of the rules"),
    ):
        values = [run[key] for run in runs]
        figures.keep(
            name,
            ROOMS,
            baseline=baseline,
            goal=goal,
            value=min(values),
            spread=[min(values), max(values)],
            count=RUNS * FRAMES,
            seed=SEED,
            ms=min(run["ms"] for run in runs),
        )


def _run(timed: Timed, seed: int) -> dict[str, float]:
    """Drag the same piece through both windows, in turn."""
    layout = from_document(bay(PIECES, SEED, chained=True))
    judged, blind = Hands(layout), Hands(layout)
    blind.place.job._looking = Blind(blind.place.job.layout)
    at = _grip(judged)
    for hands in (judged, blind):
        hands.press(hands.px(*at))
    dice = random.Random(seed)
    gc.collect()
    gc.freeze()
    gc.disable()
    ratios, ours, shares, painted = [], [], [], []
    for n in range(FRAMES + WARM):
        to = judged.px(*at) + QPointF(40 * dice.uniform(-1, 1) + 0.7 * n, 25 * dice.uniform(-1, 1))
        timed.seconds = 0.0
        with_rules = _frame(judged, to)
        share = timed.seconds
        without = _frame(blind, to)
        if n >= WARM:
            ratios.append(with_rules / without)
            ours.append(with_rules)
            shares.append(share)
            painted.append(with_rules - share)
    gc.enable()
    for hands in (judged, blind):
        hands.release(to)
        hands.frame.settled = True
        hands.frame.close()
    middle = statistics.median(ours)
    return {
        "frames": round(statistics.median(ratios), 3),
        "slowest": round(sorted(ours)[int(0.99 * len(ours))] / middle, 3),
        "share": round(sorted(shares)[int(0.95 * len(shares))] / statistics.median(painted), 3),
        "ms": round(1000 * middle, 1),
    }


def _frame(hands: Hands, to: QPointF) -> float:
    """Return the seconds from a move of the hand until nothing is left to be done for it."""
    begin = time.thread_time()
    hands.move(to)
    hands.app.processEvents()
    return time.thread_time() - begin


def _grip(hands: Hands) -> tuple[float, float]:
    """Return a place of some stand-in where a press takes hold of it."""
    for gear in reversed(hands.layout.gear):
        for dx in (0, 20, -20, 10, 30, -30):
            at = (gear.at[0] + dx, gear.at[1] + 10)
            spot, under = hands.px(*at), hands.wall.under
            on_mark = under.mark(spot, hands.wall.show_now(), hands.wall._rect()) is not None
            if pieces_at(hands.place.scene, at)[:1] == (gear.id,) and not on_mark and not under.line(spot):
                return at
    raise LookupError("no stand-in can be taken hold of")


if __name__ == "__main__":
    main()
