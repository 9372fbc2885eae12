"""The cut itself: metal with its recesses, stays, boards, spacers and leads at the section line."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.layout import Bay, Board, Fixing, Stay
from bayboard.rules.scene import Scene
from bayboard.window.draw.cuts import ring_spans, spans
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import dot, hatched
from bayboard.window.theme import Theme, brush, mixed, pen

METAL = 5.0  # px of sheet as drawn; the true sheet would be a hair
STEP = 7.0  # mm over which a recess is drawn in
UNKNOWN_STAY = 22.0  # px; how deep a stay of unknown height is drawn, open in front
VENT = 9.0  # px from one slot of a vent to the next


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


def paint_metal(p: QPainter, scale: Scale, scene: Scene, theme: Theme, x: float, ground: str) -> None:
    """Paint the metal, its inner face on the measured line, open where a vent is; then what stays."""
    bay, grey = scene.layout.bay, metal_token(theme)
    for line in metal_line(bay, x):
        path = QPainterPath()
        for i, (z, y) in enumerate(line):
            at = scale.px(-z, y) + QPointF(METAL / 2, 0.0)
            path.moveTo(at) if i == 0 else path.lineTo(at)
        p.strokePath(path, pen(grey, METAL))
    for vent in bay.vents:
        for low, high in ring_spans(vent.outline, x):
            _paint_vent(p, scale, low, high, ground)
    for stay, _ in scene.stays.values():
        for low, high in ring_spans(stay.outline, x):
            _paint_stay(p, scale, stay, low, high, theme)


def _paint_vent(p: QPainter, scale: Scale, low: float, high: float, ground: str) -> None:
    """Open the metal into slanted slots, as the pressed slots of a vent are cut."""
    top, foot = scale.px(0.0, high), scale.px(0.0, low)
    slots, y = QPainterPath(), top.y() + VENT / 2
    while y < foot.y():
        slots.moveTo(top.x() - 1.0, y + 2.5)
        slots.lineTo(top.x() + METAL + 1.0, y - 2.5)
        y += VENT
    p.strokePath(slots, pen(ground, 4.0))


def metal_token(theme: Theme) -> str:
    """Return the colour of cut metal."""
    return mixed(theme.wall, "#FFFFFF" if theme.dark else "#000000", 0.32)


def block(scale: Scale, z0: float, z1: float, low: float, high: float) -> QRectF:
    """Return the pixels of what lies between two heights over z = 0 and two heights up the wall."""
    return QRectF(scale.px(-z1, high), scale.px(-z0, low)).normalized()


def _paint_stay(p: QPainter, scale: Scale, stay: Stay, low: float, high: float, theme: Theme) -> None:
    """Paint what stays, hatched, and dashed what it keeps clear; open in front where nobody measured it."""
    body = block(scale, 0.0, stay.height or 0.0, low, high)
    unknown = stay.height is None
    if unknown:
        body.setLeft(body.right() - UNKNOWN_STAY)
    elif stay.clear > 0.0:
        clear = scale.length(stay.clear)
        p.setPen(pen(theme.ink2, 1.0, 0.7, dash=(3.0, 3.0)))
        p.drawRect(body.adjusted(-clear, -clear, 0.0, clear))
    path = QPainterPath()
    path.addRect(body)
    if not unknown:
        p.fillPath(path, brush(mixed(theme.wall, "#000000", 0.18)))
        hatched(p, path, 8, theme.ink, 0.30)
    p.strokePath(path, pen(theme.ink2, 1.4, dash=(4.0, 3.0) if unknown else ()))


def paint_boards(p: QPainter, scale: Scale, scene: Scene, theme: Theme, x: float) -> None:
    """Paint the boards' cut, open where a cut-out is, and the spacers of what one sees beyond."""
    for fixing in scene.layout.fixings:
        if fixing.at[0] <= x and fixing.board in scene.boards:
            board = scene.boards[fixing.board].board
            _paint_spacer(p, scale, fixing, board, metal_z(scene.layout.bay, fixing), theme)
    for shape in scene.boards.values():
        for low, high in spans(shape.polygon, x):
            cut = block(scale, shape.board.standoff, shape.board.front, low, high)
            cut.setWidth(max(cut.width(), 2.0))
            p.fillRect(cut, brush(theme.board))
            if theme.dark:
                p.fillRect(QRectF(cut.left(), cut.top(), 1.2, cut.height()), brush(theme.boardhi))


def metal_z(bay: Bay, fixing: Fixing) -> float:
    """Return z of the metal behind a fixing, 0 where no landing with a known recess lies there."""
    x, y = fixing.at
    for landing in bay.landings:
        if any(low <= y <= high for low, high in ring_spans(landing.outline, x)):
            return -(landing.recess or 0.0)
    return 0.0


def _paint_spacer(
    p: QPainter, scale: Scale, fixing: Fixing, board: Board, metal: float, theme: Theme
) -> None:
    grey = mixed(metal_token(theme), theme.board, 0.25)
    y = fixing.at[1]
    p.fillRect(block(scale, metal, board.standoff, y - 9.0, y + 9.0), brush(grey))
    head = block(scale, board.front, board.front + 5.0, y - 6.0, y + 6.0)
    p.fillRect(head, brush(mixed(grey, theme.wall, 0.3)))


def cut_leads(scene: Scene, x: float) -> Iterator[tuple[str, str | None, float, float, float]]:
    """Yield (lead, kind, z of its middle, y, diameter) for each place where a lead crosses the cut.

    A lead on the front lies over its board's front, one on the back under its back.
    """
    backs = {lead.id for lead in scene.layout.leads if lead.side == "back"}
    for route in scene.carried.values():
        shape = scene.boards.get(route.board or "")
        if shape is None or not len(route.points):
            continue
        board = shape.board
        back = route.lead in backs
        z = board.standoff - route.od / 2 if back else board.front + route.od / 2
        for (ax, ay), (bx, by) in pairwise(route.points.tolist()):
            if (ax <= x) != (bx <= x):
                yield route.lead, route.kind, z, ay + (by - ay) * (x - ax) / (bx - ax), route.od


def paint_cut_leads(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, x: float, selected: Iterable[str]
) -> list[QRectF]:
    """Paint each cut lead as a circle in its jacket's colour, never under 5 pixels across; return where."""
    chosen, places = frozenset(selected), []
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
        places.append(QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius))
    return places
