"""Strips in plan: the straight way out of a plug and how far it is free, the band that a lead covers."""

from collections.abc import Sequence

import numpy as np
import shapely
from shapely import LineString

from bayboard.geometry.crowd import HAIR, Crowd, Flags, Shapes, boxes_apart, filled, solid_parts
from bayboard.geometry.outline import SPECK, Points

BEND = 64  # edges in a quarter turn of a lead's side


def strips(starts: Points, ways: Points, wide: Points, long: Points) -> Points:
    """Return the corners of rectangles that begin at `starts` and run along unit `ways`, (n, 4, 2).

    Each is `wide` across and `long` along; the start is the middle of its near side.
    """
    aside = np.column_stack((-ways[:, 1], ways[:, 0])) * (wide / 2.0)[:, None]
    end = starts + ways * long[:, None]
    return np.stack((starts - aside, end - aside, end + aside, starts + aside), axis=1)


def free_ahead(
    starts: Points, ways: Points, wide: Points, far: Points, solids: Shapes, where: Flags
) -> Points:
    """Return how far each strip is free before each solid, (strips, solids), mm.

    0.0 where the solid already stands at the start; inf where it is not within `far`, only
    touches the strip, or `where` leaves the pair out.
    """
    rectangles = filled(strips(starts, ways, wide, far))
    i, j = _close(rectangles, solids, where)
    shared = shapely.intersection(rectangles[i], solids[j])
    parts, pair = shapely.get_parts(shared, return_index=True)
    solid = shapely.area(parts) > SPECK
    points, part = shapely.get_coordinates(parts[solid], return_index=True)
    pair = pair[solid][part]
    ahead = np.sum((points - starts[i[pair]]) * ways[i[pair]], axis=1)
    found = np.full((len(starts), len(solids)), np.inf)
    np.minimum.at(found, (i[pair], j[pair]), np.maximum(ahead, 0.0))
    return found


def free_above(rings: Shapes, z: Points, solids: Crowd, where: Flags) -> Points:
    """Return how far the way out of the board is free over plan shapes from height `z` on, (rings, solids).

    0.0 where the solid already stands at that height; inf where it is not over the shape, ends at or
    below that height, or `where` leaves the pair out.
    """
    from_z = z[:, None]
    asked = where & (solids.z[None, :, 1] > from_z + HAIR)
    ahead = np.maximum(solids.z[None, :, 0] - from_z, 0.0)
    return np.where(share_area(rings, solids.shapes, asked), ahead, np.inf)


def share_area(shapes: Shapes, solids: Shapes, where: Flags) -> Flags:
    """Return whether each pair that `where` asks about shares more plan area than a sliver."""
    found = np.zeros((len(shapes), len(solids)), dtype=np.bool_)
    i, j = _close(shapes, solids, where)
    found[i, j] = shapely.area(shapely.intersection(shapes[i], solids[j])) > SPECK
    return found


def band(path: Points, wide: float) -> list[Points]:
    """Return the rings of the band `wide` across along a path, flat at its ends; none without a length."""
    if not np.ptp(path, axis=0).any():
        return []
    covered = LineString(path).buffer(wide / 2.0, cap_style="flat", quad_segs=BEND)
    return [shapely.get_coordinates(part.exterior)[:-1] for part in solid_parts(covered)]


def near_path(shapes: Shapes, path: Points, within: float) -> Flags:
    """Return which shapes are no farther than `within` from a path, (shapes,)."""
    line = LineString(path) if len(path) > 1 else shapely.Point(path[0])
    return np.asarray(shapely.distance(shapes, line) <= within)


def _close(
    shapes: Shapes, solids: Shapes, where: Flags
) -> Sequence[np.ndarray[tuple[int], np.dtype[np.intp]]]:
    apart = boxes_apart(shapely.bounds(shapes)[:, None], shapely.bounds(solids)[None, :])
    return np.nonzero(where & (apart < -HAIR))
