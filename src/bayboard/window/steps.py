"""How far a key press or a drag goes: in steps that one reads off a tape."""

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Board, Point, Units

INCH = 25.4
_FINE: dict[Units, float] = {"mm": 1.0, "in": INCH / 16}
_COARSE: dict[Units, float] = {"mm": 10.0, "in": INCH / 2}


def step(units: Units, coarse: bool = False) -> float:
    """Return the mm of one press of an arrow: 1 mm or 1/16 in, `coarse` 10 mm or 1/2 in."""
    return (_COARSE if coarse else _FINE)[units]


def foot_of(board: Board) -> Point:
    """Return the lower left corner of a board's box: where figures on it are counted from."""
    x0, y0, _, _ = outlines.box(board.outline)
    return x0, y0


def rested(board: Board, units: Units, middle: Point, way: Point) -> Point:
    """Return the way (dx, dy) changed so that a piece's middle rests on a whole step of the tape.

    Steps are counted from the board's left edge and foot, as on the Card; `middle` is where it started.
    """
    fine, foot = step(units), foot_of(board)
    ends = [round((m + d - f) / fine) * fine + f for m, d, f in zip(middle, way, foot, strict=True)]
    return ends[0] - middle[0], ends[1] - middle[1]
