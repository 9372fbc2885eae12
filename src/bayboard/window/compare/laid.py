"""Where numbers of ghosts and tags of changes stand on the Wall at a scale, worked out once for a picture."""

from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF

from bayboard.rules.scene import Scene
from bayboard.window.draw.change_tags import Tag, Wanted, placed_tags
from bayboard.window.draw.changes import ChangesShow, Shift, ghost_spot
from bayboard.window.draw.fixings import fixing_radius
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import ring_path
from bayboard.window.draw.uncovered import number_rects
from bayboard.window.theme import Theme

TITLE = 42.0  # px at the top that belong to the title line
AIR = 4.0  # px kept round a stand-in


@dataclass(frozen=True, slots=True)
class Laid:
    """The numbers of the ghosts by id, the tags by what they are about, and the numbers of what hangs now."""

    numbers: dict[str, QRectF]
    tags: dict[str, Tag]
    lettered: tuple[QRectF, ...] = ()


def laid_out(
    scale: Scale, new: Scene, show: ChangesShow, theme: Theme, rect: QRectF, loud: frozenset[str]
) -> Laid:
    """Return where the words stand: those about `loud` ids find a place in any case."""
    boxes = {name: scale.box(piece.box) for name, piece in new.placed.items()}
    lettered = number_rects(scale, new, theme)
    numbers = _ghost_numbers(scale, show, theme, list(boxes.values()))
    hard = [*lettered, *numbers.values()]
    soft = [
        *(box.adjusted(-AIR, -AIR, AIR, AIR) for box in boxes.values()),
        *_fixings(scale, new),
        *_arrows(scale, show),
    ]
    wanted = dict(_wanted(scale, show, theme, loud))
    within = rect.adjusted(6.0, TITLE * theme.size, -6.0, -6.0)
    tags = placed_tags(list(wanted.values()), within, hard, soft, theme)
    found = {name: tag for name, tag in zip(wanted, tags, strict=True) if tag is not None}
    return Laid(numbers, found, tuple(lettered))


def _ghost_numbers(scale: Scale, show: ChangesShow, theme: Theme, boxes: list[QRectF]) -> dict[str, QRectF]:
    found: dict[str, QRectF] = {}
    for shift in show.shifts:
        if shift.was:
            box = ring_path(shift.was, scale).boundingRect()
            spot = ghost_spot(box, shift.id, theme, [*boxes, *found.values()])
            if spot is not None:
                found[shift.id] = spot
    return found


def _fixings(scale: Scale, scene: Scene) -> Iterator[QRectF]:
    for fixing in scene.layout.fixings:
        at, r = scale.px(*fixing.at), fixing_radius(scale, fixing) + 4.0
        yield QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r)


def _arrows(scale: Scale, show: ChangesShow) -> Iterator[QRectF]:
    """Yield small boxes along each arrow and on each old bolt, for a tag to keep off."""
    ways = [shift.arrow for shift in show.shifts if shift.arrow is not None]
    ways += [(bolt.was, bolt.now or bolt.was) for bolt in show.bolts if bolt.was is not None]
    for start, end in ways:
        a, b = scale.px(*start), scale.px(*end)
        for share in (0.0, 0.25, 0.5, 0.75, 1.0):
            yield _round(a + (b - a) * share, 9.0)


def _wanted(
    scale: Scale, show: ChangesShow, theme: Theme, loud: frozenset[str]
) -> Iterator[tuple[str, Wanted]]:
    for shift in show.shifts:
        yield shift.id, Wanted(shift.tag, shift_box(scale, shift), shift.id in loud)
    for bolt in show.bolts:
        at = bolt.now or bolt.was
        if at is not None:
            yield bolt.id, Wanted(bolt.tag, _round(scale.px(*at), 12.0 * theme.size), bolt.id in loud)
    for told in show.told:
        yield told.text, Wanted(told.text, _round(scale.px(*told.at), 14.0 * theme.size))


def shift_box(scale: Scale, shift: Shift) -> QRectF:
    """Return the pixels of what a tag is about: where the piece is now, else where it was."""
    return ring_path(shift.now or shift.was, scale).boundingRect()


def _round(at: QPointF, r: float) -> QRectF:
    return QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r)
