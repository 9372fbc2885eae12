"""The Bench: the ledge where stand-ins wait, true to the Wall's scale."""

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from bayboard.model.layout import Layout
from bayboard.window import lettering
from bayboard.window.canvas import Canvas
from bayboard.window.draw.bench import LedgePlace, ledge_places, paint_ledge, waiting
from bayboard.window.gestures.gesture import HOLD
from bayboard.window.gestures.pick_up import PickUp
from bayboard.window.lettering import BODY, HEADING, STRONG, Style
from bayboard.window.theme import Theme, brush, pen
from bayboard.window.workplace import Workplace

TOP = 46.0  # px of the title line
PAD = 16.0


class BenchPanel(Canvas):
    """What waits.  A press on a piece takes it in the hand; arrows and Enter do without a mouse."""

    hang_wanted = Signal(str)  # the id of a piece to be hung on the first free spot
    menu_wanted = Signal(QPoint)  # global place of a context menu for what is selected

    def __init__(self, place: Workplace, wall: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = place
        self.wall = wall
        self.gesture: PickUp | None = None
        self.hovered: str | None = None
        self.current: str | None = None  # where the arrows are
        self.number = ""  # digits typed so far
        self.scrolled = 0.0
        self._pushed: QPointF | None = None  # where a hand pushes the whole ledge along
        self._hold = QTimer(self)  # a finger that rests asks for the menu
        self._hold.setSingleShot(True)
        self._hold.setInterval(HOLD)
        self._hold.timeout.connect(self._held)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Bench")
        for signal in (place.changed, place.looked, place.zoomed):
            signal.connect(self.update)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def layout_now(self) -> Layout:
        """Return the layout whose waiting pieces are shown: with a piece in hand, the one before."""
        return self.place.layout if self.gesture else self.place.shown

    def places(self) -> tuple[LedgePlace, ...]:
        """Return where the waiting pieces stand."""
        return ledge_places(self._ledge(), self.place.scale, self.layout_now(), self.theme, self.scrolled)

    def _ledge(self) -> QRectF:
        return QRectF(self.rect())

    # --- painting ---

    def still_key(self) -> object:
        """Return what the ledge is painted from: what waits, and where hand and keys are."""
        layout, place = self.layout_now(), self.place
        gear = waiting(layout)
        hands = (place.hand.pieces, self.hovered, self.current, self.hasFocus(), self.number, place.selected)
        return (
            gear,
            layout.cards,
            layout.units,
            place.scale.px_per_mm,
            self.scrolled,
            hands,
            bool(layout.gear),
        )

    def paint_still(self, p: QPainter) -> None:
        """Paint the ledge and the title line over it."""
        theme, place = self.theme, self.place
        p.fillRect(self.rect(), brush(theme.bench))
        sheet = QPainterPath()
        sheet.addRoundedRect(QRectF(self.rect()), 8.0, 8.0)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.setClipPath(sheet)
        focused = self.current if self.hasFocus() else None
        chosen = place.selected[0] if len(place.selected) == 1 else None
        paint_ledge(
            p,
            self._ledge(),
            place.scale,
            self.layout_now(),
            theme,
            focused=focused,
            hovered=self.hovered,
            in_hand=place.hand.pieces,
            scrolled=self.scrolled,
            selected=chosen,
        )
        p.setClipPath(sheet)
        self._paint_title(p)
        if self.number or self.hasFocus():
            self._paint_numbers(p)
        p.setClipping(False)
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(pen(theme.blue if self.hasFocus() else theme.rule, 2.0 if self.hasFocus() else 1.0))
        p.drawRoundedRect(QRectF(self.rect()).adjusted(1.0, 1.0, -1.0, -1.0), 8.0, 8.0)

    def _paint_title(self, p: QPainter) -> None:
        theme, size = self.theme, self.theme.size
        p.fillRect(QRectF(0.0, 0.0, self.width(), TOP * size), brush(theme.shelf))
        heading, small = HEADING.sized(size), Style(px=15.0).sized(size)
        lettering.draw(p, QPointF(PAD, 28.0 * size), "On the bench", heading, theme.ink)
        x = PAD + lettering.width("On the bench", heading) + 12.0 * size
        words = lettering.elided(self.phrase(), small, self.width() - x - PAD)
        lettering.draw(p, QPointF(x, 28.0 * size), words, small, theme.ink2)
        if not self.places():
            lettering.draw(p, QPointF(PAD, 74.0 * size), self.empty(), BODY.sized(size), theme.ink)

    def phrase(self) -> str:
        """Return what stands beside the title."""
        count = len(self.places())
        if self.number:
            return f"{self.number}, then Enter hangs it on the first free spot"
        return f"{count} still to go up, shown at the wall's scale" if count else ""

    def empty(self) -> str:
        """Return what an empty ledge says."""
        return "All up." if self.place.layout.gear else "Nothing here yet."

    def _paint_numbers(self, p: QPainter) -> None:
        """Paint each piece's number on the ledge, for the keys."""
        size = self.theme.size
        style = STRONG.sized(size)
        for number, spot in enumerate(self.places(), start=1):
            cap = QRectF(spot.rect.left(), spot.rect.top() - 30.0 * size, 24.0 * size, 24.0 * size)
            cap.moveTop(max(cap.top(), TOP * size))
            chosen = str(number) == self.number
            p.setBrush(brush(self.theme.ink if chosen else self.theme.field))
            p.setPen(pen(self.theme.ink2, 1.4))
            p.drawRoundedRect(cap, 4.0, 4.0)
            lettering.draw_in(p, cap, str(number), style, self.theme.field if chosen else self.theme.ink)

    # --- the mouse ---

    def piece_at(self, at: QPointF) -> LedgePlace | None:
        """Return the waiting piece that is there, its label included."""
        found = (spot for spot in self.places() if spot.rect.united(spot.label).contains(at))
        return next(found, None)

    def on_wall(self, at: QPointF) -> QPointF:
        """Return a point of the Bench in pixels of the Wall."""
        return self.wall.mapFromGlobal(self.mapToGlobal(at))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of a piece, or of the bare ledge to push it along."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        spot = self.piece_at(event.position())
        if event.button() != Qt.MouseButton.LeftButton or self.gesture is not None:
            return
        if spot is None:
            self.place.select(())
            self._pushed = event.position()
            return
        self._take_hold(spot, event.position(), event.modifiers())
        if event.source() != Qt.MouseEventSource.MouseEventNotSynthesized:
            self._hold.start()

    def _take_hold(self, spot: LedgePlace, at: QPointF, mods: Qt.KeyboardModifier) -> None:
        self.current = spot.gear
        off, k = at - spot.rect.center(), self.place.scale.px_per_mm
        half = spot.rect.width() / 2 / k, spot.rect.height() / 2 / k
        grip = min(max(off.x() / k, -half[0]), half[0]), min(max(-off.y() / k, -half[1]), half[1])
        self.gesture = PickUp(self.place, self.on_wall(at), mods, spot.gear, grip)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry the piece or push the ledge, else show what is under the pointer."""
        if self.gesture is not None:
            self.gesture.move(self.on_wall(event.position()), event.modifiers())
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif self._pushed is not None:
            self._scroll_to(self.scrolled + self._pushed.x() - event.position().x())
            self._pushed = event.position()
        else:
            self._hover(self.piece_at(event.position()))

    def _hover(self, spot: LedgePlace | None) -> None:
        hovered = spot.gear if spot else None
        if hovered != self.hovered:
            self.hovered = hovered
            self.setCursor(Qt.CursorShape.OpenHandCursor if spot else Qt.CursorShape.ArrowCursor)
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Hang it where it is let go."""
        self._hold.stop()
        self._pushed = None
        if self.gesture is None or event.button() != Qt.MouseButton.LeftButton:
            return
        gesture, self.gesture = self.gesture, None
        gesture.release(self.on_wall(event.position()), event.modifiers())
        self._after()

    def _held(self) -> None:
        """Ask for the menu of the piece a finger has rested on."""
        gesture = self.gesture
        if gesture is not None and not gesture.dragging:
            self.call_off()
            self.place.select((gesture.piece,))
            self.menu_wanted.emit(self.wall.mapToGlobal(gesture.start.toPoint()))

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of the piece there, or, from the keyboard, of the one where the keys are."""
        spots, at = {spot.gear: spot for spot in self.places()}, event.globalPos()
        name = self.current
        if event.reason() != QContextMenuEvent.Reason.Keyboard:
            spot = self.piece_at(QPointF(event.pos()))
            name = spot.gear if spot else None
        elif name in spots:
            at = self.mapToGlobal(spots[name].rect.center().toPoint())
        if name in spots:
            self.current = name
            self.place.select((name,))
            self.menu_wanted.emit(at)

    def call_off(self) -> bool:
        """Put the piece in hand back on the ledge; return whether there was one."""
        self._hold.stop()
        gesture, self.gesture = self.gesture, None
        if gesture is not None:
            gesture.cancel()
            self._after()
        return gesture is not None

    def _after(self) -> None:
        self.setCursor(Qt.CursorShape.ArrowCursor)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self._hover(None)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Walk along a ledge that is longer than the panel."""
        delta = event.angleDelta()
        self._scroll_to(self.scrolled - (delta.x() or delta.y()))
        event.accept()

    def _scroll_to(self, scrolled: float) -> None:
        spots = self.places()
        end = spots[-1].label.right() + self.scrolled + PAD if spots else 0.0
        self.scrolled = max(min(scrolled, end - self.width()), 0.0)
        self.update()

    # --- keys ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk along the ledge with the arrows; Enter hangs the piece where the keys are."""
        by = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        if by is not None:
            self._step(by)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.current and not self.number:
            self.hang_wanted.emit(self.current)
        else:
            event.ignore()

    def _step(self, by: int) -> None:
        spots = self.places()
        names = [spot.gear for spot in spots]
        if not names:
            return
        at = names.index(self.current) + by if self.current in names else 0
        at = min(max(at, 0), len(names) - 1)
        self.current = names[at]
        rect = spots[at].label
        if rect.left() < 0.0 or rect.right() > self.width():
            self._scroll_to(self.scrolled + rect.center().x() - self.width() / 2)
        self.place.select((self.current,))
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Stand at the first piece when the keys come here."""
        if self.current not in [spot.gear for spot in self.places()]:
            self.current = next((spot.gear for spot in self.places()), None)
        self.update()
