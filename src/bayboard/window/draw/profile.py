"""The cut itself: metal with its recesses, stays, boards, spacers and leads at the section line."""

from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import pairwise

import shapely
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPolygonF
from shapely import Geometry, LineString, Polygon

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.model.layout import Bay, Board, Fixing, Outline
from bayboard.rules.scene import Scene
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import dot, hatched
from bayboard.window.theme import Theme, brush, mixed, pen

METAL = 5.0  # px of sheet as drawn; the true sheet would be a hair
STEP = 7.0  # mm over which a recess is drawn in

Span = tuple[float, float]


def spans(shape: Geometry, x: float) -> list[Span]:
    """Return the stretches (low, high) of y where an upright line at x runs inside a shape."""
    if shape.is_empty:
        return []
    x0, y0, x1, y1 = shape.bounds
    if not x0 <= x <= x1:
        return []
    cut = shape.intersection(LineString([(x, y0 - 1.0), (x, y1 + 1.0)]))
    found = [part.bounds for part in shapely.get_parts(cut).tolist() if part.length > 0]
    return sorted((low, high) for _, low, _, high in found)


def ring_spans(outline: Outline | Points, x: float) -> list[Span]:
    """Return the stretches of y where an upright line at x runs inside a ring; [] for no ring."""
    return spans(outlines.polygon(outline), x) if len(outline) else []


def metal_line(bay: Bay, x: float) -> list[list[tuple[float, float]]]:
    """Return the metal's lines at x as (z, y) points from the foot up, one line a stretch of wall.

    Where a landing's recess is not known the line stays at z = 0.
    """
    steps = sorted(
        (low, high, -(landing.recess or 0.0))
        for landing in bay.landings
        for low, high in ring_spans(landing.outline, x)
    )
    lines = []
    for foot, head in ring_spans(bay.wall, x):
        line, done = [(0.0, foot)], foot
        for low, high, z in steps:
            if low < done or high > head or not z:
                continue
            slant = min(STEP, (high - low) / 4)
            line += [(0.0, low), (z, low + slant), (z, high - slant), (0.0, high)]
            done = high
        lines.append([*line, (0.0, head)])
    return lines


def paint_metal(p: QPainter, scale: Scale, scene: Scene, theme: Theme, x: float) -> None:
    """Paint the metal, its inner face on the measured line, and what of the vehicle stays in front of it."""
    grey = _metal_token(theme)
    for line in metal_line(scene.layout.bay, x):
        path = QPainterPath()
        for i, (z, y) in enumerate(line):
            at = scale.px(-z, y) + QPointF(METAL / 2, 0.0)
            path.moveTo(at) if i == 0 else path.lineTo(at)
        p.strokePath(path, pen(grey, METAL))
    for stay, _ in scene.stays.values():
        for low, high in ring_spans(stay.outline, x):
            _paint_stay(p, _block(scale, 0.0, stay.height or 0.0, low, high), theme, stay.height is None)


def _metal_token(theme: Theme) -> str:
    return mixed(theme.wall, "#FFFFFF" if theme.dark else "#000000", 0.32)


def _block(scale: Scale, z0: float, z1: float, low: float, high: float) -> QRectF:
    """Return the pixels of what lies between two heights over z = 0 and two heights up the wall."""
    return QRectF(scale.px(-z1, high), scale.px(-z0, low)).normalized()


def _paint_stay(p: QPainter, block: QRectF, theme: Theme, unknown: bool) -> None:
    if unknown:
        block.setLeft(block.right() - 22.0)
    path = QPainterPath()
    path.addRect(block)
    if not unknown:
        p.fillPath(path, brush(mixed(theme.wall, "#000000", 0.18)))
        hatched(p, path, 8, theme.ink, 0.30)
    p.strokePath(path, pen(theme.ink2, 1.4, dash=(4.0, 3.0) if unknown else ()))


def paint_boards(p: QPainter, scale: Scale, scene: Scene, theme: Theme, x: float) -> None:
    """Paint the boards' cut, open where a cut-out is, and the spacers of what one sees beyond."""
    for fixing in scene.layout.fixings:
        if fixing.at[0] <= x and fixing.board in scene.boards:
            board = scene.boards[fixing.board].board
            _paint_spacer(p, scale, fixing, board, _metal_z(scene.layout.bay, fixing), theme)
    for shape in scene.boards.values():
        for low, high in spans(shape.polygon, x):
            block = _block(scale, shape.board.standoff, shape.board.front, low, high)
            block.setWidth(max(block.width(), 2.0))
            p.fillRect(block, brush(theme.board))
            if theme.dark:
                p.fillRect(QRectF(block.left(), block.top(), 1.2, block.height()), brush(theme.boardhi))


def _metal_z(bay: Bay, fixing: Fixing) -> float:
    """Return z of the metal behind a fixing, 0 where no landing with a known recess lies there."""
    for landing in bay.landings:
        if Polygon(landing.outline).covers(shapely.Point(fixing.at)):
            return -(landing.recess or 0.0)
    return 0.0


def _paint_spacer(
    p: QPainter, scale: Scale, fixing: Fixing, board: Board, metal: float, theme: Theme
) -> None:
    grey = mixed(_metal_token(theme), theme.board, 0.25)
    y = fixing.at[1]
    p.fillRect(_block(scale, metal, board.standoff, y - 9.0, y + 9.0), brush(grey))
    head = _block(scale, board.front, board.front + 5.0, y - 6.0, y + 6.0)
    p.fillRect(head, brush(mixed(grey, theme.wall, 0.3)))


def cut_leads(scene: Scene, x: float) -> Iterator[tuple[str, str | None, float, float, float]]:
    """Yield (lead, kind, z of its middle, y, diameter) for each place where a lead crosses the cut."""
    for route in scene.routes.values():
        shape = scene.boards.get(route.board or "")
        if shape is None or not len(route.points):
            continue
        points = route.points.tolist()
        for (ax, ay), (bx, by) in pairwise(points):
            if (ax <= x) != (bx <= x):
                y = ay + (by - ay) * (x - ax) / (bx - ax)
                yield route.lead, route.kind, shape.board.front + route.od / 2, y, route.od


def paint_cut_leads(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, x: float, selected: Iterable[str]
) -> None:
    """Paint each cut lead as a circle in its jacket's colour, never under 5 pixels across."""
    chosen = frozenset(selected)
    for lead, kind, z, y, od in cut_leads(scene, x):
        radius = max(scale.length(od) / 2, 2.5)
        at = scale.px(-z, y)
        if lead in chosen:
            dot(p, at, radius + 4.5, theme.paper)
            dot(p, at, radius + 2.6, theme.blue)
        p.setPen(pen(mixed(theme.board, "#000000", 0.3), 1.2))
        p.setBrush(brush(theme.lead(kind)))
        p.drawEllipse(at, radius, radius)
        p.setBrush(Qt.BrushStyle.NoBrush)
        if kind == "ground":
            dot(p, at, 0.55 * radius, theme.board)


def seat_path(points: Outline, scale: Scale) -> QPainterPath:
    """Return a seat's section, (z, y) points, as a path in pixels."""
    path = QPainterPath()
    for i, (z, y) in enumerate(points):
        at = scale.px(-z, y)
        path.moveTo(at) if i == 0 else path.lineTo(at)
    path.closeSubpath()
    return path


def paint_seat(p: QPainter, path: QPainterPath, theme: Theme) -> None:
    """Paint a seat as it stands now: a pad within its cover."""
    cover = mixed(theme.room, "#B5AC9C", 0.75) if not theme.dark else "#34373A"
    pad = mixed(cover, "#FFFFFF", 0.22 if not theme.dark else 0.05)
    p.fillPath(path, brush(cover))
    p.fillPath(_pad(tuple((at.x(), at.y()) for at in path.toFillPolygon())), brush(pad))
    p.strokePath(path, pen(theme.ink2, 2.0, round_ends=True))


@lru_cache(maxsize=16)
def _pad(ring: tuple[tuple[float, float], ...]) -> QPainterPath:
    """Return what is left of a seat's section inside its cover, pixels."""
    path = QPainterPath()
    if len(ring) >= 4:
        left = Polygon(ring).buffer(-9.0)
        for part in shapely.get_parts(left).tolist():
            path.addPolygon(QPolygonF([QPointF(x, y) for x, y in part.exterior.coords]))
    return path


def paint_seat_ghost(p: QPainter, path: QPainterPath, theme: Theme) -> None:
    """Paint where the seat goes with the lever the other way."""
    p.strokePath(path, pen(theme.ink2, 1.3, 0.7, dash=(6.0, 4.0)))
