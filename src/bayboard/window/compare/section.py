"""The Section while two are compared: now solid, then dashed."""

from msgspec.structs import replace
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QMouseEvent, QPainter
from PySide6.QtWidgets import QWidget

from bayboard.model.layout import Units
from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene
from bayboard.units.length import show_length
from bayboard.window.compare.desk import CompareDesk
from bayboard.window.depth import seat_rooms
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.section import paint_section
from bayboard.window.draw.section_show import SectionShow
from bayboard.window.draw.tags import paint_name, tag_size
from bayboard.window.draw.then_section import (
    cut_at,
    paint_number,
    paint_side_tags,
    paint_then,
    side_boxes,
    side_tags,
)
from bayboard.window.side_view import SideView
from bayboard.window.theme import Theme


class CompareSection(SideView):
    """What a cut at the chalk line shows of both, looking left."""

    def __init__(self, desk: CompareDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.place = desk.place
        self._cut: tuple[object, Scene] | None = None
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.setAccessibleName("Section, compared")
        desk.changed.connect(self.update)
        desk.looked.connect(self.update)
        self.place.looked.connect(self.update)
        self.place.zoomed.connect(self.rescaled)
        self.place.opened.connect(self.settle)

    # --- what is cut ---

    def scene(self) -> Scene:
        """Return what hangs as matter."""
        return self.desk.made.new if self.desk.made is not None else self.place.scene

    def cut_now(self) -> tuple[Placed, ...]:
        """Return the stand-ins that the chalk line passes through."""
        x = self.place.chalk_x
        return () if x is None else cut_at(self.scene(), x)

    def cut_then(self) -> tuple[Placed, ...]:
        """Return the old places of stand-ins at the chalk line, of those that differ."""
        made, x = self.desk.made, self.place.chalk_x
        if made is None or x is None:
            return ()
        differ = {shift.id for shift in made.show.shifts if shift.was or shift.kind == "changed"}
        return tuple(piece for piece in cut_at(made.old, x) if piece.id in differ)

    def _scene_of_cut(self) -> Scene:
        """Return the scene of no more than what is cut: beyond it, dashes would read as what was."""
        whole, names = self.scene(), frozenset(piece.id for piece in self.cut_now())
        key = (whole, names)
        if self._cut is None or self._cut[0] != key:
            gear = tuple(piece for piece in whole.layout.gear if piece.id in names)
            only = Scene(replace(whole.layout, gear=gear, leads=()), before=whole, known_routes={})
            self._cut = key, only
        return self._cut[1]

    # --- painting ---

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def still_key(self) -> object:
        """Return what the whole view is painted from."""
        place = self.place
        return (
            self.desk.made,
            self.scene().layout,
            place.chalk_x,
            place.lever,
            self.desk.spoken(),
            place.units,
        )

    def paint_still(self, p: QPainter) -> None:
        """Paint the cut, the old over it, and the words."""
        place, scale, rect = self.place, self.layer_scale(), QRectF(self.rect())
        spoken = frozenset(self.desk.spoken())
        show = SectionShow(chalk_x=place.chalk_x, lever=place.lever, selected=spoken)
        paint_section(p, scale, self._scene_of_cut(), self.theme, show, rect)
        if place.chalk_x is None:
            return
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.setClipRect(rect)
        self._paint_both(p, scale, rect, place.chalk_x)

    def _paint_both(self, p: QPainter, scale: Scale, rect: QRectF, x: float) -> None:
        old = self.cut_then()
        boxes = paint_then(p, scale, old, self.theme, x)
        matter = {piece.id: _whole(side_boxes(piece, scale, x)) for piece in self.cut_now()}
        told: list[tuple[str, QRectF]] = []
        for piece, box in zip(old, boxes, strict=True):
            paint_number(p, box, piece.id, self.theme, list(matter.values()))
            if piece.id in matter:
                told.append(("now", matter[piece.id]))
            told.append(("then", box))
        seat_name = QRectF(0.0, 30.0, 0.48 * rect.width(), 80.0 * self.theme.size)
        tags = side_tags(told, self.theme, rect, [*matter.values(), *boxes, seat_name])
        paint_side_tags(p, tags, self.theme)
        for words in self.room_words():
            wide, high = tag_size(words, self.theme)
            spot = QRectF(14.0, rect.bottom() - high - 60.0 * self.theme.size, wide, high)
            if spot.right() <= rect.right() - 6.0:
                paint_name(p, spot, words, self.theme)
                break

    def room_words(self) -> tuple[str, ...]:
        """Return the room under the seat then and now, in words of falling length.

        It is that of the first stand-in at the cut that has both; () where there is none.
        """
        made = self.desk.made
        if made is None or self.place.lever != "up":
            return ()
        now = {piece.id: piece for piece in self.cut_now()}
        for piece in self.cut_then():
            pair = [(made.old, piece), (made.new, now.get(piece.id))]
            rooms = [seat_rooms(scene, one) for scene, one in pair if one is not None]
            if len(rooms) == 2 and all(rooms):
                return _room_words(rooms[0][0].left, rooms[1][0].left, self.place.units)
        return ()

    # --- hands ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Speak of the piece that is cut here."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        name = self.piece_at(event.position())
        row = -1 if name is None else self.desk.row_of(name)
        if event.button() == Qt.MouseButton.LeftButton and row >= 0:
            self.desk.speak_of(row)

    def piece_at(self, at: QPointF) -> str | None:
        """Return the piece whose cut, now or then, lies under a pixel."""
        x, scale = self.place.chalk_x, self.layer_scale()
        if x is None:
            return None
        for piece in (*self.cut_now(), *self.cut_then()):
            if any(box.contains(at) for box in side_boxes(piece, scale, x)):
                return piece.id
        return None


def _whole(boxes: list[QRectF]) -> QRectF:
    whole = boxes[0]
    for box in boxes[1:]:
        whole = whole.united(box)
    return whole


def _room_words(then: float, now: float, units: Units) -> tuple[str, ...]:
    """Return what is told of two rooms; the unit stands once."""
    was, is_ = show_length(then, units), show_length(now, units)
    told = is_ if was == is_ else f"{was.removesuffix(f' {units}')} then, {is_} now"
    return tuple(f"{words}{told}" for words in ("room under the seat: ", "under the seat: ", ""))
