"""The Wall: the front view, and the hand that works in it."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from bayboard.routing.route import Route
from bayboard.units.length import show_length
from bayboard.window import lettering
from bayboard.window.carrying import Carrying
from bayboard.window.draw.scale import Scale, box_of
from bayboard.window.draw.show import WallShow
from bayboard.window.draw.wall import leads_of, paint_live, paint_still
from bayboard.window.fingers import Fingers
from bayboard.window.gestures.chalk import Chalk
from bayboard.window.gestures.gesture import HOLD, Gesture
from bayboard.window.gestures.held import held_back
from bayboard.window.gestures.marquee import HeldMarquee, Marquee
from bayboard.window.gestures.move import MarkMove, Move
from bayboard.window.gestures.pan import FingerPan, Pan
from bayboard.window.gestures.span import Span, picked
from bayboard.window.gestures.turn import Turn
from bayboard.window.lettering import FIRST, Style
from bayboard.window.nearer import by_fingers, by_wheel
from bayboard.window.picking import felt_at
from bayboard.window.place_view import PlaceView
from bayboard.window.showing import still, wall_show
from bayboard.window.theme import brush, pen
from bayboard.window.title_line import paint_title, title_end
from bayboard.window.wall_under import Under
from bayboard.window.workplace import Workplace

FLAT = 45.0  # degrees of lean from which a wall is rather a floor or a roof


class WallView(PlaceView[WallShow]):
    """The front view.  It turns presses into gestures and passes what they mean to the workplace."""

    menu_wanted = Signal(QPoint)  # global place of a context menu for what is selected
    finding_pressed = Signal(int)  # the number of a finding whose mark was pressed
    fingers: Fingers | None = None  # Qt sends events before there are any

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, "Wall", wall_show, parent)
        self.gesture: Gesture | None = None
        self.under = Under(place)
        self.carrying = Carrying(place, self, self.update)
        place.passed.connect(self._anew)
        self.walk: Callable[[int], bool] | None = None  # selects the next or last piece, for Tab
        self.unusual = ""  # what the title line says while a mode beside the stages is on screen
        self._space = False
        self._hold = QTimer(self)  # a finger that rests asks for the menu
        self._hold.setSingleShot(True)
        self._hold.setInterval(HOLD)
        self._hold.timeout.connect(self._held)
        self.fingers = Fingers(self)
        self.setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)

    # --- painting ---

    def layer_scale(self) -> Scale:
        """Return the workplace's scale."""
        return self.place.scale

    def still_key(self) -> object:
        """Return what the still layer is painted from: while pieces are moved, all but them."""
        place, moving = self.place, self.carrying.pieces()
        if not moving:
            return place.shown, still(self.show_now())
        rest = tuple(gear for gear in place.shown.gear if gear.id not in moving)
        return moving, rest, place.shown.boards, self._routes_beside(moving), place.lever, place.selected

    def _routes_beside(self, moving: frozenset[str]) -> tuple[Route, ...]:
        """Return the paths of leads that do not end at what is moved: one that gives way is seen to."""
        scene = self.place.scene
        carried = leads_of(scene, moving)
        return tuple(route for n, route in scene.carried.items() if n not in carried)

    def paint_still(self, p: QPainter) -> None:
        """Paint the Wall without what is in the hand and what lies on it."""
        place, moving = self.place, self.carrying.pieces()
        paint_still(p, place.scale, place.scene, self.theme, still(self.show_now()), self._rect(), moving)

    def paint_live(self, p: QPainter) -> None:
        """Paint what is in the hand, and all that is laid on the scene."""
        place, show, moving = self.place, self.show_now(), self.carrying.pieces()
        aloft = self.carrying.aloft(show.measures)
        paint_live(p, place.scale, place.scene, self.theme, show, self._rect(), moving, aloft)
        if place.first_start:
            self._paint_first_start(p)
        self._paint_title(p)

    def _rect(self) -> QRectF:
        return QRectF(self.rect())

    def _paint_title(self, p: QPainter) -> None:
        place, theme, phrase = self.place, self.theme, self.phrase()
        chalk = -1.0 if place.chalk_x is None else place.scale.px(place.chalk_x, 0.0).x()
        veiled = not place.whole or 0.0 < chalk < title_end(theme, "Wall", phrase) + 20.0
        paint_title(p, self.width(), theme, "Wall", (phrase,), theme.ink, theme.room, veiled)

    def _paint_first_start(self, p: QPainter) -> None:
        """Say on the bare wall how to begin."""
        theme, size, middle = self.theme, self.theme.size, QPointF(self._rect().center())
        sheet = QPainterPath()
        half = min(0.38 * self.width(), 430.0 * size), min(0.26 * self.height(), 150.0 * size)
        sheet.addRoundedRect(
            QRectF(middle.x() - half[0], middle.y() - half[1], 2 * half[0], 2 * half[1]), 14.0, 14.0
        )
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.fillPath(sheet, brush(theme.ink, 0.05))
        p.strokePath(sheet, pen(theme.ink, 1.6, dash=(6.0, 4.0)))
        for words, style, down in (
            ("A board goes here.", FIRST, -14.0),
            ("Open a vehicle, drop its file here, or look at a finished one.", Style(px=18.0), 26.0),
        ):
            at = QPointF(middle.x(), middle.y() + down * size)
            lettering.draw(p, at, words, style.sized(size), theme.ink, "centre")

    def phrase(self) -> str:
        """Return what the title line says: what is unusual, else the wall's size and whence it is seen."""
        if self.unusual or self.place.spans.asking:
            return self.unusual or self.place.spans.phrase()
        if self.place.wall_rect != self.place.usual_rect:
            return "round the chalk line"
        layout = self.place.shown
        box = box_of(layout.bay.wall)
        if box is None:
            return "nothing measured yet"
        sides = [show_length(side, layout.units) for side in (box[2] - box[0], box[3] - box[1])]
        lean = layout.bay.lean
        seen = "from above" if lean >= FLAT else "from below" if lean <= -FLAT else "from the cabin"
        return f"{sides[0].removesuffix(f' {layout.units}')} × {sides[1]}, seen {seen}"

    # --- the mouse ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin the gesture that a press at this place means."""
        if self.gesture is not None:
            return
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        at, mods = event.position(), event.modifiers()
        if event.button() == Qt.MouseButton.MiddleButton or (
            self._space and event.button() == Qt.MouseButton.LeftButton
        ):
            self.start(Pan(self.place, at, mods))
        elif event.button() == Qt.MouseButton.LeftButton:
            self.press(at, mods, event.source() != Qt.MouseEventSource.MouseEventNotSynthesized)
        elif event.button() == Qt.MouseButton.RightButton:
            self._pick_for_menu(at)

    def press(self, at: QPointF, mods: Qt.KeyboardModifier, finger: bool = False) -> None:
        """Begin the gesture that a press means; a `finger` that rests asks for the menu."""
        place = self.place
        found = felt_at(place.scene, place.scale.mm(at), place.scale.px_per_mm)
        number = self.under.mark(at, self.show_now(), self._rect())
        if finger:
            self._hold.start()
        if place.spans.asking:
            self.start(Span(place, at, mods))
        elif self.under.grip(at):
            self.start(Turn(place, at, mods))
        elif number is not None:
            self._press_mark(at, mods, number, found)
        elif self.under.flag(at) or (not found and self.under.line(at)):
            self.start(Chalk(place, at, mods))
        elif found:
            chosen = next((name for name in found if name in place.selected), found[0])
            self.start(Move(place, at, mods, chosen))
        else:
            self.start(FingerPan(place, at, mods) if finger else Marquee(place, at, mods))

    def _press_mark(self, at: QPointF, mods: Qt.KeyboardModifier, number: int, found: Sequence[str]) -> None:
        """Ask for a finding; a mark on a stand-in is let go first, for the stand-in may be dragged by it."""
        pieces = [name for name in found if name in self.place.scene.placed]
        if not pieces or not self.under.on_spot(at, number):
            self.finding_pressed.emit(number)
            return
        chosen = next((name for name in pieces if name in self.place.selected), pieces[0])
        ask = partial(self.finding_pressed.emit, number)
        self.start(MarkMove(self.place, at, mods, chosen, ask))

    def start(self, gesture: Gesture) -> None:
        """Let a gesture follow the mouse until it is released."""
        self.gesture = gesture
        self._show_cursor(None)

    def _held(self) -> None:
        """Ask for the menu when a finger has rested on the spot where it came down.

        On the bare wall it may draw a box from there first.
        """
        gesture = self.gesture
        if gesture is None or gesture.dragging or self.place.spans.asking:
            return
        self.call_off()
        if isinstance(gesture, FingerPan):
            self.start(HeldMarquee(self.place, gesture.start, gesture.mods, self._ask_menu))
        else:
            self._ask_menu(gesture.start)

    def _ask_menu(self, at: QPointF) -> None:
        self._pick_for_menu(at)
        self.menu_wanted.emit(self.mapToGlobal(at.toPoint()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Let the gesture follow, else show what is under the pointer."""
        at = event.position()
        self.place.point(self.place.scale.mm(at))
        if self.gesture is not None:
            self.gesture.move(at, event.modifiers())
            return
        if self.place.spans.asking:
            self.place.spans.point(picked(self.place, at))
            self._show_cursor(at)
            return
        found = felt_at(self.place.scene, self.place.scale.mm(at), self.place.scale.px_per_mm)
        self.place.hover(found[0] if found else self.under.lead(at))
        number = self.under.mark(at, self.show_now(), self._rect())
        numbered = (f for f in self.place.verdict.findings if self.place.verdict.number(f) == number)
        self.place.point_at(None if number is None else next(numbered, None))
        self._show_cursor(at)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End the gesture."""
        held = Qt.MouseButton.LeftButton | Qt.MouseButton.MiddleButton
        if not event.buttons() & held:
            self.let_go(event.position(), event.modifiers())
            self._show_cursor(event.position())

    def let_go(self, at: QPointF, mods: Qt.KeyboardModifier) -> None:
        """End the gesture where the pointer is, if there is one."""
        self._hold.stop()
        gesture, self.gesture = self.gesture, None
        if gesture is not None:
            gesture.release(at, mods)

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.place.point(None)
        self.place.point_at(None)
        self.place.hover(None)

    def call_off(self) -> bool:
        """End the gesture without effect; return whether there was one."""
        self._hold.stop()
        gesture, self.gesture = self.gesture, None
        if gesture is None:
            return False
        gesture.cancel()
        self._show_cursor(None)
        return True

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer; two fingers on a pad push the picture."""
        by_wheel(self.place, event)

    def event(self, event: QEvent) -> bool:
        """Follow fingers."""
        touched = self.fingers is not None and self.fingers.take(event)
        return touched or by_fingers(self, event) or super().event(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu, at the selected piece when it comes from the keyboard."""
        at = event.globalPos()
        if event.reason() == QContextMenuEvent.Reason.Keyboard:
            spot = self._selected_spot() or QPointF(self.rect().center())
            at = self.mapToGlobal(spot.toPoint())
        self.menu_wanted.emit(at)

    def _selected_spot(self) -> QPointF | None:
        placed = [p for n in self.place.selected if (p := self.place.scene.placed.get(n))]
        return self.place.scale.px(*placed[0].at) if placed else None

    def _pick_for_menu(self, at: QPointF) -> None:
        found = felt_at(self.place.scene, self.place.scale.mm(at), self.place.scale.px_per_mm)
        if found and not set(found) & set(self.place.selected):
            self.place.select(found[:1])

    def _show_cursor(self, at: QPointF | None) -> None:
        shape = Qt.CursorShape.ArrowCursor
        if self.gesture is not None:
            shape = self.gesture.cursor or shape
        elif self.place.spans.asking:
            shape = Qt.CursorShape.CrossCursor
        elif (at is not None and self._space) or (
            at is not None and (self.under.grip(at) or self._loose(self.place.hovered))
        ):
            shape = Qt.CursorShape.OpenHandCursor
        elif at is not None and (self.under.flag(at) or self.under.line(at)):
            shape = Qt.CursorShape.SizeHorCursor
        self.setCursor(shape)

    def _loose(self, name: str | None) -> bool:
        """Return whether a hand could take that: a stand-in that is neither taped down nor drilled."""
        return name in self.place.scene.placed and not held_back(self.place, (name or "",), "move")

    # --- keys that belong to the Wall alone ---

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk the stand-ins with Tab before the keys go on to the next part of the window."""
        if self.gesture is None and self.walk is not None and self.walk(1 if forward else -1):
            return True
        return super().focusNextPrevChild(forward)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Hold Space to push the picture; everything else is the window's."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = True
            self.setCursor(Qt.CursorShape.OpenHandCursor)
            return
        event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Let go of the picture."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = False
            self._show_cursor(None)
            return
        event.ignore()

    def ringed(self) -> bool:
        """Return whether the Wall wears a ring: where no stand-in wears the keys' ring."""
        return super().ringed() and not (self.place.by_keys and self.place.selected)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Begin with the first piece when Tab comes in, with the last when it comes in backwards."""
        by = {Qt.FocusReason.TabFocusReason: 1, Qt.FocusReason.BacktabFocusReason: -1}.get(event.reason())
        if by is not None and self.walk is not None:
            self.place.select(())
            self.walk(by)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Let go of the picture when the keys go elsewhere."""
        self._space = False
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw sharp at once."""
        self.settle()
