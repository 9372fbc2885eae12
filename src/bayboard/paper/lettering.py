"""Text set for paper: runs of glyphs and drawn strokes, in em from the baseline's left end.

A length is spelled "12 3/8" everywhere in the program; here its fraction is set small with a drawn
stroke between, so that every 64th works in every face.  Arrows and the diameter sign are drawn.  What a
face lacks comes from the wide fallback face; what even that lacks is a hollow box, so that any name prints.
"""

import re
from dataclasses import dataclass
from functools import lru_cache

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from bayboard.paper.curves import Box, Carry, circle, line, polyline, rectangle
from bayboard.paper.marks import Face, Letters, Trace
from bayboard.tables.where import shipped

FILES: dict[str, str] = {
    "text": "AtkinsonHyperlegibleNext_400Regular.ttf",
    "bold": "AtkinsonHyperlegibleNext_700Bold.ttf",
    "pencil": "routed-gothic.ttf",
    "wide": "DejaVuSans.ttf",
}
WIDE = "wide"
SMALL = 0.68  # numerator and denominator against the line's size
RISE, SINK = 0.76, 0.22  # em over and under the baseline that a line may take
_PEN: dict[str, float] = {"text": 0.07, "bold": 0.11, "pencil": 0.06, "wide": 0.07}  # em
_CAP = 0.67  # em; height of a drawn sign
_FRACTION = re.compile(r"(?<![\d/.,])(?:(\d+) )?(\d{1,2})/(2|4|8|16|32|64)(?![\d/])")
_ARROWS = {"→": 0.0, "↑": 90.0, "←": 180.0, "↓": 270.0}
_DRAWN = re.compile("[→↑←↓⌀]")


@dataclass(frozen=True, slots=True)
class Run:
    """Glyphs of one face at (x, y), `size` em high."""

    face: str
    text: str
    x: float
    y: float
    size: float


@dataclass(frozen=True, slots=True)
class Line:
    """A line of text set at 1 em: its width, its glyphs, and what is drawn with a pen of `pen`."""

    width: float
    runs: tuple[Run, ...]
    drawn: tuple[Trace, ...]
    pen: float


@lru_cache(maxsize=8)
def font(face: str) -> TTFont:
    """Return the embedded font of a face, registered under its name."""
    made = TTFont(f"bayboard-{face}", str(shipped("assets", "fonts", FILES[face])))
    pdfmetrics.registerFont(made)
    return made


@lru_cache(maxsize=8192)
def set_line(text: str, face: Face) -> Line:
    """Return the line set at 1 em."""
    return _Setter(face).set(text)


def width(text: str, face: Face, size: float) -> float:
    """Return how wide the line is, in the unit of `size`."""
    return set_line(text, face).width * size


def box(letters: Letters) -> Box:
    """Return the page box (x0, y0, x1, y1) that a line takes; exact for quarter turns."""
    wide = width(letters.text, letters.face, letters.size)
    start = {"left": 0.0, "middle": -0.5, "right": -1.0}[letters.anchor] * wide
    flat = (start, -SINK * letters.size, start + wide, RISE * letters.size)
    return Carry.to(letters.at, letters.turn).box(flat)


def fitted(text: str, face: Face, size: float, room: float, least: float) -> tuple[str, float]:
    """Return the text and a size at which it fits `room`: shrunk down to `least`, then cut after a word."""
    full = width(text, face, 1.0)
    if full * size <= room:
        return text, size
    if full * least <= room:
        return text, room / full
    words = text.split(" ")
    while len(words) > 1:
        words.pop()
        shorter = " ".join(words) + " …"
        if width(shorter, face, least) <= room:
            return shorter, least
    return _cut(text, face, room / least), least


def _cut(word: str, face: Face, ems: float) -> str:
    """Return as many letters of an endless word as fit, with an ellipsis."""
    while word and width(word + "…", face, 1.0) > ems:
        word = word[:-1]
    return word + "…"


class _Setter:
    """Sets one line: a cursor that moves right over text, fractions and drawn signs."""

    def __init__(self, face: Face) -> None:
        self.face = face
        self.x = 0.0
        self.runs: list[Run] = []
        self.drawn: list[Trace] = []

    def set(self, text: str) -> Line:
        """Return the line."""
        done = 0
        for found in _FRACTION.finditer(text):
            if int(found[2]) >= int(found[3]):
                continue
            self._words(text[done : found.start()])
            if found[1]:
                self._letters(found[1])
                self.x += 0.14
            self._fraction(found[2], found[3])
            done = found.end()
        self._words(text[done:])
        return Line(self.x, tuple(self.runs), tuple(self.drawn), _PEN[self.face])

    def _words(self, text: str) -> None:
        done = 0
        for found in _DRAWN.finditer(text):
            self._letters(text[done : found.start()])
            self._sign(found[0])
            done = found.end()
        self._letters(text[done:])

    def _fraction(self, over: str, under: str) -> None:
        self._letters(over, SMALL, _CAP * (1.0 - SMALL) + 0.03)
        self.drawn.append(line((self.x - 0.02, -0.04), (self.x + 0.26, _CAP + 0.02)))
        self.x += 0.23
        self._letters(under, SMALL, -0.03)

    def _sign(self, sign: str) -> None:
        if sign == "⌀":
            r = 0.27
            self.drawn += [
                circle((self.x + 0.35, _CAP / 2), r),
                line((self.x + 0.08, 0.0), (self.x + 0.62, _CAP)),
            ]
            self.x += 0.72
            return
        carry = Carry.to((self.x + 0.42, _CAP / 2), _ARROWS[sign])
        head = polyline([(0.14, 0.2), (0.34, 0.0), (0.14, -0.2)])
        self.drawn += [carry.trace(line((-0.34, 0.0), (0.34, 0.0))), carry.trace(head)]
        self.x += 0.84

    def _letters(self, text: str, size: float = 1.0, y: float = 0.0) -> None:
        for face, piece in _by_face(text, self.face):
            if not face:
                self._boxes(len(piece), size, y)
                continue
            self.runs.append(Run(face, piece, self.x, y, size))
            self.x += pdfmetrics.stringWidth(piece, font(face).fontName, size)

    def _boxes(self, count: int, size: float, y: float) -> None:
        for _ in range(count):
            self.drawn.append(rectangle((self.x + 0.08 * size, y, self.x + 0.52 * size, y + _CAP * size)))
            self.x += 0.6 * size


def _by_face(text: str, face: Face) -> list[tuple[str, str]]:
    """Return the text in pieces, each with the face that has its glyphs, "" where none has."""
    pieces: list[tuple[str, str]] = []
    for letter in text:
        found = next((name for name in (face, WIDE) if _has(name, letter)), "")
        if pieces and pieces[-1][0] == found:
            pieces[-1] = (found, pieces[-1][1] + letter)
        else:
            pieces.append((found, letter))
    return pieces


def _has(face: str, letter: str) -> bool:
    return ord(letter) in font(face).face.charToGlyph
