"""A vehicle's own limit: set, taken back, refused when no layout could mean it, and judged by."""

import pytest
from tests.build import gear, layout

from bayboard.edits.set_limit import SetLimit
from bayboard.model.refused import Refused
from bayboard.rules.check import check


def test_the_usual_figure_set_by_hand_is_no_limit_of_its_own():
    own = SetLimit("gap_must", 9.0).apply(layout())
    assert own.limits == {"gap_must": 9.0}
    assert SetLimit("gap_must", 6.0).apply(own).limits == {}
    assert SetLimit("gap_must", None).apply(own).limits == {}


def test_what_changes_nothing_gives_the_same_layout():
    start = layout(limits={"gap_must": 9.0})
    assert SetLimit("gap_must", 9.0).apply(start) is start
    assert SetLimit("sight_angle", None).apply(start) is start


@pytest.mark.parametrize(
    ("name", "value", "says"),
    [
        ("gap", 9.0, "no limit called gap"),
        ("gap_must", -1.0, "-1 mm is less than nothing"),
        ("gap_must", float("nan"), "not a figure"),
        ("gap_must", float("inf"), "not a figure"),
        ("gap_must", 1e9, "more than can be"),
        ("sight_angle", 181.0, "181° is more than can be"),
        ("air_must_share", 1.5, "1.5 of it is more than can be"),
        ("eye_step", 0.001, "less than 10"),
    ],
)
def test_nonsense_is_refused_in_a_sentence(name, value, says):
    with pytest.raises(Refused, match=says):
        SetLimit(name, value).apply(layout())


def test_the_rules_judge_by_a_vehicles_own_limit():
    start = layout(gear=[gear("A", 200, 200), gear("B", 308, 200)])  # 8 mm apart
    own = SetLimit("gap_must", 9.0).apply(start)
    assert [f.severity for f in check(start).findings if f.rule == "gap"] == ["should"]
    assert [(f.severity, f.limit) for f in check(own).findings if f.rule == "gap"] == [("must", 9.0)]
