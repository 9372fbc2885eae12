"""A finding nearer to its limit than the bay was measured says that it is too close to call."""

import pytest
from tests.build import gear, layout, rectangle

from bayboard.rules.check import check


def _said(rule, **members):
    return [f.says for f in check(layout(**members)).findings if f.rule == rule]


def _seat(z):
    return {
        "id": "S1",
        "x": [0, 1000],
        "up": [[z, 0], [z, 400], [z + 300, 400], [z + 300, 0]],
        "folded": None,
    }


@pytest.mark.parametrize(
    ("seat", "tape", "doubt"),
    [  # the front of A is at 80, the limits are 0 and 10
        (89, 3, True),
        (87, 3, True),
        (86.9, 3, False),
        (84, 3, False),
        (82, 3, True),
        (79, 3, True),
        (76.9, 3, False),
        (79, 0.5, False),
    ],
)
def test_a_seat_within_the_tape_of_a_limit_is_too_close_to_call(seat, tape, doubt):
    (said,) = _said("seat-depth", bay={"tape": tape, "seats": [_seat(seat)]}, gear=[gear("A", 200, 200)])
    assert said.endswith(", too close to call.") is doubt


def test_a_stay_is_in_doubt_and_two_stand_ins_are_not():
    stay = {"id": "T", "name": "boss", "outline": rectangle(249, 100, 400, 300), "height": 90}
    (said,) = _said("overlap", bay={"stays": [stay]}, gear=[gear("A", 200, 200)])
    assert said.endswith(", too close to call.")
    (said,) = _said("overlap", gear=[gear("A", 200, 200), gear("B", 299, 200)])
    assert "too close" not in said


def test_a_finding_without_a_measure_is_not_in_doubt():
    stay = {
        "id": "T",
        "name": "boss",
        "outline": rectangle(10, 10, 40, 40),
        "height": 5,
        "keep": "never-cover",
    }
    (said,) = _said("on-stay", bay={"stays": [stay]})
    assert "too close" not in said


@pytest.mark.parametrize(
    ("deep", "doubt"),
    [  # musts begin inside, at 0; shoulds 10 beside it
        (2.9, True),
        (3.1, False),
        (-2.9, True),
        (-3.1, False),
        (-6.9, False),
        (-7.1, True),
    ],
)
def test_a_hole_within_the_tape_of_no_drill_or_its_margin_is_too_close_to_call(deep, doubt):
    loom = {"id": "N1", "name": "loom", "outline": rectangle(300 - deep, 100, 500, 300)}
    hole = {"id": "H1", "at": [300, 200], "thread": "M6"}
    (said,) = _said("no-drill", bay={"no_drill": [loom]}, fixings=[hole])
    assert said.endswith(", too close to call.") is doubt


def test_what_lies_behind_a_board_is_measured_with_the_tape():
    for recess, doubt in ((-22.9, True), (-23.1, False)):
        landing = {"id": "L1", "outline": rectangle(300, 100, 400, 200), "recess": recess}
        (said,) = _said("on-landing", bay={"landings": [landing]})
        assert said.endswith(", too close to call.") is doubt
    for way, doubt in ((397.1, True), (396.9, False)):
        (said,) = _said("way-in", bay={"way_in": [way, 90]})
        assert said.endswith(", too close to call.") is doubt


def test_an_area_is_never_too_close_to_call():
    vent = {"id": "V1", "outline": rectangle(300, 100, 400, 150), "free_area": 6000.5}
    (said,) = _said("on-vent", bay={"vents": [vent]})
    assert "too close" not in said
