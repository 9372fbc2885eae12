"""Two readers of a PDF that share no code with what wrote it, and what tests look for in either.

`by_stream` reads content streams through pikepdf with its own graphics state; `by_objects` asks pypdfium2
for page objects.  Both give traces in mm from the page's lower left corner.
"""

import ctypes
from dataclasses import dataclass
from io import BytesIO
from itertools import pairwise
from math import dist, hypot

import numpy as np
import pikepdf
import pypdfium2 as pdfium
from pypdfium2 import raw

MM = 25.4 / 72


@dataclass(frozen=True)
class Seen:
    """One subpath as painted: knots (ends of lines and curves), handles, how it is painted."""

    knots: tuple[tuple[float, float], ...]
    curves: int
    closed: bool
    stroked: bool
    width: float = 0.0
    dashed: bool = False
    white: bool = False


@dataclass(frozen=True)
class Ring:
    """A circle: centre, radius, and whether it is dashed."""

    x: float
    y: float
    r: float
    dashed: bool


def by_stream(pdf):
    """Return the subpaths of every page, read from its content stream."""
    with pikepdf.open(BytesIO(pdf)) as document:
        return [_Stream().read(page) for page in document.pages]


class _Stream:
    """A graphics state of our own: matrix, width, dash, grey."""

    def __init__(self):
        self.state = {"ctm": np.eye(3), "w": 1.0, "d": False, "white": False}
        self.stack, self.path, self.found = [], [], []

    def read(self, page):
        for operands, operator in pikepdf.parse_content_stream(page):
            self.do(str(operator), operands)
        return self.found

    def do(self, op, args):
        if op in ("m", "l", "c", "h", "re"):
            self.build(op, [float(a) for a in args])
        elif op in ("S", "s", "f", "f*", "F", "B", "n"):
            self.paint(op)
        elif op == "q":
            self.stack.append(dict(self.state))
        elif op == "Q":
            self.state = self.stack.pop()
        elif op == "cm":
            a, b, c, d, e, f = (float(v) for v in args)
            self.state["ctm"] = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ self.state["ctm"]
        elif op == "w":
            self.state["w"] = float(args[0])
        elif op == "d":
            self.state["d"] = len(args[0]) > 0
        elif op in ("G", "g", "RG", "rg"):
            self.state["white"] = all(float(a) == 1.0 for a in args)

    def build(self, op, v):
        if op == "m":
            self.path.append([[(v[0], v[1])], 0, False])
        elif op == "h":
            self.path[-1][2] = True
        elif op == "re":
            x, y, w, h = v
            self.path.append([[(x, y), (x + w, y), (x + w, y + h), (x, y + h)], 0, True])
        else:
            self.path[-1][0].append((v[-2], v[-1]))
            self.path[-1][1] += op == "c"

    def paint(self, op):
        if op != "n":
            self.found += [self.subpath(p, op) for p in self.path]
        self.path = []

    def subpath(self, path, op):
        knots, curves, closed = path
        s = self.state
        on_page = [tuple((np.array([x, y, 1.0]) @ s["ctm"])[:2] * MM) for x, y in knots]
        return Seen(tuple(on_page), curves, closed, op in ("S", "s", "B"), s["w"] * MM, s["d"], s["white"])


def by_objects(pdf):
    """Return the subpaths of every page, read from pdfium's page objects."""
    document = pdfium.PdfDocument(pdf)
    try:
        return [
            [s for o in page.get_objects([raw.FPDF_PAGEOBJ_PATH]) for s in _subpaths(o)] for page in document
        ]
    finally:
        document.close()


def _subpaths(found):
    path, m = found.raw, found.get_matrix()
    x, y = ctypes.c_float(), ctypes.c_float()
    subpaths = []
    for i in range(raw.FPDFPath_CountSegments(path)):
        segment = raw.FPDFPath_GetPathSegment(path, i)
        raw.FPDFPathSegment_GetPoint(segment, x, y)
        on_page = tuple(v * MM for v in m.on_point(x.value, y.value))
        kind = raw.FPDFPathSegment_GetType(segment)
        if kind == raw.FPDF_SEGMENT_MOVETO:
            subpaths.append([[on_page], 0, False])
        else:
            subpaths[-1][0].append(on_page)
            subpaths[-1][1] += kind == raw.FPDF_SEGMENT_BEZIERTO
        subpaths[-1][2] |= bool(raw.FPDFPathSegment_GetClose(segment))
    # of a curve's three points only the last is a knot
    return [Seen(tuple(_knots(p, c)), c // 3, closed, stroked=True) for p, c, closed in subpaths]


def _knots(points, curve_points):
    if curve_points != len(points) - 1:
        return points
    return points[::3]


def rings(subpaths):
    """Return the circles: closed, all curves, every knot as far from the middle."""
    found = []
    for s in subpaths:
        if s.closed and s.stroked and s.curves >= 4 and s.curves >= len(s.knots) - 2:
            knots = np.array(s.knots[:-1] if dist(s.knots[0], s.knots[-1]) < 1e-6 else s.knots)
            middle = (knots.min(axis=0) + knots.max(axis=0)) / 2
            off = np.hypot(*(knots - middle).T)
            if off.max() - off.min() < 0.002:
                found.append(Ring(float(middle[0]), float(middle[1]), float(off.mean()), s.dashed))
    return found


def segments(subpaths):
    """Return every straight stroke as (a, b, subpath)."""
    found = []
    for s in subpaths:
        if s.stroked and not s.curves:
            knots = (*s.knots, s.knots[0]) if s.closed else s.knots
            found += [(a, b, s) for a, b in pairwise(knots)]
    return found


def nearest(found, x, y, r=None):
    """Return the ring nearest to a point, of about radius `r` if given."""
    able = [f for f in found if not f.dashed and (r is None or abs(f.r - r) < 0.2)]
    return min(able, key=lambda f: hypot(f.x - x, f.y - y))


@dataclass(frozen=True)
class Text:
    """Letters that stand together: what they say and the box they take, mm."""

    says: str
    box: tuple[float, float, float, float]


def texts(pdf):
    """Return the texts of every page as pdfium groups them."""
    document = pdfium.PdfDocument(pdf)
    try:
        return [_texts(page) for page in document]
    finally:
        document.close()


def _texts(page):
    words = page.get_textpage()
    found = []
    for i in range(words.count_rects()):
        left, low, right, high = words.get_rect(i)
        says = words.get_text_bounded(left, low, right, high).strip()
        found.append(Text(says, (left * MM, low * MM, right * MM, high * MM)))
    words.close()
    return found


def page_text(pdf):
    """Return all that is written on each page, as one line of plain words."""
    document = pdfium.PdfDocument(pdf)
    try:
        return [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    finally:
        document.close()
