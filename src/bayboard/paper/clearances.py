"""How near the seams of a template come to its holes."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from bayboard.paper.face import Face
from bayboard.paper.grid import CLEAR
from bayboard.paper.tiles import Plan, Seam

_SURE = 1e-4  # mm; the solver's own uncertainty


@dataclass(frozen=True, slots=True)
class Near:
    """A hole that a seam comes near: mm from its edge, negative when the seam cuts it."""

    seam: Seam
    hole: str
    mm: float


@dataclass(frozen=True)
class Clearances:
    """The holes to be named, nearest first, and of each sheet how near its seams come to any hole."""

    near: tuple[Near, ...]
    least: dict[int, float]

    def of(self, sheet: int) -> tuple[Near, ...]:
        """Return the holes that a seam of this sheet comes near, nearest first, each once."""
        found: dict[str, Near] = {}
        for near in self.near:
            if sheet in (near.seam.over, near.seam.under):
                found.setdefault(near.hole, near)
        return tuple(found.values())


def clearances(face: Face, plan: Plan) -> Clearances:
    """Return the distances of all seams to all holes."""
    near: list[Near] = []
    least: dict[int, float] = {}
    ids, discs = _discs(face)
    for seam in plan.seams if ids else ():
        off = _off(seam, discs)
        for sheet in (seam.over, seam.under):
            least[sheet] = min(least.get(sheet, np.inf), float(off.min()))
        near += [Near(seam, ids[int(i)], float(off[i])) for i in np.flatnonzero(off < CLEAR - _SURE)]
    return Clearances(tuple(sorted(near, key=lambda n: n.mm)), least)


def _discs(face: Face) -> tuple[Sequence[str], NDArray[np.float64]]:
    """Return the holes that are still to be drilled."""
    discs = [(h.id, x, y, h.radius) for h in face.holes if not h.made for x, y in h.discs]
    return [d[0] for d in discs], np.array([d[1:] for d in discs]).reshape(-1, 3)


def _off(seam: Seam, discs: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the distance from a seam, which is level or upright, to the edge of each disc."""
    (ax, ay), (bx, by) = seam.a, seam.b
    x, y, r = discs.T
    dx = np.maximum(np.maximum(min(ax, bx) - x, x - max(ax, bx)), 0.0)
    dy = np.maximum(np.maximum(min(ay, by) - y, y - max(ay, by)), 0.0)
    return np.asarray(np.hypot(dx, dy) - r)
