"""The line that the revisions hang on: two of them are chosen, then and now."""

from math import ceil, floor

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QFocusEvent,
    QHideEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.canvas import Canvas
from bayboard.window.compare import words
from bayboard.window.compare.cards import Cards
from bayboard.window.compare.desk import CompareDesk
from bayboard.window.compare.words import Pick
from bayboard.window.draw.job_card import HIGH, PITCH, WIDE, paint_card, paint_choice, paint_cord
from bayboard.window.draw.strokes import cased
from bayboard.window.lettering import BODY
from bayboard.window.listed import Listed
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.theme import Theme, brush, pen

CORD = 60.0  # px from the panel's top to the line
EDGE = 22.0  # px left of the oldest card and right of the draft
CHOICE = 34.0  # px below the cards for "then" and "now"
PUSH = 5.0  # px a press may wander and still be a click
LEAST = 112.0  # px; a lower card would say too little
NOTCH = 120  # eighths of a degree in one notch of a wheel


class KeptLine(Canvas, Listed):
    """The left panel.  Only the cards that are seen are painted, however many hang there."""

    layered = False
    reads_as = "Kept"

    def __init__(self, desk: CompareDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.place = desk.place
        self.cards = Cards(desk)
        self.scrolled = 0.0  # px of the line that are pushed out at the left
        self.hovered = -1
        self._pressed: QPointF | None = None
        self._pushed = False
        self._by = 0.0
        self._shown: object = None
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Kept")
        self.setToolTip(words.CHOOSE)
        desk.changed.connect(self.follow)
        self.cards.counted.connect(self.update)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def follow(self) -> None:
        """Show what is chosen, brought into sight when it was chosen anew."""
        desk = self.desk
        shown = (desk.picks, desk.then, desk.now)
        if shown != self._shown:
            before, self._shown = self._shown, shown
            self._show_chosen(before)
        said = words.pair_words(desk.then, desk.now)
        if said != self.accessibleDescription():
            self.setAccessibleDescription(said)
            announce(
                self, words.sounds(desk.then, desk.now, [row.words for row in desk.rows()] or [desk.trouble])
            )
        self._keep_in()
        self.update()

    def _show_chosen(self, before: object) -> None:
        """Bring into sight what was chosen last, then the other; at first the newest end."""
        desk = self.desk
        if not isinstance(before, tuple) or before[0] != desk.picks:
            self.scrolled = self._most()
        moved = (
            []
            if not isinstance(before, tuple)
            else [pick for pick, was in ((desk.then, before[1]), (desk.now, before[2])) if pick != was]
        )
        for pick in moved or [desk.then]:
            if pick in desk.picks:
                self.reveal(desk.picks.index(pick))

    # --- where the cards hang ---

    def rect_of(self, index: int) -> QRectF:
        """Return where a card hangs, upright, in pixels of the panel."""
        size = self.theme.size
        left = (EDGE + index * PITCH) * size - self.scrolled
        high = min(HIGH * size, max(self.height() - (CORD + CHOICE + 6.0) * size, LEAST * size))
        return QRectF(left, (CORD + 2.0) * size, WIDE * size, high)

    def _long(self) -> float:
        """Return how long the line is with all that hangs on it."""
        count = len(self.desk.picks)
        return (2 * EDGE + (count - 1) * PITCH + WIDE) * self.theme.size

    def _most(self) -> float:
        return max(self._long() - self.width(), 0.0)

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
        last = min(ceil((left + self.width()) / pitch) + 1, len(self.desk.picks))
        return range(first, max(last, first))

    def card_at(self, at: QPointF) -> int:
        """Return which card is there, -1 for none."""
        air = 6.0 * self.theme.size
        felt = (i for i in self.seen() if self.rect_of(i).adjusted(0.0, -air, 0.0, 5 * air).contains(at))
        return next(felt, -1)

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
        paint_panel_title(p, "Kept", words.line_phrase(len(self.desk.revisions)), theme, rect.width())
        paint_cord(p, CORD * size, rect.width(), theme)
        self._paint_cards(p)
        if not self.desk.revisions:
            self._paint_empty(p)
        p.setClipping(False)
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(pen(theme.blue if self.hasFocus() else theme.rule, 2.0 if self.hasFocus() else 1.0))
        p.drawRoundedRect(rect.adjusted(1.0, 1.0, -1.0, -1.0), 8.0, 8.0)

    def _paint_cards(self, p: QPainter) -> None:
        desk, picks, seen = self.desk, self.desk.picks, self.seen()
        self.cards.want([item for i in seen if (item := desk.revision(picks[i])) is not None])
        for i in seen:
            pick, rect = picks[i], self.rect_of(i)
            chosen = pick in (desk.then, desk.now) and desk.then is not None
            paint_card(
                p,
                rect,
                self.cards.card(pick),
                self.cards.picture(pick),
                self.theme,
                chosen,
                i == self.hovered,
            )
        for word, pick in self._choices():
            at, shown = self.choice_at(picks.index(pick), word)
            paint_choice(p, at, shown, self.theme)
        if self.hasFocus() and desk.then in picks:
            ring = QPainterPath()
            ring.addRoundedRect(self.rect_of(picks.index(desk.then)).adjusted(-9.0, -5.0, 9.0, 8.0), 7.0, 7.0)
            cased(p, ring, self.theme.blue, 2.0, self.theme, dash=(4.0, 2.5))

    def choice_at(self, index: int, word: str) -> tuple[QPointF, str]:
        """Return the middle of "then" or "now" and its words; one out of sight is told at the edge."""
        size, rect = self.theme.size, self.rect_of(index)
        at, edge = QPointF(rect.center().x(), rect.bottom() + 18.0 * size), 42.0 * size
        if at.x() < edge:
            return QPointF(edge, at.y()), f"← {word}"
        if at.x() > self.width() - edge:
            return QPointF(self.width() - edge, at.y()), f"{word} →"
        return at, word

    def _choices(self) -> list[tuple[str, Pick]]:
        """Return "then" and "now" with what they hang under."""
        desk = self.desk
        pairs = (("then", desk.then), ("now", desk.now))
        return [(word, pick) for word, pick in pairs if desk.then is not None and pick in desk.picks]

    def _paint_empty(self, p: QPainter) -> None:
        """Say beside the lonely draft how a revision comes to hang here."""
        size, rect = self.theme.size, self.rect_of(0)
        style = BODY.sized(size)
        left = rect.right() + 28.0 * size
        job = self.place.job
        told = [words.EMPTY] if job.keeps or job.file is not None else [words.EMPTY, words.PLAIN_FILE]
        lines = [line for text in told for line in lettering.wrapped(text, style, self.width() - left - 16.0)]
        for i, line in enumerate(lines):
            at = QPointF(left, rect.top() + (40.0 + 24.0 * i) * size)
            lettering.draw(p, at, line, style, self.theme.ink)

    # --- hands ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click or a push of the line."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() == Qt.MouseButton.RightButton:
            self._choose_at(event.position(), now=True)
        elif event.button() == Qt.MouseButton.LeftButton:
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
            self.hovered = self.card_at(event.position())
            over = Qt.CursorShape.PointingHandCursor if self.hovered >= 0 else Qt.CursorShape.ArrowCursor
            self.setCursor(over)
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Choose the card that was clicked; with Shift as now."""
        pressed, self._pressed = self._pressed, None
        self.setCursor(Qt.CursorShape.ArrowCursor)
        if event.button() == Qt.MouseButton.LeftButton and pressed is not None and not self._pushed:
            self._choose_at(pressed, bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))

    def _choose_at(self, at: QPointF, now: bool) -> None:
        index, edge = self.card_at(at), self._edge_choice(at)
        if edge is not None:
            self.reveal(edge)
            self.update()
        elif index >= 0:
            self.desk.choose(self.desk.picks[index], now)

    def _edge_choice(self, at: QPointF) -> int | None:
        """Return the card out of sight whose word at the edge lies under a pixel, None for none."""
        for word, pick in self._choices():
            index = self.desk.picks.index(pick)
            middle, shown = self.choice_at(index, word)
            far = at - middle
            if (
                shown != word
                and abs(far.x()) <= 42.0 * self.theme.size
                and abs(far.y()) <= 20.0 * self.theme.size
            ):
                return index
        return None

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
        """Go to either end with Home and End; the arrows are the mode's, wherever the keys are."""
        if event.key() in (Qt.Key.Key_Home, Qt.Key.Key_End):
            now = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self.desk.walk_to_end(event.key() == Qt.Key.Key_End, now)
        else:
            event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the ring."""
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the ring away."""
        self.update()

    def hideEvent(self, event: QHideEvent) -> None:
        """Read nothing more of a file that may be let go of now."""
        self.cards.rest()
        self.desk.rest()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the line within its panel, what is chosen in sight."""
        self.scrolled = self._most()
        for pick in (self.desk.now, self.desk.then):
            if pick in self.desk.picks:
                self.reveal(self.desk.picks.index(pick))

    # --- read aloud ---

    def parts_said(self) -> list[str]:
        """Return a sentence for each card."""
        desk, said = self.desk, []
        chosen = {pick: word for word, pick in self._choices()}
        for pick in desk.picks:
            card = self.cards.card(pick)
            told = (card.date, card.note, card.foot)
            said.append(words.card_sentence(pick, told, chosen.get(pick, "")))
        return said

    def part_rect(self, index: int) -> QRectF:
        """Return where a card hangs."""
        return self.rect_of(index)

    def part_held(self, index: int) -> bool:
        """Return whether a card is one of the two."""
        return self.desk.picks[index] in (self.desk.then, self.desk.now)
