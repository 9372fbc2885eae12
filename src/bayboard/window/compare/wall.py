"""The Wall while two are compared: now as matter, then as chalk."""

from collections.abc import Iterator
from math import hypot

import shapely
from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget
from shapely import Polygon

from bayboard.model.layout import Point
from bayboard.rules.scene import Scene
from bayboard.window.access import announce
from bayboard.window.canvas import Canvas
from bayboard.window.compare import words
from bayboard.window.compare.desk import Compared, CompareDesk
from bayboard.window.compare.laid import Laid, laid_out
from bayboard.window.compare.shifts import outline_of, way_of
from bayboard.window.draw.chalk import paint_chalk_line
from bayboard.window.draw.change_tags import Tag, paint_tags, paint_ties
from bayboard.window.draw.changes import (
    paint_chosen,
    paint_chosen_bolt,
    paint_chosen_line,
    paint_dimmed,
    paint_ghost_number,
    paint_old,
    paint_ways,
)
from bayboard.window.draw.drilled import paint_made_screws
from bayboard.window.draw.fixings import paint_fixings
from bayboard.window.draw.gear import paint_gear
from bayboard.window.draw.ground import paint_ground
from bayboard.window.draw.leads import paint_leads
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import WallShow
from bayboard.window.draw.strokes import kept
from bayboard.window.draw.wall import gear_state
from bayboard.window.gestures.chalk import Chalk
from bayboard.window.gestures.gesture import FAR
from bayboard.window.listed import Listed
from bayboard.window.nearer import by_fingers, by_wheel
from bayboard.window.picking import pieces_at
from bayboard.window.theme import Theme
from bayboard.window.title_line import paint_title, title_end
from bayboard.window.wall_under import Under

FELT = 20.0  # px round a fixing that are felt as it


class CompareWall(Canvas, Listed):
    """The front view of two at once.  A click speaks of a thing that differs, a drag pushes the picture."""

    reads_as = "What differs on the wall"
    rings = True

    def __init__(self, desk: CompareDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.place = desk.place
        self.under = Under(self.place)
        self.chalk: Chalk | None = None
        self._pressed: QPointF | None = None
        self._last = QPointF()
        self._pushed = False
        self._laid: tuple[object, Laid] | None = None
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Wall, compared")
        self.grabGesture(Qt.GestureType.PinchGesture)
        desk.changed.connect(self.update)
        desk.looked.connect(self._tell)
        self.place.looked.connect(self.update)
        self.place.zoomed.connect(self.rescaled)
        self.place.opened.connect(self.settle)

    # --- painting ---

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def layer_scale(self) -> Scale:
        """Return the workplace's scale."""
        return self.place.scale

    def scene(self) -> Scene:
        """Return what hangs as matter."""
        return self.desk.made.new if self.desk.made is not None else self.place.scene

    def still_key(self) -> object:
        """Return what all but the tags is painted from."""
        return self.desk.made, self.scene().layout, self.place.lever

    def paint_still(self, p: QPainter) -> None:
        """Paint the ground, the old in chalk, the new on it, what is the same dimmed."""
        scale, scene, theme, made = self.place.scale, self.scene(), self.theme, self.desk.made
        show = WallShow(lever=self.place.lever)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.setRenderHint(QPainter.RenderHint.TextAntialiasing)
        paint_ground(p, scale, scene, theme, QRectF(self.rect()))
        paint_fixings(p, scale, scene, theme, show)
        if made is not None:
            paint_old(p, scale, made.show, theme)
            if made.leads:
                paint_leads(p, scale, scene, theme, show, drawn=made.leads)
        for piece in scene.placed.values():
            paint_gear(p, scale, piece, theme, gear_state(scene, show, piece))
            paint_made_screws(p, scale, scene.layout, piece, theme)
            if made is not None and piece.id in made.show.same:
                paint_dimmed(p, scale, piece, theme)
        if made is not None:
            paint_ways(p, scale, made.show, theme)

    def paint_live(self, p: QPainter) -> None:
        """Paint the chalk line, the ring round what is spoken of, the words, the title line."""
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        laid, place = self.laid(), self.place
        placed = tuple(self.scene().placed.values())
        over = [tag.rect for tag in laid.tags.values()] + list(laid.numbers.values())
        if place.chalk_x is not None:
            paint_chalk_line(p, place.scale, place.chalk_x, self.theme, QRectF(self.rect()), placed, over)
        for name, spot in laid.numbers.items():
            paint_ghost_number(p, spot, name, self.theme)
        self._paint_spoken(p)
        tags: list[Tag | None] = list(laid.tags.values())
        paint_ties(p, tags, self.theme)
        spoken = [laid.tags[name].text for name in self.desk.spoken() if name in laid.tags]
        paint_tags(p, tags, self.theme, frozenset(spoken))
        self._paint_title(p)

    def _paint_spoken(self, p: QPainter) -> None:
        made = self.desk.made
        if made is None:
            return
        for name in self.desk.spoken():
            shift = self.desk.shift(name)
            if shift is not None:
                with kept(p):
                    p.setClipPath(self._off_numbers())
                    paint_chosen(p, self.place.scale, shift, self.theme)
            for at in _bolts_at(made, name):
                paint_chosen_bolt(p, self.place.scale, at, self.theme)
            edge = outline_of(name, made.new.layout) or outline_of(name, made.old.layout)
            way = way_of(name, made.new) or way_of(name, made.old)
            paint_chosen_line(p, self.place.scale, edge or way, self.theme, closed=bool(edge))

    def _off_numbers(self) -> QPainterPath:
        """Return the Wall without the numbers of what hangs there: no old edge runs through one."""
        whole, numbers = QPainterPath(), QPainterPath()
        whole.addRect(QRectF(self.rect()))
        for spot in self.laid().lettered:
            numbers.addRect(spot.adjusted(-3.0, -3.0, 3.0, 3.0))
        return whole.subtracted(numbers)

    def _paint_title(self, p: QPainter) -> None:
        place, theme, made, phrases = self.place, self.theme, self.desk.made, self.phrases()
        chalk = -1.0 if place.chalk_x is None else place.scale.px(place.chalk_x, 0.0).x()
        below = 0.0 < chalk < title_end(theme, "Wall", phrases[0]) + 20.0
        veiled = not place.whole or below or (made is not None and bool(made.show.outlines))
        paint_title(p, self.width(), theme, "Wall", phrases, theme.ink, theme.room, veiled)

    def phrases(self) -> tuple[str, ...]:
        """Return what the title line says, in words of falling length."""
        return words.wall_phrases(self.desk.then, self.desk.now)

    def laid(self) -> Laid:
        """Return where the words stand, worked out once for a picture."""
        made, scale, rect = self.desk.made, self.place.scale, QRectF(self.rect())
        if made is None:
            return Laid({}, {})
        loud = frozenset(self.desk.spoken())
        key = (made, scale, self.theme, rect.size(), loud)
        if self._laid is None or self._laid[0] != key:
            self._laid = key, laid_out(scale, made.new, made.show, self.theme, rect, loud)
        return self._laid[1]

    def _tell(self) -> None:
        rows, row = self.desk.rows(), self.desk.row
        if 0 <= row < len(rows):
            said = f"{rows[row].label} {rows[row].words}"
            self.setAccessibleDescription(said)
            announce(self, said)
        self.update()

    # --- what lies where ---

    def name_at(self, at: QPointF) -> str | None:
        """Return the thing that differs under a pixel: a tag's, a piece, a ghost, a fixing; None for none."""
        made, scale = self.desk.made, self.place.scale
        if made is None:
            return None
        tagged = (name for name, tag in self.laid().tags.items() if tag.rect.contains(at))
        spot = shapely.Point(scale.mm(at))
        ghosts = (s.id for s in made.show.shifts if s.was and Polygon(s.was).covers(spot))
        near = (
            name
            for name, where in _all_bolts(made)
            if hypot(scale.px(*where).x() - at.x(), scale.px(*where).y() - at.y()) <= FELT * self.theme.size
        )
        found = (*tagged, *pieces_at(made.new, scale.mm(at)), *near, *ghosts)
        return next((name for name in found if self.desk.row_of(name) >= 0), None)

    # --- the mouse ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click, a push, or a drag of the chalk line."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        at, left = event.position(), event.button() == Qt.MouseButton.LeftButton
        if left and self._on_line(at):
            self.chalk = Chalk(self.place, at, event.modifiers())
        elif left or event.button() == Qt.MouseButton.MiddleButton:
            self._pressed = self._last = at
            self._pushed = not left

    def _on_line(self, at: QPointF) -> bool:
        return self.under.flag(at) or (self.under.line(at) and self.name_at(at) is None)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Push the picture or draw the line along, else show what is under the pointer."""
        at = event.position()
        self.place.point(self.place.scale.mm(at))
        if self.chalk is not None:
            self.chalk.move(at, event.modifiers())
        elif self._pressed is not None:
            self._push(at)
        else:
            self._show_cursor(at)

    def _push(self, at: QPointF) -> None:
        assert self._pressed is not None
        self._pushed = self._pushed or (at - self._pressed).manhattanLength() > FAR
        if self._pushed:
            by, self._last = at - self._last, at
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
            self.place.set_scale(self.place.scale.moved(by.x(), by.y()))

    def _show_cursor(self, at: QPointF) -> None:
        shape = Qt.CursorShape.ArrowCursor
        if self.name_at(at) is not None:
            shape = Qt.CursorShape.PointingHandCursor
        elif self._on_line(at):
            shape = Qt.CursorShape.SizeHorCursor
        self.setCursor(shape)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Speak of what was clicked; bare wall leaves it."""
        pressed, self._pressed, self.chalk = self._pressed, None, None
        self._show_cursor(event.position())
        if pressed is None or self._pushed:
            return
        name = self.name_at(pressed)
        if name is None:
            self.desk.leave_row()
        else:
            self.desk.speak_of(self.desk.row_of(name))

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.place.point(None)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer; two fingers on a pad push the picture."""
        by_wheel(self.place, event)

    def event(self, event: QEvent) -> bool:
        """Zoom with two fingers."""
        return by_fingers(self, event) or super().event(event)

    def call_off(self) -> bool:
        """End a drag without effect; return whether there was one."""
        chalk, self.chalk = self.chalk, None
        if chalk is not None:
            chalk.cancel()
        return chalk is not None

    # --- keys ---

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk what differs with Tab, then leave."""
        if self.hasFocus() and self.isVisible() and self.desk.step(1 if forward else -1):
            return True
        return super().focusNextPrevChild(forward)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to either end with Home and End; 0 shows the wall whole; the rest is the window's."""
        if event.key() in (Qt.Key.Key_Home, Qt.Key.Key_End):
            now = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self.desk.walk_to_end(event.key() == Qt.Key.Key_End, now)
        elif event.text() == "0":
            self.place.fit()
        else:
            event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Begin at that end of what differs when Tab comes in."""
        ends = {Qt.FocusReason.TabFocusReason: 0, Qt.FocusReason.BacktabFocusReason: -1}
        if event.reason() in ends and self.desk.rows():
            self.desk.speak_of(range(len(self.desk.rows()))[ends[event.reason()]])
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Let go of what a drag holds."""
        self._pressed = None
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw sharp at once."""
        self.settle()

    # --- read aloud ---

    def _about(self) -> list[tuple[str, str, QRectF]]:
        """Return (id, sentence, pixels) of each thing on the Wall that differs."""
        made, scale = self.desk.made, self.place.scale
        if made is None:
            return []
        found = []
        for name, tag in self.laid().tags.items():
            row = self.desk.row_of(name)
            words_ = f"{name} {self.desk.rows()[row].words}" if row >= 0 else tag.text
            shift = self.desk.shift(name)
            box = tag.rect
            if shift is not None:
                xs, ys = zip(*(shift.now or shift.was), strict=True)
                box = scale.box((min(xs), min(ys), max(xs), max(ys)))
            found.append((name, words_, box))
        return found

    def parts_said(self) -> list[str]:
        """Return a sentence for each thing that differs."""
        return [said for _, said, _ in self._about()]

    def part_rect(self, index: int) -> QRectF:
        """Return where a thing lies."""
        return self._about()[index][2]

    def part_held(self, index: int) -> bool:
        """Return whether a thing is spoken of."""
        return self._about()[index][0] in self.desk.spoken()


def _all_bolts(made: Compared) -> Iterator[tuple[str, Point]]:
    """Yield the fixings that are there now, then those that went, with their places."""
    here = {fixing.id for fixing in made.new.layout.fixings}
    for fixing in made.new.layout.fixings:
        yield fixing.id, fixing.at
    for fixing in made.old.layout.fixings:
        if fixing.id not in here:
            yield fixing.id, fixing.at


def _bolts_at(made: Compared, name: str) -> Iterator[Point]:
    return (at for found, at in _all_bolts(made) if found == name)
