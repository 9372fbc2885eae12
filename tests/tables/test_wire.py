"""Cable sizes against ASTM B258 and the worked examples of shared/reference/checks.md."""

from math import pi

import pytest

from bayboard.tables.reference import awg_diameter, lead_od, wire
from bayboard.tables.rows import known, rows


@pytest.mark.parametrize(
    ("number", "mm"),
    # ASTM B258: the two anchors in inches, 0.0050 and 0.4600, and 4 AWG as printed (checks.md 1, 2)
    [(36, 0.005 * 25.4), (-3, 0.46 * 25.4), (4, 5.189)],
    ids=["36 AWG", "4/0 AWG", "4 AWG"],
)
def test_awg_diameters_are_those_of_astm_b258(number, mm):
    assert awg_diameter(number) == pytest.approx(mm, abs=0.001)


@pytest.mark.parametrize(
    ("size", "area"),
    # checks.md 3; the others: ASTM B258 in circular mils; values from memory
    [
        ("4 AWG", 21.15),
        ("4/0 AWG", 211_600 * 5.067075e-4),
        ("1/0 AWG", 105_600 * 5.067075e-4),
        ("16 mm2", 16.0),
    ],
)
def test_copper_areas(size, area):
    assert wire(size).area == pytest.approx(area, rel=1e-3)


def test_ten_sizes_are_about_ten_times_the_area():
    # a rule of thumb that every wire table bears out: 92 ** (20 / 39) = 10.16
    assert wire("4 AWG").area / wire("14 AWG").area == pytest.approx(10.16, abs=0.01)


def test_every_row_of_the_table_agrees_with_the_formula_to_its_digits():
    for row in rows("copper_wire"):
        if row["system"] == "AWG":
            area = wire(f"{row['size']} AWG").area
            assert area == pytest.approx(known(row, "area_mm2"), rel=6e-4), row["size"]
            assert area == pytest.approx(pi / 4 * known(row, "diameter_solid_mm") ** 2, rel=1e-3)


@pytest.mark.parametrize(
    ("size", "od"),
    [
        ("4 AWG", 10.5),
        ("5 AWG", 10.5),  # no row with an outside diameter: the next larger that has one
        ("9 AWG", 7.5),
        ("22 AWG", 2.1),
        ("28 AWG", 2.1),
        ("0000 AWG", 21.5),
        ("00 AWG", 18.0),
        ("16 mm2", 7.2),
        ("17 mm2", 7.8),
        ("0.2 mm2", 1.4),
        ("120 mm2", 18.7),
    ],
)
def test_a_lead_is_as_thick_as_the_largest_usual_cable_of_its_size(size, od):
    assert lead_od(size, None) == od


def test_cables_larger_than_the_table_grow_with_their_copper():
    assert lead_od("480 mm2", None) == pytest.approx(2 * 18.7)


def test_a_measured_diameter_wins_over_the_table():
    assert lead_od("4 AWG", 9.2) == 9.2
    assert lead_od(None, 5.0) == 5.0


@pytest.mark.parametrize("size", [None, "", "four AWG", "4", "4 mm", "-3 mm2", "0 mm2", "3/8 AWG", "4/1 AWG"])
def test_what_is_no_size_has_no_cable(size):
    assert wire(size) is None
    assert lead_od(size, None) is None
