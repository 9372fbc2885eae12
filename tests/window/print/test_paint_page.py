"""A page on screen against the same page in the PDF, drawn by a reader that knows nothing of ours.

The reader is PDFium (by pypdfium2), the one that many people's browsers print with.
"""

import numpy as np
import pypdfium2
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from tests.window.print.bench import wide

from bayboard.paper.book import Options, book
from bayboard.paper.marks import CUT, HAIR, MEASURED, Fill, Letters, Page, Stroke, Trace
from bayboard.window.print.paint_page import letters_path, page_rect, paint_page, paper_ink, paper_white
from bayboard.window.theme import DARK, LIGHT

K = 4.0  # px a mm
MOST = 0.35  # mm; a dark pixel of one picture has one of the other this near


def painted(page, theme=LIGHT, k=K):
    wide_, high = round(page.size[0] * k), round(page.size[1] * k)
    made = QImage(wide_, high, QImage.Format.Format_RGB32)
    made.fill(QColor("#FF00FF"))
    with QPainter(made) as p:
        paint_page(p, page, QRectF(made.rect()), theme)
    return made


def grey(image):
    made = image.convertToFormat(QImage.Format.Format_Grayscale8)
    rows = np.frombuffer(made.constBits(), np.uint8).reshape(made.height(), made.bytesPerLine())
    return rows[:, : made.width()].astype(int)


def grown(dark, by):
    """Return the mask with every pixel spread by a few pixels all round."""
    out = dark.copy()
    for dy in range(-by, by + 1):
        for dx in range(-by, by + 1):
            out |= np.roll(np.roll(dark, dy, 0), dx, 1)
    return out


@pytest.mark.parametrize("which", [0, 1, -1])
def test_a_page_on_screen_is_the_page_in_the_pdf(which):
    made = book(wide(), Options("a4"))
    ours = grey(painted(made.pages[which]))
    document = pypdfium2.PdfDocument(made.pdf())
    theirs = document[which % len(made.pages)].render(scale=K * 25.4 / 72, grayscale=True).to_numpy()
    theirs = theirs.reshape(theirs.shape[:2])[: ours.shape[0], : ours.shape[1]].astype(int)
    document.close()
    ours = ours[: theirs.shape[0], : theirs.shape[1]]
    near = round(MOST * K) + 1
    for a, b in ((ours, theirs), (theirs, ours)):
        dark, known = a < 90, grown(b < 205, near)
        assert dark.sum() > 2000
        assert (dark & ~known).sum() <= 0.002 * dark.sum()


def line(a, b):
    return Trace(a, (b,))


def test_page_mm_grow_up_from_the_lower_left_corner():
    page = Page("drill", (100.0, 50.0), (Fill((Trace((0, 0), ((10, 0), (10, 5), (0, 5)), True),)),), ())
    made = painted(page)
    ink = QColor(paper_ink(LIGHT)).name()
    assert made.pixelColor(8, made.height() - 8).name() == ink
    assert made.pixelColor(8, 8).name() == QColor(paper_white(LIGHT)).name()


def test_white_lines_clear_what_lies_below():
    page = Page(
        "drill",
        (40.0, 40.0),
        (
            Fill((Trace((5, 5), ((35, 5), (35, 35), (5, 35)), True),)),
            Stroke((line((0, 20), (40, 20)),), 4.0, white=True),
        ),
        (),
    )
    assert painted(page).pixelColor(80, 80).name() == QColor(paper_white(LIGHT)).name()


@pytest.mark.parametrize("width", [CUT, MEASURED])
def test_dashes_are_as_long_as_on_paper(width):
    dashed = Page("drill", (100.0, 10.0), (Stroke((line((0, 5), (100, 5)),), width, (5.0, 2.5)),), ())
    row = grey(painted(dashed))[round(5 * K)]
    inked = row < 220
    starts = np.flatnonzero(np.diff(inked.astype(int)) == 1) / K
    assert np.allclose(np.diff(starts), 7.5, atol=0.3)


def test_lines_keep_their_proportions_on_a_small_page():
    strokes = (Stroke((line((0, 30), (200, 30)),), CUT), Stroke((line((0, 10), (200, 10)),), HAIR))
    small = grey(painted(Page("drill", (200.0, 40.0), strokes, ()), k=1.0))
    ink = small[0, 0] - small[:, 100]
    cut, hair = ink[:20].sum(), ink[20:].sum()
    assert hair > 0
    assert cut / hair == pytest.approx(CUT / HAIR, rel=0.15)


@pytest.mark.parametrize("text", ["12 3/8 in", "⌀ 4.2", "A1#3 → up", "Größe Ω"])
def test_a_line_on_screen_is_as_wide_as_in_the_pdf(text):
    filled, drawn, _, width = letters_path(text, "text")
    box = filled.boundingRect().united(drawn.boundingRect()) if not drawn.isEmpty() else filled.boundingRect()
    assert 0 < box.right() <= width + 0.02
    assert width - box.right() < 0.2


def test_letters_stand_upright_on_their_baseline():
    page = Page("drill", (40.0, 20.0), (Letters("H", (10.0, 5.0), 10.0),), ())
    dark = grey(painted(page)) < 100
    rows = np.flatnonzero(dark.any(axis=1)) / K
    assert 20 - rows.max() == pytest.approx(5.0, abs=0.4)
    assert 20 - rows.min() == pytest.approx(5.0 + 6.7, abs=0.6)  # a capital is about 0.67 em high


def test_a_page_lies_as_large_as_fits_in_the_upper_middle():
    rect = page_rect((200.0, 100.0), QRectF(10, 20, 400, 400))
    assert (rect.left(), rect.top(), rect.width(), rect.height()) == (10, 20, 400, 200)


def test_paper_is_light_and_its_print_dark_in_both_themes():
    for theme in (LIGHT, DARK):
        assert QColor(paper_white(theme)).lightness() > 200
        assert QColor(paper_ink(theme)).lightness() < 60
