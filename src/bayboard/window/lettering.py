"""Text on the scene: shaped once, cached, fractions and arrows drawn.

A length is spelled "12 3/8 in" everywhere in the program; here the fraction gets a raised numerator and a
denominator at 0.68 of the size with a drawn stroke between, so that every 64th works in both typefaces.
Figures are tabular.  What neither face has (arrows, ticks) is drawn; letters they lack come from the
fallback face.
"""

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QFont,
    QFontDatabase,
    QFontMetricsF,
    QGlyphRun,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QRawFont,
    QTextLayout,
    QTransform,
)

from bayboard.tables.where import shipped
from bayboard.window.theme import brush, colour

Face = Literal["text", "pencil"]
Align = Literal["left", "centre", "right"]

FACES: dict[Face, str] = {"text": "Atkinson Hyperlegible Next", "pencil": "Routed Gothic"}
FALLBACK = "DejaVu Sans"
FILES = (
    "AtkinsonHyperlegibleNext_400Regular.ttf",
    "AtkinsonHyperlegibleNext_500Medium.ttf",
    "AtkinsonHyperlegibleNext_600SemiBold.ttf",
    "AtkinsonHyperlegibleNext_700Bold.ttf",
    "routed-gothic.ttf",
    "DejaVuSans.ttf",
)
SMALL = 0.68  # numerator and denominator against the size of the line
_FRACTION = re.compile(r"(?<![\d/.,])(?:(\d+) )?(\d{1,2})/(2|4|8|16|32|64)(?![\d/])")
_ARROWS = {"→": 0.0, "↑": 90.0, "←": 180.0, "↓": 270.0}
_DRAWN = re.compile("[→↑←↓✓]")


@dataclass(frozen=True, slots=True)
class Style:
    """How a line is lettered: the face, its size in pixels and its weight."""

    face: Face = "text"
    px: float = 16.0
    weight: int = 400

    def sized(self, size: float) -> "Style":
        """Return the style with its size multiplied by the Scale setting."""
        return Style(self.face, self.px * size, self.weight)


BODY = Style(px=16)
STRONG = Style(px=16, weight=600)
HEADING = Style(px=17, weight=700)
HELPER = Style(px=14)
FIGURE = Style(px=15, weight=600)  # figures in tags
VALUE = Style(px=18, weight=600)
FIRST = Style(px=34, weight=700)


@lru_cache(maxsize=1)
def load_fonts() -> tuple[str, ...]:
    """Load the shipped fonts and return their families.  Needs a Qt application; cheap when repeated."""
    families: list[str] = []
    for name in FILES:
        found = QFontDatabase.addApplicationFont(str(shipped("assets", "fonts", name)))
        families += QFontDatabase.applicationFontFamilies(found)
    return tuple(dict.fromkeys(families))


@lru_cache(maxsize=256)
def font(style: Style, hinted: bool = False) -> QFont:
    """Return the font of a style, figures tabular; unhinted for the scene.  Shared: never change it."""
    load_fonts()
    made = QFont([FACES[style.face], FALLBACK])
    made.setPixelSize(max(round(style.px), 1))
    made.setWeight(QFont.Weight(style.weight))
    made.setFeature(QFont.Tag("tnum"), 1)
    if not hinted:
        made.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return made


@dataclass(frozen=True, slots=True)
class Line:
    """A line of text, shaped: glyph runs and drawn strokes from the baseline's left end at (0, 0)."""

    glyphs: tuple[QGlyphRun, ...]
    strokes: QPainterPath | None
    width: float
    rise: float  # height of a capital over the baseline
    plain: str  # the letters that were shaped, without what is drawn


@lru_cache(maxsize=4096)
def line(text: str, style: Style) -> Line:
    """Return the line shaped and measured, in pixels."""
    return _Setter(style).set(text)


def width(text: str, style: Style) -> float:
    """Return how wide the line is drawn, in pixels."""
    return line(text, style).width


def draw(p: QPainter, at: QPointF, text: str, style: Style, token: str, align: Align = "left") -> None:
    """Draw a line with its baseline at `at`, which is its left end, middle or right end."""
    shaped = line(text, style)
    shift = {"left": 0.0, "centre": 0.5, "right": 1.0}[align] * shaped.width
    spot = QPointF(at.x() - shift, at.y())
    p.setPen(colour(token))
    for run in shaped.glyphs:
        p.drawGlyphRun(spot, run)
    if shaped.strokes is not None:
        p.fillPath(shaped.strokes.translated(spot), brush(token))


def draw_in(p: QPainter, rect: QRectF, text: str, style: Style, token: str, align: Align = "centre") -> None:
    """Draw a line upright in the middle of a rectangle's height."""
    x = {"left": rect.left(), "centre": rect.center().x(), "right": rect.right()}[align]
    draw(p, QPointF(x, rect.center().y() + line(text, style).rise / 2), text, style, token, align)


@lru_cache(maxsize=1024)
def elided(text: str, style: Style, room: float) -> str:
    """Return the text, its end replaced by "…" where it is wider than `room` pixels."""
    if width(text, style) <= room:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        fits = width(text[:middle].rstrip() + "…", style) <= room
        low, high = (middle, high) if fits else (low, middle - 1)
    for fraction in _FRACTION.finditer(text):  # half a fraction would read as another number
        if fraction.start() < low < fraction.end():
            low = fraction.start()
    return text[:low].rstrip() + "…"


@lru_cache(maxsize=1024)
def wrapped(text: str, style: Style, room: float) -> tuple[str, ...]:
    """Return the text in lines at most `room` wide; a length and its unit are never parted."""
    held = _FRACTION.sub(lambda m: m.group().replace(" ", "\u00a0"), text)
    held = re.sub(r"(\d) (in|mm|cm|ft|kg|lb|A|V|W|K|%|AWG)\b", "\\1\u00a0\\2", held)
    lines: list[str] = [""]
    for word in held.split(" "):
        longer = f"{lines[-1]} {word}" if lines[-1] else word
        if lines[-1] and width(longer.replace("\u00a0", " "), style) > room:
            lines.append(word)
        else:
            lines[-1] = longer
    return tuple(made.replace("\u00a0", " ") for made in lines)


@lru_cache(maxsize=1)
def _raw_fonts() -> tuple[QRawFont, ...]:
    load_fonts()
    return tuple(QRawFont(str(shipped("assets", "fonts", name)), 20.0) for name in FILES)


def missing(text: str) -> str:
    """Return the characters of a text that no shipped face has and nothing draws."""
    return "".join(
        c
        for c in dict.fromkeys(text)
        if not c.isspace()
        and not _DRAWN.match(c)
        and not any(raw.supportsCharacter(ord(c)) for raw in _raw_fonts())
    )


class _Setter:
    """Sets one line: a cursor that moves right over text, fractions and drawn signs."""

    def __init__(self, style: Style) -> None:
        self.style = style
        self.metrics = QFontMetricsF(font(style))
        self.cap = self.metrics.capHeight()
        self.x = 0.0
        self.glyphs: list[QGlyphRun] = []
        self.strokes = QPainterPath()
        self.strokes.setFillRule(Qt.FillRule.WindingFill)
        self.letters: list[str] = []

    def set(self, text: str) -> Line:
        """Return the text set as one line; called once."""
        done = 0
        for found in _FRACTION.finditer(text):
            if int(found[2]) >= int(found[3]):
                continue
            self._words(text[done : found.start()])
            if found[1]:
                self._letters(found[1], self.style.px, 0.0)
                self.x += 0.16 * self.style.px
            self._fraction(found[2], found[3])
            done = found.end()
        self._words(text[done:])
        strokes = None if self.strokes.isEmpty() else self.strokes
        return Line(tuple(self.glyphs), strokes, self.x, self.cap, "".join(self.letters))

    def _words(self, text: str) -> None:
        done = 0
        for found in _DRAWN.finditer(text):
            self._letters(text[done : found.start()], self.style.px, 0.0)
            self._sign(found[0])
            done = found.end()
        self._letters(text[done:], self.style.px, 0.0)

    def _letters(self, text: str, px: float, up: float) -> None:
        if not text:
            return
        self.letters.append(text)
        face = font(Style(self.style.face, px, self.style.weight))
        layout = QTextLayout(text, face)
        layout.beginLayout()
        made = layout.createLine()
        made.setPosition(QPointF(0.0, 0.0))
        layout.endLayout()
        shift = QPointF(self.x, -made.ascent() - up)
        for run in layout.glyphRuns():
            run.setPositions([where + shift for where in run.positions()])
            self.glyphs.append(run)
        self.x += made.horizontalAdvance()

    def _fraction(self, over: str, under: str) -> None:
        px, cap = self.style.px, self.cap
        small = px * SMALL
        self._letters(over, small, cap * (1.0 - SMALL))
        thick = max(0.055, self.style.weight / 6600) * px
        slash = QPainterPath(QPointF(self.x - 0.02 * px, 0.06 * px))
        slash.lineTo(self.x + 0.26 * px, -cap - 0.03 * px)
        self._stroke(slash, thick)
        self.x += 0.23 * px
        self._letters(under, small, 0.0)

    def _sign(self, sign: str) -> None:
        cap = self.cap
        thick = max(0.075, self.style.weight / 5500) * self.style.px
        path = QPainterPath()
        if sign == "✓":
            path.moveTo(0.02 * cap, -0.42 * cap)
            path.lineTo(0.34 * cap, -0.08 * cap)
            path.lineTo(0.98 * cap, -0.92 * cap)
            wide = 1.05 * cap
        else:
            path, wide = _arrow(_ARROWS[sign], cap)
        self._stroke(path.translated(self.x + 0.06 * cap, 0.0), thick)
        self.x += wide + 0.12 * cap

    def _stroke(self, path: QPainterPath, thick: float) -> None:
        stroker = QPainterPathStroker()
        stroker.setWidth(thick)
        stroker.setCapStyle(Qt.PenCapStyle.FlatCap)
        stroker.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        self.strokes.addPath(stroker.createStroke(path))


def _arrow(turn: float, cap: float) -> tuple[QPainterPath, float]:
    """Return an arrow as strokes in a box standing on the baseline, and the box's width."""
    flat = turn in (0.0, 180.0)
    wide = (1.25 if flat else 0.8) * cap
    long, head = (wide / 2 if flat else cap / 2), 0.34 * cap
    path = QPainterPath(QPointF(-long, 0.0))
    path.lineTo(long, 0.0)
    path.moveTo(long - head, -head)
    path.lineTo(long, 0.0)
    path.lineTo(long - head, head)
    return QTransform().translate(wide / 2, -cap / 2).rotate(-turn).map(path), wide
