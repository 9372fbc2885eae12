"""Lettering: fractions drawn, figures tabular, no character without a face."""

import string

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF
from PySide6.QtGui import QFontMetricsF, QImage, QPainter

from bayboard.model.read import read
from bayboard.rules import RULES
from bayboard.rules.check import check
from bayboard.tables.where import shipped
from bayboard.units.length import show_length
from bayboard.window import lettering
from bayboard.window.draw.leads import SIGNS, WORDS
from bayboard.window.draw.words import PORT_WORDS
from bayboard.window.lettering import BODY, FACES, FALLBACK, FIGURE, SMALL, Style

BOTH = [Style("text", 16), Style("pencil", 16), Style("text", 150, 600)]


@pytest.mark.parametrize("style", BOTH, ids=["text", "pencil", "huge"])
@pytest.mark.parametrize("text", ["12 3/8 in", "1/32 in", "0 63/64", "2 1/2 × 3 1/4 in"])
def test_no_slash_is_left_of_a_fraction(text, style):
    made = lettering.line(text, style)
    assert "/" not in made.plain
    assert made.strokes is not None


@pytest.mark.parametrize(
    "text", ["1/0 AWG", "60/40 bench", "18 7/0", "5/4", "1/3", "0.1/8", "1/8/9", "7/128"]
)
def test_what_is_no_fraction_of_an_inch_keeps_its_slash(text):
    assert "/" in lettering.line(text, BODY).plain


@settings(derandomize=True, max_examples=80, deadline=None)
@given(st.integers(1, 4_000), st.sampled_from([2, 4, 8, 16, 32, 64]), st.integers(0, 63))
def test_every_length_in_inches_is_drawn_without_a_slash(whole, parts, numerator):
    text = show_length((whole + numerator % parts / parts) * 25.4, "in")
    assert "/" not in lettering.line(text, FIGURE).plain


def test_numerator_and_denominator_have_the_promised_size():
    style = Style("text", 100)
    runs = lettering.line("3/8", style).glyphs
    assert [run.rawFont().pixelSize() for run in runs] == pytest.approx([100 * SMALL] * 2, abs=1)


def test_the_numerator_stands_over_the_baseline_and_the_denominator_on_it():
    over, under = lettering.line("3/8", Style("text", 100)).glyphs
    assert over.positions()[0].y() < -10
    assert under.positions()[0].y() == pytest.approx(0, abs=1)


def test_a_fraction_is_narrower_than_its_spelling():
    style = Style("text", 32)
    spelled = QFontMetricsF(lettering.font(style)).horizontalAdvance("12 11/16")
    assert lettering.width("12 11/16", style) < spelled


@pytest.mark.parametrize("style", BOTH[:2], ids=["text", "pencil"])
def test_a_line_is_as_wide_as_its_parts(style):
    plain = QFontMetricsF(lettering.font(style)).horizontalAdvance("ground bar")
    assert lettering.width("ground bar", style) == pytest.approx(plain, abs=0.6)


def test_figures_are_tabular():
    assert lettering.width("1111", BODY) == pytest.approx(lettering.width("0888", BODY), abs=0.01)


def test_zero_and_the_letter_o_are_drawn_apart():
    assert ink_of("0") != ink_of("O")
    assert len({ink_of("1"), ink_of("l"), ink_of("I")}) == 3


def ink_of(text: str) -> bytes:
    """The pixels of a text, as bytes."""
    image = QImage(60, 60, QImage.Format.Format_Grayscale8)
    image.fill(255)
    with QPainter(image) as p:
        lettering.draw(p, QPointF(10, 45), text, Style("text", 40), "#000000")
    return bytes(image.constBits())


def test_a_drawn_line_stays_within_its_measured_width():
    image = QImage(300, 60, QImage.Format.Format_Grayscale8)
    image.fill(255)
    style = Style("text", 28, 600)
    with QPainter(image) as p:
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        lettering.draw(p, QPointF(20, 40), "12 63/64 in →", style, "#000000")
    dark = [x for x in range(300) if any(image.pixelColor(x, y).lightness() < 128 for y in range(60))]
    assert dark[0] >= 19
    assert dark[-1] <= 20 + lettering.width("12 63/64 in →", style) + 1


@pytest.mark.parametrize("align", ["left", "centre", "right"])
def test_alignment_moves_the_whole_line(align):
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[align]
    image = QImage(300, 40, QImage.Format.Format_Grayscale8)
    image.fill(255)
    with QPainter(image) as p:
        lettering.draw(p, QPointF(150, 30), "HH", BODY, "#000000", align)
    dark = [x for x in range(300) if any(image.pixelColor(x, y).lightness() < 128 for y in range(40))]
    left = 150 - share * lettering.width("HH", BODY)
    assert left - 1 <= dark[0] <= left + 4


WORD_TABLES = [
    *PORT_WORDS.values(),
    *WORDS.values(),
    *SIGNS.values(),
    "P1 → A2",
    "✓ in 1–6",
    "0° × µ mm²",
    "…",
]


@pytest.mark.parametrize("text", WORD_TABLES)
def test_every_word_of_the_drawing_has_its_letters(text):
    assert lettering.missing(text) == ""


@pytest.mark.parametrize("name", ["bulkhead", "crew-pickup-rear-wall", "floor-lid"])
def test_every_sentence_of_the_demos_has_its_letters(name):
    verdict = check(read(shipped("demo_layouts", f"{name}.json").read_bytes()))
    for said in (*verdict.findings, *verdict.unchecked):
        assert lettering.missing(said.says) == ""


def test_every_rules_own_words_have_their_letters():
    for rule in RULES:
        assert lettering.missing(rule.__doc__ or "") == ""


def test_what_a_keyboard_types_has_its_letters():
    assert lettering.missing(string.printable) == ""


def test_names_from_elsewhere_fall_back_to_a_face_that_ships():
    assert lettering.missing("Łódź Žižka Ωmega Ёлка") == ""
    assert FALLBACK in lettering.load_fonts()
    assert set(FACES.values()) <= set(lettering.load_fonts())


def test_a_character_nobody_draws_is_reported():
    assert lettering.missing("A漢1") == "漢"


def test_a_text_that_fits_is_not_shortened():
    assert lettering.elided("A2", BODY, 100) == "A2"


@pytest.mark.parametrize("room", [0, 5, 30, 77, 140])
def test_a_shortened_text_fits_and_says_so(room):
    text = lettering.elided("A very long name for a card", BODY, room)
    assert text.endswith("…")
    assert text == "…" or lettering.width(text, BODY) <= room


def test_wrapped_lines_fit_and_lose_no_word():
    text = "A2 stands 1 1/8 in off fuse block B1. It needs 1/4 in at the least."
    lines = lettering.wrapped(text, BODY, 150)
    assert " ".join(lines) == text
    assert all(lettering.width(line, BODY) <= 150 for line in lines)


@pytest.mark.parametrize("room", range(40, 300, 20))
def test_a_length_is_never_parted_from_its_unit(room):
    lines = lettering.wrapped("It stands 12 3/8 in off, 314.5 mm that is, at 80 A", BODY, room)
    assert any("12 3/8 in" in line for line in lines)
    assert any("314.5 mm" in line for line in lines)
    assert any("80 A" in line for line in lines)


def test_a_word_wider_than_the_room_stands_alone():
    assert lettering.wrapped("a verylongidentifier24 b", BODY, 20) == ("a", "verylongidentifier24", "b")


def test_an_empty_text_is_a_line_without_width():
    assert lettering.width("", BODY) == 0
    assert lettering.wrapped("", BODY, 50) == ("",)


@pytest.mark.parametrize("room", range(20, 260, 7))
def test_an_elided_text_never_ends_within_a_fraction(room):
    whole = "It needs 2 23/64 in here"
    kept = lettering.elided(whole, BODY, room).rstrip("…")
    assert "2 2" not in kept or "2 23/64" in kept
