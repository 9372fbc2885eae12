"""Text set for paper: fractions drawn, any name printed, nothing cut in the middle of a word."""

import pytest
from tests.build import layout
from tests.paper import readers

from bayboard.paper import lettering
from bayboard.paper.book import Options, book
from bayboard.paper.lettering import fitted, set_line, width
from bayboard.paper.marks import Letters, pt

SIXTY_FOURTHS = [f"{n}/{d}" for d in (2, 4, 8, 16, 32, 64) for n in range(1, d, 2)]


@pytest.mark.parametrize("face", ["text", "bold", "pencil"])
def test_every_64th_is_set_small_with_a_drawn_stroke(face):
    for fraction in SIXTY_FOURTHS:
        line = set_line(f"12 {fraction} in", face)
        assert [r.text for r in line.runs] == ["12", *fraction.split("/"), " in"]
        over, under = line.runs[1:3]
        assert over.size == under.size == lettering.SMALL and over.y > under.y
        assert len(line.drawn) == 1


@pytest.mark.parametrize("plain", ["3/2", "1/3", "10/8", "1/100", "2024/11/3", "a/b"])
def test_what_is_no_fraction_of_an_inch_stays_as_spelled(plain):
    assert "".join(r.text for r in set_line(plain, "text").runs) == plain


@pytest.mark.parametrize("sign", "→↑←↓⌀")
def test_signs_no_face_has_are_drawn(sign):
    line = set_line(sign, "text")
    assert not line.runs and line.drawn and line.width > 0.5


@pytest.mark.parametrize(
    "name", ["Łódź kombi", "Øresund Ωhm", "№ 7 · déjà vu", "Кузов 3", "漢字の車", "🚐 van", "a\u0301\u200b"]
)
def test_a_name_in_any_script_prints(name):
    made = book(layout(vehicle={"name": name}), Options(paper="a4"))
    (said,) = readers.page_text(made.pdf())[:1]
    for letter in name:
        if ord(letter) < 0x2000 and letter.isalpha():
            assert letter in said
    assert width(name, "bold", 1.0) > 0


def test_what_no_face_has_is_a_hollow_box_for_each_letter():
    line = set_line("漢字", "text")
    assert not line.runs and len(line.drawn) == 2


def test_the_wide_face_steps_in_letter_by_letter():
    assert [(r.face, r.text) for r in set_line("a″b", "text").runs] == [
        ("text", "a"),
        ("wide", "″"),
        ("text", "b"),
    ]


def test_text_shrinks_first_and_then_ends_after_a_whole_word():
    text = "A vehicle with quite a long name"
    full = width(text, "text", pt(10))
    assert fitted(text, "text", pt(10), full + 0.1, pt(6)) == (text, pt(10))
    shrunk, size = fitted(text, "text", pt(10), full * 0.7, pt(6))
    assert shrunk == text and pt(6) <= size < pt(10)
    cut, size = fitted(text, "text", pt(10), full * 0.4, pt(6))
    assert size == pt(6) and cut.endswith(" …")
    assert cut.removesuffix(" …") in (" ".join(text.split()[:n]) for n in range(1, 8))
    assert width(cut, "text", size) <= full * 0.4


def test_one_endless_word_is_cut_with_an_ellipsis():
    cut, size = fitted("x" * 400, "text", pt(10), 50.0, pt(6))
    assert cut.endswith("x…") and width(cut, "text", size) <= 50.0


def test_a_very_long_name_stays_inside_its_strip():
    made = book(layout(vehicle={"name": "Caravanserai " * 15}), Options(paper="letter", revision="12"))
    pdf = made.pdf()
    for page, found in zip(made.pages, readers.texts(pdf), strict=True):
        assert all(t.box[2] <= page.size[0] - 9.99 for t in found)
    for number, said in enumerate(readers.page_text(pdf), start=1):
        assert f"… · revision 12 · sheet {number} of {len(made.pages)} · letter" in said


@pytest.mark.parametrize("anchor", ["left", "middle", "right"])
def test_the_box_of_turned_letters_is_the_box_turned(anchor):
    flat = lettering.box(Letters("lies under 7", (0.0, 0.0), 3.0, "bold", 0.0, anchor))
    upright = lettering.box(Letters("lies under 7", (0.0, 0.0), 3.0, "bold", 90.0, anchor))
    assert upright == pytest.approx((-flat[3], flat[0], -flat[1], flat[2]))
