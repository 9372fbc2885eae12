"""What changed: a row for each thing that differs; the one that is spoken of is ringed on the Wall."""

from dataclasses import dataclass

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.job.row_words import NOTHING, Row
from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.compare import words
from bayboard.window.compare.desk import CompareDesk
from bayboard.window.compare.scroll import PageScroll
from bayboard.window.lettering import BODY, STRONG, Style
from bayboard.window.listed import Listed
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.sheet import Sheet
from bayboard.window.theme import Theme, brush, mixed, pen

ROW, LINE = 36.0, 22.0  # px high of a row of one line, and of each line more
LABEL, WORDS = 14.0, 92.0  # px from the list's left to the label and to the words
TOP = 40.0
NUMBER = Style("pencil", 18.0)


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a row lies in the list, with its words in lines."""

    row: Row
    rect: QRectF
    lines: tuple[str, ...]


def spots(rows: tuple[Row, ...], wide: float, theme: Theme) -> list[Spot]:
    """Return where the rows lie one under the other in a list `wide` pixels wide."""
    found, top, size = [], 1.0, theme.size
    for row in rows:
        left = WORDS if row.label else LABEL
        lines = lettering.wrapped(row.words, BODY.sized(size), max(wide - (left + 12.0) * size, 80.0))
        high = (ROW + (len(lines) - 1) * LINE) * size
        found.append(Spot(row, QRectF(1.0, top, wide - 2.0, high), lines))
        top += high
    return found


class ChangedRows(QWidget, Listed):
    """The rows.  Up and Down walk them, a click speaks of one."""

    reads_as = "What changed"

    def __init__(self, desk: CompareDesk) -> None:
        super().__init__()
        self.desk = desk
        self.hovered = -1
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("What changed")
        self.follow()

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.desk.place.theme

    def spots(self) -> list[Spot]:
        """Return where the rows lie."""
        return spots(self.desk.rows(), float(self.width()), self.theme)

    def follow(self) -> None:
        """Be as high as the rows are."""
        found = self.spots()
        self.setMinimumHeight(round(found[-1].rect.bottom()) + 6 if found else 0)
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Wrap the words anew."""
        self.follow()

    # --- painting ---

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows."""
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(self.theme.paper))
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            for i, spot in enumerate(self.spots()):
                if spot.rect.toAlignedRect().intersects(event.rect()):
                    self._paint_row(p, spot, i)

    def _paint_row(self, p: QPainter, spot: Spot, i: int) -> None:
        theme, size, rect, row = self.theme, self.theme.size, spot.rect, spot.row
        current = i == self.desk.row
        p.fillRect(QRectF(rect.left() + 4.0, rect.bottom() - 1.0, rect.width() - 8.0, 1.0), brush(theme.rule))
        if current or i == self.hovered:
            p.setBrush(brush(theme.field if current else mixed(theme.paper, theme.ink, 0.05)))
            p.setPen(pen(theme.blue, 2.0) if current else Qt.PenStyle.NoPen)
            p.drawRoundedRect(rect.adjusted(1.0, 1.0, -1.0, -2.0), 6.0, 6.0)
        middle = rect.top() + ROW * size / 2
        if row.label:
            style = (NUMBER if row.pencil else STRONG).sized(size)
            text = lettering.elided(row.label, style, (WORDS - LABEL - 6.0) * size)
            _draw(p, LABEL * size, middle, text, style, theme.ink)
        x = (WORDS if row.label else LABEL) * size
        for n, line in enumerate(spot.lines):
            _draw(p, x, middle + n * LINE * size, line, BODY.sized(size), theme.ink)

    # --- hands ---

    def row_at(self, at: QPointF) -> int:
        """Return which row is there, -1 for none."""
        return next((i for i, spot in enumerate(self.spots()) if spot.rect.contains(at)), -1)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Speak of the row that is pressed."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() == Qt.MouseButton.LeftButton:
            self.desk.speak_of(self.row_at(event.position()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show which row the pointer is over."""
        self.hovered = self.row_at(event.position())
        rows = self.desk.rows()
        about = 0 <= self.hovered < len(rows) and bool(rows[self.hovered].ids)
        self.setCursor(Qt.CursorShape.PointingHandCursor if about else Qt.CursorShape.ArrowCursor)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.hovered = -1
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to the first or last row; Up and Down are the mode's, wherever the keys are."""
        if event.key() in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self.desk.speak_of(0 if event.key() == Qt.Key.Key_Home else len(self.desk.rows()) - 1)
        else:
            event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Begin with the first row."""
        if self.desk.row < 0 and event.reason() != Qt.FocusReason.MouseFocusReason:
            self.desk.speak_of(0)
        self.update()

    # --- read aloud ---

    def parts_said(self) -> list[str]:
        """Return a sentence for each row."""
        return [f"{row.label} {row.words}".strip() for row in self.desk.rows()]

    def part_rect(self, index: int) -> QRectF:
        """Return where a row lies."""
        return self.spots()[index].rect

    def part_held(self, index: int) -> bool:
        """Return whether a row is spoken of."""
        return index == self.desk.row


class ChangedPanel(Sheet):
    """The middle panel: the title, the rows, or why there are none."""

    def __init__(self, desk: CompareDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.place, parent)
        self.desk = desk
        self.rows = ChangedRows(desk)
        self.scroll = PageScroll(self.rows, self)
        desk.changed.connect(self.follow)
        desk.judged.connect(self._judged)
        desk.looked.connect(self._show_row)
        self.dress()

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.scroll.dress(self.place.theme)
        self.follow()

    def follow(self) -> None:
        """Show what differs now."""
        self.rows.follow()
        self.scroll.setVisible(bool(self.desk.rows()))
        self.update()

    def _judged(self) -> None:
        self.follow()
        rows = self.desk.rows()
        if rows and self.isVisible() and None not in self.desk.verdicts():
            announce(self, f"{rows[-1].label}: {rows[-1].words}" if rows[-1].label else rows[-1].words)

    def _show_row(self) -> None:
        found = self.rows.spots()
        if 0 <= self.desk.row < len(found):
            rect = found[self.desk.row].rect
            self.scroll.ensureVisible(0, round(rect.bottom()), 0, 4)
            self.scroll.ensureVisible(0, round(rect.top()), 0, 4)
        self.rows.update()

    def nothing(self) -> str:
        """Return what is said where there are no rows."""
        if self.desk.trouble:
            return self.desk.trouble
        return (
            "Nothing to compare yet: what changes after you press K shows up here."
            if self.desk.then is None
            else NOTHING
        )

    def lay_out(self) -> None:
        """Put the rows in their place."""
        top = round(TOP * self.place.theme.size)
        self.scroll.setGeometry(7, top, self.width() - 12, self.height() - top - 8)

    def paint(self, p: QPainter) -> None:
        """Paint the title, and why there are no rows."""
        theme, size = self.place.theme, self.place.theme.size
        pair = words.pair_words(self.desk.then, self.desk.now)
        paint_panel_title(p, "What changed", pair, theme, float(self.width()))
        if not self.desk.rows():
            y = 68.0 * size
            for line in lettering.wrapped(self.nothing(), BODY.sized(size), self.width() - 32.0 * size):
                lettering.draw(p, QPointF(16.0 * size, y), line, BODY.sized(size), theme.ink)
                y += 24.0 * size


def _draw(p: QPainter, x: float, middle: float, text: str, style: Style, token: str) -> None:
    lettering.draw_in(p, QRectF(x, middle - 10.0, 10.0, 20.0), text, style, token, "left")
