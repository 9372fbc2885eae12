"""How much the whole set of sheets costs, against the bare drawing operations it ends in.

The baseline draws the same lines, curves, letters and clips straight on a reportlab canvas, from figures
worked out beforehand: no planning, no labels, no nesting.
"""

import resource
import subprocess
import sys
import tempfile
from functools import partial
from io import BytesIO
from pathlib import Path

import figures
from reportlab.pdfgen.canvas import Canvas

from bayboard.model.read import read
from bayboard.paper import lettering
from bayboard.paper.book import Options, book
from bayboard.paper.marks import Clipped, Fill, Letters, Stroke
from bayboard.paper.press import SCALE

FIGURES = ("paper_set", "paper_peak_mb")
LAYOUT = Path(__file__).resolve().parents[2] / "demo_layouts" / "crew-pickup-rear-wall.json"
OPTIONS = Options(paper="letter", revision="1")
ROOMS = ["paper"]


def operations(marks):
    """Return drawing calls with their figures in points, as a list of (name, arguments)."""
    found = []
    for mark in marks:
        match mark:
            case Letters():
                found += [
                    ("text", (run.text, run.face, run.size * mark.size * SCALE, mark.at, mark.turn))
                    for run in lettering.set_line(mark.text, mark.face).runs
                ]
            case Clipped():
                found += [("clip", _points((mark.region,))), *operations(mark.marks), ("unclip", None)]
            case Stroke():
                found.append(
                    ("stroke", (mark.width * SCALE, [d * SCALE for d in mark.dash], _points(mark.traces)))
                )
            case Fill():
                found.append(("fill", _points(mark.traces)))
    return found


def _points(traces):
    return [
        (
            (t.start[0] * SCALE, t.start[1] * SCALE),
            [tuple(v * SCALE for v in step) for step in t.steps],
            t.closed,
        )
        for t in traces
    ]


def draw(pages):
    """Draw the operations on a bare canvas; return the size of the PDF."""
    out = BytesIO()
    canvas = Canvas(out, invariant=1, initialFontName=lettering.font("text").fontName)
    for size, calls in pages:
        canvas.setPageSize(size)
        for name, given in calls:
            DRAW[name](canvas, given)
        canvas.showPage()
    canvas.save()
    return len(out.getvalue())


def _path(canvas, traces):
    path = canvas.beginPath()
    for start, steps, closed in traces:
        path.moveTo(*start)
        for step in steps:
            (path.lineTo if len(step) == 2 else path.curveTo)(*step)
        if closed:
            path.close()
    return path


def _stroke(canvas, given):
    width, dash, traces = given
    canvas.setLineWidth(width)
    canvas.setDash(dash)
    canvas.drawPath(_path(canvas, traces))


def _fill(canvas, traces):
    canvas.setFillGray(1.0)
    canvas.drawPath(_path(canvas, traces), stroke=0, fill=1)
    canvas.setFillGray(0.0)


def _clip(canvas, traces):
    canvas.saveState()
    canvas.clipPath(_path(canvas, traces), stroke=0, fill=0)


def _text(canvas, given):
    words, face, size, (x, y), turn = given
    text = canvas.beginText()
    text.setFont(lettering.font(face).fontName, size)
    c, s = (0.0, 1.0) if turn == 90.0 else (1.0, 0.0)
    text.setTextTransform(c, s, -s, c, x * SCALE, y * SCALE)
    text.textOut(words)
    canvas.drawText(text)


DRAW = {
    "stroke": _stroke,
    "fill": _fill,
    "clip": _clip,
    "unclip": lambda canvas, _: canvas.restoreState(),
    "text": _text,
}


def peak_mb():
    """Return the peak memory of `bayboard print` in a process of its own, in MB."""
    out = Path(tempfile.gettempdir()) / "bayboard-long-paper.pdf"
    words = [sys.executable, "-m", "bayboard", "print", str(LAYOUT), "--paper", "letter", "--out", str(out)]
    subprocess.run(words, check=True)
    out.unlink()
    return round(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024, 1)


def main():
    """Measure the set and keep both figures."""
    layout = read(LAYOUT.read_text(encoding="utf-8"))
    pages = [
        ((p.size[0] * SCALE, p.size[1] * SCALE), operations(p.marks)) for p in book(layout, OPTIONS).pages
    ]
    told = figures.paired(lambda: book(layout, OPTIONS).pdf(), partial(draw, pages))
    baseline = (
        f"the same {sum(len(calls) for _, calls in pages)} operations on a bare canvas, {len(pages)} pages"
    )
    figures.keep("paper_set", ROOMS, baseline=baseline, goal=4.0, seed=None, **told)
    mb = peak_mb()
    figures.keep(
        "paper_peak_mb",
        ROOMS,
        baseline="MB, peak of one print in its own process",
        goal=300.0,
        value=mb,
        spread=[mb, mb],
        count=1,
        seed=None,
    )


if __name__ == "__main__":
    main()
