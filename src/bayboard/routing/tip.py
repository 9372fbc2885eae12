"""How a lead leaves its end: straight out of the plug, then free to turn."""

from dataclasses import dataclass
from math import hypot

import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from bayboard.model.layout import Point
from bayboard.routing.bed import HAIR, Obstacle
from bayboard.routing.ends import End
from bayboard.routing.walls import GRAZE


@dataclass(frozen=True, slots=True)
class Tip:
    """One end of a lead as the search sees it.

    `end` is where it is joined and `turns` where it may first turn: the end of the plug, or the end
    itself when it comes out towards the person or in at an entry.  `own` is the stand-in it belongs to,
    `free` how many mm from `turns` it may still lie in that; `entry` tells an entry, from which a lead
    may come in from off the board.
    """

    end: Point
    turns: Point
    own: str | None
    free: float
    entry: bool


def tip(end: End, own: Obstacle | None) -> Tip:
    """Return the tip of a lead's end; `own` is its stand-in where that can be in the way.

    A plug that ends inside its own stand-in cannot be turned there: the lead goes straight on until it
    is out.
    """
    if end.port is None or end.placed is None:
        return Tip(end.point, end.point, None, 0.0, entry=True)
    name, plug = end.placed.id, end.port.plug
    if end.port.towards == "out":
        # the hair lets a plug that reaches the rim exactly do so
        return Tip(end.point, end.point, name, plug + GRAZE, entry=False)
    way_x, way_y, _ = end.placed.way(end.port.towards)
    x, y = end.point
    turns = x + plug * way_x, y + plug * way_y
    if own is not None:
        more = _way_out(own.polygon, turns, (way_x, way_y))
        turns = turns[0] + more * way_x, turns[1] + more * way_y
    return Tip(end.point, turns, name, 0.0, entry=False)


def _way_out(body: BaseGeometry, start: Point, way: Point) -> float:
    """Return how far a straight way from `start` stays inside the body at first, mm."""
    if not shapely.contains_xy(body, *start):
        return 0.0
    x0, y0, x1, y1 = body.bounds
    far = hypot(x1 - x0, y1 - y0) + 1.0
    ray = LineString([start, (start[0] + far * way[0], start[1] + far * way[1])])
    parts = shapely.get_parts(shapely.intersection(ray, body))
    inside = [
        part for part in parts if part.length > HAIR and shapely.distance(part, shapely.Point(start)) < GRAZE
    ]
    return max((float(part.length) for part in inside), default=0.0)
