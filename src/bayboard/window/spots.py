"""Where a waiting stand-in could stand, and the first spot where nothing must change."""

from collections.abc import Iterable, Iterator

import numpy as np
import shapely
from msgspec.structs import replace

from bayboard.edits.place_gear import PlaceGear
from bayboard.geometry import outline as outlines
from bayboard.model.layout import Gear, Layout, Point
from bayboard.model.placed import Placed, place
from bayboard.rules.boards import BoardShape
from bayboard.rules.check import Checker, Verdict
from bayboard.rules.scene import Scene

STEPS = {"mm": (40.0, 20.0, 10.0), "in": (38.1, 19.05, 9.525)}  # mm between spots, coarse ones first
MOST_TRIED = 160  # spots that are judged; a board where none of them will do is said to be full


def gear_of(layout: Layout, name: str) -> Gear | None:
    """Return the piece of gear of that id, None when there is none."""
    return next((gear for gear in layout.gear if gear.id == name), None)


def standing(layout: Layout, name: str, at: Point, board: str | None = None) -> Placed | None:
    """Return a piece as it would stand at a spot, None where there is no board to stand on."""
    gear = gear_of(layout, name)
    return None if gear is None else place(layout, replace(gear, at=at, board=board or gear.board))


def board_at(scene: Scene, name: str, at: Point) -> str | None:
    """Return the board under a spot, the piece's own where it is one of several or there is none."""
    gear = gear_of(scene.layout, name)
    spot = shapely.Point(at)
    under = [board for board, shape in scene.boards.items() if shape.whole.covers(spot)]
    own = None if gear is None else gear.board or next(iter(scene.boards), None)
    return own if own in under or not under else under[0]


def boards_after(scene: Scene, names: Iterable[str], dx: float, dy: float) -> tuple[tuple[str, str], ...]:
    """Return (piece, board) for each of the pieces whose middle a move by (dx, dy) mm brings onto another."""
    if len(scene.boards) < 2:
        return ()
    moved = ((scene.placed[name], scene.placed[name].at) for name in names)
    there = ((piece, board_at(scene, piece.id, (x + dx, y + dy))) for piece, (x, y) in moved)
    return tuple((piece.id, board) for piece, board in there if board and board != piece.board.id)


def first_free(layout: Layout, name: str) -> PlaceGear | None:
    """Return the edit that hangs a piece on the first spot without a new must, None when there is none.

    Spots are tried in reading order, those on its own board first.
    """
    scene, gear = Scene(layout), gear_of(layout, name)
    if gear is None:
        return None
    checker: Checker | None = None
    known: set[tuple[str, tuple[str, ...]]] = set()
    boards = sorted(scene.boards.values(), key=lambda shape: shape.board.id != gear.board)
    spots = (PlaceGear(name, at, board=b.board.id) for b in boards for at in _spots(scene, name, b))
    for _, edit in zip(range(MOST_TRIED), spots, strict=False):
        after = edit.apply(layout)
        if checker is None:
            known, checker = _musts(Checker(layout).now), Checker(after)
        if _musts(checker.move(after)) <= known:
            return edit
    return None


def _musts(verdict: Verdict) -> set[tuple[str, tuple[str, ...]]]:
    return {(f.rule, f.subjects) for f in verdict.findings if f.severity == "must"}


def _spots(scene: Scene, name: str, board: BoardShape) -> Iterator[Point]:
    """Yield the spots on a board where the piece's box lies on it and on nothing else, coarse steps first."""
    there = standing(scene.layout, name, (0.0, 0.0), board.board.id)
    if there is None:
        return
    others = shapely.union_all([piece.polygon for piece in scene.placed.values() if piece.id != name])
    for step in STEPS[scene.layout.units]:
        at = _grid(board, there, step)
        x0, y0, x1, y1 = there.box
        boxes = shapely.box(at[:, 0] + x0, at[:, 1] + y0, at[:, 0] + x1, at[:, 1] + y1)
        free = shapely.covers(board.polygon, boxes)
        free[free] = ~shapely.intersects(others, boxes[free])
        yield from ((float(x), float(y)) for x, y in at[free])


def _grid(board: BoardShape, there: Placed, step: float) -> outlines.Points:
    """Return the middles, (n, 2), at which the piece's box lies in the board's, row by row from the top.

    They stand on whole steps from the board's left and foot, as one reads them off a tape.
    """
    bx0, by0, bx1, by1 = board.whole.bounds
    x0, y0, x1, y1 = there.box
    xs = bx0 + step * np.arange(np.ceil(-x0 / step), np.floor((bx1 - bx0 - x1) / step) + 1)
    ys = by0 + step * np.arange(np.floor((by1 - by0 - y1) / step), np.ceil(-y0 / step) - 1, -1)
    across, up = np.meshgrid(xs, ys)
    return np.column_stack((across.ravel(), up.ravel()))
