"""F1: the keys of this stage on a sheet over the Wall."""

from PySide6.QtCore import QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.controls import put_away
from bayboard.window.first_frame import paint_panel
from bayboard.window.lettering import HEADING, Style
from bayboard.window.theme import Theme

LINE = 27.0
KEY_WIDE = 168.0
HEAD = 70.0  # above the first line


class HelpSheet(QWidget):
    """The keys; any key or press puts the sheet away."""

    left = Signal()

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme = theme
        self.stage = ""
        self.lines: tuple[tuple[str, str], ...] = ()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Keys of this stage")
        self.hide()

    def tell(self, stage: str, lines: tuple[tuple[str, str], ...]) -> None:
        """Hold the keys of a stage: what is pressed and what it does."""
        self.stage, self.lines = stage, lines
        self.setAccessibleDescription("; ".join(f"{keys}: {says}" for keys, says in lines))

    def show_in(self, room: QRect, larger: QRect) -> None:
        """Show the sheet in a rectangle of the window, or in the `larger` one where one column is too few.

        It is no higher than its lines need.
        """
        rows = len(self.lines)
        sheet = room.adjusted(16, 44, -16, -12)
        if self._rows(sheet.height()) < rows:
            sheet = larger.adjusted(16, 44, -16, -12)
            rows = self._even_rows(sheet.height())
        needs = round((HEAD + rows * LINE) * self.theme.size)
        self.setGeometry(sheet.adjusted(0, 0, 0, min(needs - sheet.height(), 0)))
        self.show()
        self.raise_()
        self.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _rows(self, high: int) -> int:
        """Return how many lines stand below each other in that height."""
        return max(int((high / self.theme.size - HEAD) // LINE), 1)

    def _even_rows(self, high: int) -> int:
        """Return how many lines a column has when all columns have alike."""
        columns = -(-len(self.lines) // self._rows(high))
        return -(-len(self.lines) // columns)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Put the sheet away."""
        if event.key() not in (Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt):
            self._leave()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Put the sheet away."""
        self._leave()

    def _leave(self) -> None:
        put_away(self)
        self.left.emit()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the keys in columns."""
        theme, size = self.theme, self.theme.size
        bold, plain = Style(px=15.0, weight=600).sized(size), Style(px=15.0).sized(size)
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_panel(p, QRectF(self.rect()), theme.paper, theme)
            title = f"Keys in {self.stage}"
            lettering.draw(p, QPointF(22.0 * size, 36.0 * size), title, HEADING.sized(size), theme.ink)
            lines = self.lines
            rows = self._even_rows(self.height())
            columns = -(-len(lines) // rows)
            wide = (self.width() - 44.0 * size) / columns
            for i, (keys, says) in enumerate(lines):
                x, y = 22.0 * size + (i // rows) * wide, (HEAD + (i % rows) * LINE) * size
                lettering.draw(p, QPointF(x, y), keys, bold, theme.ink)
                room = wide - (KEY_WIDE + 10.0) * size
                words = lettering.elided(says, plain, room)
                lettering.draw(p, QPointF(x + KEY_WIDE * size, y), words, plain, theme.ink2)
