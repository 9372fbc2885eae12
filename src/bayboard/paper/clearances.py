"""How near the seams of a template come to its holes."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from bayboard.model.layout import Point
from bayboard.paper.face import Face
from bayboard.paper.grid import CLEAR
from bayboard.paper.tiles import Plan, Seam


@dataclass(frozen=True, slots=True)
class Clearance:
    """The distance in mm from a seam to a hole's edge, negative when the seam cuts the hole."""

    seam: Seam
    hole: str
    mm: float

    @property
    def near(self) -> bool:
        """Return whether the hole has to be named on the sheet."""
        return self.mm < CLEAR - 1e-4


def clearances(face: Face, plan: Plan) -> tuple[Clearance, ...]:
    """Return every seam's distance to every hole, nearest first."""
    return tuple(sorted(_all(face, plan), key=lambda c: c.mm))


def _all(face: Face, plan: Plan) -> Iterator[Clearance]:
    for seam in plan.seams:
        for hole in face.holes:
            yield Clearance(seam, hole.id, min(_off(seam, at) for at in hole.discs) - hole.radius)


def _off(seam: Seam, at: Point) -> float:
    """Return a point's distance to a seam, which is level or upright."""
    (ax, ay), (bx, by) = seam.a, seam.b
    dx = max(min(ax, bx) - at[0], 0.0, at[0] - max(ax, bx))
    dy = max(min(ay, by) - at[1], 0.0, at[1] - max(ay, by))
    return hypot(dx, dy)
