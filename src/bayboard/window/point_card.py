"""A service point's figures in the Card's place, while the list of what is seen has the keys."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from bayboard.units.length import show_length
from bayboard.window import lettering
from bayboard.window.lettering import HEADING, STRONG, Style
from bayboard.window.seen import SeenPoint
from bayboard.window.seen_words import point_words, reach_words, sight_words
from bayboard.window.sheet import Sheet
from bayboard.window.theme import brush
from bayboard.window.workplace import Workplace

PAD = 16.0  # px
ROW = 32.0  # px; less where the panel is low
FIRST = 46.0  # px from the top to the first row


def figures(place: Workplace, point: SeenPoint) -> list[tuple[str, str]]:
    """Return a point's figures, each with its label, as one measures them on the Wall."""
    units, piece = place.units, point.piece
    x, y, _ = point.at
    dx, dy = x - piece.at[0], y - piece.at[1]
    aside = "right" if dx >= 0 else "left"
    up = "above" if dy >= 0 else "below"
    tool = {"fingers": "fingers", "screwdriver": "driver"}.get(point.service.tool, "nothing")
    return [
        (f"{aside} of {piece.id}'s middle", show_length(abs(dx), units)),
        (f"{up} {piece.id}'s middle", show_length(abs(dy), units)),
        ("off the board", show_length(point.service.z + piece.gear.lift, units)),
        ("it looks", point.facing),
        ("reached with", tool),
        ("seen", sight_words(place, point)),
        ("way in", reach_words(place, point)),
    ]


class PointCard(Sheet):
    """The Card of a service point.  Its figures are read here, not typed."""

    def __init__(self, place: Workplace, point: Callable[[], SeenPoint | None], parent: QWidget) -> None:
        super().__init__(place, parent)
        self._point = point
        for signal in (place.changed, place.looked):
            signal.connect(self._follow)

    def _follow(self) -> None:
        if self.isVisible():
            point = self._point()
            rows = [] if point is None else figures(self.place, point)
            self.setAccessibleName("" if point is None else f"{point.piece.id}, {point.name}")
            self.setAccessibleDescription(", ".join(f"{label} {value}" for label, value in rows))
            self.update()

    def paint(self, p: QPainter) -> None:
        """Paint whose point it is, and its figures."""
        point = self._point()
        if point is None:
            return
        theme, size = self.place.theme, self.place.theme.size
        self._paint_head(p, point)
        rows = figures(self.place, point)
        pitch = min(ROW * size, (self.height() - (FIRST + 6.0) * size) / len(rows))
        small, strong = Style(px=15.0).sized(size), STRONG.sized(size)
        for i, (label, value) in enumerate(rows):
            row = QRectF(PAD * size, FIRST * size + i * pitch, self.width() - 2 * PAD * size, pitch)
            lettering.draw_in(p, row, label, small, theme.ink2, "left")
            room = row.width() - lettering.width(label, small) - 12.0 * size
            lettering.draw_in(p, row, lettering.elided(value, strong, room), strong, theme.ink, "right")
            if i + 1 < len(rows):
                p.fillRect(QRectF(row.left(), row.bottom() - 1.0, row.width(), 1.0), brush(theme.rule))

    def _paint_head(self, p: QPainter, point: SeenPoint) -> None:
        theme, size = self.place.theme, self.place.theme.size
        pencil, heading = Style("pencil", 21.0).sized(size), HEADING.sized(size)
        small, y, end = Style(px=15.0).sized(size), 28.0 * size, self.width() - PAD * size
        right = point_words(point)
        lettering.draw(p, QPointF(PAD * size, y), point.piece.id, pencil, theme.ink)
        x = PAD * size + lettering.width(point.piece.id, pencil) + 9.0 * size
        room = end - x - lettering.width(right, small) - 14.0
        if room > 60.0 * size:
            words = lettering.elided(point.piece.card.name, heading, room)
            lettering.draw(p, QPointF(x, y), words, heading, theme.ink)
        lettering.draw(
            p, QPointF(end, y), lettering.elided(right, small, end - x), small, theme.ink2, "right"
        )
