"""The rows of what is seen and reached: a service point each, with its sight and its way in."""

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.draw.marks import paint_mark, paint_tick
from bayboard.window.lettering import BODY, STRONG, Style
from bayboard.window.listed import Listed
from bayboard.window.section_points import cut_names, spoken_point
from bayboard.window.seen import SeenPoint, points_of
from bayboard.window.seen_words import point_words, reach_words, sentence, sight_words
from bayboard.window.theme import brush, mixed, pen
from bayboard.window.workplace import Workplace

TITLE = "Seen and reached, seat folded"
ROW, LINE = 40.0, 24.0  # px high of a row, and of a second line in it
ROOMY = 540.0  # px; a narrower list writes how a point is seen below its name
NAME, SIGN = 0.33, 26.0  # share of the width for names; px of the sign's column


def listed_names(place: Workplace) -> list[str]:
    """Return the stand-ins whose points are listed: the selected ones, else those at the chalk line."""
    return [name for name in place.selected if name in place.scene.placed] or cut_names(place)


def listed_points(place: Workplace) -> tuple[SeenPoint, ...]:
    """Return the points that are listed, in card order."""
    return tuple(point for name in listed_names(place) for point in points_of(place, name))


class SeenRows(QWidget, Listed):
    """The rows.  Up and Down walk them, a click speaks of one; the chalk line goes there."""

    reads_as = TITLE
    left = Signal()  # the keys want to go back to the Wall
    keys_changed = Signal()

    def __init__(self, place: Workplace) -> None:
        super().__init__()
        self.place = place
        self.hovered = -1
        self._points: tuple[SeenPoint, ...] | None = None
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(TITLE)

    def points(self) -> tuple[SeenPoint, ...]:
        """Return the points listed, worked out once until something changes."""
        if self._points is None:
            self._points = listed_points(self.place)
        return self._points

    def forget(self) -> None:
        """Work the points out anew when they are asked for."""
        self._points = None

    def follow(self) -> None:
        """List what is there now."""
        self.forget()
        self.setMinimumHeight(round(self._high() * len(self.points())) + 4)
        self.update()

    def row(self) -> int:
        """Return the row that is spoken of, -1 for none."""
        points, place = self.points(), self.place
        about = place.service
        if about is None and self.hasFocus():
            spoken = spoken_point(place, points)
            about = spoken.subject if spoken is not None else None
        return next((i for i, point in enumerate(points) if point.subject == about), -1)

    def chosen(self) -> SeenPoint | None:
        """Return the point that is spoken of, None for none."""
        row = self.row()
        return self.points()[row] if row >= 0 else None

    # --- where rows lie ---

    def _two_lines(self) -> bool:
        return self.width() < ROOMY * self.place.theme.size

    def _high(self) -> float:
        return (ROW + (LINE if self._two_lines() else 0.0)) * self.place.theme.size

    def part_rect(self, index: int) -> QRectF:
        """Return where a row lies."""
        return QRectF(0.0, index * self._high(), float(self.width()), self._high())

    def row_at(self, at: QPointF) -> int:
        """Return which row is there, -1 for none."""
        row = int(at.y() // self._high())
        return row if 0 <= row < len(self.points()) else -1

    # --- painting ---

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows."""
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(self.place.theme.paper))
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            for i, point in enumerate(self.points()):
                if self.part_rect(i).toAlignedRect().intersects(event.rect()):
                    self._paint_row(p, self.part_rect(i), point, i)

    def _paint_row(self, p: QPainter, rect: QRectF, point: SeenPoint, i: int) -> None:
        theme, current = self.place.theme, i == self.row()
        p.fillRect(
            QRectF(rect.left() + 8.0, rect.bottom() - 1.0, rect.width() - 16.0, 1.0), brush(theme.rule)
        )
        if current or i == self.hovered:
            edge = theme.blue if self.hasFocus() else theme.rule2
            p.setBrush(brush(theme.field if current else mixed(theme.paper, theme.ink, 0.05)))
            p.setPen(pen(edge, 2.0) if current else Qt.PenStyle.NoPen)
            p.drawRoundedRect(rect.adjusted(2.0, 1.0, -2.0, -2.0), 6.0, 6.0)
        self._write(p, rect, point)

    def _write(self, p: QPainter, rect: QRectF, point: SeenPoint) -> None:
        theme, size = self.place.theme, self.place.theme.size
        left, right = rect.left() + 9.0 * size, rect.right() - 9.0 * size
        two = self._two_lines()
        first = QRectF(left, rect.top(), right - left, (ROW - (6.0 if two else 0.0)) * size)
        reach, small = reach_words(self.place, point), Style(px=15.0).sized(size)
        wide = lettering.width(reach, small)
        token = theme.ink2 if point.reach is None else theme.severity(point.reach[1].severity)
        lettering.draw_in(p, first, reach, small, token, "right")
        seen = first.translated(0.0, LINE * size) if two else first.adjusted(NAME * first.width(), 0, 0, 0)
        name_room = first.width() - wide - 12.0 * size if two else NAME * first.width() - 10.0 * size
        name = self._fitting(point, STRONG.sized(size), name_room)
        lettering.draw_in(p, first, name, STRONG.sized(size), theme.ink, "left")
        room = (seen.width() if two else seen.width() - wide - 12.0 * size) - SIGN * size
        self._paint_seen(p, seen, point, room)

    def _fitting(self, point: SeenPoint, style: Style, room: float) -> str:
        words = point_words(point)
        words = words if lettering.width(words, style) <= room else point.name
        return lettering.elided(words, style, room)

    def _paint_seen(self, p: QPainter, rect: QRectF, point: SeenPoint, room: float) -> None:
        """Paint the sign of how a point is seen, and the words."""
        theme, size = self.place.theme, self.place.theme.size
        at = QPointF(rect.left() + 9.0 * size, rect.center().y())
        token = theme.ink
        if point.sight is not None:
            number, finding = point.sight
            paint_mark(p, at, finding.severity, number, theme, 22.0 * size, cased=False)
            token = theme.severity(finding.severity)
        elif point.verdict == "clear":
            paint_tick(p, at, theme, 14.0 * size)
        else:
            p.fillRect(QRectF(at.x() - 6.0 * size, at.y() - 1.0, 12.0 * size, 2.0), brush(theme.ink2))
        words = lettering.elided(sight_words(self.place, point), BODY.sized(size), max(room, 0.0))
        lettering.draw_in(
            p, rect.adjusted(SIGN * size, 0.0, 0.0, 0.0), words, BODY.sized(size), token, "left"
        )

    # --- hands ---

    def speak_of(self, row: int) -> None:
        """Speak of a row: the chalk line goes to its point."""
        points = self.points()
        if points:
            point = points[min(max(row, 0), len(points) - 1)]
            self.place.speak_of_point(point.subject, point.at[0])
            announce(self, sentence(self.place, point))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Speak of the row that is pressed."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        row = self.row_at(event.position())
        if event.button() == Qt.MouseButton.LeftButton and row >= 0:
            self.speak_of(row)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show which row the pointer is over."""
        self.hovered = self.row_at(event.position())
        over = self.hovered >= 0
        self.setCursor(Qt.CursorShape.PointingHandCursor if over else Qt.CursorShape.ArrowCursor)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.hovered = -1
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk the rows; a figure that is typed goes to the Card."""
        last = len(self.points()) - 1
        to = {
            Qt.Key.Key_Up: self.row() - 1,
            Qt.Key.Key_Down: self.row() + 1,
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: last,
        }.get(Qt.Key(event.key()))
        if to is not None:
            self.speak_of(to)
            return
        if event.key() == Qt.Key.Key_Escape or event.text().isdigit():
            self.left.emit()
        if event.key() != Qt.Key.Key_Escape:
            event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Speak of a row when the keys come here."""
        if (
            self.row() >= 0
            and self.place.service is None
            and event.reason() != Qt.FocusReason.MouseFocusReason
        ):
            self.speak_of(self.row())
        self.keys_changed.emit()
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Let the Card show the stand-in again."""
        self.keys_changed.emit()
        self.update()

    # --- read aloud ---

    def parts_said(self) -> list[str]:
        """Return a sentence for each row."""
        return [sentence(self.place, point) for point in self.points()]

    def part_held(self, index: int) -> bool:
        """Return whether a row is spoken of."""
        return index == self.row()
