"""Threads and inserts against the standards that the table quotes."""

from math import pi

import pytest

from bayboard.tables.reference import insert, thread, thread_names

# ISO 273:1979 medium series clearance holes, mm; values from memory
ISO_273_MEDIUM = {"M2.5": 2.9, "M3": 3.4, "M4": 4.5, "M5": 5.5, "M6": 6.6, "M8": 9.0, "M10": 11.0}
# ISO 261 coarse pitches, mm; values from memory
ISO_261_COARSE = {"M2.5": 0.45, "M3": 0.5, "M4": 0.7, "M5": 0.8, "M6": 1.0, "M8": 1.25, "M10": 1.5}
# ISO 7093-1 large washers, outside diameter, mm; values from memory
ISO_7093 = {"M3": 9, "M4": 12, "M5": 15, "M6": 18, "M8": 24, "M10": 30}
# ISO 7089 plain washers, outside diameter, mm; values from memory
ISO_7089 = {"M3": 7, "M4": 9, "M5": 10, "M6": 12, "M8": 16, "M10": 20}
# ISO 2306 tap drills, mm; values from memory
ISO_2306 = {"M2.5": 2.05, "M3": 2.5, "M4": 3.3, "M5": 4.2, "M6": 5.0, "M8": 6.8, "M10": 8.5}
# number and letter drills of ASME B94.11M in inches; values from memory
DRILLS = {"#36": 0.1065, "#33": 0.113, "#29": 0.136, "#25": 0.1495, "#21": 0.159, "#7": 0.201, "#3": 0.213}
DRILLS |= {"F": 0.257, "I": 0.272, "5/16": 0.3125, "Q": 0.332}


@pytest.mark.parametrize(("name", "mm"), ISO_273_MEDIUM.items())
def test_metric_clearance_holes_are_iso_273_medium(name, mm):
    assert thread(name).clear_medium == mm


@pytest.mark.parametrize(("name", "mm"), ISO_2306.items())
def test_metric_tap_drills_are_iso_2306_and_diameter_less_pitch(name, mm):
    found = thread(name)
    assert found.tap_drill == mm
    assert found.tap_drill == pytest.approx(found.major_d - found.pitch, abs=0.06)


@pytest.mark.parametrize(("name", "mm"), ISO_261_COARSE.items())
def test_a_bare_metric_name_is_the_coarse_pitch(name, mm):
    assert thread(name) is thread(f"{name}x{mm:g}")
    assert thread(name).pitch == mm


@pytest.mark.parametrize("name", ISO_7093)
def test_washers_are_iso_7089_and_7093(name):
    assert thread(name).washer_od == ISO_7089[name]
    assert thread(name).large_washer_od == ISO_7093[name]


@pytest.mark.parametrize("name", thread_names())
def test_inch_tap_drills_are_the_named_drills_and_washers_twice_the_thread(name):
    found = thread(name)
    if found.inch:
        assert found.tap_drill == pytest.approx(25.4 * DRILLS[found.tap_drill_name], abs=0.002)
        assert found.large_washer_od == 2 * found.major_d
        assert found.washer_od is None


@pytest.mark.parametrize("name", thread_names())
def test_tensile_stress_areas_are_iso_898_and_asme_b1_1(name):
    found = thread(name)
    # ISO 898-1: pi/4 (d - 0.9382 P)^2; ASME B1.1: pi/4 (D - 0.9743/n)^2 (checks.md 14, 15)
    lost = 0.9743 if found.inch else 0.9382
    assert found.stress_area == pytest.approx(pi / 4 * (found.major_d - lost * found.pitch) ** 2, rel=2e-3)


def test_a_thread_that_is_in_no_table_is_told():
    assert thread("M7") is None
    assert thread("") is None
    assert insert("M3") is None


@pytest.mark.parametrize(
    ("name", "flange", "length"),
    [
        ("M6", 13, 15.5),
        ("M6x1", 13, 15.5),
        ("#10-24", None, None),
        ("#10-32", None, None),
        ("1/4-20", None, None),
    ],
)
def test_inserts_are_found_by_any_name_of_their_thread(name, flange, length):
    found = insert(name)
    assert (found.flange_od, found.body_length) == (flange, length)


def test_every_figure_says_how_sure_it_is():
    assert all(thread(name).status for name in thread_names())
    assert "memory" in insert("M6").status
