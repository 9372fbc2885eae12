"""How the rows of the Findings are painted."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.window import lettering
from bayboard.window.controls import paint_link
from bayboard.window.draw.marks import paint_mark, paint_tick
from bayboard.window.findings_rows import CLOSED, LINE, NOTE, TOP, WIDE, WORDS, Fold, Row, Spot, sentence_at
from bayboard.window.lettering import BODY, HELPER, STRONG, Style
from bayboard.window.theme import Theme, brush, mixed, pen

WORD_AT = 43.0
WORD = Style(px=15.0, weight=600)

OLDER = 0.5  # how strong rows are painted while the rules look again at what moved


def paint_row(p: QPainter, spot: Spot, theme: Theme, current: bool, link: str | None, hovered: bool) -> None:
    """Paint a row; `current` is the one spoken of, `link` the word where the keys are."""
    if isinstance(spot.row, Fold):
        _paint_fold(p, spot, spot.row, theme, hovered)
        return
    row, rect = spot.row, spot.rect
    quiet = row.cured or row.finding.let_be is not None
    if row.open:
        p.setBrush(brush(theme.paper if quiet else theme.field))
        p.setPen(pen(theme.blue, 2.0) if current else pen(theme.rule2 if hovered else theme.rule, 1.0))
        p.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), 6.0, 6.0)
        if not quiet:
            paint_bar(p, rect, row, theme)
    else:
        _paint_ground(p, rect, theme, hovered, current)
    _paint_sign(p, spot, row, theme)
    _paint_sentence(p, spot, row, theme, quiet)
    _paint_targets(p, spot, row, theme, link)


def paint_bar(p: QPainter, rect: QRectF, row: Row, theme: Theme) -> None:
    """Paint the bar of a severity's colour at the left edge of a row; the sign says the same."""
    severity = row.finding.severity
    token = theme.shouldfill if severity == "should" else theme.severity(severity)
    p.fillRect(QRectF(rect.left() + 1.0, rect.top() + 5.0, 3.5, rect.height() - 10.0), brush(token))


def _paint_ground(p: QPainter, rect: QRectF, theme: Theme, hovered: bool, current: bool) -> None:
    """Paint the ground of a row of one line, and the hairline below it."""
    if hovered:
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(brush(mixed(theme.paper, theme.ink, 0.05)))
        p.drawRoundedRect(rect.adjusted(3.0, 1.0, -3.0, -2.0), 5.0, 5.0)
    if current:
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(pen(theme.blue, 2.0))
        p.drawRoundedRect(rect.adjusted(2.0, 1.0, -2.0, -2.0), 5.0, 5.0)
    p.fillRect(QRectF(rect.left() + 12.0, rect.bottom() - 1.0, rect.width() - 24.0, 1.0), brush(theme.rule))


def _first_line(spot: Spot, theme: Theme) -> float:
    """Return the middle of a row's first line."""
    size = theme.size
    return spot.rect.top() + ((TOP + LINE / 2) * size if spot.open else CLOSED * size / 2)


def _paint_sign(p: QPainter, spot: Spot, row: Row, theme: Theme) -> None:
    size, middle = theme.size, _first_line(spot, theme)
    at = QPointF(spot.rect.left() + 24.0 * size, middle)
    quiet = row.cured or row.finding.let_be is not None
    if row.cured:
        paint_tick(p, at, theme, 17.0 * size)
    else:
        paint_mark(p, at, row.finding.severity, row.number, theme, 24.0 * size, cased=False)
    if spot.rect.width() + 2.0 >= WIDE * size:
        word = "Cured" if row.cured else "Let be" if quiet else WORDS[row.finding.severity]
        token = theme.ok if row.cured else theme.ink2 if quiet else theme.severity(row.finding.severity)
        _draw(p, WORD_AT * size, middle, word, WORD.sized(size), token)


def _paint_sentence(p: QPainter, spot: Spot, row: Row, theme: Theme, quiet: bool) -> None:
    size, middle, start = theme.size, _first_line(spot, theme), sentence_at(spot.rect.width() + 2.0, theme)
    for i, line in enumerate(spot.lines):
        y = middle + i * LINE * size
        _draw(p, start, y, line, BODY.sized(size), theme.ink2 if quiet else theme.ink)
        if row.cured:
            p.fillRect(QRectF(start, y, lettering.width(line, BODY.sized(size)), 1.4), brush(theme.ink2))
    y = middle + (len(spot.lines) * LINE - 2.0) * size
    for i, line in enumerate(spot.notes):
        _draw(p, start, y + i * NOTE * size, line, HELPER.sized(size), theme.ink2)


def _paint_targets(p: QPainter, spot: Spot, row: Row, theme: Theme, link: str | None) -> None:
    if spot.hint is not None:
        _draw(
            p, spot.hint.left() + 4.0, spot.hint.center().y(), row.hint, HELPER.sized(theme.size), theme.ink2
        )
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
    style = STRONG.sized(theme.size)
    shown = lettering.elided(word, style, face.width() - 10.0)
    lettering.draw_in(p, face, shown, style, theme.field if first else theme.ink)
    if keys:
        p.setPen(pen(theme.blue, 2.0))
        p.drawRoundedRect(face.adjusted(-2.5, -2.5, 2.5, 2.5), 8.0, 8.0)


def _paint_fold(p: QPainter, spot: Spot, fold: Fold, theme: Theme, hovered: bool) -> None:
    """Paint the line of another stage: its triangle, and how much its rules found."""
    size, rect = theme.size, spot.rect
    _paint_ground(p, rect, theme, hovered, fold.current)
    at = QPointF(rect.left() + 24.0 * size, rect.center().y())
    p.fillPath(fold_mark(at, fold.unfolded), brush(theme.ink2))
    start = sentence_at(rect.width() + 2.0, theme) if rect.width() + 2.0 < WIDE * size else WORD_AT * size
    _draw(p, start, rect.center().y(), spot.lines[0], BODY.sized(size), theme.ink2)


def fold_mark(at: QPointF, unfolded: bool) -> QPainterPath:
    """Return the triangle of a line that unfolds: to the right while it is folded, down when it is not."""
    path = QPainterPath()
    corners = [(-6.0, -4.0), (6.0, -4.0), (0.0, 5.0)] if unfolded else [(-4.0, -6.0), (5.0, 0.0), (-4.0, 6.0)]
    path.moveTo(at.x() + corners[0][0], at.y() + corners[0][1])
    for x, y in corners[1:]:
        path.lineTo(at.x() + x, at.y() + y)
    path.closeSubpath()
    return path


def _draw(p: QPainter, x: float, middle: float, text: str, style: Style, token: str) -> None:
    lettering.draw_in(p, QRectF(x, middle - 10.0, 10.0, 20.0), text, style, token, "left")
