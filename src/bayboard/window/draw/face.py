"""A stand-in's face worked out in pixels: its cut, its pencil lines and where its words find room.

Everything is measured from the pixel of the card's origin, so that a piece that moves keeps its
face; only zoom and turn make a new one.  Lettering stays upright however the card is turned.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Card, Point, Port, Service
from bayboard.window import lettering
from bayboard.window.draw.cut import centre_ticks, clipped, lower_edge, polygon_path
from bayboard.window.draw.free_room import Boxes, boxes_of
from bayboard.window.draw.shadow import Shape
from bayboard.window.draw.signs import looking, screw_sign, service_sign
from bayboard.window.draw.strokes import add_head
from bayboard.window.draw.words import PortAt, Room, Word, arrow_long, side_of

NUMBER_KEPT = 34.0  # px from a card's middle that a mark keeps off, so that the number stays readable


@dataclass(frozen=True, slots=True)
class Face:
    """A stand-in's face, pixels from its origin.

    `cut` is the outline with its clipped corner, `edge` the part of the cut one sees from
    above, `pencil` and `faint` are lines, `heads` filled arrow heads.  `corner` is where a
    mark about the whole piece sits, `other` where it goes while the corner carries the arc.
    """

    cut: QPainterPath
    edge: QPainterPath
    pencil: QPainterPath
    faint: QPainterPath
    heads: QPainterPath
    words: tuple[Word, ...]
    shape: Shape
    tip: Point  # the corner of the outline before it was clipped
    corner: Point
    other: Point
    box: QRectF
    kept: Boxes  # what no tag may cover: the number first, then the ports
    names: Boxes  # of the ports


@lru_cache(maxsize=512)
def face(card: Card, name: str, turn: float, px_per_mm: float, size: float = 1.0) -> Face:
    """Return the face of a card named `name`, turned by `turn` degrees, at a zoom and Scale setting."""
    return _Maker(card, turn, px_per_mm, size).made(name)


class _Maker:
    """Works out one face; everything it collects is in pixels, y down."""

    def __init__(self, card: Card, turn: float, k: float, size: float) -> None:
        self.card, self.turn, self.k, self.size = card, turn, k, size
        ring, tip = clipped(card.outline)
        self.ring = self._px(ring)
        self.tip = self._px([tip])[0]
        self.cut = polygon_path(self.ring)
        self.room = Room(self.cut, size)
        self.box = self.room.box
        self.pencil, self.faint, self.heads = QPainterPath(), QPainterPath(), QPainterPath()
        self.signs: list[tuple[QPainterPath, QRectF]] = []
        self.arrows: list[QRectF] = []

    def made(self, name: str) -> Face:
        """Return the face with all its strokes and letters; called once."""
        self._centre_lines()
        for screw in self.card.screws:
            self._screw(*self._px([screw.at])[0])
        for service in self.card.service:
            self._service(service)
        for port in self.card.ports:
            self._arrow(port)
        number = self.room.set_title(name, self.card.name)
        for sign, spot in self.signs:
            if not spot.intersects(number):  # on the smallest cards the number comes first
                self.pencil.addPath(sign)
        self.room.set_port_words(self._sided_ports(), self.card)
        self.faint.addPath(self.room.ties)
        across = self.box.left() + self.box.right() - self.tip[0]
        return Face(
            self.cut,
            lower_edge(self.ring),
            self.pencil,
            self.faint,
            self.heads,
            tuple(self.room.words),
            (tuple(self.ring),),
            self.tip,
            self._inward(self.tip, 20.0 * self.size),
            self._inward((across, self.tip[1]), 24.0 * self.size),
            self.box,
            boxes_of([number, *self.arrows]),
            boxes_of([_lettered(word) for word in self.room.words if word.of_port]),
        )

    def _px(self, points: Iterable[Point]) -> list[Point]:
        turned = outlines.turned(list(points), self.turn)
        return [(float(x) * self.k, float(-y) * self.k) for x, y in turned]

    def _way(self, towards: float) -> Point:
        x, y = outlines.unit(towards + self.turn)
        return x, -y

    def _inward(self, at: Point, step: float) -> Point:
        """Return the point moved towards the middle of the box, less where it would hide the number."""
        middle, kept = self.box.center(), NUMBER_KEPT * self.size
        dx = min(step, max(self.box.width() / 2 - kept, 0.0)) * (1 if middle.x() > at[0] else -1)
        dy = min(step, max(self.box.height() / 2 - kept, 0.0)) * (1 if middle.y() > at[1] else -1)
        return at[0] + dx, at[1] + dy

    def _centre_lines(self) -> None:
        for tick in centre_ticks(self.card.outline, self.k):
            (ax, ay), (bx, by) = self._px(tick)
            if self.cut.contains(QPointF(bx, by)):
                self.faint.moveTo(ax, ay)
                self.faint.lineTo(bx, by)

    def _screw(self, x: float, y: float) -> None:
        r = min(max(2.2 * self.k, 2.5), 6.0)
        self.faint.addPath(screw_sign(x, y, r))
        self.room.taken.append(QRectF(x - r - 2, y - r - 2, 2 * r + 4, 2 * r + 4))

    def _service(self, service: Service) -> None:
        """Draw a service point's sign where it is, drawn in just far enough to lie on the card."""
        (x, y) = self._px([service.at])[0]
        s = self.size * min(max(self.k / 0.8, 0.7), 1.5)
        sign = service_sign(service.kind, s)
        if not isinstance(service.facing, str):
            sign = QPainterPath(sign)
            sign.addPath(looking(self._way(service.facing), s))
        own = sign.boundingRect()
        room = self.box.adjusted(3 - own.left(), 3 - own.top(), -3 - own.right(), -3 - own.bottom())
        x, y = (
            min(max(x, room.left()), max(room.right(), room.left())),
            min(max(y, room.top()), max(room.bottom(), room.top())),
        )
        self.signs.append((sign.translated(x, y), own.translated(x, y)))
        self.room.taken.append(own.translated(x, y).adjusted(-2, -2, 2, 2))

    def _arrow(self, port: Port) -> None:
        (x, y) = self._px([port.at])[0]
        if isinstance(port.towards, str):
            self.pencil.addEllipse(QPointF(x, y), 4.5, 4.5)
            self.heads.addEllipse(QPointF(x, y), 1.5, 1.5)
            self._hold_port(QRectF(x - 6, y - 6, 12, 12))
            return
        long, (wx, wy) = arrow_long(self.box, self.size), self._way(port.towards)
        edge, inner = QPointF(x, y), QPointF(x - wx * long, y - wy * long)
        tail, tip = (inner, edge) if self._comes_out(port) else (edge, inner)
        self.pencil.moveTo(tail)
        self.pencil.lineTo(tip)
        add_head(self.heads, tip, (tip.x() - tail.x(), tip.y() - tail.y()), 0.55 * long, 0.45 * long)
        self._hold_port(QRectF(edge, inner).normalized().adjusted(-4, -4, 4, 4))

    def _hold_port(self, rect: QRectF) -> None:
        """Keep words off a port's sign, and tags."""
        self.room.taken.append(rect)
        self.arrows.append(rect)

    def _comes_out(self, port: Port) -> bool:
        """Return whether the arrow points out of the card; a fuse block is fed by its first stud."""
        if self.card.kind == "fuse block" and port.kind == "power":
            return port is not next(p for p in self.card.ports if p.kind == "power")
        return port.kind.endswith("-out")

    def _sided_ports(self) -> list[PortAt]:
        return [
            PortAt(port, x, y, side_of(self._way(port.towards)))
            for port in self.card.ports
            if not isinstance(port.towards, str)
            for x, y in self._px([port.at])
        ]


def _lettered(word: Word) -> QRectF:
    """Return the rectangle of a word, pixels from the card's origin."""
    line = lettering.line(word.text, word.style)
    left = word.x - {"left": 0.0, "centre": 0.5, "right": 1.0}[word.align] * line.width
    return QRectF(left, word.y - line.rise, line.width, 1.25 * line.rise)
