"""The line that the vehicles' cards hang on, with the field that finds them."""

from datetime import datetime
from math import ceil, floor

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
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

from bayboard.store.found import Found
from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.canvas import Canvas
from bayboard.window.draw.job_card import lean_of, paint_cord
from bayboard.window.draw.strokes import cased
from bayboard.window.lettering import BODY
from bayboard.window.listed import Listed
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.shelf import words
from bayboard.window.shelf.desk import ShelfDesk
from bayboard.window.shelf.search_field import SearchField
from bayboard.window.shelf.vehicle_card import HIGH, PITCH, WIDE, VehicleCard, paint_vehicle
from bayboard.window.theme import Theme, brush, pen
from bayboard.window.when import day_words

CORD = 66.0  # px from the panel's top to the line
EDGE = 22.0  # px left of the first card and right of the last
BELOW = 14.0  # px below the cards
PUSH = 5.0  # px a press may wander and still be a click
NOTCH = 120  # eighths of a degree in one notch of a wheel
GAP = 10.0  # px round the field
ENDS = {Qt.Key.Key_Home: -100_000, Qt.Key.Key_End: 100_000}
WALKS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, **ENDS}


class ShelfLine(Canvas, Listed):
    """The panel at the left and in the middle.  Only the cards that are seen are painted."""

    layered = False
    reads_as = "Shelf"
    taken = Signal()  # the chosen vehicle is wanted

    def __init__(self, desk: ShelfDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.place = desk.place
        self.field = SearchField(self)
        self.scrolled = 0.0  # px of the line that are pushed out at the left
        self.hovered = -1
        self._pressed: QPointF | None = None
        self._pushed = False
        self._by = 0.0
        self._shown: tuple[object, str] = ((), "")
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Shelf")
        self.field.textChanged.connect(desk.search)
        self.field.walked.connect(desk.walk)
        self.field.taken.connect(self.taken)
        desk.changed.connect(self.follow)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.field.dress(self.theme)
        self._lay_out()
        self.update()

    def follow(self) -> None:
        """Show what is found and chosen; what was chosen anew is brought into sight and told."""
        desk, before = self.desk, self._shown
        self._shown = (desk.shown, desk.current)
        if before[1] != desk.current and desk.at() >= 0:
            self.reveal(desk.at())
            self._tell()
        if before[0] != desk.shown:
            self.hovered = -1
        self._keep_in()
        self._say_count()
        self.update()

    def _say_count(self) -> None:
        """Tell how many are found, once they are others."""
        if self.phrase() != self.accessibleDescription():
            self.setAccessibleDescription(self.phrase())
            if self.desk.text.strip():
                announce(self.field, self.phrase())

    def _tell(self) -> None:
        desk, vehicle = self.desk, self.desk.vehicle()
        if vehicle is not None:
            last = words.foot(vehicle, desk.is_here(vehicle), desk.holder(vehicle))
            announce(self, words.walked(vehicle, desk.at(), desk.shown, last))

    def phrase(self) -> str:
        """Return what stands beside the title."""
        desk = self.desk
        return words.phrase(len(desk.vehicles), len(desk.shown), desk.text, desk.share)

    # --- where the cards hang ---

    def rect_of(self, index: int) -> QRectF:
        """Return where a card hangs, upright, in pixels of the panel."""
        size = self.theme.size
        left = (EDGE + index * PITCH) * size - self.scrolled
        high = min(HIGH * size, self.height() - (CORD + BELOW) * size)
        return QRectF(left, (CORD + 2.0) * size, WIDE * size, high)

    def _most(self) -> float:
        long = (2 * EDGE + (len(self.desk.shown) - 1) * PITCH + WIDE) * self.theme.size
        return max(long - self.width(), 0.0)

    def _keep_in(self) -> None:
        self.scrolled = min(max(self.scrolled, 0.0), self._most())

    def reveal(self, index: int) -> None:
        """Push the line as far as it takes to see a card whole."""
        air, rect = EDGE * self.theme.size, self.rect_of(index)
        if rect.left() < air:
            self.scrolled += rect.left() - air
        elif rect.right() > self.width() - air:
            self.scrolled += rect.right() - (self.width() - air)
        self._keep_in()

    def seen(self) -> range:
        """Return which cards are seen at least in part."""
        pitch, left = PITCH * self.theme.size, self.scrolled - EDGE * self.theme.size
        first = max(floor((left - WIDE * self.theme.size) / pitch), 0)
        last = min(ceil((left + self.width()) / pitch) + 1, len(self.desk.shown))
        return range(first, max(last, first))

    def card_at(self, at: QPointF) -> int:
        """Return which card is there, -1 for none."""
        air = 6.0 * self.theme.size
        felt = (i for i in self.seen() if self.rect_of(i).adjusted(0.0, -2 * air, 0.0, air).contains(at))
        return next(felt, -1)

    def card(self, vehicle: Found) -> VehicleCard:
        """Return what stands on a vehicle's card."""
        desk, facts = self.desk, vehicle.facts
        here = desk.is_here(vehicle)
        return VehicleCard(
            facts.name,
            day_words(vehicle.changed, datetime.now().astimezone()),
            facts.trouble or words.note_of(vehicle),
            words.foot(vehicle, here, desk.holder(vehicle)),
            lean_of(sum(vehicle.words[:40])) * 0.7,
            bool(facts.trouble) and not here,
            here,
        )

    # --- painting ---

    def paint_live(self, p: QPainter) -> None:
        """Paint the panel, the line and the cards that are seen."""
        theme, size, rect = self.theme, self.theme.size, QRectF(self.rect())
        p.fillRect(rect, brush(theme.bench))
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        sheet = QPainterPath()
        sheet.addRoundedRect(rect, 8.0, 8.0)
        p.setClipPath(sheet)
        p.fillRect(rect, brush(theme.shelf))
        paint_panel_title(p, "Shelf", self.phrase(), theme, self.field.x() - 4.0)
        paint_cord(p, CORD * size, rect.width(), theme)
        self._paint_cards(p)
        if not self.desk.shown:
            self._paint_empty(p)
        p.setClipping(False)
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(pen(theme.blue if self.hasFocus() else theme.rule, 2.0 if self.hasFocus() else 1.0))
        p.drawRoundedRect(rect.adjusted(1.0, 1.0, -1.0, -1.0), 8.0, 8.0)

    def _paint_cards(self, p: QPainter) -> None:
        desk = self.desk
        for i in self.seen():
            vehicle = desk.shown[i]
            picture, chosen = desk.picture(vehicle.file), vehicle.file == desk.current
            card = self.card(vehicle)
            paint_vehicle(p, self.rect_of(i), card, picture, self.theme, chosen, i == self.hovered)
        if self.hasFocus() and desk.at() >= 0:
            ring = QPainterPath()
            ring.addRoundedRect(self.rect_of(desk.at()).adjusted(-8.0, -5.0, 8.0, 8.0), 7.0, 7.0)
            cased(p, ring, self.theme.blue, 2.0, self.theme, dash=(4.0, 2.5))

    def _paint_empty(self, p: QPainter) -> None:
        """Say why nothing hangs here."""
        desk, size = self.desk, self.theme.size
        told = words.EMPTY
        if desk.vehicles:
            told = (words.none_found(desk.text),)
        elif desk.share < 1.0:
            told = (words.LOOKING,)
        style = BODY.sized(size)
        for i, line in enumerate(told):
            at = QPointF(EDGE * size, (CORD + 44.0 + 26.0 * i) * size)
            words_here = lettering.elided(line, style, self.width() - 2 * EDGE * size)
            lettering.draw(p, at, words_here, style, self.theme.ink)

    # --- hands ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click or a push of the line."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed, self._pushed, self._by = event.position(), False, self.scrolled

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Push the line, else show which card the pointer is over."""
        if self._pressed is not None:
            far = self._pressed.x() - event.position().x()
            self._pushed = self._pushed or abs(far) > PUSH
            if self._pushed:
                self.scrolled = self._by + far
                self._keep_in()
                self.setCursor(Qt.CursorShape.ClosedHandCursor)
        else:
            self._hover(event.position())
        self.update()

    def _hover(self, at: QPointF) -> None:
        self.hovered = self.card_at(at)
        over = Qt.CursorShape.PointingHandCursor if self.hovered >= 0 else Qt.CursorShape.ArrowCursor
        self.setCursor(over)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Choose the card that was clicked."""
        pressed, self._pressed = self._pressed, None
        if event.button() == Qt.MouseButton.LeftButton and pressed is not None and not self._pushed:
            index = self.card_at(pressed)
            if index >= 0:
                self.desk.choose(self.desk.shown[index].file)
        self._hover(event.position())

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Take the card down."""
        index = self.card_at(event.position())
        if event.button() == Qt.MouseButton.LeftButton and index >= 0:
            self.desk.choose(self.desk.shown[index].file)
            self.taken.emit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Push the line with the wheel or two fingers."""
        pixels, turned = event.pixelDelta(), event.angleDelta()
        if not pixels.isNull():
            by = float(pixels.x() or pixels.y())
        else:
            by = (turned.y() or turned.x()) / NOTCH * PITCH * self.theme.size
        self.scrolled -= by
        self._keep_in()
        self.hovered = self.card_at(event.position())
        self.update()
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.hovered = -1
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk the cards, take one down; letters go to the field."""
        key, text = Qt.Key(event.key()), event.text()
        held = event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
        if key in WALKS and not held:
            self.desk.walk(WALKS[key])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.taken.emit()
        elif text.isprintable() and text.strip() and not held:
            self.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
            self.field.insert(text)
        else:
            event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the ring."""
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the ring away."""
        self.update()

    def _lay_out(self) -> None:
        gap, hint = round(GAP * self.theme.size), self.field.sizeHint()
        wide = min(hint.width(), self.width() // 2)
        self.field.setGeometry(self.width() - wide - gap, gap - 4, wide, hint.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the field at the right, and what is chosen in sight."""
        self._lay_out()
        self._keep_in()
        if self.desk.at() >= 0:
            self.reveal(self.desk.at())

    # --- read aloud ---

    def parts_said(self) -> list[str]:
        """Return a sentence for each card."""
        cards = ((vehicle, self.card(vehicle)) for vehicle in self.desk.shown)
        return [words.sentence(vehicle, card.date, card.foot) for vehicle, card in cards]

    def part_rect(self, index: int) -> QRectF:
        """Return where a card hangs."""
        return self.rect_of(index)

    def part_held(self, index: int) -> bool:
        """Return whether a card is the chosen one."""
        return self.desk.shown[index].file == self.desk.current
