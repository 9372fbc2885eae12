"""Angles, masses and plain figures."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayboard.units.figure import (
    NotAFigure,
    read_angle,
    read_figure,
    read_mass,
    show_angle,
    show_area,
    show_figure,
    show_mass,
    show_percent,
    show_two_areas,
)

few = settings(derandomize=True, max_examples=100)


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [
        ("90", 90),
        ("12,5°", 12.5),
        ("−45 deg", -45),
        ("- 45", -45),
        ("0.0000004", 0),
        ("-0", 0),
        (".5 degrees", 0.5),
    ],
)
def test_an_angle_reads_as_people_write(typed, degrees):
    assert str(read_angle(typed)) == str(float(degrees))


@pytest.mark.parametrize("typed", ["", "north", "90 mm", "1/2", "9" * 50, "--4", "nan"])
def test_what_is_no_angle_is_said(typed):
    with pytest.raises(NotAFigure, match=r"is not an angle\. Try 90, 12\.5 or -45\."):
        read_angle(typed)


@pytest.mark.parametrize(
    ("degrees", "shown"),
    [(0.0, "0°"), (12.5, "12.5°"), (-0.04, "0°"), (269.96, "270°")],
)
def test_angles_are_shown_to_the_tenth(degrees, shown):
    assert show_angle(degrees) == shown


@few
@given(st.floats(-360, 360))
def test_a_shown_angle_reads_back_to_the_tenth(degrees):
    assert read_angle(show_angle(degrees)) == pytest.approx(degrees, abs=0.0500001)


def test_a_pound_is_the_international_one():
    # 0.45359237 kg, exact (NIST SP 811, appendix B.8); 16 oz to it
    assert read_mass("100000 lb", "mm") == 45359.237
    assert read_mass("16 oz", "mm") == read_mass("1 lb", "mm")
    assert read_mass("2", "in") == read_mass("2 lb", "mm")
    assert read_mass("4200 g", "in") == 4.2
    assert read_mass("4,2", "mm") == 4.2


@pytest.mark.parametrize(
    ("kg", "metric", "pounds"),
    [(4.2, "4.2 kg", "9.3 lb"), (0.254, "0.25 kg", "0.56 lb")],
)
def test_masses_are_shown_in_the_layouts_units(kg, metric, pounds):
    assert show_mass(kg, "mm") == metric
    assert show_mass(kg, "in") == pounds


@pytest.mark.parametrize("typed", ["-1", "", "1 stone", "kg"])
def test_what_is_no_mass_is_said(typed):
    with pytest.raises(NotAFigure, match="is not a mass"):
        read_mass(typed, "mm")


@pytest.mark.parametrize(("typed", "value"), [("30", 30), ("7,5 A", 7.5), ("30a", 30)])
def test_a_current_reads_with_or_without_its_unit(typed, value):
    assert read_figure(typed, "A") == value


@pytest.mark.parametrize("typed", ["30 V", "-1", "", "thirty"])
def test_another_unit_is_not_a_current(typed):
    with pytest.raises(NotAFigure, match="is not a figure in A"):
        read_figure(typed, "A")


def test_figures_are_shown_with_their_unit():
    assert show_figure(30.0, "A") == "30 A"
    assert show_figure(0.25, "A") == "0.25 A"
    assert show_figure(13.84, "V") == "13.8 V"


@pytest.mark.parametrize(
    ("mm2", "metric", "inches"),
    [
        (0, "0 sq cm", "0 sq in"),
        (645.16, "6.5 sq cm", "1 sq in"),  # 25.4 x 25.4
        (10_000, "100 sq cm", "15.5 sq in"),
        (12, "0.12 sq cm", "0.02 sq in"),
    ],
)
def test_areas_are_shown_in_the_layouts_units(mm2, metric, inches):
    assert (show_area(mm2, "mm"), show_area(mm2, "in")) == (metric, inches)


def test_unequal_areas_do_not_read_equal():
    assert show_two_areas(6000, 6000.1, "mm") == ("60 sq cm", "60.001 sq cm")
    assert show_two_areas(6000, 6000, "mm") == ("60 sq cm", "60 sq cm")
    assert show_two_areas(6000, 9000, "mm") == ("60 sq cm", "90 sq cm")


@pytest.mark.parametrize(
    ("share", "shown"),
    [
        (0, "0 %"),
        (1e-9, "1 %"),
        (0.004, "1 %"),
        (0.4, "40 %"),
        (0.789, "79 %"),
        (0.9999, "99 %"),
        (1, "100 %"),
    ],
)
def test_only_nothing_reads_nothing_and_only_all_reads_all(share, shown):
    assert show_percent(share) == shown
