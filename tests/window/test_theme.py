"""Colour tokens against the contrast figures of the look, by the formula of WCAG 2.

Source of the formula: W3C Recommendation Web Content Accessibility Guidelines 2.2, definitions
of "relative luminance" and "contrast ratio".  The figures are those that the look promises.
"""

import pytest
from PySide6.QtGui import QColor, QPalette

from bayboard.window.theme import DARK, LIGHT, SCALES, Theme, brush, colour, mixed, palette, pen


def luminance(token: str) -> float:
    parts = (int(token[i : i + 2], 16) / 255 for i in (1, 3, 5))
    r, g, b = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(a: str, b: str) -> float:
    low, high = sorted((luminance(a), luminance(b)))
    return (high + 0.05) / (low + 0.05)


def test_the_formula_gives_the_extremes_of_the_recommendation():
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#777777", "#777777") == 1.0


PROMISED = [
    ("ink", "paper", 14.7, 12.8),
    ("ink2", "paper", 7.0, 7.1),
    ("ink2", "room", 4.7, 6.2),
    ("board", "wall", 7.7, 3.0),
    ("buff", "board", 8.7, 7.6),
    ("pencil", "buff", 8.1, 7.0),
    ("pencil2", "buff", 3.6, 4.0),
    ("chalk", "board", 14.3, 16.9),
    ("tapeink", "tape", 11.4, 9.0),
    ("footred", "tape", 8.0, 5.3),
    ("blue", "field", 7.1, 8.9),
    ("blue", "wall", 3.4, 3.1),
    ("must", "paper", 5.9, 6.7),
    ("should", "paper", 6.6, 8.4),
    ("note", "field", 7.4, 9.4),
    ("ok", "paper", 5.8, 8.4),
]


@pytest.mark.parametrize(
    ("token", "ground", "light", "dark"), PROMISED, ids=[p[0] + " on " + p[1] for p in PROMISED]
)
def test_a_token_keeps_the_contrast_that_was_promised(token, ground, light, dark):
    for theme, ratio in ((LIGHT, light), (DARK, dark)):
        assert contrast(getattr(theme, token), getattr(theme, ground)) == pytest.approx(ratio, abs=0.11)


def test_a_casing_of_paper_makes_up_for_what_a_mark_lacks_on_the_scene():
    assert contrast(LIGHT.must, LIGHT.board) == pytest.approx(2.5, abs=0.11)
    assert contrast(LIGHT.paper, LIGHT.board) == pytest.approx(14.5, abs=0.11)
    assert contrast(DARK.must, DARK.buff) == pytest.approx(1.1, abs=0.11)
    assert contrast(DARK.paper, DARK.buff) == pytest.approx(6.1, abs=0.11)


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)
@pytest.mark.parametrize("token", ["ink", "ink2", "must", "should", "note", "ok"])
def test_text_reads_on_paper_and_field(theme, token):
    """4.5 is WCAG 2.2 success criterion 1.4.3 (AA) for plain text."""
    for ground in (theme.paper, theme.field):
        assert contrast(getattr(theme, token), ground) >= 4.5


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)
def test_lead_jackets_stand_off_the_board(theme):
    """3.0 is WCAG 2.2 success criterion 1.4.11 (AA) for parts of graphics."""
    for kind in ("power", "ground", "signal", "speaker", "remote", "data"):
        assert contrast(theme.lead(kind), theme.board) >= 3.0


def lab(token: str) -> tuple[float, float, float]:
    """CIE 1976 L*a*b* of an sRGB colour, white D65 (IEC 61966-2-1 matrix)."""
    parts = [int(token[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    r, g, b = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    xyz = (
        (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505,
        0.2126 * r + 0.7152 * g + 0.0722 * b,
        (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089,
    )
    x, y, z = (t ** (1 / 3) if t > 216 / 24389 else (24389 / 27 * t + 16) / 116 for t in xyz)
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def test_any_two_kinds_of_lead_differ_in_colour_too():
    """The look promises 28 (CIE76) between any two jackets with full colour vision."""
    jackets = [LIGHT.lead(k) for k in ("power", "ground", "signal", "speaker", "remote", "data")]
    for i, one in enumerate(jackets):
        for other in jackets[:i]:
            far = sum((a - b) ** 2 for a, b in zip(lab(one), lab(other), strict=True)) ** 0.5
            assert far >= 27.5


def test_ends_that_may_not_be_joined_wear_must():
    assert LIGHT.lead(None) == LIGHT.must


def test_light_and_dark_name_the_same_tokens_and_differ():
    assert list(Theme.__slots__) == list(LIGHT.__slots__)
    assert LIGHT.chalk == DARK.chalk
    assert LIGHT.paper != DARK.paper


@pytest.mark.parametrize("size", SCALES)
def test_the_scale_setting_changes_size_alone(size):
    sized = LIGHT.sized(size)
    assert (sized.size, sized.ink, sized.paper) == (size, LIGHT.ink, LIGHT.paper)


def test_half_way_between_two_colours():
    assert mixed("#000000", "#FFFFFF", 0.5) == "#808080"
    assert mixed("#102030", "#FFFFFF", 0.0) == "#102030"


def test_cached_colours_pens_and_brushes_are_what_was_asked_for():
    assert colour("#102030", 0.5).alphaF() == pytest.approx(0.5, abs=0.01)
    assert brush("#102030").color() == QColor("#102030")
    dashed = pen("#102030", 2.0, dash=(4.0, 2.0))
    assert (dashed.widthF(), dashed.dashPattern()) == (2.0, [4.0, 2.0])
    assert pen("#102030", 2.0) is pen("#102030", 2.0)


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)
def test_the_palette_gives_fields_and_text_their_tokens(theme):
    made = palette(theme)
    assert made.color(QPalette.ColorRole.Base) == QColor(theme.field)
    assert made.color(QPalette.ColorRole.WindowText) == QColor(theme.ink)
    assert made.color(QPalette.ColorRole.AlternateBase) == QColor(theme.paper)
