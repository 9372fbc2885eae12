"""Bringing a moving stand-in level with its neighbours, its board and the landings."""

from collections.abc import Iterable, Sequence, Set
from dataclasses import dataclass

from bayboard.geometry import outline as outlines
from bayboard.rules.scene import Scene
from bayboard.window.draw.show import Snap
from bayboard.window.picking import Box

REACH = 8.0  # px within which things are drawn level


@dataclass(frozen=True, slots=True)
class Level:
    """A line to be level with: `at` mm across it, `of` which part meets it (0 low, 1 middle, 2 high).

    `span` is the stretch along the line that its owner takes.
    """

    at: float
    of: int
    span: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Levels:
    """All lines of a drag: upright ones (at an x) and flat ones (at a y)."""

    upright: tuple[Level, ...]
    flat: tuple[Level, ...]


_WORDS_UPRIGHT = ("left edges in line", "middles in line", "right edges in line")
_WORDS_FLAT = ("feet level", "middles level", "tops level")


def levels(scene: Scene, moving: Set[str]) -> Levels:
    """Return the lines that what moves can be brought level with."""
    boxes = [piece.box for name, piece in scene.placed.items() if name not in moving]
    boxes += [outlines.box(shape.board.outline) for shape in scene.boards.values()]
    boxes += [outlines.box(landing.outline) for landing in scene.layout.bay.landings]
    upright = [level for x0, y0, x1, y1 in boxes for level in _three(x0, x1, (y0, y1))]
    flat = [level for x0, y0, x1, y1 in boxes for level in _three(y0, y1, (x0, x1))]
    return Levels(tuple(upright), tuple(flat))


def _three(low: float, high: float, span: tuple[float, float]) -> Iterable[Level]:
    return (Level(low, 0, span), Level((low + high) / 2, 1, span), Level(high, 2, span))


def snapped(box: Box, lines: Levels, reach: float) -> tuple[float, float, tuple[Snap, ...]]:
    """Return how far a box must still go (dx, dy) to be level, and the lines to show: at most two.

    `reach` in mm; nothing within it leaves the box where it is.
    """
    x0, y0, x1, y1 = box
    across, up = _nearest(x0, x1, lines.upright, reach), _nearest(y0, y1, lines.flat, reach)
    dx, dy = across[0] if across else 0.0, up[0] if up else 0.0
    shown = []
    if across:
        x, low, high = across[1].at, *_stretch(across[1].span, (y0 + dy, y1 + dy))
        shown.append(Snap((x, low), (x, high), _WORDS_UPRIGHT[across[1].of]))
    if up:
        y, low, high = up[1].at, *_stretch(up[1].span, (x0 + dx, x1 + dx))
        shown.append(Snap((low, y), (high, y), _WORDS_FLAT[up[1].of]))
    return dx, dy, tuple(shown)


def _nearest(low: float, high: float, lines: Sequence[Level], reach: float) -> tuple[float, Level] | None:
    mine = (low, (low + high) / 2, high)
    best: tuple[float, Level] | None = None
    for line in lines:
        off = line.at - mine[line.of]
        if abs(off) <= reach and (best is None or abs(off) < abs(best[0])):
            best = (off, line)
    return best


def _stretch(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    return min(a[0], b[0]), max(a[1], b[1])
