"""Limits as their readers know them: every one has a name, and what is typed is read in its unit."""

import pytest

from bayboard.model.limit_words import WORDS, read_limit, show_limit, typed_in
from bayboard.tables.limits import FIXED, LIMITS


def test_every_limit_has_a_name_and_no_name_is_without_a_limit():
    assert WORDS.keys() == LIMITS.keys()
    assert len(set(WORDS.values())) == len(WORDS)


@pytest.mark.parametrize("units", ["mm", "in"])
def test_what_is_shown_of_a_limit_can_be_typed_again(units):
    for name, known in LIMITS.items():
        shown = show_limit(known.value, known.unit, units)
        within = 25.4 / 128 if units == "in" and known.unit == "mm" else 0.05  # the finest that is shown
        assert abs(read_limit(shown, name, units) - known.value) <= within, name


@pytest.mark.parametrize("units", ["mm", "in"])
def test_no_limit_that_is_something_is_shown_as_nothing(units):
    for name, known in {**LIMITS, **FIXED}.items():
        shown = show_limit(known.value, known.unit, units)
        assert not known.value or any(digit in shown for digit in "123456789"), name


def test_a_limit_too_fine_for_inches_is_shown_and_typed_in_mm():
    assert show_limit(0.01, "mm", "in") == show_limit(0.01, "mm", "mm") == "0.01 mm"
    assert typed_in(0.01, "mm", "in") == "mm"
    assert typed_in(6.0, "mm", "in") == "in"
    assert typed_in(4.0, "x OD", "in") == "in"


def test_one_of_a_kind_is_told_as_one():
    assert show_limit(1.0, "holes", "in") == "1 hole"
    assert show_limit(2.0, "holes", "in") == "2 holes"


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("9 mm", "gap_must", 9.0),
        ("3/8", "gap_must", 9.525),
        ("70°", "sight_angle", 70.0),
        ("5 x", "bend_od", 5.0),
        ("0,4", "air_must_share", 0.4),
        ("60 °C", "wire_temp", 60.0),
        ("3 %", "drop_should", 3.0),
    ],
)
def test_a_limit_is_read_in_its_own_unit(text, name, value):
    assert read_limit(text, name, "in") == value


@pytest.mark.parametrize(
    ("text", "name", "says"),
    [
        ("abc", "gap_must", "is not a length"),
        ("abc", "bend_od", "abc is not a figure"),
        ("", "sight_angle", "Nothing is not a figure"),
        ("-3", "gap_must", "less than nothing"),
        ("500", "sight_angle", "Type 180° or less"),
        ("nan", "bend_od", "not a figure"),
    ],
)
def test_what_is_no_limit_is_said_in_a_sentence(text, name, says):
    with pytest.raises(ValueError, match=says):
        read_limit(text, name, "in")
