"""The straight way for fingers out of a stay that has to be reached, and what may stand in it."""

import numpy as np

from bayboard.geometry.corridor import axis_distance, free_widths
from bayboard.geometry.hand import Hand
from bayboard.geometry.hands_at import wide_past
from bayboard.geometry.outline import Points, box
from bayboard.geometry.prism import Prism
from bayboard.geometry.solids import Flags
from bayboard.model.layout import Stay
from bayboard.rules.boards import BoardShape
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit


def width_to(scene: Scene, stay: Stay, height: float) -> float:
    """Return how wide the way to a stay's middle is, mm, told no wider than fingers need."""
    hand, things = _fingers(scene, stay, height), _in_the_way(scene, stay)
    starts, ends = _axis(scene, hand)
    counted = np.ones((1, len(things)), dtype=np.bool_)
    return float(free_widths(starts, ends, things, counted, np.array([hand.need]))[0])


def nearest_board(scene: Scene, stay: Stay, height: float) -> BoardShape:
    """Return the board nearest to the way to a stay, the first of equals; there must be one."""
    axis = _axis(scene, _fingers(scene, stay, height))
    return min(scene.boards.values(), key=lambda board: float(axis_distance(*axis, board.prism)[0]))


def free_at(scene: Scene, places: Places, stay: Stay, height: float) -> Flags:
    """Return at which places of a stand-in fingers get to a stay."""
    hand, rest = _fingers(scene, stay, height), _in_the_way(scene, stay, places.id)
    length = limit(scene.layout, "corridor_length")
    return wide_past(hand, places.at, places.model.prisms, rest, length, hand.need)


def _fingers(scene: Scene, stay: Stay, height: float) -> Hand:
    """Return the fingers that reach for the middle of a stay's box, straight along z."""
    x0, y0, x1, y1 = box(stay.outline)
    start = np.array([(x0 + x1) / 2.0, (y0 + y1) / 2.0, height])
    return Hand(start, np.array([[0.0, 0.0, 1.0]]), limit(scene.layout, "corridor_fingers"))


def _axis(scene: Scene, hand: Hand) -> tuple[Points, Points]:
    start = hand.start[None]
    return start, start + hand.ways * limit(scene.layout, "corridor_length")


def _in_the_way(scene: Scene, stay: Stay, without: str | None = None) -> list[Prism]:
    """Return all that may stand in the way: boards, stand-ins but `without`, other stays, folded seats."""
    things = [board.prism for board in scene.boards.values()]
    things += [p for id_, placed in scene.placed.items() if id_ != without for p in placed.prisms]
    things += [p for id_, p in scene.stay_prisms.items() if id_ != stay.id]
    return [*things, *scene.folded_prisms.values()]
