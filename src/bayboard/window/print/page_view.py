"""In the Section's place: the sheet in hand as it leaves the printer, and where it goes."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QWheelEvent
from PySide6.QtWidgets import QWidget

from bayboard.paper.marks import Page
from bayboard.window import lettering
from bayboard.window.canvas import Canvas
from bayboard.window.draw.section import section_ground
from bayboard.window.lettering import HEADING, Style
from bayboard.window.nearer import ZOOM
from bayboard.window.print import words
from bayboard.window.print.desk import PrintDesk
from bayboard.window.print.paint_page import page_rect, paint_page, paint_paper_shadow
from bayboard.window.print.titles import SMALL, paint_title
from bayboard.window.theme import Theme, brush, pen

TOP, BESIDE, BELOW = 52.0, 16.0, 74.0  # px left free round the page
LARGEST = 12.0  # times as large as the whole page
SAID = Style(px=15.0)


class PageView(Canvas):
    """One page.  The wheel looks closer, a drag pushes, the arrows turn pages."""

    def __init__(self, desk: PrintDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.place = desk.place
        self.closer = 1.0
        self.pushed = QPointF()  # px the enlarged page is moved by
        self._held: QPointF | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Sheet as it leaves the printer")
        desk.changed.connect(self.update)
        desk.looked.connect(self._turn_over)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def page(self) -> Page | None:
        """Return the page in hand."""
        pages = self.desk.sheets.pages if self.desk.sheets else ()
        return pages[self.desk.chosen] if self.desk.chosen < len(pages) else None

    def _turn_over(self) -> None:
        self.closer, self.pushed = 1.0, QPointF()
        self.update()

    def room(self) -> QRectF:
        """Return where the page may lie."""
        size = self.theme.size
        return QRectF(self.rect()).adjusted(BESIDE * size, TOP * size, -BESIDE * size, -BELOW * size)

    def rect_of(self, page: Page) -> QRectF:
        """Return where the page lies, enlarged as one looks."""
        whole = page_rect(page.size, self.room())
        middle = whole.center() + self.pushed
        wide, high = whole.width() * self.closer, whole.height() * self.closer
        return QRectF(middle.x() - wide / 2, middle.y() - high / 2, wide, high)

    # --- painting ---

    def still_key(self) -> object:
        """Return what the page is painted from."""
        return self.desk.laid, self.desk.chosen, self.closer, self.pushed.x(), self.pushed.y()

    def paint_still(self, p: QPainter) -> None:
        """Paint the page on its ground."""
        p.fillRect(self.rect(), brush(section_ground(self.theme)))
        page = self.page()
        if page is None:
            return
        seen = page_rect(page.size, self.room())
        paint_paper_shadow(p, seen, 7.0)
        p.setClipRect(seen)
        paint_page(p, page, self.rect_of(page), self.theme)

    def paint_live(self, p: QPainter) -> None:
        """Paint the title line, what is said below, and the ring."""
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        page, theme, size = self.page(), self.theme, self.theme.size
        name, phrases = self.title()
        room = self.width() - 47.0 * size - lettering.width(name, HEADING.sized(size))
        phrase = next((w for w in phrases if lettering.width(w, SMALL.sized(size)) <= room), "")
        paint_title(p, QRectF(self.rect()), name, phrase, theme, theme.blue)
        if page is None:
            return
        seen = page_rect(page.size, self.room())
        y = seen.bottom() + 32.0 * size
        for line in self.lines():
            words_ = lettering.elided(line, SAID.sized(size), self.width() - 20.0)
            at = QPointF(self.width() / 2, y)
            lettering.draw(p, at, words_, SAID.sized(size), theme.ink, "centre")
            y += 22.0 * size
        if self.hasFocus():
            p.setPen(pen(theme.blue, 2.0))
            p.setBrush(Qt.BrushStyle.NoBrush)
            p.drawRect(seen.adjusted(-3.0, -3.0, 3.0, 3.0))

    def title(self) -> tuple[str, tuple[str, ...]]:
        """Return the title line's name, and its phrase in words of falling length."""
        page = self.page()
        if page is None:
            return "Sheet", ("laying out the sheets" if self.desk.laying else "none yet",)
        name = f"Sheet {self.desk.chosen + 1}"
        if page.sheet == "cards":
            name = f"Card sheet {self.desk.chosen + 1 - self.desk.count('drill')}"
        of = f"of {self.desk.count(page.sheet)}"
        numbers = self.desk.swap_numbers()
        if numbers and page.number not in numbers:
            return name, (f"{of}, the old one stays", f"{of}, stays", of)
        return name, (f"{of}, as it leaves the printer", f"{of}, as printed", of)

    def lines(self) -> tuple[str, ...]:
        """Return what is said below the page."""
        page, found = self.page(), self.desk.sheet()
        if page is None:
            return ()
        if found is None:
            return words.stand_ins(page), "cut on the solid lines"
        board, sheet = found
        numbers = self.desk.swap_numbers()
        if numbers:
            swap = sheet.number in numbers
            return words.lies(sheet), "put it in the old one's place" if swap else "nothing on it has changed"
        return words.lies(sheet), words.taping(board)

    # --- hands ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of an enlarged page."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            self._held = event.position()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Push the enlarged page."""
        if self._held is not None and self.closer > 1.0:
            self.pushed += event.position() - self._held
            self._held = event.position()
            self._keep_in()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go."""
        self._held = None

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Show the whole page again."""
        self._turn_over()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Look closer at the place under the pointer, or further off."""
        self.look(ZOOM ** event.angleDelta().y(), event.position())
        event.accept()

    def look(self, factor: float, at: QPointF | None = None) -> None:
        """Enlarge the page by a factor, what lies at a pixel staying there."""
        page = self.page()
        if page is None:
            return
        whole = page_rect(page.size, self.room())
        spot = whole.center() if at is None else at
        closer = min(max(self.closer * factor, 1.0), LARGEST)
        off = spot - (whole.center() + self.pushed)
        self.pushed -= off * (closer / self.closer - 1.0)
        self.closer = closer
        self._keep_in()

    def _keep_in(self) -> None:
        """Keep the enlarged page over its place."""
        page = self.page()
        if page is not None:
            whole = page_rect(page.size, self.room())
            x, y = (self.closer - 1.0) * whole.width() / 2, (self.closer - 1.0) * whole.height() / 2
            self.pushed = QPointF(min(max(self.pushed.x(), -x), x), min(max(self.pushed.y(), -y), y))
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Turn pages with the arrows, all of the pile; look closer with + and -."""
        by = {
            Qt.Key.Key_Left: -1,
            Qt.Key.Key_Up: -1,
            Qt.Key.Key_PageUp: -1,
            Qt.Key.Key_Right: 1,
            Qt.Key.Key_Down: 1,
            Qt.Key.Key_PageDown: 1,
        }.get(Qt.Key(event.key()))
        if by is not None:
            self.desk.take(self.desk.chosen + by)
        elif event.text() in ("+", "=", "-", "0"):
            self.look({"-": 1 / 1.4, "0": 1e-9}.get(event.text(), 1.4))
        else:
            event.ignore()
