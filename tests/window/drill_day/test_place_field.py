"""A place is typed as a figure from the board's corner, or as a way off the plan; it says which it was."""

import pytest

from bayboard.window.drill_day.place_field import PlaceField


@pytest.fixture
def across(qtbot):
    field = PlaceField("across", "left", "right")
    qtbot.addWidget(field)
    field.set_units("in", 1000.0)
    field.plan(254.0)
    return field


def typed(field, text):
    field.setText(text)
    field.setModified(True)
    field.textEdited.emit(text)
    return field


@pytest.mark.parametrize(
    "text, mm",
    [
        ("10", 254.0),
        ("12 3/8", 314.325),
        ("300 mm", 300.0),
        ("right 2", 304.8),
        ("left 1/16", 252.4125),
        ("Right 2", 304.8),
        ("left 5 mm", 249.0),
        ("right 2, up 1", 304.8),
        ("12 3/8, down 1/4", 314.325),
    ],
)
def test_it_is_read(across, text, mm):
    assert across.parse(text) == pytest.approx(mm, abs=1e-6)


def test_it_says_that_it_was_read_as_a_way_off_the_plan(across):
    typed(across, "right 2")
    assert across.reading == "2 in, 50.8 mm right of the plan"
    typed(across, "left 1/16")
    assert across.reading == "1/16 in, 1.6 mm left of the plan"


def test_a_plain_figure_is_told_in_the_other_unit(across):
    assert typed(across, "12").reading.startswith("= 304.8 mm") or "304.8 mm" in across.reading


@pytest.mark.parametrize("text", ["right", "up 2", "right 18 7/0", "nowhere", "right 2 up 1"])
def test_what_is_no_place_is_said(across, text):
    typed(across, text)
    assert across.wrong
    assert across.off() is None


def test_the_other_way_behind_a_comma_is_passed_on(across, qtbot):
    with qtbot.waitSignal(across.beside) as told:
        typed(across, "right 2, up 1")
    assert told.args == ["up 1"]


def test_decimal_commas_stay_figures(across):
    across.set_units("mm", 1000.0)
    assert across.parse("31,4") == pytest.approx(31.4)
