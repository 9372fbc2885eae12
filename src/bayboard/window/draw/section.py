"""The Section: what a cut at the chalk line shows, looking left, the metal at the right.

Seen from the cut are the pieces it passes through, hatched, and those that stand farther left, dashed.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.layout import Seat
from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene
from bayboard.window import lettering
from bayboard.window.draw.profile import (
    paint_boards,
    paint_cut_leads,
    paint_metal,
    paint_seat,
    paint_seat_ghost,
    ring_spans,
    seat_path,
)
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.section_show import SectionShow
from bayboard.window.draw.sights import paint_depth, paint_eyes, paint_fan, paint_sight, paint_words
from bayboard.window.draw.strokes import cased, dot, hatched, kept
from bayboard.window.draw.tags import free_spot, paint_name, tag_size
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, mixed, pen

UNKNOWN = 25.0  # mm; how deep a piece of unknown height is drawn, open in front
LID_LEAN = 45.0  # degrees; in a bay that leans more the part that folds is a lid
PROBE_NEAR = 75.0  # mm; putty lumps are shown this near to the cut


def section_ground(theme: Theme) -> str:
    """Return the colour behind the Section: the primer, much paler (darker in the dark)."""
    return mixed(theme.room, theme.field, 0.62)


def paint_section(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: SectionShow, rect: QRectF
) -> None:
    """Paint the Section into `rect`; `scale` is the Wall's `beside(pixel column of z = 0)`.

    With no chalk line there is nothing to cut, and only the ground is painted.
    """
    with kept(p):
        p.setClipRect(rect)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.fillRect(rect, brush(section_ground(theme)))
        if show.chalk_x is not None:
            taken = _paint_matter(p, scale, scene, theme, show, show.chalk_x)
            _paint_seen(p, scale, show, theme)
            _paint_seat_name(p, scale, scene, theme, show, rect, taken)
            paint_words(p, scale, show.sights, show.depths, theme, rect, taken)


def _paint_matter(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: SectionShow, x: float
) -> list[QRectF]:
    """Paint all that is cut or seen beyond; return the rectangles of its lettering."""
    taken: list[QRectF] = []
    cut = [piece for piece in scene.placed.values() if piece.box[0] < x < piece.box[2]]
    beyond = [piece for piece in scene.placed.values() if piece.box[2] <= x]
    seats = seats_at(scene, x)
    _paint_seats(p, scale, seats, theme, show)
    for piece in beyond:
        outline = QPainterPath()
        outline.addRect(_beyond_box(piece, scale))
        p.strokePath(outline, pen(theme.ink2, 1.2, 0.9, dash=(4.0, 3.0)))
    paint_metal(p, scale, scene, theme, x)
    paint_boards(p, scale, scene, theme, x)
    crushing = [path for path, now, _ in _seat_paths(seats, scale, show) if now]
    for piece in cut:
        _paint_cut(p, scale, piece, x, theme, show, crushing, taken)
    paint_cut_leads(p, scale, scene, theme, x, show.selected)
    for seat in seats:
        for px, y, z in seat.probes:
            if abs(px - x) <= PROBE_NEAR:
                dot(p, scale.px(-z, y), 4.0, theme.hold)
                p.setPen(pen(theme.ink2, 1.0))
                p.drawEllipse(scale.px(-z, y), 4.0, 4.0)
    taken += [_beyond_box(piece, scale) for piece in cut]
    for piece in sorted(beyond, key=lambda g: -g.box[2]):
        _letter_piece(p, _beyond_box(piece, scale), piece.id, theme, None, taken)
    return taken


def seats_at(scene: Scene, x: float) -> list[Seat]:
    """Return the seats the cut runs through, else those that stand beyond it, nearest last."""
    seats = scene.layout.bay.seats
    through = [seat for seat in seats if seat.x[0] <= x <= seat.x[1]]
    return through or sorted((s for s in seats if s.x[1] < x), key=lambda s: s.x[1])


def _seat_paths(seats: list[Seat], scale: Scale, show: SectionShow) -> list[tuple[QPainterPath, bool, str]]:
    """Return each known section of the seats: its path, whether the lever has it so, and the word."""
    found = []
    for seat in seats:
        for word, points in (("up", seat.up), ("folded", seat.folded)):
            if points is not None:
                found.append((seat_path(points, scale), word == show.lever, word))
    return found


def _paint_seats(p: QPainter, scale: Scale, seats: list[Seat], theme: Theme, show: SectionShow) -> None:
    paths = _seat_paths(seats, scale, show)
    for path, now, _ in paths:
        if not now:
            paint_seat_ghost(p, path, theme)
    for path, now, _ in paths:
        if now:
            paint_seat(p, path, theme)


def _paint_seen(p: QPainter, scale: Scale, show: SectionShow, theme: Theme) -> None:
    if show.eyes is not None:
        paint_eyes(p, scale, show.eyes, theme)
    for fan in show.fans:
        paint_fan(p, scale, fan, theme)
    for sight in show.sights:
        paint_sight(p, scale, sight, theme)
    for depth in show.depths:
        paint_depth(p, scale, depth, theme)


def _paint_seat_name(
    p: QPainter,
    scale: Scale,
    scene: Scene,
    theme: Theme,
    show: SectionShow,
    rect: QRectF,
    taken: list[QRectF],
) -> None:
    """Say how the seat stands, or that nobody measured it so."""
    if show.chalk_x is None:
        return
    seats = seats_at(scene, show.chalk_x)
    if not seats:
        return
    known = any(now for _, now, _ in _seat_paths(seats, scale, show))
    what = "lid" if abs(scene.layout.bay.lean) >= LID_LEAN else "seat"
    text = f"{what}, {show.lever}" if known else f"{what} {show.lever}: not measured"
    wide, high = tag_size(text, theme)
    left = rect.left() + 14.0
    spots = [QRectF(left, rect.top() + y, wide, high) for y in (84.0, 52.0, 120.0, 160.0)]
    spot = free_spot(spots, taken, rect) or spots[0]
    paint_name(p, spot, text, theme, theme.ink2)
    taken.append(spot)


def body_boxes(piece: Placed, scale: Scale, x: float) -> list[QRectF]:
    """Return the pixels that a piece's body takes in the cut at x; a piece of unknown height none."""
    return [
        QRectF(scale.px(-body.z[1], high), scale.px(-body.z[0], low)).normalized()
        for body in piece.bodies
        for low, high in ring_spans(body.ring, x)
    ]


def _paint_cut(
    p: QPainter,
    scale: Scale,
    piece: Placed,
    x: float,
    theme: Theme,
    show: SectionShow,
    crushing: list[QPainterPath],
    taken: list[QRectF],
) -> None:
    """Paint a piece where it is cut: hatched, its number upright, what the seat digs into in must."""
    boxes = body_boxes(piece, scale, x)
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    for box in boxes:
        path.addRect(box)
    if not boxes:
        _paint_unknown(p, scale, piece, x, theme, taken)
        return
    path = path.simplified()
    p.fillPath(path, brush(theme.buff))
    hatched(p, path, 9, theme.pencil2, 0.5)
    for seat in crushing:
        crushed = path.intersected(seat)
        if not crushed.isEmpty():
            p.fillPath(crushed, brush(theme.must, 0.30))
            hatched(p, crushed, 6, theme.must, both=True)
    p.strokePath(path, pen(theme.pencil, 1.6))
    if piece.id in show.selected:
        ring = QPainterPath()
        ring.addRoundedRect(path.boundingRect().adjusted(-5, -5, 5, 5), 4.0, 4.0)
        cased(p, ring, theme.blue, 2.0, theme, casing=1.5)
    _letter_piece(p, path.boundingRect(), piece.id, theme, theme.buff, taken)


def _paint_unknown(
    p: QPainter, scale: Scale, piece: Placed, x: float, theme: Theme, taken: list[QRectF]
) -> None:
    """Paint a piece whose height nobody measured: open in front, with a question mark."""
    for low, high in ring_spans(piece.ring, x):
        box = QRectF(scale.px(-(piece.under + UNKNOWN), high), scale.px(-piece.under, low)).normalized()
        path = QPainterPath(box.topLeft())
        for at in (box.topRight(), box.bottomRight(), box.bottomLeft()):
            path.lineTo(at)
        p.fillRect(box, brush(theme.buff, 0.45))
        p.strokePath(path, pen(theme.pencil, 1.6, dash=(4.0, 3.0)))
        _letter_piece(p, box, f"{piece.id} ?", theme, theme.buff, taken)


def _beyond_box(piece: Placed, scale: Scale) -> QRectF:
    """Return the pixels that a piece takes seen from the side, from the board's front to its own."""
    top = piece.top if piece.top is not None else piece.under + UNKNOWN
    _, low, _, high = piece.box
    return QRectF(scale.px(-top, high), scale.px(-piece.under, low)).normalized()


def _letter_piece(
    p: QPainter, box: QRectF, text: str, theme: Theme, behind: str | None, taken: list[QRectF]
) -> None:
    """Letter a number in a box, turned upright-reading along a box too narrow for it."""
    style = Style("pencil", round((17.0 if behind else 15.0) * theme.size))
    wide, rise = lettering.width(text, style), lettering.line(text, style).rise
    lying = box.width() < wide + 4.0
    long, high = (rise + 8.0, wide + 8.0) if lying else (wide + 8.0, rise + 8.0)
    spot = QRectF(box.center().x() - long / 2, box.center().y() - high / 2, long, high)
    if spot.height() > box.height() + 8.0 or any(spot.intersects(t) for t in taken):
        return
    taken.append(spot)
    if behind:
        p.fillRect(spot.intersected(box.adjusted(1, 1, -1, -1)), brush(behind))
    with kept(p):
        p.translate(spot.center())
        if lying:
            p.rotate(-90.0)
        ink = theme.pencil if behind else theme.ink2
        lettering.draw(p, QPointF(0.0, rise / 2), text, style, ink, "centre")
