"""Whether a board lies over something of the bay."""

import shapely
from shapely import Polygon

from bayboard.geometry.crowd import HAIR
from bayboard.rules.boards import BoardShape
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit


def covers(scene: Scene, board: BoardShape, shape: Polygon, clear: float = 0.0) -> bool:
    """Return whether a board covers a shape grown round by `clear` mm; a rim on a rim covers nothing."""
    if clear > 0:
        return bool(shapely.distance(board.polygon, shape) < clear - HAIR)
    return bool(shapely.intersection(board.polygon, shape).area > limit(scene.layout, "overlap_area"))
