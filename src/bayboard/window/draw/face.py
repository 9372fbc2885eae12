"""A stand-in's face worked out in pixels: its cut, its pencil lines and where its words find room.

Everything is measured from the pixel of the card's origin, so that a piece that moves keeps its
face; only zoom and turn make a new one.  Lettering stays upright however the card is turned.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby
from math import hypot

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath, QPolygonF

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Card, Point, Port, Service
from bayboard.window import lettering
from bayboard.window.draw.shadow import Shape
from bayboard.window.draw.strokes import add_head
from bayboard.window.lettering import Align, Style

CLIPPED = 18.0  # mm off the upper left corner, less on small cards
CLIPPED_SHARE = 0.18  # of the shorter side
ARROW = 14.0  # px long, before the Scale setting
SMALLEST = 13.0  # px; a name that needs less is left off
PORT_WORDS = {
    "power": "12 V",
    "ground": "ground",
    "remote": "remote",
    "signal-in": "signal",
    "signal-out": "out",
    "speaker-in": "speakers",
    "speaker-out": "speakers",
    "data": "data",
}
COUNTED = {"signal-in", "signal-out", "speaker-in", "speaker-out"}


@dataclass(frozen=True, slots=True)
class Word:
    """A word on a card: its baseline point in pixels from the card's origin."""

    text: str
    x: float
    y: float
    style: Style
    align: Align = "centre"


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


@lru_cache(maxsize=512)
def face(card: Card, name: str, turn: float, px_per_mm: float, size: float = 1.0) -> Face:
    """Return the face of a card named `name`, turned by `turn` degrees, at a zoom and Scale setting."""
    return _Maker(card, name, turn, px_per_mm, size).made()


def clipped(outline: Sequence[Point]) -> tuple[tuple[Point, ...], Point]:
    """Return the outline with its upper left corner cut off, and that corner.

    An outline without a corner at its box's upper left is cut at the corner nearest to it,
    provided that corner sticks out.
    """
    x0, y0, x1, y1 = outlines.box(outline)
    at = min(range(len(outline)), key=lambda i: hypot(outline[i][0] - x0, outline[i][1] - y1))
    tip, before, after = outline[at], outline[at - 1], outline[(at + 1) % len(outline)]
    size = min(CLIPPED, CLIPPED_SHARE * min(x1 - x0, y1 - y0))
    legs = [_towards(tip, end, size) for end in (before, after)]
    cross = (tip[0] - before[0]) * (after[1] - tip[1]) - (tip[1] - before[1]) * (after[0] - tip[0])
    sticks_out = cross * outlines.signed_area(outline) > 0
    if not sticks_out or None in legs:
        return tuple(outline), tip
    kept = [*outline[:at], *[leg for leg in legs if leg is not None], *outline[at + 1 :]]
    return tuple(kept), tip


def _towards(tip: Point, end: Point, size: float) -> Point | None:
    far = hypot(end[0] - tip[0], end[1] - tip[1])
    if far < 1.5 * size:
        return None
    share = size / far
    return tip[0] + (end[0] - tip[0]) * share, tip[1] + (end[1] - tip[1]) * share


class _Maker:
    """Works out one face; everything it collects is in pixels, y down."""

    def __init__(self, card: Card, name: str, turn: float, k: float, size: float) -> None:
        self.card, self.name, self.turn, self.k, self.size = card, name, turn, k, size
        ring, tip = clipped(card.outline)
        self.ring = self._px(ring)
        self.tip = self._px([tip])[0]
        self.cut = QPainterPath()
        self.cut.addPolygon(QPolygonF([QPointF(x, y) for x, y in self.ring]))
        self.cut.closeSubpath()
        self.box = self.cut.boundingRect()
        self.pencil, self.faint, self.heads = QPainterPath(), QPainterPath(), QPainterPath()
        self.words: list[Word] = []
        self.taken: list[QRectF] = []

    def made(self) -> Face:
        self._centre_lines()
        for screw in self.card.screws:
            self._screw(*self._px([screw.at])[0])
        for service in self.card.service:
            self._service(service)
        for port in self.card.ports:
            self._arrow(port)
        self._title()
        self._port_words()
        return Face(
            self.cut,
            self._lower_edge(),
            self.pencil,
            self.faint,
            self.heads,
            tuple(self.words),
            (tuple(self.ring),),
            self.tip,
            self._inward(self.tip, 20.0 * self.size),
            self._inward((self.box.right() + self.box.left() - self.tip[0], self.tip[1]), 24.0 * self.size),
            self.box,
        )

    def _px(self, points: Iterable[Point]) -> list[Point]:
        turned = outlines.turned(list(points), self.turn)
        return [(float(x) * self.k, float(-y) * self.k) for x, y in turned]

    def _way(self, towards: float) -> Point:
        x, y = outlines.unit(towards + self.turn)
        return x, -y

    def _inward(self, at: Point, step: float) -> Point:
        """Return the point moved towards the middle of the box, by at most a third of the box."""
        middle = self.box.center()
        dx = min(step, self.box.width() / 3) * (1 if middle.x() > at[0] else -1)
        dy = min(step, self.box.height() / 3) * (1 if middle.y() > at[1] else -1)
        return at[0] + dx, at[1] + dy

    def _lower_edge(self) -> QPainterPath:
        """Return the strip of the cut that shows along the edges that look down, 2 px inside."""
        strip, ring = QPainterPath(), self.ring
        sign = 1.0 if outlines.signed_area(ring) > 0 else -1.0
        for (ax, ay), (bx, by) in zip(ring, [*ring[1:], ring[0]], strict=True):
            if -(bx - ax) * sign > 0.3 * (hypot(bx - ax, by - ay) or 1.0):
                corners = [(ax, ay), (bx, by), (bx, by - 2.0), (ax, ay - 2.0)]
                strip.addPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))
                strip.closeSubpath()
        return strip

    def _centre_lines(self) -> None:
        """Tick the middle of each side, as a stand-in is laid out on its centre lines."""
        x0, y0, x1, y1 = outlines.box(self.card.outline)
        long = min(12.0, 0.08 * self.k * min(x1 - x0, y1 - y0) + 3.0) / self.k
        for a, b in (
            ((x0, 0.0), (x0 + long, 0.0)),
            ((x1, 0.0), (x1 - long, 0.0)),
            ((0.0, y0), (0.0, y0 + long)),
            ((0.0, y1), (0.0, y1 - long)),
        ):
            (ax, ay), (bx, by) = self._px([a, b])
            if self.cut.contains(QPointF(bx, by)):
                self.faint.moveTo(ax, ay)
                self.faint.lineTo(bx, by)

    def _screw(self, x: float, y: float) -> None:
        r = min(max(2.2 * self.k, 2.5), 6.0)
        self.faint.addEllipse(QPointF(x, y), r, r)
        for dx, dy in ((r + 2.0, 0.0), (0.0, r + 2.0)):
            self.faint.moveTo(x - dx, y - dy)
            self.faint.lineTo(x + dx, y + dy)
        self.taken.append(QRectF(x - r - 2, y - r - 2, 2 * r + 4, 2 * r + 4))

    def _service(self, service: Service) -> None:
        (x, y) = self._px([service.at])[0]
        s = self.size * min(max(self.k / 0.8, 0.7), 1.5)
        draw = {
            "dial": _dial,
            "fuse": _fuse,
            "cover": _cover,
            "plug": _plug,
            "light": _light,
        }[service.kind]
        sign = QPainterPath()
        draw(sign, s)
        half = sign.boundingRect()
        x = min(max(x, self.box.left() + half.width() / 2 + 3), self.box.right() - half.width() / 2 - 3)
        y = min(max(y, self.box.top() + half.height() / 2 + 3), self.box.bottom() - half.height() / 2 - 3)
        self.pencil.addPath(sign.translated(x, y))
        self.taken.append(half.translated(x, y).adjusted(-3, -3, 3, 3))

    def _arrow(self, port: Port) -> None:
        (x, y) = self._px([port.at])[0]
        long = min(ARROW * self.size, 0.3 * min(self.box.width(), self.box.height()))
        if isinstance(port.towards, str):
            self.pencil.addEllipse(QPointF(x, y), 4.5, 4.5)
            self.heads.addEllipse(QPointF(x, y), 1.5, 1.5)
            self.taken.append(QRectF(x - 6, y - 6, 12, 12))
            return
        wx, wy = self._way(port.towards)
        edge, inner = (x, y), (x - wx * long, y - wy * long)
        comes_out = self._comes_out(port)
        tip, tail = (edge, inner) if comes_out else (inner, edge)
        way = (wx, wy) if comes_out else (-wx, -wy)
        self.pencil.moveTo(*tail)
        self.pencil.lineTo(*tip)
        add_head(self.heads, QPointF(*tip), way, 0.55 * long, 0.45 * long)
        self.taken.append(QRectF(QPointF(*edge), QPointF(*inner)).normalized().adjusted(-4, -4, 4, 4))

    def _comes_out(self, port: Port) -> bool:
        """Return whether the arrow points out of the card; a fuse block is fed by its first stud."""
        if self.card.kind == "fuse block" and port.kind == "power":
            return port is not next(p for p in self.card.ports if p.kind == "power")
        return port.kind.endswith("-out")

    def _title(self) -> None:
        """Place the number, which is never left off, and the name below it where it fits."""
        wide, high = self.box.width(), self.box.height()
        px = min(max(0.21 * min(high, 0.65 * wide), 18.0), 38.0) * self.size
        number = Style("pencil", round(px))
        while number.px > 8 and lettering.width(self.name, number) > wide - 6:
            number = Style("pencil", number.px - 1)
        name = Style("pencil", round(min(max(0.14 * min(high, 0.65 * wide), SMALLEST), 17.0) * self.size))
        rise, below = lettering.line(self.name, number).rise, lettering.line(self.card.name, name).rise
        name_wide = lettering.width(self.card.name, name)
        named = name_wide <= wide - 12 and rise + 1.75 * below + 8 <= high
        gap = 0.75 * below
        block = rise + (gap + below if named else 0.0)
        half = max(lettering.width(self.name, number), name_wide if named else 0.0) / 2 + 2
        middle = self._free_height(block, half)
        top = middle - block / 2
        x = self.box.center().x()
        self.words.append(Word(self.name, x, top + rise, number))
        number_wide = lettering.width(self.name, number)
        self.taken.append(QRectF(x - number_wide / 2, top, number_wide, rise).adjusted(-6, -4, 6, 2))
        spot = QRectF(x - name_wide / 2, top + rise + gap, name_wide, below)
        if named and self._is_free(spot.adjusted(0, 4, 0, 0)):
            self.words.append(Word(self.card.name, x, top + block, name))
            self.taken.append(spot.adjusted(-3, -3, 3, 4))

    def _free_height(self, block: float, half: float) -> float:
        """Return the middle of the title's block: as near to the card's middle as signs allow."""
        centre, x = self.box.center().y(), self.box.center().x()
        spare = max((self.box.height() - block) / 2 - 4, 0.0)
        for share in (0.0, -0.15, 0.15, -0.3, 0.3, -0.5, 0.5, -0.8, 0.8, -1.0, 1.0):
            middle = centre + share * spare
            if self._is_free(QRectF(x - half - 7, middle - block / 2 - 5, 2 * half + 14, block + 10)):
                return middle
        return centre

    def _is_free(self, spot: QRectF) -> bool:
        return not any(spot.intersects(taken) for taken in self.taken)

    def _port_words(self) -> None:
        style = Style("pencil", round(min(max(0.095 * self.box.height(), SMALLEST), 15.0) * self.size))
        sides: dict[str, list[tuple[float, float, Port]]] = {"up": [], "down": [], "left": [], "right": []}
        for port in self.card.ports:
            if not isinstance(port.towards, str):
                (x, y) = self._px([port.at])[0]
                sides[_side(self._way(port.towards))].append((x, y, port))
        for side, ports in sides.items():
            along = 0 if side in ("up", "down") else 1
            ports.sort(key=lambda p: p[along])
            for _, run in groupby(ports, key=lambda p: p[2].kind):
                self._word(side, list(run), style)

    def _word(self, side: str, ports: list[tuple[float, float, Port]], style: Style) -> None:
        x = sum(p[0] for p in ports) / len(ports)
        y = sum(p[1] for p in ports) / len(ports)
        ways = sum(p[2].ways for p in ports)
        for text in self._texts(ports[0][2], ways):
            wide, rise = lettering.width(text, style), lettering.line(text, style).rise
            for aside in (0.0, 5.0, -5.0, 11.0, -11.0):
                spot = self._word_spot(side, x, y, wide, rise, aside * self.size)
                if self._is_free(spot) and self.box.adjusted(2, 2, -2, -2).contains(spot):
                    self.words.append(Word(text, spot.center().x(), spot.bottom(), style))
                    self.taken.append(spot.adjusted(-4, -3, 4, 3))
                    return

    def _texts(self, port: Port, ways: int) -> list[str]:
        word = PORT_WORDS[port.kind]
        if port.kind == "signal-in" and any(p.kind == "signal-out" for p in self.card.ports):
            word = "in"
        if ways == 1:
            return [word.removesuffix("s")]
        return [f"{word} 1–{ways}", word] if port.kind in COUNTED else [word]

    def _word_spot(self, side: str, x: float, y: float, wide: float, rise: float, aside: float) -> QRectF:
        """Return where a word stands inside its arrow, `aside` pixels along the side."""
        off = min(ARROW * self.size, 0.3 * min(self.box.width(), self.box.height())) + 6.0
        if side in ("up", "down"):
            left = min(max(x + aside - wide / 2, self.box.left() + 6), self.box.right() - 6 - wide)
            top = y - off - rise if side == "down" else y + off
        else:
            left = x + off if side == "left" else x - off - wide
            top = min(max(y + aside - rise / 2, self.box.top() + 5), self.box.bottom() - 5 - rise)
        return QRectF(left, top, wide, rise)


def _side(way: Point) -> str:
    if abs(way[0]) > abs(way[1]):
        return "right" if way[0] > 0 else "left"
    return "down" if way[1] > 0 else "up"


def _dial(path: QPainterPath, s: float) -> None:
    path.addEllipse(QPointF(0, 0), 5.5 * s, 5.5 * s)
    path.moveTo(0, 0)
    path.lineTo(3.6 * s, -3.6 * s)


def _fuse(path: QPainterPath, s: float) -> None:
    path.addRoundedRect(QRectF(-8 * s, -5 * s, 16 * s, 10 * s), 3 * s, 3 * s)
    path.moveTo(-3.6 * s, 0)
    path.lineTo(3.6 * s, 0)


def _cover(path: QPainterPath, s: float) -> None:
    path.addRect(QRectF(-7 * s, -7 * s, 14 * s, 14 * s))
    path.moveTo(3 * s, -7 * s)
    path.lineTo(7 * s, -3 * s)


def _plug(path: QPainterPath, s: float) -> None:
    path.addRect(QRectF(-6 * s, -4 * s, 12 * s, 8 * s))
    for x in (-3 * s, 3 * s):
        path.moveTo(x, -4 * s)
        path.lineTo(x, -8 * s)


def _light(path: QPainterPath, s: float) -> None:
    path.addEllipse(QPointF(0, 0), 3 * s, 3 * s)
    for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1), (0.7, 0.7), (-0.7, 0.7), (0.7, -0.7), (-0.7, -0.7)):
        path.moveTo(4.6 * s * dx, 4.6 * s * dy)
        path.lineTo(7.2 * s * dx, 7.2 * s * dy)
