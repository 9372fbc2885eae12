"""Pages pressed into a PDF: the only file that knows PDF points.

Every mm is turned into a point once, without matrices for geometry, so the figures in the file are those of
the model to 0.2 um.  Equal pages give equal bytes: no dates, no random ids.
"""

from collections.abc import Iterable, Sequence
from io import BytesIO
from math import cos, radians, sin

from reportlab import rl_config
from reportlab.pdfgen.canvas import Canvas

from bayboard.paper import lettering
from bayboard.paper.curves import Carry
from bayboard.paper.marks import Clipped, Fill, Letters, Mark, Page, Stroke, Trace

SCALE = 72 / 25.4  # PDF points in a mm

rl_config.useA85 = 0  # content as plain bytes: a quarter smaller than spelled in letters


def press(pages: Sequence[Page], title: str = "") -> bytes:
    """Return the PDF of the pages, each of its own size; printing is asked for unscaled and single-sided."""
    out = BytesIO()
    first = lettering.font("text").fontName
    size = _points(pages[0].size)
    # the stubs take the font's name for a number
    canvas = Canvas(out, size, invariant=1, initialFontName=first, pdfVersion=(1, 7))  # type: ignore[arg-type]
    canvas.setTitle(title)
    canvas.setAuthor("")
    canvas.setSubject("")
    canvas.setCreator("Bayboard")
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("Duplex", "Simplex")
    for page in pages:
        canvas.setPageSize(_points(page.size))
        _Pen(canvas).draw(page.marks)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _points(size: tuple[float, float]) -> tuple[float, float]:
    return size[0] * SCALE, size[1] * SCALE


class _Pen:
    """Draws marks, setting a width, dash or colour only when it changes."""

    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas
        self.width = -1.0
        self.dash: tuple[float, ...] = ()
        self.ink: dict[str, bool] = {}

    def draw(self, marks: Iterable[Mark]) -> None:
        """Draw the marks in their order."""
        for mark in marks:
            match mark:
                case Stroke():
                    self._stroke(mark)
                case Fill():
                    self._colour("fill", mark.white)
                    self.canvas.drawPath(self._path(mark.traces), stroke=0, fill=1)
                case Letters():
                    self._letters(mark)
                case Clipped():
                    self._clipped(mark)

    def _clipped(self, mark: Clipped) -> None:
        self.canvas.saveState()
        self.canvas.clipPath(self._path((mark.region,)), stroke=0, fill=0)
        inner = _Pen(self.canvas)
        inner.width, inner.dash, inner.ink = self.width, self.dash, dict(self.ink)
        inner.draw(mark.marks)
        self.canvas.restoreState()

    def _stroke(self, mark: Stroke) -> None:
        self._pen(mark.width, mark.dash)
        self._colour("stroke", mark.white)
        self.canvas.drawPath(self._path(mark.traces), stroke=1, fill=0)

    def _pen(self, width: float, dash: tuple[float, ...] = ()) -> None:
        if width != self.width:
            self.width = width
            self.canvas.setLineWidth(width * SCALE)
        if dash != self.dash:
            self.dash = dash
            self.canvas.setDash([d * SCALE for d in dash])

    def _colour(self, what: str, white: bool) -> None:
        if self.ink.get(what, False) == white:
            return
        self.ink[what] = white
        {"fill": self.canvas.setFillGray, "stroke": self.canvas.setStrokeGray}[what](1.0 if white else 0.0)

    def _path(self, traces: tuple[Trace, ...]):  # type: ignore[no-untyped-def]
        path = self.canvas.beginPath()
        for trace in traces:
            path.moveTo(trace.start[0] * SCALE, trace.start[1] * SCALE)
            for step in trace.steps:
                if len(step) == 2:
                    path.lineTo(step[0] * SCALE, step[1] * SCALE)
                else:
                    path.curveTo(*[v * SCALE for v in step])
            if trace.closed:
                path.close()
        return path

    def _letters(self, mark: Letters) -> None:
        made = lettering.set_line(mark.text, mark.face)
        self._colour("fill", white=False)
        c, s = cos(radians(mark.turn)), sin(radians(mark.turn))
        shift = {"left": 0.0, "middle": -0.5, "right": -1.0}[mark.anchor] * made.width
        for run in made.runs:
            x, y = (run.x + shift) * mark.size, run.y * mark.size
            text = self.canvas.beginText()
            text.setFont(lettering.font(run.face).fontName, run.size * mark.size * SCALE)
            at = (mark.at[0] + x * c - y * s) * SCALE, (mark.at[1] + x * s + y * c) * SCALE
            text.setTextTransform(c, s, -s, c, *at)
            text.textOut(run.text)
            self.canvas.drawText(text)
        if made.drawn:
            size = mark.size
            carry = Carry(size, 0.0, 0.0, size, shift * size, 0.0).then(Carry.to(mark.at, mark.turn))
            self._stroke(Stroke(tuple(carry.trace(t) for t in made.drawn), made.pen * size))
