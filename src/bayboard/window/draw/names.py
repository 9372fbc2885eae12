"""Names on the Wall: entries on paper, vents, stays and regions in pencil; all give way to marks and tags."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from bayboard.rules.scene import Scene
from bayboard.window import lettering
from bayboard.window.draw.ground import grommet_radius
from bayboard.window.draw.scale import Scale, box_of
from bayboard.window.draw.tags import RADIUS, paint_name, tag_size
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush

PENCILLED = Style("pencil", 15.0)
Named = tuple[str, bool, list[QRectF]]  # the name, whether it is pencilled, where it may stand


@dataclass(frozen=True, slots=True)
class Name:
    """A name and where it stands; `pencilled` in pencil, else in the text face."""

    text: str
    pencilled: bool
    spot: QRectF


def names(scale: Scale, scene: Scene, theme: Theme, rect: QRectF, taken: Sequence[QRectF]) -> list[Name]:
    """Return where each name stands; one that finds no room is left off."""
    held = [*taken, *(scale.box(piece.box) for piece in scene.placed.values())]
    held += [_grommet(scale, entry.at) for entry in scene.layout.bay.entries]
    found = []
    for text, pencilled, spots in _wanted(scale, scene, theme):
        for spot in spots:
            if rect.contains(spot) and not any(spot.intersects(t) for t in held):
                found.append(Name(text, pencilled, spot))
                held.append(spot)
                break
    return found


def paint_names(p: QPainter, found: Sequence[Name], theme: Theme) -> None:
    """Paint names where they found room."""
    for name in found:
        if name.pencilled:
            _pencil(p, name.spot, name.text, theme)
        else:
            paint_name(p, name.spot, name.text, theme)


def _grommet(scale: Scale, at: tuple[float, float]) -> QRectF:
    middle, r = scale.px(*at), grommet_radius(scale)
    return QRectF(middle.x() - r, middle.y() - r, 2 * r, 2 * r)


def _wanted(scale: Scale, scene: Scene, theme: Theme) -> Iterator[Named]:
    """Yield the names in the order in which they may choose."""
    bay = scene.layout.bay
    for entry in bay.entries:
        wide, high = tag_size(entry.name, theme)
        yield entry.name, False, _round(_grommet(scale, entry.at), wide, high)
    boards = [scale.box(shape.polygon.bounds) for shape in scene.boards.values()]
    for stay in bay.stays:
        inside = _inside(scale, stay.outline, stay.name, theme)
        yield stay.name, True, inside
    for region in bay.no_drill:
        text = f"no drill: {region.name}"
        yield text, True, _inside(scale, region.outline, text, theme)
    for vent in bay.vents:
        box = scale.box(box_of(vent.outline) or (0.0, 0.0, 0.0, 0.0))
        if not any(board.contains(box) for board in boards):
            yield "vent", True, _round(box, *_pencil_size("vent", theme))[:3]


def _round(thing: QRectF, wide: float, high: float) -> list[QRectF]:
    """Return the places beside a thing: left, right, below, above."""
    x, y, off = thing.center().x(), thing.center().y(), 8.0
    return [
        QRectF(thing.left() - off - wide, y - high / 2, wide, high),
        QRectF(thing.right() + off, y - high / 2, wide, high),
        QRectF(x - wide / 2, thing.bottom() + off, wide, high),
        QRectF(x - wide / 2, thing.top() - off - high, wide, high),
    ]


def _inside(scale: Scale, outline: tuple[tuple[float, float], ...], text: str, theme: Theme) -> list[QRectF]:
    """Return the middle of a thing as the one place for its name, nothing where it is too small."""
    box = scale.box(box_of(outline) or (0.0, 0.0, 0.0, 0.0))
    wide, high = _pencil_size(text, theme)
    if wide + 8.0 > box.width() or high + 4.0 > box.height():
        return []
    return [QRectF(box.center().x() - wide / 2, box.center().y() - high / 2, wide, high)]


def _pencil_size(text: str, theme: Theme) -> tuple[float, float]:
    return lettering.width(text, PENCILLED.sized(theme.size)) + 12.0, 20.0 * theme.size


def _pencil(p: QPainter, spot: QRectF, text: str, theme: Theme) -> None:
    p.setBrush(brush(theme.paper, 0.92))
    p.setPen(Qt.PenStyle.NoPen)
    p.drawRoundedRect(spot, RADIUS, RADIUS)
    p.setBrush(Qt.BrushStyle.NoBrush)
    lettering.draw_in(p, spot, text, PENCILLED.sized(theme.size), theme.ink)
