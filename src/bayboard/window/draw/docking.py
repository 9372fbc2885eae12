"""Where the tags of the findings stand: where there is room for one near its mark.

Tags belong in the free bands beside the boards; where those are too far or full, on the scene, but never on
another tag, a stand-in's number, a port, an entry, a mark or the title line with the chalk line's flag.
A tag stays where it was in the frame before while that place is free and near: only those that must move
are placed anew.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.rules.scene import Scene
from bayboard.window.draw.free_room import Boxes, Room, boxes_of, way_to
from bayboard.window.draw.leaders import Leader, clear_way, meets
from bayboard.window.draw.mark_spots import Spotted, Step, mark_rect, spotted
from bayboard.window.draw.marks import paint_mark
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import Mark, WallShow
from bayboard.window.draw.strokes import cased
from bayboard.window.draw.tags import paint_tag, tag_size
from bayboard.window.draw.uncovered import entry_rects, on_cards
from bayboard.window.theme import Theme

TAGGED = 5  # the worst findings wear tags, the others their sign only
APART = 10.0  # px between two docked tags
TITLE = 42.0  # px at the top of the Wall that belong to its title line and to the chalk line's flag
FARTHEST = 240.0  # px; a tag that must lie farther from its mark stays folded
STRAY = 90.0  # px that a mark may go off from its tag before that follows
STIR = 12.0  # px that a mark in the hand goes before room for its folded tag is looked for again
EDGE = 6.0  # px kept free at the Wall's other edges


@dataclass(frozen=True, slots=True)
class Docked:
    """A finding on the Wall: its mark's middle; where it wears a tag, that with its words and its leader."""

    mark: Mark
    at: QPointF
    tag: QRectF | None = None
    leader: Leader = ()
    words: str = ""
    way: float = 0.0  # px from the tag to the mark when the tag was placed


@dataclass(slots=True)
class _Frame:
    """What was placed last on a Wall of one size and zoom, by finding."""

    wall: tuple[Scale, QRectF, float] | None = None
    asked: tuple[Scene, WallShow, Theme, list[QRectF]] | None = None
    made: tuple[Docked, ...] = ()
    asides: dict[tuple[str, ...], Step] = field(default_factory=dict)
    tags: dict[tuple[str, ...], Docked] = field(default_factory=dict)
    folded: dict[tuple[str, ...], QPointF] = field(default_factory=dict)


class _Last:
    """A frame asks more than once, for its names, its tags and the pointer; the next one starts from it."""

    frame = _Frame()


def docked(
    scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF, taken: Sequence[QRectF] = ()
) -> tuple[Docked, ...]:
    """Return every finding's mark with its place, the worst five and the told ones with docked tags.

    Findings already told by a measure are left out.  `taken`: rectangles no tag may cover.
    """
    wall = scale, QRectF(rect), theme.size
    last = _Last.frame if _Last.frame.wall == wall else _Frame(wall)
    if last.asked is not None:
        known, shown, themed, covered = last.asked
        if known is scene and shown is show and themed is theme and covered == list(taken):
            return last.made
    found, asides = spotted(scale, scene, theme, show, rect, last.asides)
    worded = [pair for pair in found if pair[0].short]
    wearing = {m.number for m, _ in worded[:TAGGED]} | (show.told & {m.number for m, _ in worded})
    tagged = [pair for pair in found if pair[0].number in wearing]
    docks = _Dock(scale, scene, theme, rect, found, taken).worn(tagged, last, bool(show.in_hand))
    made = tuple(docks.get(mark.number) or Docked(mark, at) for mark, at in found)
    _Last.frame = _Frame(
        wall,
        (scene, show, theme, list(taken)),
        made,
        asides,
        {one.mark.of: one for one in docks.values() if one.mark.of},
        {
            mark.of: at if _stirred(mark, at, last) else last.folded[mark.of]
            for mark, at in tagged
            if mark.of and mark.number not in docks
        },
    )
    return made


class _Dock:
    """One frame: what no tag may cover, and the tags that have their place, by finding number."""

    def __init__(
        self,
        scale: Scale,
        scene: Scene,
        theme: Theme,
        rect: QRectF,
        marks: Sequence[Spotted],
        taken: Sequence[QRectF],
    ) -> None:
        self.scale, self.scene, self.theme = scale, scene, theme
        self.inner = rect.adjusted(EDGE, TITLE * theme.size, -EDGE, -EDGE)
        cards = on_cards(scale, scene, theme)
        self.numbers, self.names = cards.numbers, cards.names
        signs = [mark_rect(at, theme) for _, at in marks]
        rects = boxes_of([*signs, *entry_rects(scale, scene), *taken])
        self.held = np.concatenate([cards.numbers, cards.ports, rects])

    def worn(self, tagged: Sequence[Spotted], last: _Frame, in_hand: bool) -> dict[int, Docked]:
        """Return the tags with their leaders; those stay that can, of the others the worst choose first.

        One that finds no place near its mark with a clear leader keeps its tag folded, and while something is
        in the hand waits until its mark has gone some way.  All are placed anew where that folds fewer.
        """
        found: dict[int, Docked] = {}
        for mark, at in tagged:
            before = last.tags.get(mark.of) if mark.of else None
            stays = None if before is None else self._kept(mark, at, before, list(found.values()))
            if stays is not None:
                found[mark.number] = stays
        kept = len(found)
        moves = [pair for pair in tagged if pair[0].number not in found]
        looked = [pair for pair in moves if not in_hand or _stirred(*pair, last)]
        found = self._placed(looked, found)
        if kept and looked and len(found) < len(tagged):
            anew = self._placed(tagged, {})
            return anew if len(anew) > len(found) else found
        return found

    def _kept(self, mark: Mark, at: QPointF, before: Docked, others: Sequence[Docked]) -> Docked | None:
        """Return a finding with its tag where that was, None where it cannot stay."""
        if before.tag is None:
            return None
        for words in _worded(mark):
            wide, high = tag_size(words, self.theme, marked=True)
            left = before.tag.left()
            for x in dict.fromkeys((left, before.tag.right() - wide)):
                tag = QRectF(x, before.tag.top(), wide, high)
                way = way_to(tag, at)
                if way > min(FARTHEST * self.theme.size, before.way + STRAY) or not self._free(tag, others):
                    continue
                line = self._leader(boxes_of([tag]), at, others)
                if line is not None:
                    return Docked(mark, at, tag, line[1], words, before.way)
        return None

    def _free(self, tag: QRectF, others: Sequence[Docked]) -> bool:
        """Return whether a tag covers nothing that must be seen, no other tag and no other's leader."""
        left, top, right, bottom = edges = tag.left(), tag.top(), tag.right(), tag.bottom()
        held = self.held
        over = (held[:, 0] < right) & (held[:, 2] > left) & (held[:, 1] < bottom) & (held[:, 3] > top)
        if over.any() or not self.inner.contains(tag):
            return False
        round_ = tag.adjusted(-APART, -APART, APART, APART)
        return not any(
            (one.tag is not None and one.tag.intersects(round_)) or meets(one.leader, edges) for one in others
        )

    def _leader(self, places: Boxes, at: QPointF, others: Sequence[Docked]) -> tuple[int, Leader] | None:
        across = np.concatenate([self.numbers, boxes_of([one.tag for one in others if one.tag is not None])])
        return clear_way(places, (at.x(), at.y()), across, [one.leader for one in others])

    def _placed(self, tagged: Sequence[Spotted], stayed: dict[int, Docked]) -> dict[int, Docked]:
        """Return the tags that stayed and those placed round them, the worst first."""
        found = dict(stayed)
        if not tagged:
            return found
        room = self._room()
        for one in found.values():
            _hold(room, one)
        for mark, at in tagged:
            one = self._tagged(mark, at, room, list(found.values()))
            if one is not None:
                found[mark.number] = one
                _hold(room, one)
        return found

    def _room(self) -> Room:
        pieces = boxes_of([self.scale.box(piece.box) for piece in self.scene.placed.values()])
        boards = boxes_of([self.scale.box(shape.polygon.bounds) for shape in self.scene.boards.values()])
        return Room.over(self.inner, self.held, pieces, self.names, boards)

    def _tagged(self, mark: Mark, at: QPointF, room: Room, others: Sequence[Docked]) -> Docked | None:
        """Return a finding with its tag where there is room for one, in fewer words where it needs that."""
        for words in _worded(mark):
            wide, high = tag_size(words, self.theme, marked=True)
            places = room.places(at, wide, high, FARTHEST * self.theme.size)
            way = self._leader(places, at, others)
            if way is not None:
                left, top, right, bottom = places[way[0]]
                tag = QRectF(left, top, right - left, bottom - top)
                return Docked(mark, at, tag, way[1], words, way_to(tag, at))
        return None


def _stirred(mark: Mark, at: QPointF, last: _Frame) -> bool:
    """Return whether a mark has gone some way since no room was found for its tag."""
    was = last.folded.get(mark.of)
    return was is None or (was - at).manhattanLength() >= STIR


def _hold(room: Room, one: Docked) -> None:
    """Hold a tag with the air round it, and its leader."""
    if one.tag is not None:
        room.hold(boxes_of([one.tag.adjusted(-APART, -APART, APART, APART)]))
        room.hold_line(one.leader)


def _worded(mark: Mark) -> Sequence[str]:
    """Return what a finding's tag may say, the whole first."""
    return tuple(dict.fromkeys((mark.short or "", fewer(mark.short or ""))))


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
