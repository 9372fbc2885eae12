"""What lies under a pointer, what a box touches, and in which order a reader walks the stand-ins."""

from collections.abc import Iterable

import shapely

from bayboard.model.layout import Point
from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene

Box = tuple[float, float, float, float]  # x0, y0, x1, y1 in mm


def pieces_at(scene: Scene, at: Point, slack: float = 0.0) -> tuple[str, ...]:
    """Return the ids of the stand-ins within `slack` mm of a point, the uppermost first."""
    spot = shapely.Point(at)
    return tuple(
        piece.id
        for piece in reversed(scene.placed.values())
        if _near(piece.box, at, slack) and piece.polygon.distance(spot) <= slack
    )


FELT = 40.0  # px that even the smallest stand-in is wide and high, as felt


def felt_at(scene: Scene, at: Point, px_per_mm: float) -> tuple[str, ...]:
    """Return the stand-ins under a pointer; where there is none, the nearest of those that are felt there."""
    found = pieces_at(scene, at)
    if found:
        return found
    spot, felt = shapely.Point(at), FELT / px_per_mm
    near = [p for p in scene.placed.values() if _near(p.box, at, 0.0, felt)]
    return tuple(p.id for p in sorted(near, key=lambda p: p.polygon.distance(spot))[:1])


def _near(box: Box, at: Point, slack: float, least: float = 0.0) -> bool:
    """Return whether a point is within `slack` mm of a box, taken as `least` mm wide and high at least."""
    x0, y0, x1, y1 = box
    across, up = max(slack, (least - x1 + x0) / 2), max(slack, (least - y1 + y0) / 2)
    return x0 - across <= at[0] <= x1 + across and y0 - up <= at[1] <= y1 + up


def under(found: tuple[str, ...], selected: Iterable[str]) -> str | None:
    """Return the piece to select of those under the pointer: the one below the selected one, round about."""
    for i, name in enumerate(found):
        if name in set(selected):
            return found[(i + 1) % len(found)]
    return found[0] if found else None


def touched(scene: Scene, box: Box) -> tuple[str, ...]:
    """Return the ids of the stand-ins that a box touches, in reading order."""
    frame = shapely.box(*box)
    hit = {piece.id for piece in scene.placed.values() if piece.polygon.intersects(frame)}
    return tuple(name for name in reading_order(scene) if name in hit)


def reading_order(scene: Scene) -> tuple[str, ...]:
    """Return the ids of the placed stand-ins row by row from the top, each row from the left.

    A piece belongs to a row when its middle is not below the foot of the row's highest piece.
    """
    waiting = sorted(scene.placed.values(), key=lambda p: (-p.box[3], p.box[0], p.id))
    order: list[str] = []
    while waiting:
        foot = waiting[0].box[1]
        row = [p for p in waiting if (p.box[1] + p.box[3]) / 2 >= foot]
        order += [p.id for p in sorted(row, key=lambda p: (p.box[0], -p.box[3], p.id))]
        waiting = [p for p in waiting if p not in row]
    return tuple(order)


def box_round(pieces: Iterable[Placed]) -> Box | None:
    """Return the box round stand-ins, None where there are none."""
    boxes = [piece.box for piece in pieces]
    if not boxes:
        return None
    x0, y0, x1, y1 = zip(*boxes, strict=True)
    return min(x0), min(y0), max(x1), max(y1)
