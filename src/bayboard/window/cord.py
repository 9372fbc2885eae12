"""A panel with cards hanging on a cord: pushed along, pointed at, only those in sight painted."""

from dataclasses import dataclass
from math import ceil, floor

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import QMouseEvent, QPainter, QPainterPath, QWheelEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.canvas import Canvas
from bayboard.window.draw.job_card import paint_cord
from bayboard.window.draw.strokes import cased
from bayboard.window.listed import Listed
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.theme import Theme, brush, pen
from bayboard.window.workplace import Workplace

EDGE = 22.0  # px left of the first card and right of the last
PUSH = 5.0  # px a press may wander and still be a click
NOTCH = 120  # eighths of a degree in one notch of a wheel


@dataclass(frozen=True, slots=True)
class Hung:
    """How cards hang in their panel, px at the usual size of type."""

    cord: float  # from the panel's top to the cord
    below: float  # kept free below the cards
    wide: float
    high: float  # at most
    pitch: float  # from one card to the next
    felt: tuple[float, float]  # above and below a card that are felt as it
    ring: float  # beside the card that the keys are at
    least: float = 0.0  # a lower card would say too little


class Cord(Canvas, Listed):
    """The panel.  However many cards there are, what is done costs no more than those in sight.

    Subclasses give `hung`, `count`, `current`, `phrase`, `paint_cards` and `click`.
    """

    layered = False
    hung: Hung

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = place
        self.scrolled = 0.0  # px of the line that are pushed out at the left
        self.hovered = -1
        self._pressed: QPointF | None = None
        self._pushed = False
        self._by = 0.0
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(self.reads_as)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    # --- what a line gives ---

    def count(self) -> int:
        """Return how many cards hang here."""
        raise TypeError("a line says how many cards hang on it")

    def current(self) -> int:
        """Return the card that the keys are at, -1 for none."""
        return -1

    def phrase(self) -> str:
        """Return what stands beside the title."""
        return ""

    def title_wide(self) -> float:
        """Return the room for the title, px from the left."""
        return float(self.width())

    def paint_cards(self, p: QPainter) -> None:
        """Paint the cards that are seen, or why there are none."""
        raise TypeError("a line paints its cards")

    def click(self, at: QPointF, mods: Qt.KeyboardModifier) -> None:
        """Do what a click means."""

    # --- where the cards hang ---

    def rect_of(self, index: int) -> QRectF:
        """Return where a card hangs, upright, in pixels of the panel."""
        hung, size = self.hung, self.theme.size
        left = (EDGE + index * hung.pitch) * size - self.scrolled
        high = min(hung.high * size, max(self.height() - (hung.cord + hung.below) * size, hung.least * size))
        return QRectF(left, (hung.cord + 2.0) * size, hung.wide * size, high)

    def most(self) -> float:
        """Return how far the line can be pushed, px."""
        long = (2 * EDGE + (self.count() - 1) * self.hung.pitch + self.hung.wide) * self.theme.size
        return max(long - self.width(), 0.0)

    def keep_in(self) -> None:
        """Push the line no further than its ends."""
        self.scrolled = min(max(self.scrolled, 0.0), self.most())

    def reveal(self, index: int) -> None:
        """Push the line as far as it takes to see a card whole."""
        air, rect = EDGE * self.theme.size, self.rect_of(index)
        if rect.left() < air:
            self.scrolled += rect.left() - air
        elif rect.right() > self.width() - air:
            self.scrolled += rect.right() - (self.width() - air)
        self.keep_in()

    def seen(self) -> range:
        """Return which cards are seen at least in part."""
        pitch, left = self.hung.pitch * self.theme.size, self.scrolled - EDGE * self.theme.size
        first = max(floor((left - self.hung.wide * self.theme.size) / pitch), 0)
        last = min(ceil((left + self.width()) / pitch) + 1, self.count())
        return range(first, max(last, first))

    def card_at(self, at: QPointF) -> int:
        """Return which card is there, -1 for none."""
        above, below = (air * self.theme.size for air in self.hung.felt)
        felt = (i for i in self.seen() if self.rect_of(i).adjusted(0.0, -above, 0.0, below).contains(at))
        return next(felt, -1)

    # --- painting ---

    def paint_live(self, p: QPainter) -> None:
        """Paint the panel, the cord and the cards that are seen."""
        theme, rect = self.theme, QRectF(self.rect())
        p.fillRect(rect, brush(theme.bench))
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        sheet = QPainterPath()
        sheet.addRoundedRect(rect, 8.0, 8.0)
        p.setClipPath(sheet)
        p.fillRect(rect, brush(theme.shelf))
        paint_panel_title(p, self.reads_as, self.phrase(), theme, self.title_wide())
        paint_cord(p, self.hung.cord * theme.size, rect.width(), theme)
        self.paint_cards(p)
        self._paint_ring(p)
        p.setClipping(False)
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(pen(theme.blue if self.hasFocus() else theme.rule, 2.0 if self.hasFocus() else 1.0))
        p.drawRoundedRect(rect.adjusted(1.0, 1.0, -1.0, -1.0), 8.0, 8.0)

    def _paint_ring(self, p: QPainter) -> None:
        index, side = self.current(), self.hung.ring
        if self.hasFocus() and index >= 0:
            ring = QPainterPath()
            ring.addRoundedRect(self.rect_of(index).adjusted(-side, -5.0, side, 8.0), 7.0, 7.0)
            cased(p, ring, self.theme.blue, 2.0, self.theme, dash=(4.0, 2.5))

    # --- hands ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click or a push of the line."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed, self._pushed, self._by = event.position(), False, self.scrolled

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Push the line, else show which card the pointer is over."""
        if self._pressed is None:
            self.hover(event.position())
            return
        far = self._pressed.x() - event.position().x()
        self._pushed = self._pushed or abs(far) > PUSH
        if self._pushed:
            self.scrolled = self._by + far
            self.keep_in()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
            self.update()

    def hover(self, at: QPointF) -> None:
        """Show which card the pointer is over."""
        self.hovered = self.card_at(at)
        over = Qt.CursorShape.PointingHandCursor if self.hovered >= 0 else Qt.CursorShape.ArrowCursor
        self.setCursor(over)
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Click, unless the line was pushed."""
        pressed, self._pressed = self._pressed, None
        if event.button() == Qt.MouseButton.LeftButton and pressed is not None and not self._pushed:
            self.click(pressed, event.modifiers())
        self.hover(event.position())

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Push the line with the wheel or two fingers."""
        pixels, turned = event.pixelDelta(), event.angleDelta()
        if not pixels.isNull():
            by = float(pixels.x() or pixels.y())
        else:
            by = (turned.y() or turned.x()) / NOTCH * self.hung.pitch * self.theme.size
        self.scrolled -= by
        self.keep_in()
        self.hovered = self.card_at(event.position())
        self.update()
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.hovered = -1
        self.update()

    # --- read aloud ---

    def part_rect(self, index: int) -> QRectF:
        """Return where a card hangs."""
        return self.rect_of(index)
