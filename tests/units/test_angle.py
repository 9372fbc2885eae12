"""Angles as typed."""

import pytest

from bayboard.units.angle import NotAnAngle, read_angle, short_way, show_angle, show_two_angles


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("90", 90),
        ("45°", 45),
        ("-90", 270),
        ("−15", 345),
        ("12,5", 12.5),
        (" 12.5 deg ", 12.5),
        ("360", 0),
        (".5", 0.5),
    ],
)
def test_an_angle_is_read(text, degrees):
    assert read_angle(text) == degrees


@pytest.mark.parametrize("text", ["", "abc", "1 2", "--5", "1e3", "nan", "90 mm", "9" * 40])
def test_what_is_no_angle_says_what_to_try(text):
    with pytest.raises(NotAnAngle, match="Try 90"):
        read_angle(text)


@pytest.mark.parametrize(("degrees", "shown"), [(0, "0°"), (347.5, "347.5°"), (-90, "270°"), (359.99, "0°")])
def test_an_angle_is_shown_to_a_tenth(degrees, shown):
    assert show_angle(degrees) == shown


@pytest.mark.parametrize("degrees", [0, 0.1, 12.5, 90, 359.9])
def test_what_is_shown_reads_back(degrees):
    assert read_angle(show_angle(degrees)) == degrees


@pytest.mark.parametrize(
    ("a", "b", "shown"),
    [
        (63.4349, 60, ("63°", "60°")),
        (60.2, 60, ("60.2°", "60°")),
        (60.00004, 60, ("60.00004°", "60°")),
        (60, 60, ("60°", "60°")),
        (60.5, 60, ("61°", "60°")),
    ],
)
def test_two_unequal_angles_never_read_equal(a, b, shown):
    assert show_two_angles(a, b) == shown


@pytest.mark.parametrize(
    ("before", "after", "by"),
    [(0, 90, 90), (90, 0, -90), (350, 10, 20), (10, 350, -20), (0, 180, 180), (180, 0, 180), (0, 720, 0)],
)
def test_the_short_way_from_one_direction_to_another(before, after, by):
    assert short_way(before, after) == by
