"""F1: the keys of this stage on a sheet over the Wall."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.controls import put_away
from bayboard.window.first_frame import paint_panel
from bayboard.window.lettering import HEADING, Style
from bayboard.window.theme import Theme

LINE = 27.0  # px from one key to the next
WRAP = 20.0  # px from a line of words to its second
KEY_WIDE = 168.0
WORDS_WIDE = 205.0  # px that the words of a column have at least
SIDE, HEAD, FOOT = 22.0, 70.0, 12.0
BOLD, PLAIN = Style(px=15.0, weight=600), Style(px=15.0)
ON = (Qt.Key.Key_Space, Qt.Key.Key_PageDown, Qt.Key.Key_Down, Qt.Key.Key_Right)
BACK = (Qt.Key.Key_PageUp, Qt.Key.Key_Up, Qt.Key.Key_Left)


@dataclass(frozen=True, slots=True)
class Told:
    """A key on the sheet: where its line begins, px, and its words in lines."""

    x: float
    y: float
    keys: str
    says: tuple[str, ...]


class HelpSheet(QWidget):
    """The keys; any key or press puts the sheet away, but for those that turn its pages."""

    left = Signal()

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme = theme
        self.stage = ""
        self.lines: tuple[tuple[str, str], ...] = ()
        self.page = 0
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Keys of this stage")
        self.hide()

    def tell(self, stage: str, lines: tuple[tuple[str, str], ...]) -> None:
        """Hold the keys of a stage: what is pressed and what it does."""
        self.stage, self.lines = stage, lines
        self.setAccessibleDescription("; ".join(f"{keys}: {says}" for keys, says in lines))

    def show_in(self, room: QRect, larger: QRect) -> None:
        """Show the sheet in a rectangle of the window, or in the `larger` one where that holds more.

        It is no higher than its lines need.
        """
        self.page = 0
        for sheet in (room.adjusted(16, 44, -16, -12), larger.adjusted(16, 12, -16, -12)):
            self.setGeometry(sheet)
            if len(self.pages()) == 1:
                break
        pages = self.pages()
        if len(pages) == 1:
            needs = max(told.y + (len(told.says) - 1) * WRAP * self.theme.size for told in pages[0])
            self.resize(self.width(), min(round(needs + 22.0 * self.theme.size), self.height()))
        self.show()
        self.raise_()
        self.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def pages(self) -> list[list[Told]]:
        """Return the keys as they stand on the sheet, page by page, no word cut short."""
        size = self.theme.size
        room = self.width() - 2 * SIDE * size
        count = max(int(room // ((KEY_WIDE + WORDS_WIDE) * size)), 1)
        needs = self._rows(room / count)
        floor = self.height() - FOOT * size
        rows = sum(high for _, high in needs) / count
        fair = HEAD * size + rows + LINE * size if HEAD * size + rows <= floor else floor
        pages: list[list[Told]] = [[]]
        column, y = 0, HEAD * size
        for told, high in needs:
            if y + high - (LINE - 8.0) * size > min(fair, floor) and y > HEAD * size:
                column, y = column + 1, HEAD * size
            if column == count:
                pages.append([])
                column = 0
            pages[-1].append(Told(SIDE * size + column * room / count, y, told[0], told[1]))
            y += high
        return pages

    def _rows(self, wide: float) -> list[tuple[tuple[str, tuple[str, ...]], float]]:
        """Return each key with its words in lines, and how high it is, px, in a column that wide."""
        size = self.theme.size
        room, found = wide - (KEY_WIDE + 10.0) * size, []
        for keys, says in self.lines:
            lines = lettering.wrapped(says, PLAIN.sized(size), room)
            found.append(((keys, lines), (LINE + (len(lines) - 1) * WRAP) * size))
        return found

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Turn the page, or put the sheet away."""
        key, last = event.key(), len(self.pages()) - 1
        if key in ON and self.page < last:
            self._turn(1)
        elif key in BACK and self.page > 0:
            self._turn(-1)
        elif key not in (Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt):
            self._leave()

    def _turn(self, by: int) -> None:
        self.page += by
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Turn the page; from the last one, put the sheet away."""
        if self.page < len(self.pages()) - 1:
            self._turn(1)
        else:
            self._leave()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stay on a page that there is."""
        self.page = min(self.page, len(self.pages()) - 1)

    def _leave(self) -> None:
        put_away(self)
        self.left.emit()

    def title(self) -> str:
        """Return what stands over the keys, and how the page is turned where there are more."""
        count = len(self.pages())
        more = f": {self.page + 1} of {count}, Space goes on" if count > 1 else ""
        return f"Keys in {self.stage}{more}"

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the keys in columns."""
        theme, size = self.theme, self.theme.size
        bold, plain = BOLD.sized(size), PLAIN.sized(size)
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_panel(p, QRectF(self.rect()), theme.paper, theme)
            at = QPointF(SIDE * size, 36.0 * size)
            lettering.draw(p, at, self.title(), HEADING.sized(size), theme.ink)
            for told in self.pages()[self.page]:
                lettering.draw(p, QPointF(told.x, told.y), told.keys, bold, theme.ink)
                for i, line in enumerate(told.says):
                    at = QPointF(told.x + KEY_WIDE * size, told.y + i * WRAP * size)
                    lettering.draw(p, at, line, plain, theme.ink2)
