"""What the small drawings of the rules are made of: pieces, boards, seats, leads, distances."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, hypot, radians, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.window import lettering
from bayboard.window.draw.strokes import add_head, cased, hatched
from bayboard.window.lettering import HELPER
from bayboard.window.theme import Theme, brush, pen

WIDE, HIGH = 100.0, 72.0  # a drawing's own units: x to the right, y down
At = tuple[float, float]
Box = tuple[float, float, float, float]  # left, top, wide, high


@dataclass(frozen=True, slots=True)
class Sketch:
    """A painter with a rectangle that takes a drawing of `WIDE` by `HIGH`; nothing lies outside it."""

    p: QPainter
    rect: QRectF
    theme: Theme

    @property
    def k(self) -> float:
        """Return how many pixels a unit has."""
        return min(self.rect.width() / WIDE, self.rect.height() / HIGH)

    def at(self, x: float, y: float) -> QPointF:
        """Return the pixel of a point."""
        left = self.rect.center().x() - WIDE / 2 * self.k
        return QPointF(left + x * self.k, self.rect.center().y() + (y - HIGH / 2) * self.k)

    def box(self, box: Box) -> QRectF:
        """Return the pixels' rectangle of a box."""
        return QRectF(self.at(box[0], box[1]), self.at(box[0] + box[2], box[1] + box[3]))

    def path(self, points: Sequence[At], closed: bool = False) -> QPainterPath:
        """Return points as a path."""
        path = QPainterPath(self.at(*points[0]))
        for point in points[1:]:
            path.lineTo(self.at(*point))
        if closed:
            path.closeSubpath()
        return path

    # --- things ---

    def board(self, *box: float) -> None:
        """Paint a board, black plastic."""
        self._filled(self._of((box[0], box[1], box[2], box[3]), 2.0), self.theme.board, self.theme.boardhi)

    def piece(self, *box: float) -> None:
        """Paint a stand-in, buff chipboard."""
        self._filled(self._of((box[0], box[1], box[2], box[3]), 0.0), self.theme.buff, self.theme.buffedge)

    def sheet(self, *box: float) -> None:
        """Paint a sheet of paper."""
        self._filled(self._of((box[0], box[1], box[2], box[3]), 0.0), self.theme.field, self.theme.ink2)

    def ring(self, x: float, y: float, r: float) -> None:
        """Paint the rim of a flange or washer."""
        self.p.setPen(pen(self.theme.ink, 1.6))
        self.p.drawEllipse(self.at(x, y), r * self.k, r * self.k)

    def metal(self, points: Sequence[At]) -> None:
        """Paint the metal of the wall as a thick line."""
        self.p.strokePath(self.path(points), pen(self.theme.rule2, 3.0))

    def seat(self, points: Sequence[At], ghost: bool = False) -> None:
        """Paint a seat in section; a `ghost` is where it was."""
        path = self.path(points, closed=True)
        if ghost:
            self.p.strokePath(path, pen(self.theme.ink2, 1.2, dash=(4.0, 3.0)))
        else:
            self._filled(path, self.theme.shelf, self.theme.ink2)

    def region(self, *box: float, round_by: float = 2.0) -> None:
        """Paint a hatched region: a lining, a part not to be drilled."""
        path = self._of((box[0], box[1], box[2], box[3]), round_by)
        hatched(self.p, path, 7, self.theme.ink2, 0.6)
        self.p.strokePath(path, pen(self.theme.ink2, 1.2))

    def wrong(self, *box: float) -> None:
        """Paint the part that is wrong: hatched and edged in the colour of a must."""
        path = self._of((box[0], box[1], box[2], box[3]), 0.0)
        hatched(self.p, path, 6, self.theme.must, 0.7)
        cased(self.p, path, self.theme.must, 1.6, self.theme, casing=1.0)

    def hole(self, x: float, y: float, r: float, old: bool = False) -> None:
        """Paint a hole with its cross; an `old` one is dashed."""
        middle, radius = self.at(x, y), r * self.k
        self.p.setBrush(Qt.BrushStyle.NoBrush if old else brush(self.theme.field))
        self.p.setPen(pen(self.theme.rule2 if old else self.theme.ink, 1.4, dash=(3.0, 2.0) if old else ()))
        self.p.drawEllipse(middle, radius, radius)
        self.p.setBrush(Qt.BrushStyle.NoBrush)
        self.line((x - r - 2, y), (x + r + 2, y), 1.0)
        self.line((x, y - r - 2), (x, y + r + 2), 1.0)

    def lead(self, points: Sequence[At], token: str) -> None:
        """Paint a lead as a jacket."""
        path = self.path(points)
        self.p.strokePath(path, pen(self.theme.ink, 5.4, round_ends=True))
        self.p.strokePath(path, pen(token, 3.6, round_ends=True))

    # --- strokes ---

    def line(self, a: At, b: At, wide: float = 1.2, token: str | None = None, dash: bool = False) -> None:
        """Paint a straight line."""
        self.p.strokePath(
            self.path([a, b]), pen(token or self.theme.ink, wide, dash=(4.0, 3.0) if dash else ())
        )

    def arrow(self, a: At, b: At, token: str | None = None) -> None:
        """Paint a line with a head at its end."""
        ink = token or self.theme.ink
        self.line(a, b, 1.6, ink)
        self._head(a, b, ink)

    def span(self, a: At, b: At, token: str | None = None) -> None:
        """Paint a distance on its casing: end strokes, a line, and heads at both ends."""
        ink = token or self.theme.must
        far = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
        nx, ny = -(b[1] - a[1]) / far * 4.0, (b[0] - a[0]) / far * 4.0
        path = self.path([a, b])
        for x, y in (a, b):
            path.moveTo(self.at(x - nx, y - ny))
            path.lineTo(self.at(x + nx, y + ny))
        cased(self.p, path, ink, 1.8, self.theme, casing=1.4)
        if far > 11.0:
            self._head(a, b, ink)
            self._head(b, a, ink)

    def arc(
        self, at: At, r: float, start: float, end: float, token: str | None = None, head: bool = True
    ) -> None:
        """Paint an arc in degrees, counter-clockwise from the right, with a head at its end."""
        points = [_round(at, r, start + (end - start) * i / 24) for i in range(25)]
        self.p.strokePath(self.path(points), pen(token or self.theme.ink, 1.6))
        if head:
            self._head(points[-3], points[-1], token or self.theme.ink)

    def fan(self, at: At, r: float, facing: float, spread: float) -> None:
        """Paint within what angle something can be read: a faint fan to both sides of where it faces."""
        points = [_round(at, r, facing - spread + 2 * spread * i / 24) for i in range(25)]
        self.p.fillPath(self.path([at, *points], closed=True), brush(self.theme.note, 0.22))

    def tube(self, a: At, b: At, wide: float, token: str) -> None:
        """Paint a tube from a to b: two edges and its mouth."""
        far = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
        nx, ny = -(b[1] - a[1]) / far * wide / 2, (b[0] - a[0]) / far * wide / 2
        ring = [
            (a[0] + nx, a[1] + ny),
            (b[0] + nx, b[1] + ny),
            (b[0] - nx, b[1] - ny),
            (a[0] - nx, a[1] - ny),
        ]
        self.p.fillPath(self.path(ring, closed=True), brush(token, 0.25))
        self.p.strokePath(self.path(ring, closed=True), pen(token, 1.4))

    def warm(self, x: float, y: float, high: float) -> None:
        """Paint warm air that rises: a wavy arrow."""
        points = [(x + 2.2 * sin(i / 3.0), y - high * i / 18) for i in range(19)]
        self.p.strokePath(self.path(points), pen(self.theme.must, 1.6))
        self._head(points[-3], points[-1], self.theme.must)

    def eye(self, x: float, y: float) -> None:
        """Paint an eye."""
        lid = QPainterPath(self.at(x - 6, y))
        lid.quadTo(self.at(x, y - 6), self.at(x + 6, y))
        lid.quadTo(self.at(x, y + 6), self.at(x - 6, y))
        self._filled(lid, self.theme.field, self.theme.ink)
        self.p.setBrush(brush(self.theme.ink))
        self.p.drawEllipse(self.at(x, y), 1.8 * self.k, 1.8 * self.k)
        self.p.setBrush(Qt.BrushStyle.NoBrush)

    def word(self, x: float, y: float, text: str, token: str | None = None) -> None:
        """Write a word round a point, on paper."""
        style = HELPER.sized(self.theme.size)
        wide = lettering.width(text, style) + 6.0
        room = QRectF(self.at(x, y).x() - wide / 2, self.at(x, y).y() - 9.0, wide, 18.0)
        room.moveLeft(min(max(room.left(), self.rect.left()), self.rect.right() - wide))
        self.p.fillRect(room, brush(self.theme.paper, 0.85))
        lettering.draw_in(self.p, room, text, style, token or self.theme.ink)

    # --- how ---

    def _of(self, box: Box, round_by: float) -> QPainterPath:
        path = QPainterPath()
        path.addRoundedRect(self.box(box), round_by * self.k, round_by * self.k)
        return path

    def _filled(self, path: QPainterPath, fill: str, edge: str) -> None:
        self.p.fillPath(path, brush(fill))
        self.p.strokePath(path, pen(edge, 1.4))

    def _head(self, a: At, b: At, token: str) -> None:
        heads, tail, tip = QPainterPath(), self.at(*a), self.at(*b)
        add_head(heads, tip, (tip.x() - tail.x(), tip.y() - tail.y()), 7.0, 6.0)
        self.p.fillPath(heads, brush(token))


def _round(at: At, r: float, turn: float) -> At:
    return at[0] + r * cos(radians(turn)), at[1] - r * sin(radians(turn))
