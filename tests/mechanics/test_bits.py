"""How drills are told."""

from fractions import Fraction

import pytest
from tests.build import card, gear, layout

from bayboard.mechanics.bits import bit, inch_drill, slot_apart
from bayboard.mechanics.holes import holes


def _hole(thread, tapped=False):
    if tapped:
        cards = {"box": card(screws=[{"at": [0, 0], "thread": thread}])}
        return holes(layout(cards=cards, gear=[gear("A", 200, 200)]))[0]
    return holes(layout(fixings=[{"id": "H1", "at": [500, 200], "thread": thread}]))[0]


@pytest.mark.parametrize(
    ("thread", "tapped", "units", "told"),
    [
        ("M6", False, "mm", "6.6 mm (17/64)"),
        ("M6", False, "in", "17/64 in (6.6 mm)"),
        ("M5", True, "mm", "4.2 mm"),
        ("M5", True, "in", "4.2 mm"),
        ("M7", False, "in", None),
    ],
)
def test_a_bit_is_told_with_its_unit(thread, tapped, units, told):
    assert bit(_hole(thread, tapped), units) == told


def test_an_inch_tap_drill_is_told_by_its_name():
    # drill 21 for #10-32, 0.159 in: values from memory
    assert bit(_hole("#10-32", tapped=True), "mm") == "#21 (4.04 mm)"


@pytest.mark.parametrize("hundredths", range(100, 2600, 37))
def test_the_inch_bit_is_the_next_64th_that_lets_the_bolt_through(hundredths):
    mm = Fraction(hundredths, 100)
    whole, *part = inch_drill(float(mm)).split(" ")
    parts = [Fraction(word) for word in (whole, *part)]
    bits = sum(parts) * Fraction(254, 10)
    assert -Fraction(254, 64_000) <= bits - mm < Fraction(254, 640)


@pytest.mark.parametrize(("drill", "travel", "apart"), [(6.6, 8, 8), (6.6, 7.5, 7.6), (6.6, 0.5, 7.6)])
def test_a_slots_two_holes_never_run_into_one_another(drill, travel, apart):
    assert slot_apart(drill, travel) == pytest.approx(apart)
