"""The rows of the Findings: what stands in each, how high it is, and where its buttons and links are felt."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF

from bayboard.rules.finding import Finding
from bayboard.window import lettering
from bayboard.window.controls import PAD, TARGET, link_width
from bayboard.window.lettering import BODY, HELPER, STRONG
from bayboard.window.theme import Theme

CLOSED = 36.0  # px from one closed row to the next
APART = 6.0  # px round the open row
LINE, NOTE = 23.0, 20.0  # px from line to line, of the sentence and of what is noted below it
TOP = 8.0  # px over the sentence of an open row
WIDE = 500.0  # px; a narrower list leaves the word for the severity off, the sign tells it
SENTENCE_AT, SENTENCE_NEAR = 104.0, 48.0
WORDS = {"must": "Must", "should": "Should", "note": "Note"}
WHY, LET_BE, LET_SPEAK = "Why?", "Let it be", "Let it speak"


@dataclass(frozen=True, slots=True)
class Row:
    """A finding in the list.  `number` None: it is cured, and stays for a moment, struck through.

    `acts` are the words of its buttons while it is open, `hint` what is said where there is none (yet);
    `own` tells of limits that this vehicle has set; `asking`: the reason to let it be is typed.
    """

    finding: Finding
    number: int | None
    open: bool = False
    asking: bool = False
    acts: tuple[str, ...] = ()
    hint: str = ""
    own: str = ""

    @property
    def cured(self) -> bool:
        """Return whether it is gone by now."""
        return self.number is None

    def links(self) -> tuple[str, ...]:
        """Return the words of what can be done about it besides a cure."""
        if self.cured or not self.open or self.asking:
            return ()
        if self.finding.let_be is not None:
            return (WHY, LET_SPEAK)
        return (WHY,) if self.finding.severity == "must" else (WHY, LET_BE)

    def says(self) -> str:
        """Return the sentence, with the reason of one that was let be."""
        reason = self.finding.let_be
        return self.finding.says if reason is None else f"{self.finding.says} Let be: {reason}"


@dataclass(frozen=True, slots=True)
class Fold:
    """What another stage's rules found, in one line; `current`: the keys are on it."""

    stage: str
    words: str
    unfolded: bool = False
    current: bool = False


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a row lies: its lines of text, what is noted below, its buttons and links as they are felt."""

    row: Row | Fold
    rect: QRectF
    lines: tuple[str, ...]
    notes: tuple[str, ...] = ()
    links: tuple[tuple[str, QRectF], ...] = ()
    acts: tuple[tuple[str, QRectF], ...] = ()
    hint: QRectF | None = None

    @property
    def open(self) -> bool:
        """Return whether this is the open row."""
        return isinstance(self.row, Row) and self.row.open

    @property
    def targets(self) -> tuple[tuple[str, QRectF], ...]:
        """Return buttons and links in the order the keys walk them."""
        return (*self.acts, *self.links)


def sentence_at(wide: float, theme: Theme) -> float:
    """Return where sentences begin in a list `wide` pixels wide."""
    return (SENTENCE_AT if wide >= WIDE * theme.size else SENTENCE_NEAR) * theme.size


def spots(rows: Sequence[Row | Fold], wide: float, theme: Theme) -> list[Spot]:
    """Return where the rows lie one under the other in a list `wide` pixels wide."""
    found: list[Spot] = []
    top, size = 2.0, theme.size
    for row in rows:
        opened = isinstance(row, Row) and row.open
        top += APART * size / 2 if opened and found else 0.0
        spot = (
            _open(row, top, wide, theme)
            if isinstance(row, Row) and row.open
            else _closed(row, top, wide, theme)
        )
        found.append(spot)
        top = spot.rect.bottom() + (APART * size / 2 if opened else 0.0)
    return found


def _closed(row: Row | Fold, top: float, wide: float, theme: Theme) -> Spot:
    """Return a row of one line: the first sentence where both have no room."""
    size, style = theme.size, BODY.sized(theme.size)
    room = wide - sentence_at(wide, theme) - 12.0 * size
    says = row.says() if isinstance(row, Row) else row.words
    if lettering.width(says, style) > room and isinstance(row, Row):
        says = first_sentence(says)
    return Spot(row, QRectF(1.0, top, wide - 2.0, CLOSED * size), (lettering.elided(says, style, room),))


def first_sentence(says: str) -> str:
    """Return the first of several sentences: the fact without the need."""
    head, stop, _ = says.partition(". ")
    return f"{head}." if stop else says


def _open(row: Row, top: float, wide: float, theme: Theme) -> Spot:
    size, start = theme.size, sentence_at(wide, theme)
    room = wide - start - 14.0 * size
    lines = lettering.wrapped(row.says(), BODY.sized(size), room)
    notes = lettering.wrapped(row.own, HELPER.sized(size), room) if row.own else ()
    y = top + (TOP + LINE * len(lines) + NOTE * len(notes) + 3.0) * size
    if row.asking:
        rect = QRectF(1.0, top, wide - 2.0, y + TARGET * size + 4.0 - top)
        return Spot(row, rect, lines, notes)
    words = [(w, lettering.width(w, STRONG.sized(size)) + 2 * PAD * size) for w in row.acts]
    if row.hint:
        words.append((row.hint, lettering.width(row.hint, HELPER.sized(size)) + 6.0 * size))
    words += [(w, link_width(w, theme) + 12.0) for w in row.links()]
    felt = _in_lines(words, start - 4.0, y, wide - 7.0, theme)
    bottom = felt[-1][1].bottom() if felt else y
    count, hints = len(row.acts), 1 if row.hint else 0
    return Spot(
        row,
        QRectF(1.0, top, wide - 2.0, bottom + 4.0 * size - top),
        lines,
        notes,
        tuple(felt[count + hints :]),
        tuple(felt[:count]),
        felt[count][1] if hints else None,
    )


def _in_lines(
    words: Sequence[tuple[str, float]], left: float, top: float, right: float, theme: Theme
) -> list[tuple[str, QRectF]]:
    """Return words with their widths one beside the other, in as many lines as they need."""
    placed: list[tuple[str, QRectF]] = []
    x, y, high = left, top, TARGET * theme.size
    for word, needed in words:
        width = min(needed, right - left)
        if x > left and x + width > right:
            x, y = left, y + high
        placed.append((word, QRectF(x, y, width, high)))
        x += width + 8.0 * theme.size
    return placed


def asking_rect(spot: Spot, theme: Theme) -> QRectF:
    """Return where the field for the reason stands in an open row."""
    size = theme.size
    left = sentence_at(spot.rect.width() + 2.0, theme) - 4.0
    high = TARGET * size
    return QRectF(left, spot.rect.bottom() - high - 3.0, spot.rect.right() - left - 8.0, high)


def hit(found: Sequence[Spot], at: QPointF) -> tuple[Spot, str] | None:
    """Return the row under a point and the word of its button or link there, "" for none of them."""
    for spot in found:
        for word, felt in spot.targets:
            if felt.contains(at):
                return spot, word
        if spot.rect.contains(at):
            return spot, ""
    return None
