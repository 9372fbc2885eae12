"""A page as it leaves the printer, painted from the same marks that the PDF is pressed from.

The painter works in page mm, y up; letters are the outlines of the very fonts that the PDF embeds, set
glyph by glyph where the PDF sets them.
"""

from collections.abc import Iterable
from functools import lru_cache

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPainterPath, QPen, QRawFont, QTransform

from bayboard.paper.marks import CUT, Clipped, Face, Fill, Letters, Mark, Page, Stroke, Trace
from bayboard.tables.where import shipped
from bayboard.window.draw.strokes import kept
from bayboard.window.theme import Theme, brush, colour

FINEST = 1.1  # px; how wide the widest line of a page is at least, the others in proportion
_UNITS = 1000.0  # px of the em at which outlines are taken
_LIMIT = 10.0  # of a mitre, as the PDF has it


def paper_white(theme: Theme) -> str:
    """Return the colour of paper: dimmed where the room is dark."""
    return "#DEDBD3" if theme.dark else "#FDFCF9"


def paper_ink(theme: Theme) -> str:
    """Return the colour of print on paper."""
    return theme.pencil if theme.dark else theme.ink


def page_rect(size: tuple[float, float], room: QRectF) -> QRectF:
    """Return where a page of a size in mm lies in a room: as large as fits, in its upper middle."""
    k = min(room.width() / size[0], room.height() / size[1])
    wide, high = size[0] * k, size[1] * k
    return QRectF(room.center().x() - wide / 2, room.top(), wide, high)


def paint_page(p: QPainter, page: Page, rect: QRectF, theme: Theme) -> None:
    """Paint a page's paper and marks so that the page fills the rectangle."""
    k = rect.width() / page.size[0]
    with kept(p):
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.fillRect(rect, brush(paper_white(theme)))
        p.setClipRect(rect, Qt.ClipOperation.IntersectClip)
        p.translate(rect.left(), rect.bottom())
        p.scale(k, -k)
        _Pen(p, theme, k).draw(page.marks)


class _Pen:
    """Draws marks in page mm; `k` pixels are a mm."""

    def __init__(self, p: QPainter, theme: Theme, k: float) -> None:
        self.p = p
        self.k = k
        self.tokens = {False: paper_ink(theme), True: paper_white(theme)}

    def draw(self, marks: Iterable[Mark]) -> None:
        """Draw marks in their order."""
        for mark in marks:
            match mark:
                case Stroke():
                    self.p.strokePath(path_of(mark.traces), self._pen(mark.width, mark.dash, mark.white))
                case Fill():
                    self.p.fillPath(path_of(mark.traces), brush(self.tokens[mark.white]))
                case Letters():
                    self._letters(mark)
                case Clipped():
                    with kept(self.p):
                        self.p.setClipPath(path_of((mark.region,)), Qt.ClipOperation.IntersectClip)
                        self.draw(mark.marks)

    def _pen(self, width: float, dash: tuple[float, ...] = (), white: bool = False) -> QPen:
        seen = max(width, FINEST * width / CUT / self.k)  # mm; lines keep their proportions on a small page
        pen = QPen(colour(self.tokens[white]), seen)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        pen.setJoinStyle(Qt.PenJoinStyle.SvgMiterJoin)
        pen.setMiterLimit(_LIMIT)
        if dash:
            unit = max(seen, 1.0 / self.k)  # Qt counts dashes in pen widths, but never in less than a pixel
            pen.setDashPattern([d / unit for d in dash])
        return pen

    def _letters(self, mark: Letters) -> None:
        filled, drawn, thick, width = letters_path(mark.text, mark.face)
        shift = {"left": 0.0, "middle": -0.5, "right": -1.0}[mark.anchor] * width
        to_page = QTransform().translate(*mark.at).rotate(mark.turn).scale(mark.size, mark.size)
        to_page.translate(shift, 0.0)
        self.p.fillPath(to_page.map(filled), brush(self.tokens[False]))
        if not drawn.isEmpty():
            self.p.strokePath(to_page.map(drawn), self._pen(thick * mark.size))


def path_of(traces: Iterable[Trace]) -> QPainterPath:
    """Return traces as a path in their own mm."""
    path = QPainterPath()
    for trace in traces:
        path.moveTo(*trace.start)
        for step in trace.steps:
            if len(step) == 2:
                path.lineTo(*step)
            else:
                path.cubicTo(*step)
        if trace.closed:
            path.closeSubpath()
    return path


@lru_cache(maxsize=4096)
def letters_path(text: str, face: Face) -> tuple[QPainterPath, QPainterPath, float, float]:
    """Return a line at 1 em from its baseline's left end, y up: glyphs, strokes, their pen, its width."""
    from bayboard.paper.lettering import set_line  # noqa: PLC0415  loads the fonts of the paper

    made = set_line(text, face)
    filled = QPainterPath()
    filled.setFillRule(Qt.FillRule.WindingFill)
    for run in made.runs:
        raw, em = _raw_font(run.face), run.size / _UNITS
        glyphs = raw.glyphIndexesForString(run.text)
        x = run.x
        for glyph, step in zip(glyphs, raw.advancesForGlyphIndexes(glyphs), strict=True):
            place = QTransform().translate(x, run.y).scale(em, -em)
            filled.addPath(place.map(raw.pathForGlyph(glyph)))
            x += step.x() * em
    return filled, path_of(made.drawn), made.pen, made.width


@lru_cache(maxsize=8)
def _raw_font(face: str) -> QRawFont:
    from bayboard.paper.lettering import FILES  # noqa: PLC0415

    file = str(shipped("assets", "fonts", FILES[face]))
    return QRawFont(file, _UNITS, QFont.HintingPreference.PreferNoHinting)


def paint_paper_shadow(p: QPainter, rect: QRectF, wide: float = 6.0) -> None:
    """Paint the soft shadow under a sheet that lies on something."""
    with kept(p):
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.setPen(Qt.PenStyle.NoPen)
        steps = 4
        for i in range(steps):
            grow = wide * (steps - i) / steps
            p.setBrush(brush("#000000", 0.055))
            p.drawRoundedRect(rect.adjusted(-grow / 2, 0.0, grow / 2, grow), grow / 2, grow / 2)
