"""The rows of the Findings: how high each is, what stands in it, how it is painted."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from bayboard.rules import RULES
from bayboard.rules.finding import Finding
from bayboard.window import lettering
from bayboard.window.controls import PAD, TARGET, link_width, paint_link
from bayboard.window.draw.marks import paint_mark, paint_tick
from bayboard.window.lettering import BODY, HELPER, STRONG, Style
from bayboard.window.theme import Theme, brush, pen

CLOSED = 40.0  # px high, a finger
APART = 6.0
LINE = 23.0
WORD_AT, SENTENCE_AT = 43.0, 104.0
WORDS = {"must": "Must", "should": "Should", "note": "Note"}


@dataclass(frozen=True, slots=True)
class Row:
    """A finding in the list.  `number` None: it is cured, and stays for a moment, struck through.

    `why` opens the reason for the rule below the sentence; `asking`: the reason to let it be is typed.
    `acts` are the words of its buttons while it is open.
    """

    finding: Finding
    number: int | None
    open: bool = False
    why: bool = False
    asking: bool = False
    acts: tuple[str, ...] = ()

    @property
    def cured(self) -> bool:
        """Return whether it is gone by now."""
        return self.number is None

    def links(self) -> tuple[str, ...]:
        """Return the words of what can be done about it."""
        if self.cured or not self.open:
            return ()
        known = ("Why?",) if why(self.finding.rule) else ()
        if self.finding.let_be is not None:
            return (*known, "Let it speak")
        return known if self.finding.severity == "must" else (*known, "Let it be")

    def says(self) -> str:
        """Return the sentence, with the reason of one that was let be."""
        reason = self.finding.let_be
        return self.finding.says if reason is None else f"{self.finding.says} Let be: {reason}"


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a row lies, its lines of text, and its buttons and links with their felt rectangles."""

    row: Row
    rect: QRectF
    lines: tuple[str, ...]
    told: tuple[str, ...]
    links: tuple[tuple[str, QRectF], ...]
    acts: tuple[tuple[str, QRectF], ...] = ()

    @property
    def targets(self) -> tuple[tuple[str, QRectF], ...]:
        """Return buttons and links in the order the keys walk them."""
        return (*self.acts, *self.links)


def why(rule: str) -> str:
    """Return why a rule exists, as its own file says, "" for none."""
    module = next((r for r in RULES if rule == r.RULE), None)
    text = (module.__doc__ or "") if module is not None else ""
    start = text.find("Why:")
    if start < 0:
        return ""
    told = " ".join(text[start + 4 :].split("\nQuiet:")[0].split())
    return told[:1].upper() + told[1:]


def spots(rows: Sequence[Row], wide: float, theme: Theme) -> list[Spot]:
    """Return where the rows lie one under the other in a list `wide` pixels wide."""
    found, top, size = [], 2.0, theme.size
    for row in rows:
        spot = _spot(row, top, wide, theme)
        found.append(spot)
        top = spot.rect.bottom() + APART * size
    return found


def _spot(row: Row, top: float, wide: float, theme: Theme) -> Spot:
    size = theme.size
    room = wide - (SENTENCE_AT + 14.0) * size
    body, helper = BODY.sized(size), HELPER.sized(size)
    if not row.open:
        lines = (lettering.elided(row.says(), body, room),)
        return Spot(row, QRectF(1.0, top, wide - 2.0, CLOSED * size), lines, (), ())
    lines = lettering.wrapped(row.says(), body, room)
    told = lettering.wrapped(why(row.finding.rule), helper, room) if row.why else ()
    high = 18.0 * size + len(lines) * LINE * size + len(told) * 19.0 * size + (6.0 * size if told else 0.0)
    words = () if row.asking else row.links()
    if row.acts and not row.asking and not row.cured:
        return _with_acts(row, QRectF(1.0, top, wide - 2.0, high), lines, told, theme)
    needed = sum(link_width(word, theme) + 26.0 * size for word in words)
    beside = not row.asking and not told and lettering.width(lines[-1], body) + needed <= room
    if (words or row.asking) and not beside:
        high += TARGET * size
    high = max(high, CLOSED * size)
    y = top + high - TARGET * size - (0.0 if beside else 4.0 * size)
    x = wide - 8.0 - needed if beside else SENTENCE_AT * size - 6.0
    links = []
    for word in words:
        links.append((word, QRectF(x, y, link_width(word, theme) + 12.0, TARGET * size)))
        x = links[-1][1].right() + 14.0 * size
    return Spot(row, QRectF(1.0, top, wide - 2.0, high), lines, told, tuple(links))


def _with_acts(row: Row, rect: QRectF, lines: tuple[str, ...], told: tuple[str, ...], theme: Theme) -> Spot:
    """Return a row whose buttons and links stand below its sentence, in as many lines as they need."""
    size = theme.size
    start, high = SENTENCE_AT * size - 4.0, TARGET * size
    x, y = start, rect.bottom() - 4.0 * size
    sizes = [(word, lettering.width(word, STRONG.sized(size)) + 2 * PAD * size) for word in row.acts]
    sizes += [(word, link_width(word, theme) + 12.0) for word in row.links()]
    placed: list[tuple[str, QRectF]] = []
    for word, wide in sizes:
        if x > start and x + wide > rect.right() - 6.0:
            x, y = start, y + high + 2.0
        placed.append((word, QRectF(x, y, wide, high)))
        x += wide + 8.0 * size
    rect = QRectF(rect.topLeft(), QPointF(rect.right(), y + high + 5.0 * size))
    count = len(row.acts)
    return Spot(row, rect, lines, told, tuple(placed[count:]), tuple(placed[:count]))


def asking_rect(spot: Spot, theme: Theme) -> QRectF:
    """Return where the field for the reason stands in an open row."""
    size = theme.size
    left, high = SENTENCE_AT * size - 4.0, TARGET * size
    return QRectF(left, spot.rect.bottom() - high - 3.0, spot.rect.right() - left - 8.0, high)


def paint_row(p: QPainter, spot: Spot, theme: Theme, current: bool, link: str | None, hovered: bool) -> None:
    """Paint a row; `current` is the one spoken of, `link` the word where the keys are."""
    row, rect, size = spot.row, spot.rect, theme.size
    colour = theme.ok if row.cured else theme.severity(row.finding.severity)
    quiet = row.cured or row.finding.let_be is not None
    p.setBrush(brush(theme.paper if quiet else theme.field))
    p.setPen(pen(theme.blue, 2.0) if current else pen(theme.rule2 if hovered else theme.rule, 1.0))
    p.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), 6.0, 6.0)
    if not quiet:
        bar = theme.shouldfill if row.finding.severity == "should" else colour
        p.fillRect(QRectF(rect.left() + 1.0, rect.top() + 5.0, 3.5, rect.height() - 10.0), brush(bar))
    middle = rect.top() + CLOSED * size / 2
    at = QPointF(rect.left() + 24.0 * size, middle)
    if row.cured:
        paint_tick(p, at, theme, 17.0 * size)
    else:
        paint_mark(p, at, row.finding.severity, row.number, theme, 24.0 * size, cased=False)
    word = "Cured" if row.cured else "Let be" if quiet else WORDS[row.finding.severity]
    ink = theme.ink2 if quiet else theme.ink
    _draw(p, WORD_AT * size, middle, word, Style(px=15.0, weight=600).sized(size), colour)
    for i, line in enumerate(spot.lines):
        _draw(p, SENTENCE_AT * size, middle + i * LINE * size, line, BODY.sized(size), ink)
        if row.cured:
            wide = lettering.width(line, BODY.sized(size))
            p.fillRect(QRectF(SENTENCE_AT * size, middle, wide, 1.4), brush(theme.ink2))
    _paint_more(p, spot, theme, link)


def _paint_more(p: QPainter, spot: Spot, theme: Theme, link: str | None) -> None:
    size = theme.size
    y = spot.rect.top() + (CLOSED / 2 + (len(spot.lines) - 1) * LINE + 24.0) * size
    for i, line in enumerate(spot.told):
        _draw(p, SENTENCE_AT * size, y + i * 19.0 * size, line, HELPER.sized(size), theme.ink2)
    for i, (word, felt) in enumerate(spot.acts):
        _paint_act(p, felt, word, theme, first=i == 0, keys=word == link)
    for word, felt in spot.links:
        paint_link(p, felt.adjusted(6.0, 0.0, -6.0, 0.0), word, theme)
        if word == link:
            p.setBrush(Qt.BrushStyle.NoBrush)
            p.setPen(pen(theme.blue, 2.0))
            p.drawRoundedRect(felt.adjusted(0.0, 7.0, 0.0, -5.0), 4.0, 4.0)


def _paint_act(p: QPainter, felt: QRectF, word: str, theme: Theme, first: bool, keys: bool) -> None:
    """Paint a button; the first cure is the filled one."""
    face = felt.adjusted(1.0, 3.0, -1.0, -3.0)
    p.setBrush(brush(theme.blue if first else theme.field))
    p.setPen(pen(theme.blue if first else theme.rule2, 1.2))
    p.drawRoundedRect(face, 6.0, 6.0)
    p.setBrush(Qt.BrushStyle.NoBrush)
    lettering.draw_in(p, face, word, STRONG.sized(theme.size), theme.field if first else theme.ink)
    if keys:
        p.setPen(pen(theme.blue, 2.0))
        p.drawRoundedRect(face.adjusted(-2.5, -2.5, 2.5, 2.5), 8.0, 8.0)


def _draw(p: QPainter, x: float, middle: float, text: str, style: Style, token: str) -> None:
    lettering.draw_in(p, QRectF(x, middle - 10.0, 10.0, 20.0), text, style, token, "left")
