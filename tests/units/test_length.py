"""Typed and shown lengths."""

import csv
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayboard.tables.where import shipped
from bayboard.units.length import (
    NotALength,
    read_length,
    rounded,
    show_at_least,
    show_both,
    show_length,
    show_two,
    surprise,
)

IN = 25.4  # mm, the international inch of 1959 (NIST SP 811, appendix B.8)

few = settings(derandomize=True, max_examples=150)
units = st.sampled_from(["mm", "in"])
sixty_fourths = st.integers(-64 * 200, 64 * 200)
millimetres = st.floats(-99_999, 99_999)


@pytest.mark.parametrize(
    ("typed", "shown", "mm"),
    [
        # the spellings of the design, each in both shown units
        ("12 3/8", "in", 12.375 * IN),
        ("12 3/8", "mm", 12.375),
        ('12-3/8"', "mm", 12.375 * IN),
        ("12-3/8", "in", 12.375 * IN),
        ("12 - 3/8", "in", 11.625 * IN),
        ('12" - 3/8"', "mm", 11.625 * IN),
        ("314 mm", "in", 314),
        ("314mm", "in", 314),
        ("314", "mm", 314),
        ("31,4 cm", "in", 314),
        ("31.4cm", "in", 314),
        ("1' 2\"", "mm", 14 * IN),
        ("1'2\"", "mm", 14 * IN),
        ("1'", "mm", 12 * IN),
        ("12 3/8 + 1/2", "in", 12.875 * IN),
        ("314 mm + 2 cm - 1.5 mm", "in", 332.5),
        # feet and inches
        ("1'-2\"", "mm", 14 * IN),
        ("1' - 2\"", "mm", 10 * IN),
        ("1' 2 3/8\"", "mm", 14.375 * IN),
        ("1'-2-3/8\"", "mm", 14.375 * IN),
        ("1' 2", "mm", 14 * IN),
        ("1 ft 2 in", "mm", 14 * IN),
        ("2 feet", "mm", 24 * IN),
        ("1 foot 1 inch", "mm", 13 * IN),
        ("3 inches", "mm", 3 * IN),
        ("1.2 m", "in", 1200),
        ("12 in.", "mm", 12 * IN),
        ("12 IN", "mm", 12 * IN),
        # what a phone, a word processor or a catalogue makes of them
        ("12½", "in", 12.5 * IN),
        ("12 ⅜", "in", 12.375 * IN),
        ("12-⅜", "in", 12.375 * IN),
        ("⅝″", "mm", 0.625 * IN),
        ("12³⁄₈″", "mm", 12.375 * IN),
        ("12 3⁄8 in", "mm", 12.375 * IN),
        ("12 3∕8 in", "mm", 12.375 * IN),
        ("1′ 2″", "mm", 14 * IN),
        ("1′2′′", "mm", 14 * IN),
        ("1’ 2”", "mm", 14 * IN),
        ("1‘ 2“", "mm", 14 * IN),
        ("12\u00a03/8", "in", 12.375 * IN),
        ("12\u202f3/8\u2009in", "mm", 12.375 * IN),
        ("12‑3/8", "in", 12.375 * IN),
        ("12 − 3/8", "in", 11.625 * IN),
        ("12 – 3/8", "in", 11.625 * IN),
        ("−5 mm", "in", -5),
        ("３１４ｍｍ", "in", 314),
        # signs, points, fractions alone
        ("-3/8", "in", -0.375 * IN),
        ("- 12 3/8", "in", -12.375 * IN),
        ("+5", "mm", 5),
        ("0", "in", 0),
        ("-0", "mm", 0),
        (".5", "mm", 0.5),
        (",5", "mm", 0.5),
        ("5.", "mm", 5),
        ("11/8", "in", 1.375 * IN),
        ("3 / 8", "in", 0.375 * IN),
        ("1/2-3/8", "in", 0.125 * IN),
        ("10-3", "mm", 7),
        ("12-3/8-1/8", "in", 12.25 * IN),
        ("0,125", "mm", 0.125),
        ("  314  ", "mm", 314),
    ],
)
def test_it_reads_as_people_write(typed, shown, mm):
    assert read_length(typed, shown) == pytest.approx(mm, abs=5e-7)


@pytest.mark.parametrize(
    "typed",
    [
        *("", " ", "18 7/0", "7/0", "abc", "12 x", "12 mm mm", "5 5", "5 5/8/2", "1 200", "12 11/8"),
        *("3 + + 4", "3 +", "+", "-", "3--4", "1e3", "0x10", "12 3/8.5", "1.5 3/8", "1.2.3", "1,2,3"),
        *("mm", "mm 12", "'", '"12', "1/", "/2", "1'2'", "1\" 2'", "1' 2 mm", "12 mm 3 cm", "5²", "5 m²"),
        *("٣", "12٣", "nan", "inf", "12 3/8 * 2", "(12)", "12;3", "½½"),
    ],
)
@pytest.mark.parametrize("shown", ["mm", "in"])
def test_what_is_no_length_is_said_in_one_sentence_that_helps(typed, shown):
    with pytest.raises(NotALength) as caught:
        read_length(typed, shown)
    start = f"{' '.join(typed.split())} is not a length" if typed.strip() else "Nothing is typed yet"
    assert str(caught.value) == f"{start}. Try 18 7/8, 479 mm or 47.9 cm."


def test_the_examples_of_that_sentence_are_one_length():
    assert show_both(read_length("18 7/8", "in")) == "18 7/8 in, 479.4 mm"
    assert read_length("479 mm", "in") == pytest.approx(read_length("47.9 cm", "in"))


@pytest.mark.parametrize("typed", ["12 -3/8", "12- 3/8", "1' -2\"", "1'- 2\"", "100 + 12 -3/8"])
def test_a_dash_that_can_be_read_two_ways_is_asked_back(typed):
    with pytest.raises(NotALength, match=r"two ways\. Write 12-3/8 to add the part, 12 - 3/8"):
        read_length(typed, "in")


@pytest.mark.parametrize("typed", ["1,200", "12,125 mm", "5 + 1,200"])
def test_a_comma_that_may_part_thousands_is_asked_back(typed):
    with pytest.raises(NotALength, match="two ways"):
        read_length(typed, "mm")


@pytest.mark.parametrize(("typed", "shown"), [("12 3/8 in + 5", "mm"), ("5 + 3 mm", "in"), ("1' - 5", "mm")])
def test_a_bare_number_beside_a_foreign_unit_is_asked_back(typed, shown):
    with pytest.raises(NotALength, match="unit of each part"):
        read_length(typed, shown)


def test_more_than_a_layout_holds_is_refused():
    assert read_length("100 m", "mm") == 100_000
    with pytest.raises(NotALength, match="more than 100 m"):
        read_length("100.001 m", "mm")


def test_an_endless_text_is_refused_at_once():
    with pytest.raises(NotALength) as caught:
        read_length("9" * 1_000_000, "mm")
    assert len(str(caught.value)) < 100


def test_every_sixty_fourth_is_exact_to_a_millionth_of_a_millimetre():
    for part in range(64 * 48):
        assert read_length(f"{part}/64", "in") == float(part * Decimal("0.396875"))  # 25.4 / 64


def test_fractional_drills_have_the_diameters_of_the_thread_table():
    # threads.csv: tap drills named by their fraction of an inch (ASME B18.2.8, ANSI B94.11M sizes)
    with shipped("shared", "reference", "threads.csv").open(encoding="utf-8", newline="") as file:
        named = [
            (row["tap_drill_name"], float(row["tap_drill_mm"]))
            for row in csv.DictReader(file)
            if "/" in row["tap_drill_name"]
        ]
    assert named
    for name, mm in named:
        assert read_length(f'{name}"', "mm") == pytest.approx(mm, abs=0.0005)


@few
@given(sixty_fourths, units)
def test_a_shown_sixty_fourth_reads_back_exactly(parts, typed_in):
    mm = rounded(parts * IN / 64)
    assert read_length(show_length(mm, "in"), typed_in) == mm


@few
@given(millimetres, units, units)
def test_what_is_shown_reads_back_within_half_its_last_place(mm, shown, typed_in):
    off = abs(read_length(show_length(mm, shown), typed_in) - mm)
    assert off <= (IN / 128 if shown == "in" else 0.05) + 1e-6


@few
@given(st.text(st.sampled_from("0123456789 /.,'\"+-−½⅜′″ mcinft"), max_size=12), units)
def test_anything_typed_is_a_length_or_not_a_length(typed, shown):
    try:
        mm = read_length(typed, shown)
    except NotALength as error:
        assert str(error).endswith(".")
    else:
        assert abs(mm) <= 100_000
        assert mm == rounded(mm)


@few
@given(st.integers(0, 99), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_a_hyphen_adds_and_a_dash_with_spaces_takes_away(whole, part, of):
    part %= of
    together = read_length(f"{whole}-{part}/{of}", "in") if whole else read_length(f"{part}/{of}", "in")
    apart = read_length(f"{whole} - {part}/{of}", "in")
    assert Fraction(together) + Fraction(apart) == pytest.approx(2 * whole * IN, abs=2e-6)


@pytest.mark.parametrize(
    ("mm", "inches", "metric"),
    [
        (314.325, "12 3/8 in", "314.3 mm"),
        (304.8, "12 in", "304.8 mm"),
        (9.525, "3/8 in", "9.5 mm"),
        (0.0, "0 in", "0 mm"),
        (-0.0, "0 in", "0 mm"),
        (-0.04, "0 in", "0 mm"),
        (-9.525, "-3/8 in", "-9.5 mm"),
        (-314.325, "-12 3/8 in", "-314.3 mm"),
        (314.25, "12 3/8 in", "314.3 mm"),
        (0.05, "0 in", "0.1 mm"),
        (0.2, "1/64 in", "0.2 mm"),
        (25.39, "1 in", "25.4 mm"),
        (100_000, "3937 1/64 in", "100000 mm"),
    ],
)
def test_lengths_are_shown_to_the_nearest_mark_of_a_rule(mm, inches, metric):
    assert show_length(mm, "in") == inches
    assert show_length(mm, "mm") == metric
    assert show_both(mm) == f"{inches}, {metric}"


@few
@given(millimetres, st.floats(-1, 1) | st.floats(-1e-6, 1e-6), units)
def test_two_lengths_that_differ_never_read_the_same(a, by, shown):
    first, second = show_two(a, a + by, shown)
    assert (first == second) == (a == a + by)


def test_two_lengths_take_no_more_digits_than_they_need():
    assert show_two(5.96, 6, "mm") == ("5.96 mm", "6 mm")
    assert show_two(5.9996, 6, "mm") == ("5.9996 mm", "6 mm")
    assert show_two(5.5, 6, "mm") == ("5.5 mm", "6 mm")
    assert show_two(6, 6, "mm") == ("6 mm", "6 mm")
    assert show_two(IN / 4, IN / 4 - 0.1, "in") == ("0.25 in", "0.246 in")


def test_a_length_far_beyond_the_bay_is_asked_back():
    mm = read_length("1200", "in")
    assert surprise(mm, 1200, "in", "1200") == (
        "1200 in is over ten times the size of this bay; did you mean 1200 mm?"
    )
    assert surprise(12_000, 1200, "mm", "12000") is None
    assert surprise(12_001, 1200, "mm", "12001").endswith("bay; is that right?")
    assert surprise(-12_001, 1200, "mm", "-12001") is not None
    assert surprise(read_length("90000 mm", "in"), 1200, "in", "90000 mm").endswith("is that right?")


def test_an_unmeasured_bay_surprises_nobody():
    assert surprise(99_999, 0, "mm", "99999") is None


@pytest.mark.parametrize(
    ("mm", "metric", "inches"),
    [
        (20.0, "20 mm", "51/64 in"),
        (20.01, "20.1 mm", "51/64 in"),
        (25.4, "25.4 mm", "1 in"),
        (0.1 + 0.2, "0.3 mm", "1/64 in"),  # floating point's 0.30000000000000004 is no more than 0.3
        (-2.05, "-2 mm", "-5/64 in"),
        (0, "0 mm", "0 in"),
    ],
)
def test_what_is_needed_is_rounded_up(mm, metric, inches):
    assert (show_at_least(mm, "mm"), show_at_least(mm, "in")) == (metric, inches)


@few
@given(millimetres, units)
def test_whoever_keeps_to_what_is_shown_has_enough(mm, shown):
    step = IN / 64 if shown == "in" else 0.1
    read = read_length(show_at_least(mm, shown), shown)
    assert -1e-5 <= read - mm <= step + 1e-5
