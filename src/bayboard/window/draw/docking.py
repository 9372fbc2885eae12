"""Where the marks and tags of the findings stand: a mark on its spot, a tag where there is room for it.

Tags belong in the free bands beside the boards; where those are too far or full, on the scene, but never on
another tag, a stand-in's number, a port, an entry, a mark or the title line with the chalk line's flag.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.rules.scene import Scene
from bayboard.window.draw.free_room import Boxes, Room, boxes_of
from bayboard.window.draw.gear import face_of
from bayboard.window.draw.ground import grommet_radius
from bayboard.window.draw.leaders import Leader, clear_way
from bayboard.window.draw.marks import MARK, paint_mark
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import Mark, WallShow
from bayboard.window.draw.strokes import cased
from bayboard.window.draw.tags import paint_tag, tag_size
from bayboard.window.theme import Theme

TAGGED = 5  # the worst findings wear tags, the others their sign only
APART = 10.0  # px between two docked tags
TITLE = 42.0  # px at the top of the Wall that belong to its title line and to the chalk line's flag
FARTHEST = 240.0  # px; a tag that must lie farther from its mark stays folded
EDGE = 6.0  # px kept free at the Wall's other edges
NOTHING: Boxes = np.empty((0, 4))
Spotted = tuple[Mark, QPointF]  # a finding and the middle of its mark


@dataclass(frozen=True, slots=True)
class Docked:
    """A finding on the Wall: its mark's middle; where it wears a tag, that with its words and its leader."""

    mark: Mark
    at: QPointF
    tag: QRectF | None = None
    leader: Leader = ()
    words: str = ""


def mark_spot(scale: Scale, scene: Scene, theme: Theme, show: WallShow, mark: Mark) -> QPointF | None:
    """Return where a finding's sign stands, None when it has no place on this wall.

    One about a whole stand-in sits in its clipped corner, or in the opposite upper corner while
    the turning arc is there.
    """
    piece = scene.placed.get(mark.subject or "")
    if piece is not None and (mark.corner or mark.at is None):
        made, at = face_of(scale, piece, theme), scale.px(*piece.at)
        arc = mark.subject in show.selected
        x, y = made.other if arc else made.corner
        return QPointF(at.x() + x, at.y() + y)
    return None if mark.at is None else scale.px(*mark.at)


def docked(
    scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF, taken: Sequence[QRectF] = ()
) -> tuple[Docked, ...]:
    """Return every finding's mark with its place, the worst five and the told ones with docked tags.

    Findings already told by a measure are left out.  `taken`: rectangles no tag may cover.
    """
    last = _Last.of
    alike = last is not None and last[0] is scene and last[1] is show and last[2] is theme
    if alike and last is not None and last[3] == (scale, rect, list(taken)):
        return last[4]
    found = _spotted(scale, scene, theme, show, rect)
    worded = [pair for pair in found if pair[0].short]
    wearing = {m.number for m, _ in worded[:TAGGED]} | (show.told & {m.number for m, _ in worded})
    tagged = [pair for pair in found if pair[0].number in wearing]
    docks = _dock(tagged, found, scale, scene, theme, rect, taken) if tagged else {}
    made = tuple(docks.get(mark.number) or Docked(mark, at) for mark, at in found)
    _Last.of = scene, show, theme, (scale, rect, list(taken)), made
    return made


class _Last:
    """What was placed last: a frame asks more than once, for its names, its tags and the pointer."""

    of: tuple[Scene, WallShow, Theme, tuple[Scale, QRectF, list[QRectF]], tuple[Docked, ...]] | None = None


def _spotted(scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF) -> list[Spotted]:
    """Return the marks that are seen with their places, worst first, none on another."""
    told = {m.number for m in show.measures}
    seen = rect.adjusted(-20, -20, 20, 20)
    found: list[Spotted] = []
    aside = _Aside(0.8 * MARK * theme.size, MARK * theme.size)
    for mark in sorted(show.marks, key=lambda m: m.number):
        spot = None if mark.number in told else mark_spot(scale, scene, theme, show, mark)
        if spot is not None and seen.contains(spot):
            found.append((mark, aside.placed(spot)))
    return found


_STEPS = sorted(
    ((i / 2, j / 2) for i in range(-10, 11) for j in range(-10, 11)),
    key=lambda s: (s[0] ** 2 + 1.5 * s[1] ** 2, -s[0], s[1]),
)
"""Where a mark may stand aside, in marks: the nearest first, right before left, above before below."""


class _Aside:
    """Places marks so that none lies on another, nearer than `least` px across and down."""

    def __init__(self, least: float, step: float) -> None:
        self.least, self.step = least, step
        self.held: dict[tuple[int, int], list[tuple[float, float]]] = {}

    def placed(self, spot: QPointF) -> QPointF:
        """Return the spot, or the nearest free one beside it; the spot itself where all round it is full."""
        x, y = spot.x(), spot.y()
        free = ((x + i * self.step, y + j * self.step) for i, j in _STEPS)
        x, y = next((at for at in free if not self._taken(*at)), (x, y))
        self.held.setdefault(self._cell(x, y), []).append((x, y))
        return QPointF(x, y)

    def _cell(self, x: float, y: float) -> tuple[int, int]:
        return int(x // self.least), int(y // self.least)

    def _taken(self, x: float, y: float) -> bool:
        col, row = self._cell(x, y)
        for cell in ((col + i, row + j) for i in (-1, 0, 1) for j in (-1, 0, 1)):
            for a, b in self.held.get(cell, ()):
                if abs(x - a) < self.least and abs(y - b) < self.least:
                    return True
        return False


def number_rects(scale: Scale, scene: Scene, theme: Theme) -> list[QRectF]:
    """Return where the numbers of the stand-ins are lettered, in pixels."""
    return _rects(_on_cards(scale, scene, theme)[0])


def port_rects(scale: Scale, scene: Scene, theme: Theme) -> list[QRectF]:
    """Return where the ports are drawn, in pixels."""
    return _rects(_on_cards(scale, scene, theme)[1])


def _rects(boxes: Boxes) -> list[QRectF]:
    return [QRectF(x0, y0, x1 - x0, y1 - y0) for x0, y0, x1, y1 in boxes.tolist()]


def _on_cards(scale: Scale, scene: Scene, theme: Theme) -> tuple[Boxes, Boxes, Boxes]:
    """Return where the stand-ins' numbers, their ports and the ports' names are drawn, in pixels."""
    numbers, ports, names = [NOTHING], [NOTHING], [NOTHING]
    for piece in scene.placed.values():
        made, at = face_of(scale, piece, theme), scale.px(*piece.at)
        off = (at.x(), at.y(), at.x(), at.y())
        held = made.kept + off
        numbers.append(held[:1])
        ports.append(held[1:])
        names.append(made.names + off)
    return np.concatenate(numbers), np.concatenate(ports), np.concatenate(names)


def entry_rects(scale: Scale, scene: Scene) -> list[QRectF]:
    """Return where leads come in through the wall, in pixels."""
    r = grommet_radius(scale)
    spots = (scale.px(*entry.at) for entry in scene.layout.bay.entries)
    return [QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r) for at in spots]


def mark_rect(at: QPointF, theme: Theme) -> QRectF:
    """Return the rectangle of a mark round its middle, its casing with it."""
    half = 0.5 * MARK * theme.size + 3.0
    return QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half)


def _dock(
    wearing: Sequence[Spotted],
    marks: Sequence[Spotted],
    scale: Scale,
    scene: Scene,
    theme: Theme,
    rect: QRectF,
    taken: Sequence[QRectF],
) -> dict[int, Docked]:
    """Return the tags with their leaders by finding number; the worst choose first.

    One that finds no place near its mark with a clear leader keeps its tag folded.
    """
    size = theme.size
    numbers, ports, names = _on_cards(scale, scene, theme)
    signs = boxes_of([mark_rect(at, theme) for _, at in marks])
    inner = rect.adjusted(EDGE, TITLE * size, -EDGE, -EDGE)
    entries = boxes_of(entry_rects(scale, scene))
    pieces = boxes_of([scale.box(piece.box) for piece in scene.placed.values()])
    boards = boxes_of([scale.box(shape.polygon.bounds) for shape in scene.boards.values()])
    room = Room.over(
        inner, np.concatenate([numbers, ports, signs, entries, boxes_of(list(taken))]), pieces, names, boards
    )
    found: dict[int, Docked] = {}
    for mark, at in wearing:
        tags = [one.tag for one in found.values() if one.tag is not None]
        across = np.concatenate([numbers, boxes_of(tags)])
        one = _tagged(mark, at, room, across, [one.leader for one in found.values()], theme)
        if one is not None and one.tag is not None:
            found[mark.number] = one
            room.hold(boxes_of([one.tag.adjusted(-APART, -APART, APART, APART)]))
            room.hold_line(one.leader)
    return found


def _tagged(
    mark: Mark, at: QPointF, room: Room, across: Boxes, others: Sequence[Leader], theme: Theme
) -> Docked | None:
    """Return a finding with its tag where there is room for one, in fewer words where it needs that."""
    for words in dict.fromkeys((mark.short or "", fewer(mark.short or ""))):
        wide, high = tag_size(words, theme, marked=True)
        places = room.places(at, wide, high, FARTHEST * theme.size)
        way = clear_way(places, (at.x(), at.y()), across, others)
        if way is not None:
            left, top, right, bottom = places[way[0]]
            return Docked(mark, at, QRectF(left, top, right - left, bottom - top), way[1], words)
    return None


def fewer(words: str) -> str:
    """Return a tag's words without what is needed: "1/8 in" of "1/8 in, needs 1/4 in"."""
    return words.partition(", ")[0]


def paint_docked(p: QPainter, found: Sequence[Docked], theme: Theme) -> None:
    """Paint leaders, then marks, then tags, so that none hides another's number."""
    for one in found:
        if one.leader:
            severity = one.mark.severity
            token = theme.shouldfill if severity == "should" else theme.severity(severity)
            path = QPainterPath(QPointF(*one.leader[0]))
            for x, y in one.leader[1:]:
                path.lineTo(x, y)
            cased(p, path, token, 2.2, theme)
    for one in reversed(found):
        paint_mark(p, one.at, one.mark.severity, one.mark.number, theme)
    for one in found:
        if one.tag is not None:
            paint_tag(p, one.tag, one.words, theme, one.mark.severity, one.mark.number)
