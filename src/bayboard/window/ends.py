"""The ends of a measure between two: what a pointer picks, and where that is as stand-ins move."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

import shapely

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.model.layout import Point
from bayboard.rules.scene import Scene
from bayboard.window.picking import pieces_at

CORNERS = 64  # an outline with more points than this is round: only its edge is picked


@dataclass(frozen=True, slots=True)
class End:
    """An end of a measure: a spot on the wall in mm, or one on a stand-in, in its frame, with which it goes.

    `at` None is the stand-in as a whole: the measure ends at its nearest point.
    """

    at: Point | None
    piece: str | None = None


def spot_of(scene: Scene, end: End) -> Point | None:
    """Return where an end is now, None for a whole stand-in or one that is gone."""
    if end.at is None or end.piece is None:
        return end.at
    placed = scene.placed.get(end.piece)
    if placed is None:
        return None
    x, y = outlines.placed([end.at], placed.at, placed.gear.turn)[0]
    return float(x), float(y)


def line_between(scene: Scene, a: End, b: End) -> tuple[Point, Point] | None:
    """Return the measure's two points, None where an end is gone or a stand-in is measured to itself."""
    start, end = _shape(scene, a), _shape(scene, b)
    if start is None or end is None or (a.at is b.at is None and a.piece == b.piece):
        return None
    line = shapely.get_coordinates(shapely.shortest_line(start, end))
    return (float(line[0][0]), float(line[0][1])), (float(line[-1][0]), float(line[-1][1]))


def _shape(scene: Scene, end: End) -> shapely.Geometry | None:
    if end.at is None:
        placed = scene.placed.get(end.piece or "")
        return None if placed is None else placed.polygon
    spot = spot_of(scene, end)
    return None if spot is None else shapely.Point(spot)


def end_at(scene: Scene, at: Point, reach: float, other: End | None = None) -> End:
    """Return what is picked at a spot: a corner or middle within `reach` mm, an edge, or what lies there.

    On an edge the point straight across from the `other` end is taken where that is near.
    """
    near = [(name, ring) for name, ring in _rings(scene) if _close(ring, at, reach)]
    corner = _corner(scene, near, at, reach)
    if corner is not None:
        return corner
    edge = _edge(scene, near, at, reach, None if other is None else spot_of(scene, other))
    if edge is not None:
        return edge
    under = pieces_at(scene, at)
    return End(None, under[0]) if under else End(at)


def _rings(scene: Scene) -> Iterator[tuple[str | None, Points]]:
    """Yield every outline one may measure to, those of stand-ins with their names, the uppermost first."""
    for name, piece in reversed(scene.placed.items()):
        yield name, piece.ring
    for shape in scene.boards.values():
        for ring in (shape.polygon.exterior, *shape.polygon.interiors):
            yield None, shapely.get_coordinates(ring)[:-1]
    bay = scene.layout.bay
    things = [landing.outline for landing in bay.landings] + [stay.outline for stay in bay.stays]
    things += [vent.outline for vent in bay.vents] + [region.outline for region in bay.no_drill]
    for outline in (bay.wall, *things):
        if outline:
            yield None, outlines.turned(outline, 0.0)


def _close(ring: Points, at: Point, reach: float) -> bool:
    x0, y0, x1, y1 = outlines.box(ring)
    return x0 - reach <= at[0] <= x1 + reach and y0 - reach <= at[1] <= y1 + reach


def _on(scene: Scene, name: str | None, at: Point) -> End:
    """Return the end at a spot, in the frame of the stand-in it belongs to."""
    if name is None:
        return End(at)
    placed = scene.placed[name]
    x, y = outlines.turned([(at[0] - placed.at[0], at[1] - placed.at[1])], -placed.gear.turn)[0]
    return End((float(x), float(y)), name)


def _corner(scene: Scene, near: Iterable[tuple[str | None, Points]], at: Point, reach: float) -> End | None:
    found: list[tuple[float, End]] = []
    for name, ring in near:
        spots = [(float(x), float(y)) for x, y in ring] if len(ring) <= CORNERS else []
        spots += [scene.placed[name].at] if name is not None else []
        found += [(hypot(x - at[0], y - at[1]), _on(scene, name, (x, y))) for x, y in spots]
    best = min(found, key=lambda one: one[0], default=None)
    return best[1] if best is not None and best[0] <= reach else None


def _edge(
    scene: Scene, near: Iterable[tuple[str | None, Points]], at: Point, reach: float, other: Point | None
) -> End | None:
    best: tuple[float, str | None, shapely.LinearRing] | None = None
    spot = shapely.Point(at)
    for name, ring in near:
        line = shapely.LinearRing(ring)
        far = line.distance(spot)
        if far <= reach and (best is None or far < best[0]):
            best = (far, name, line)
    if best is None:
        return None
    _, name, line = best
    x, y = shapely.get_coordinates(line.interpolate(line.project(spot)))[0]
    touched = (float(x), float(y))
    return _on(scene, name, _across(line, touched, other, reach))


def _across(line: shapely.LinearRing, touched: Point, other: Point | None, reach: float) -> Point:
    """Return the point of the touched side straight across from the other end where that is near."""
    if other is None:
        return touched
    ring = shapely.get_coordinates(line)
    sides = shapely.linestrings([[a, b] for a, b in pairwise(ring)])
    side = sides[int(shapely.distance(sides, shapely.Point(touched)).argmin())]
    x, y = shapely.get_coordinates(side.interpolate(side.project(shapely.Point(other))))[0]
    return (float(x), float(y)) if hypot(x - touched[0], y - touched[1]) <= reach else touched
