"""Where the words about a change stand: beside what they are about, over no number and no other tag."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from bayboard.window.draw.leaders import Edges, meets
from bayboard.window.draw.strokes import segment
from bayboard.window.draw.tags import paint_tag, tag_size
from bayboard.window.theme import Theme, pen

AIR = 5.0  # px kept round a tag
OFFS = (14.0, 30.0, 52.0, 80.0, 120.0)  # px between a thing and its tag
COVERED = 160.0  # what it costs to lie on stand-ins and the like with the whole tag, in px of distance
CROSSED = 25.0  # what it costs that the tie crosses one of them
WORTH = 130.0  # a place that costs more is no place
Line = tuple[tuple[float, float], tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Wanted:
    """Words and the pixels of what they are about.  `loud`: they stand even where there is no free place."""

    text: str
    about: QRectF
    loud: bool = False


@dataclass(frozen=True, slots=True)
class Tag:
    """A tag as it stands, with the line that ties it to its thing, None where it touches it."""

    text: str
    rect: QRectF
    tie: Line | None


def placed_tags(
    wanted: Sequence[Wanted],
    within: QRectF,
    hard: Sequence[QRectF],
    soft: Sequence[QRectF],
    theme: Theme,
) -> list[Tag | None]:
    """Return where each tag stands, None for one that finds no place and stays folded.

    `hard`: numbers and the like, which no tag and no tie covers; `soft`: stand-ins, rather left free.
    The loud choose first, then what is about small things: they have the fewest places.
    """
    held = [_edges(rect, AIR) for rect in hard]
    dear = [_edges(rect, 0.0) for rect in soft]
    found: dict[int, Tag] = {}
    for i in sorted(range(len(wanted)), key=lambda i: (not wanted[i].loud, _area(wanted[i].about))):
        tag = _best(wanted[i], within, held, dear, theme)
        if tag is not None:
            found[i] = tag
            held.append(_edges(tag.rect, AIR))
    return [found.get(i) for i in range(len(wanted))]


def _best(
    wanted: Wanted, within: QRectF, held: Sequence[Edges], dear: Sequence[Edges], theme: Theme
) -> Tag | None:
    """Return the cheapest place: near, and over as little as can be."""
    wide, high = tag_size(wanted.text, theme)
    own = _edges(wanted.about, 0.0)
    most = inf if wanted.loud else WORTH
    best: tuple[float, Tag] | None = None
    fallback: Tag | None = None
    for off, left, top in _spots(wanted.about, wide, high, theme.size):
        rect = QRectF(left, top, wide, high)
        if (best is not None and off >= best[0]) or not within.contains(rect):
            continue
        tag = Tag(wanted.text, rect, tie(rect, wanted.about))
        fallback = fallback or tag
        box = _edges(rect, 0.0)
        if any(_overlap(box, other) for other in held):
            continue
        if tag.tie is not None and any(meets(tag.tie, _grown(other, -AIR)) for other in held):
            continue
        cost = off + COVERED * sum(_overlap(box, other) for other in dear) / (wide * high)
        if tag.tie is not None:
            cost += CROSSED * sum(meets(tag.tie, other) for other in dear if other != own)
        if cost < (most if best is None else best[0]):
            best = (cost, tag)
    if best is not None:
        return best[1]
    return fallback if wanted.loud else None


def _spots(about: QRectF, wide: float, high: float, size: float) -> Iterator[tuple[float, float, float]]:
    """Yield (distance, left, top) of the places for a tag round a thing, the nearest first."""
    middle = about.center()
    lefts = (
        middle.x() - wide / 2,
        about.left(),
        about.right() - wide,
        about.left() - wide / 2,
        about.right() - wide / 2,
    )
    tops = (
        middle.y() - high / 2,
        about.top(),
        about.bottom() - high,
        about.bottom() - 6.0,
        about.top() - high + 6.0,
    )
    for plain in OFFS:
        off = plain * size
        for i, left in enumerate(lefts):
            yield off + 3.0 * i, left, about.top() - off - high
            yield off + 3.0 * i + 1.0, left, about.bottom() + off
        for i, top in enumerate(tops):
            yield off + 6.0 * i + 2.0, about.right() + off, top
            yield off + 6.0 * i + 3.0, about.left() - off - wide, top


def tie(tag: QRectF, about: QRectF) -> Line | None:
    """Return the shortest line from a tag to its thing, upright or level where it can be."""
    x0, x1 = _gap((tag.left() + 10.0, tag.right() - 10.0), (about.left(), about.right()))
    y0, y1 = _gap((tag.top() + 6.0, tag.bottom() - 6.0), (about.top(), about.bottom()))
    if (x0, y0) == (x1, y1):
        return None
    if x0 == x1:
        y0 = tag.bottom() if y1 > tag.center().y() else tag.top()
    elif y0 == y1:
        x0 = tag.right() if x1 > tag.center().x() else tag.left()
    return (x0, y0), (x1, y1)


def _area(rect: QRectF) -> float:
    return rect.width() * rect.height()


def _gap(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    """Return the nearest points of two stretches; the middle of what they share, twice, where they meet."""
    low, high = max(a[0], b[0]), min(a[1], b[1])
    if low <= high:
        return (low + high) / 2, (low + high) / 2
    return (a[1], b[0]) if a[1] < b[0] else (a[0], b[1])


def _edges(rect: QRectF, air: float) -> Edges:
    return _grown((rect.left(), rect.top(), rect.right(), rect.bottom()), air)


def _grown(box: Edges, air: float) -> Edges:
    return box[0] - air, box[1] - air, box[2] + air, box[3] + air


def _overlap(a: Edges, b: Edges) -> float:
    """Return the area that two boxes share."""
    wide = min(a[2], b[2]) - max(a[0], b[0])
    high = min(a[3], b[3]) - max(a[1], b[1])
    return wide * high if wide > 0.0 and high > 0.0 else 0.0


def paint_ties(p: QPainter, tags: Sequence[Tag | None], theme: Theme) -> None:
    """Paint the lines of all tags, to lie under them."""
    for tag in tags:
        if tag is not None and tag.tie is not None:
            line = segment(QPointF(*tag.tie[0]), QPointF(*tag.tie[1]))
            p.strokePath(line, pen(theme.board, 4.4))
            p.strokePath(line, pen(theme.chalk, 1.8))


def paint_tags(
    p: QPainter, tags: Sequence[Tag | None], theme: Theme, spoken: frozenset[str] = frozenset()
) -> None:
    """Paint the tags; those whose text is among the `spoken` are edged in blue."""
    for tag in tags:
        if tag is not None:
            paint_tag(p, tag.rect, tag.text, theme, token=theme.blue if tag.text in spoken else None)
