"""Paper sizes against ISO 216 and ASME Y14.1."""

from math import inf, sqrt

import pytest

from bayboard.tables.reference import paper


def test_a_sizes_are_iso_216():
    # ISO 216: A0 is 1 m2 with sides as 1 : sqrt 2, in whole mm; each next is half, rounded down
    short, long = 841, 1189
    assert (short * long, long / short) == (pytest.approx(1e6, rel=1e-3), pytest.approx(sqrt(2), rel=1e-3))
    for number in range(5):
        assert paper(f"A{number}") == (short, long)
        short, long = long // 2, short


@pytest.mark.parametrize(
    ("name", "inches"),
    # ASME Y14.1 sizes A and B
    [("Letter", (8.5, 11)), ("letter (ansi a)", (8.5, 11)), ("Tabloid (ANSI B)", (11, 17))],
)
def test_inch_sizes_are_asme_y14_1(name, inches):
    assert paper(name) == (round(25.4 * inches[0], 6), round(25.4 * inches[1], 6))


def test_a_roll_has_no_end():
    assert paper("roll 24 in") == (609.6, inf)


def test_an_unknown_paper_names_those_there_are():
    with pytest.raises(KeyError, match="Letter"):
        paper("foolscap")
