"""Where the words of a card find room: its number always, name and ports as far as they fit.

All is in pixels from the card's origin, y down.
"""

from dataclasses import dataclass
from itertools import groupby
from math import hypot

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from bayboard.model.layout import Card, Point, Port
from bayboard.window import lettering
from bayboard.window.lettering import Align, Style

SMALLEST = 13.0  # px; a name that needs less is left off
ARROW = 14.0  # px long, before the Scale setting
CROWDED = 40.0  # px; ports nearer to each other share the room for their words
# in the order in which they may choose a place
PORT_WORDS = {
    "power": "12 V",
    "ground": "ground",
    "speaker-out": "speakers",
    "speaker-in": "speakers",
    "signal-in": "signal",
    "signal-out": "out",
    "remote": "remote",
    "data": "data",
}
COUNTED = {"signal-in", "signal-out"}
# places for the title as shares of the spare room, nearest to the middle first, rather up than down
_NEARING = sorted(
    ((x / 4, y / 5) for x in range(-4, 5) for y in range(-5, 6)),
    key=lambda at: (hypot(1.6 * at[0], at[1]), at[1], at[0]),
)


@dataclass(frozen=True, slots=True)
class Word:
    """A word on a card: its baseline point in pixels from the card's origin."""

    text: str
    x: float
    y: float
    style: Style
    align: Align = "centre"
    of_port: bool = False


@dataclass(frozen=True, slots=True)
class PortAt:
    """A port with its pixel, and the side of the card it looks out of."""

    port: Port
    x: float
    y: float
    side: str

    @property
    def along(self) -> float:
        """Return the pixel along its side."""
        return self.x if self.side in ("up", "down") else self.y


def side_of(way: Point) -> str:
    """Return the side a direction in pixels (y down) looks out of."""
    if abs(way[0]) > abs(way[1]):
        return "right" if way[0] > 0 else "left"
    return "down" if way[1] > 0 else "up"


def arrow_long(box: QRectF, size: float) -> float:
    """Return how long a port's arrow is on a card of that box."""
    return min(ARROW * size, 0.3 * min(box.width(), box.height()))


class Room:
    """The room on one card: what is taken, the words set, the ties of words to arrows."""

    def __init__(self, cut: QPainterPath, size: float) -> None:
        self.cut, self.size = cut, size
        self.box = cut.boundingRect()
        self.taken: list[QRectF] = []
        self.words: list[Word] = []
        self.ties = QPainterPath()

    def is_free(self, spot: QRectF) -> bool:
        """Return whether nothing has taken the spot."""
        return not any(spot.intersects(taken) for taken in self.taken)

    def fits(self, spot: QRectF, air: QPointF | None = None) -> bool:
        """Return whether a spot lies on the card and is free, with air round it."""
        dx, dy = (air.x(), air.y()) if air else (0.0, 0.0)
        return self.is_free(spot.adjusted(-dx, -dy, dx, dy)) and self.cut.contains(spot)

    def set_title(self, number: str, name: str) -> QRectF:
        """Set the number, which is never left off, and the name below it where both fit.

        Return the rectangle of the number.
        """
        big, small = self._title_styles(number)
        wide, rise = lettering.width(number, big), lettering.line(number, big).rise
        name_wide, below = lettering.width(name, small), lettering.line(name, small).rise
        gap = 0.75 * below
        both = QRectF(0.0, 0.0, max(wide, name_wide), rise + gap + below)
        spot = self._nearest(both, QPointF(7.0, 5.0)) or self._nearest(both, QPointF(2.0, 1.0))
        named = spot is not None
        if spot is None:
            alone = QRectF(0.0, 0.0, wide, rise)
            spot = self._nearest(alone, QPointF(3.0, 3.0)) or _centred(alone, self.box.center())
        middle = spot.center().x()
        self.words.append(Word(number, middle, spot.top() + rise, big))
        letters = QRectF(middle - wide / 2, spot.top(), wide, rise)
        self.taken.append(letters.adjusted(-6, -4, 6, 2))
        if named:
            self.words.append(Word(name, middle, spot.bottom(), small))
            low = QRectF(middle - name_wide / 2, spot.top() + rise + gap, name_wide, below)
            self.taken.append(low.adjusted(-3, -3, 3, 4))
        return letters

    def _title_styles(self, number: str) -> tuple[Style, Style]:
        """Return the styles of number and name; the number shrinks until it fits the card."""
        wide = self.box.width()
        least = min(self.box.height(), 0.65 * wide)
        big = Style("pencil", round(min(max(0.21 * least, 18.0), 38.0) * self.size))
        while big.px > 8 and lettering.width(number, big) > wide - 6:
            big = Style("pencil", big.px - 1)
        return big, Style("pencil", round(min(max(0.14 * least, SMALLEST), 17.0) * self.size))

    def _nearest(self, block: QRectF, air: QPointF) -> QRectF | None:
        """Return the free place for a block nearest to the card's middle, None if there is none."""
        spare_x = (self.box.width() - block.width()) / 2 - air.x()
        spare_y = (self.box.height() - block.height()) / 2 - air.y()
        if spare_x < 0 or spare_y < 0:
            return None
        centre = self.box.center()
        for across, up in _NEARING:
            spot = _centred(block, QPointF(centre.x() + across * spare_x, centre.y() + up * spare_y))
            if self.fits(spot, air):
                return spot
        return None

    def set_port_words(self, ports: list[PortAt], card: Card) -> None:
        """Set the ports' words, what feeds the piece first, as long as there is room."""
        style = Style("pencil", round(min(max(0.095 * self.box.height(), SMALLEST), 15.0) * self.size))
        order = list(PORT_WORDS)
        for run, crowd in sorted(_runs(ports), key=lambda r: order.index(r[0][0].port.kind)):
            self._set_word(run, _texts(run, card), style, crowd)

    def _set_word(self, run: list[PortAt], texts: list[str], style: Style, crowd: float) -> None:
        arrow = QPointF(sum(p.x for p in run) / len(run), sum(p.y for p in run) / len(run))
        for row in (0, 1):
            for text in texts:
                spot = self._free_word(run[0].side, arrow, text, style, row, crowd)
                if spot is not None:
                    self.words.append(Word(text, spot.center().x(), spot.bottom(), style, of_port=True))
                    self.taken.append(spot.adjusted(-4, -3, 4, 3))
                    if row:
                        self._tie_to(arrow, spot)
                    return

    def _free_word(
        self, side: str, arrow: QPointF, text: str, style: Style, row: int, crowd: float
    ) -> QRectF | None:
        """Return where a word stands inside its arrow, in the second row only where its tie is free too."""
        wide, rise = lettering.width(text, style), lettering.line(text, style).rise
        if row and side not in ("up", "down"):
            return None
        asides = sorted((0.0, 5.0, -5.0, 11.0, -11.0), key=lambda a: -a * crowd or abs(a))
        for off, aside in ((off, aside) for off in (6.0, 3.0) for aside in asides):
            spot = self._beside(side, arrow, wide, rise, QPointF(aside * self.size, off))
            if row:
                spot = spot.translated(0.0, (rise + 7.0) * (1.0 if side == "up" else -1.0))
            if self.fits(spot) and (not row or self.is_free(self._tie(arrow, spot))):
                return spot
        return None

    def _beside(self, side: str, arrow: QPointF, wide: float, rise: float, step: QPointF) -> QRectF:
        """Return the place inside an arrow, `step` px along the side and off the arrow's inner end."""
        aside, off, box = step.x(), arrow_long(self.box, self.size) + step.y(), self.box
        if side in ("up", "down"):
            left = min(max(arrow.x() + aside - wide / 2, box.left() + 6), box.right() - 6 - wide)
            top = arrow.y() - off - rise if side == "down" else arrow.y() + off
        else:
            left = arrow.x() + off if side == "left" else arrow.x() - off - wide
            top = min(max(arrow.y() + aside - rise / 2, box.top() + 5), box.bottom() - 5 - rise)
        return QRectF(left, top, wide, rise)

    def _tie(self, arrow: QPointF, spot: QRectF) -> QRectF:
        """Return the thin upright strip between an arrow's inner end and a word in the second row."""
        long = arrow_long(self.box, self.size) + 5.0
        below = arrow.y() > spot.center().y()
        inner = arrow.y() - long if below else arrow.y() + long
        end = spot.bottom() + 2.0 if below else spot.top() - 2.0
        return QRectF(arrow.x() - 1.0, min(inner, end), 2.0, abs(inner - end))

    def _tie_to(self, arrow: QPointF, spot: QRectF) -> None:
        tie = self._tie(arrow, spot)
        self.ties.moveTo(arrow.x(), tie.top())
        self.ties.lineTo(arrow.x(), tie.bottom())
        self.taken.append(tie)


def _runs(ports: list[PortAt]) -> list[tuple[list[PortAt], float]]:
    """Return the ports in runs of one kind along a side, and from where each is crowded.

    From the right is -1, from the left 1, from both or neither 0: the word had better step aside.
    """
    found = []
    ordered = sorted(ports, key=lambda p: (p.side, p.along))
    for _, row in groupby(ordered, key=lambda p: p.side):
        runs = [list(run) for _, run in groupby(row, key=lambda p: p.port.kind)]
        for i, run in enumerate(runs):
            after = i + 1 < len(runs) and runs[i + 1][0].along - run[-1].along < CROWDED
            before = i > 0 and run[0].along - runs[i - 1][-1].along < CROWDED
            found.append((run, float(before) - float(after)))
    return found


def _texts(run: list[PortAt], card: Card) -> list[str]:
    """Return what may be written at a run of ports, the fullest first."""
    kind, ways = run[0].port.kind, sum(p.port.ways for p in run)
    word = PORT_WORDS[kind]
    if kind == "signal-in" and any(p.kind == "signal-out" for p in card.ports):
        word = "in"
    if ways == 1:
        return [word.removesuffix("s")]
    return [f"{word} 1–{ways}", word] if kind in COUNTED else [word]


def _centred(block: QRectF, middle: QPointF) -> QRectF:
    return QRectF(
        middle.x() - block.width() / 2, middle.y() - block.height() / 2, block.width(), block.height()
    )
