"""Seen and reached, seat folded: the list in the Bench's place while the Section is pulled wide."""

from PySide6.QtCore import QEvent, QPointF
from PySide6.QtGui import QPainter, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.lettering import BODY, HELPER
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.scroll import Scroll
from bayboard.window.section_points import cut_names
from bayboard.window.seen_rows import ROOMY, TITLE, SeenRows, listed_names
from bayboard.window.sheet import Sheet
from bayboard.window.workplace import Workplace

KEYS = (
    "Full, dashed, dotted: clear, too steep, blocked. The tube is the way in.",
    "Full, dashed, dotted: clear, too steep, blocked.",
    "Full is clear, dotted blocked.",
)
PAD, TOP, FOOT = 16.0, 40.0, 30.0  # px
NOTHING_CUT = "Choose a stand-in, or draw the chalk line through one."


class SeenPanel(Sheet):
    """The left panel while the Section is pulled wide and the seat folded."""

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self.rows = SeenRows(place)
        self.scroll = Scroll(self.rows, self)
        self.setFocusProxy(self.rows)
        self.setAccessibleName(TITLE)
        for signal in (place.changed, place.looked):
            signal.connect(self.follow)
        self.dress()

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.scroll.dress(self.place.theme)
        self.follow()

    def follow(self) -> None:
        """List what is there now, the row that is spoken of in view."""
        if not self.isVisible():
            self.rows.forget()
            return
        self.rows.follow()
        self.scroll.setVisible(bool(self.rows.points()))
        row = self.rows.row()
        if row >= 0:
            rect = self.rows.part_rect(row)
            self.scroll.ensureVisible(0, round(rect.bottom()), 0, 2)
            self.scroll.ensureVisible(0, round(rect.top()), 0, 2)
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the rows in their place."""
        super().resizeEvent(event)
        self.follow()

    def showEvent(self, event: QEvent) -> None:
        """List what is there now."""
        self.follow()

    def lay_out(self) -> None:
        """Put the rows in their place."""
        size = self.place.theme.size
        top = round(TOP * size)
        self.scroll.setGeometry(7, top, self.width() - 14, round(self.height() - top - FOOT * size))

    def phrase(self) -> str:
        """Return whose points are listed."""
        names, here = listed_names(self.place), cut_names(self.place)
        where = "at the chalk line" if all(name in here for name in names) else "beside the chalk line"
        return f"{names[0]}, {where}" if len(names) == 1 else where

    def paint(self, p: QPainter) -> None:
        """Paint the title, what the lines mean, and why there are no rows."""
        theme, size, wide = self.place.theme, self.place.theme.size, float(self.width())
        right = self.phrase() if wide > ROOMY * size else ""
        paint_panel_title(p, TITLE, "", theme, wide, right)
        style, y = HELPER.sized(size), self.height() - 11.0 * size
        room = wide - 2 * PAD * size
        words = next((words for words in KEYS if lettering.width(words, style) <= room), "")
        lettering.draw(p, QPointF(PAD * size, y), words, style, theme.ink2)
        if not self.rows.points():
            none = "No dials, fuses or lights to look for here." if listed_names(self.place) else NOTHING_CUT
            lettering.draw(p, QPointF(PAD * size, 70.0 * size), none, BODY.sized(size), theme.ink)
