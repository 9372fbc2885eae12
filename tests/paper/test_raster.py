"""Rendered as a printer would, the rings stand where the model's holes are."""

from math import hypot

import numpy as np
import pypdfium2 as pdfium
from tests.paper import boards, readers

from bayboard.mechanics.holes import holes
from bayboard.paper.book import Options, book

SCALE = 8  # 576 dpi: a Letter page is then a whole number of pixels, at 600 dpi pdfium rounds it up
MM = SCALE / readers.MM  # pixels in a mm
LIMIT = 0.02  # mm


def ring_middle(ink, x, y, r):
    """Return the middle of the ink within `r` of (x, y) pixels: ring, ticks and arms are even round it."""
    at = np.array([x, y])
    for _ in range(4):
        j0, i0 = (int(v - r - 2) for v in at)
        patch = ink[i0 : i0 + int(2 * r) + 5, j0 : j0 + int(2 * r) + 5]
        ys, xs = np.mgrid[i0 : i0 + patch.shape[0], j0 : j0 + patch.shape[1]]
        weight = patch * np.clip(r + 0.5 - np.hypot(xs + 0.5 - at[0], ys + 0.5 - at[1]), 0.0, 1.0)
        at = np.array([(weight * (xs + 0.5)).sum(), (weight * (ys + 0.5)).sum()]) / weight.sum()
    return at


def test_rings_stand_within_0_02_mm_at_576_dpi():
    model = {h.id: h for h in holes(boards.odd())}
    made = book(boards.odd(), Options(paper="letter", only=("drill",)))
    document = pdfium.PdfDocument(made.pdf())
    seen = 0
    for number in (6,):
        page = document[number]
        ink = 1.0 - page.render(scale=SCALE, grayscale=True).to_numpy().squeeze() / 255.0
        shows = made.map()["pages"][number]["shows"]
        origin = next(s["at"] for s in shows if s["what"] == "outline")
        for shown in shows:
            if shown["what"] == "hole" and model[shown["id"]].make == "tap":
                hole = model[shown["id"]]
                x, y = origin[0] + hole.at[0], origin[1] + hole.at[1]
                found = ring_middle(ink, x * MM, ink.shape[0] - y * MM, (hole.drill / 2 + 0.4) * MM)
                assert hypot(found[0] / MM - x, (ink.shape[0] - found[1]) / MM - y) < LIMIT
                seen += 1
    document.close()
    assert seen >= 2
