"""The Wall: everything the front view shows, in order from the primer up to the tags."""

from collections.abc import Sequence, Set

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene
from bayboard.window.draw.aloft import Aloft
from bayboard.window.draw.chalk import (
    measure_tag,
    paint_chalk_line,
    paint_cure,
    paint_ends,
    paint_ghost,
    paint_marquee,
    paint_measure,
    paint_snap,
)
from bayboard.window.draw.docking import docked, paint_docked
from bayboard.window.draw.drilled import paint_made_screws
from bayboard.window.draw.fixings import paint_fixings
from bayboard.window.draw.gear import GearState, paint_gear, paint_rings
from bayboard.window.draw.ground import paint_ground
from bayboard.window.draw.leads import paint_leads
from bayboard.window.draw.marks import MARK
from bayboard.window.draw.names import Name, names, paint_names
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import WallShow
from bayboard.window.draw.strokes import kept, ring_path
from bayboard.window.draw.tags import paint_end_name, paint_tag
from bayboard.window.draw.turning import degrees_tag, paint_turning
from bayboard.window.draw.uncovered import number_rects
from bayboard.window.theme import Theme


def paint_wall(
    p: QPainter,
    scale: Scale,
    scene: Scene,
    theme: Theme,
    show: WallShow,
    rect: QRectF,
    skip: Set[str] = frozenset(),
    only: Set[str] | None = None,
) -> None:
    """Paint the Wall into `rect`.

    `skip`: ids of gear left out together with their leads, and all overlays with them: the
    static layer under a drag.  `only`: nothing but those gear, their leads and the overlays,
    to be painted over that layer.  With neither, everything.
    """
    if only is None:
        paint_still(p, scale, scene, theme, show, rect, skip or show.in_hand)
    if not skip:
        paint_live(p, scale, scene, theme, show, rect, show.in_hand if only is None else only)


def paint_still(
    p: QPainter,
    scale: Scale,
    scene: Scene,
    theme: Theme,
    show: WallShow,
    rect: QRectF,
    skip: Set[str] = frozenset(),
) -> None:
    """Paint what stays while something is dragged: ground, leads, stand-ins, names; nothing laid on it."""
    with kept(p):
        p.setClipRect(rect)
        _smooth(p)
        paint_ground(p, scale, scene, theme, rect)
        paint_fixings(p, scale, scene, theme, show)
        named = _names(scale, scene, theme, show, rect)
        spots = [name.spot for name in named]
        paint_leads(p, scale, scene, theme, show, skipped=leads_of(scene, skip), taken=spots)
        seen = rect.adjusted(-30, -30, 30, 30)
        for piece in scene.placed.values():
            if piece.id not in skip and scale.box(piece.box).intersects(seen):
                _paint_piece(p, scale, scene, theme, show, piece)
        paint_names(p, named, theme)


def paint_live(
    p: QPainter,
    scale: Scale,
    scene: Scene,
    theme: Theme,
    show: WallShow,
    rect: QRectF,
    moving: Set[str] = frozenset(),
    aloft: Aloft | None = None,
) -> None:
    """Paint what changes by the frame: ghosts, the moving pieces and their leads, rings, measures, tags.

    `aloft`: how the moving pieces stand off the board; without it those in the hand are simply high.
    """
    held = aloft or Aloft(dict.fromkeys(show.in_hand, 1.0))
    with kept(p):
        p.setClipRect(rect)
        _smooth(p)
        for ghost in show.ghosts:
            paint_ghost(p, scale, ghost, theme)
        if moving:
            paint_leads(p, scale, scene, theme, show, drawn=leads_of(scene, moving))
        over = [name.spot for name in _names(scale, scene, theme, show, rect)]
        if show.hovered in scene.carried:
            _paint_hovered_lead(p, scale, scene, theme, show, over)
        if show.chalk_x is not None:
            paint_chalk_line(p, scale, show.chalk_x, theme, rect, tuple(scene.placed.values()), over)
        for piece in scene.placed.values():
            if piece.id in moving or (piece.id == show.hovered and _uppermost(scene, piece)):
                with kept(p):
                    p.translate(held.shift(piece.id))
                    _paint_piece(p, scale, scene, theme, show, piece, held.height(piece.id))
        _paint_rings(p, scale, scene, theme, show, held, rect)
        _paint_overlays(p, scale, scene, theme, show, rect)


def _uppermost(scene: Scene, piece: Placed) -> bool:
    """Return whether no stand-in that is painted after this one reaches into its box."""
    x0, y0, x1, y1 = piece.box
    after = False
    for other in scene.placed.values():
        if after and other.box[0] < x1 and x0 < other.box[2] and other.box[1] < y1 and y0 < other.box[3]:
            return False
        after = after or other.id == piece.id
    return True


def _paint_hovered_lead(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: WallShow, names: Sequence[QRectF]
) -> None:
    """Paint the lead under the pointer over its kind, but under stand-ins and names as it lies."""
    with kept(p):
        seen = QPainterPath()
        seen.addRect(QRectF(p.viewport()))
        for piece in scene.placed.values():
            seen = seen.subtracted(ring_path(piece.ring, scale))
        for spot in names:
            covered = QPainterPath()
            covered.addRect(spot)
            seen = seen.subtracted(covered)
        p.setClipPath(seen, Qt.ClipOperation.IntersectClip)
        paint_leads(p, scale, scene, theme, show, drawn=(show.hovered or "",), taken=names)


def _paint_piece(
    p: QPainter,
    scale: Scale,
    scene: Scene,
    theme: Theme,
    show: WallShow,
    piece: Placed,
    height: float = 0.0,
) -> None:
    """Paint a stand-in and, over it, what of its holes is made."""
    paint_gear(p, scale, piece, theme, gear_state(scene, show, piece, height))
    paint_made_screws(p, scale, scene.layout, piece, theme)


def _smooth(p: QPainter) -> None:
    p.setRenderHint(QPainter.RenderHint.Antialiasing)
    p.setRenderHint(QPainter.RenderHint.TextAntialiasing)


def leads_of(scene: Scene, gear: Set[str]) -> frozenset[str]:
    """Return the ids of the leads that end at one of the gear."""
    if not gear:
        return frozenset()
    return frozenset(
        lead.id
        for lead in scene.layout.leads
        if any(end.partition(".")[0] in gear and "." in end for end in (lead.from_, lead.to))
    )


def gear_state(scene: Scene, show: WallShow, piece: Placed, height: float = 0.0) -> GearState:
    """Return how a stand-in is shown, with the part of it that hangs off its board."""
    shape = scene.boards.get(piece.board.id)
    hovered = show.hovered == piece.id
    if shape is None or shape.polygon.covers(piece.polygon):
        return GearState(hovered, height)
    rim = shape.polygon.boundary.intersection(piece.polygon)
    return GearState(hovered, height, piece.polygon.difference(shape.polygon), rim)


def _paint_rings(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: WallShow, held: Aloft, rect: QRectF
) -> None:
    chosen = [piece for piece in scene.placed.values() if piece.id in show.selected]
    for piece in scene.placed.values():
        selected, focused = piece.id in show.selected, show.focused == piece.id
        if selected or focused:
            with kept(p):
                p.translate(held.shift(piece.id))
                paint_rings(p, scale, piece, theme, selected, focused)
    if chosen:
        with kept(p):
            p.translate(held.shift(chosen[0].id))
            paint_turning(p, scale, chosen, theme, show.turning, rect)


def _paint_overlays(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF
) -> None:
    for snap in show.snaps:
        paint_snap(p, scale, snap, theme)
    for measure in show.measures:
        paint_measure(p, scale, measure, theme)
    paint_ends(p, scale, show.ends, theme)
    tags = measure_tags(scale, scene, theme, show, rect)
    marks = docked(scale, scene, theme, show, rect, [*tags, *_turned(scale, scene, theme, show, rect)])
    paint_docked(p, marks, theme)
    for measure, tag in sorted(
        zip(show.measures, tags, strict=True), key=lambda m: m[0].severity is not None
    ):
        if measure.text:
            paint_tag(p, tag, measure.text, theme, measure.severity, measure.number)
    held = [*tags, *(one.tag for one in marks if one.tag is not None)]
    for cure in show.cures:
        paint_cure(p, scale, cure, theme, rect, held)
    for spot, words in show.named:
        paint_end_name(p, scale.px(*spot), words, theme, held, rect)
    if show.marquee is not None:
        paint_marquee(p, scale, show.marquee, theme)


def measure_tags(scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF) -> list[QRectF]:
    """Return the tag of each measure, in their order: off the numbers of the stand-ins and each other.

    One without words has an empty rectangle.
    """
    numbers = [number.adjusted(-6, -6, 6, 6) for number in number_rects(scale, scene, theme)]
    loud_first = sorted(range(len(show.measures)), key=lambda i: show.measures[i].severity is None)
    taken = list(numbers)
    found: dict[int, QRectF] = {}
    for i in loud_first:
        if not show.measures[i].text:
            found[i] = QRectF()
            continue
        found[i] = measure_tag(scale, show.measures[i], theme, taken, rect)
        taken.append(found[i])
    return [found[i] for i in range(len(show.measures))]


def _turned(scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF) -> list[QRectF]:
    """Return the tag with the degrees of what is being turned, in a list; nothing else may cover it."""
    if show.turning is None:
        return []
    chosen = [piece for piece in scene.placed.values() if piece.id in show.selected]
    return [degrees_tag(scale, chosen, theme, show.turning, rect)]


def _names(scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF) -> list[Name]:
    """Return the names as they stand: off the stand-ins, the marks and the docked tags."""
    half = 0.6 * MARK * theme.size
    held = measure_tags(scale, scene, theme, show, rect)
    found = docked(scale, scene, theme, show, rect, [*held, *_turned(scale, scene, theme, show, rect)])
    marks = [QRectF(one.at.x() - half, one.at.y() - half, 2 * half, 2 * half) for one in found]
    tags = [one.tag for one in found if one.tag is not None]
    return names(scale, scene, theme, rect, [*marks, *tags])


def wall_marks(
    scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF
) -> dict[int, tuple[QPointF, QRectF | None]]:
    """Return each finding's mark and tag as painted, by number: where a pointer meets them."""
    tags = measure_tags(scale, scene, theme, show, rect)
    found: dict[int, tuple[QPointF, QRectF | None]] = {
        one.mark.number: (one.at, one.tag)
        for one in docked(scale, scene, theme, show, rect, [*tags, *_turned(scale, scene, theme, show, rect)])
    }
    for measure, tag in zip(show.measures, tags, strict=True):
        if measure.number is not None:
            found[measure.number] = (tag.center(), tag)
    return found
