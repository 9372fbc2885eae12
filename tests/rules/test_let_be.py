"""What is let be stays told with its reason, until it gets worse or becomes a must."""

import pytest
from tests.build import card, gear, layout

from bayboard.rules.check import check
from bayboard.rules.let_be import worse


@pytest.mark.parametrize(
    ("rule", "now", "then", "is_worse"),
    [
        ("gap", 9.0, 10.0, True),
        ("gap", 9.99995, 10.0, False),
        ("gap", 11.0, 10.0, False),
        ("beside", 111.0, 110.0, True),
        ("beside", 110.00005, 110.0, False),
        ("beside", 90.0, 110.0, False),
        ("crossing", 44.0, 45.0, True),
        ("reach", 10.0, 11.0, True),
        ("sight", 70.0, 65.0, True),
        ("sight", None, 65.0, True),
        ("sight", 70.0, None, False),
        ("sight", None, None, False),
        ("loose-port", None, None, False),
        ("loose-port", None, 3.0, False),
        ("no-drill", -2.0, -3.0, True),
    ],
)
def test_worse_is_smaller_in_some_rules_and_larger_in_others(rule, now, then, is_worse):
    assert worse(rule, now, then) is is_worse


def _verdict(apart, *left):
    pieces = [gear("A", 100, 200), gear("B", 200 + apart, 200)]
    entries = [
        {"rule": "gap", "subjects": ["A", "B"], "measure": m, "reason": "tight, but it fits"} for m in left
    ]
    warm = {"box": card(heat=10)}
    return check(layout(bay={"way_in": [1200, 900]}, cards=warm, gear=pieces, let_be=entries))


def test_what_is_let_be_keeps_its_severity_and_counts_apart():
    verdict = _verdict(9, 9)
    (finding,) = verdict.findings
    assert (finding.severity, finding.let_be) == ("should", "tight, but it fits")
    assert verdict.counts == {"must": 0, "should": 0, "note": 0, "let_be": 1, "unchecked": 0}


@pytest.mark.parametrize(("apart", "kept"), [(9, True), (12, True), (8.9998, False), (5, False)])
def test_it_lapses_when_worse_and_when_a_must(apart, kept):
    (finding,) = _verdict(apart, 9).findings
    assert (finding.let_be is not None) is kept


def test_a_must_is_never_let_be():
    (finding,) = _verdict(3, 3).findings
    assert (finding.severity, finding.let_be) == ("must", None)


def test_any_of_several_entries_will_do():
    (finding,) = _verdict(9, 12, 8).findings
    assert finding.let_be is not None


def test_other_subjects_are_not_let_be():
    pieces = [gear("A", 100, 200), gear("B", 209, 200), gear("C", 100, 330)]
    entry = {"rule": "gap", "subjects": ["B", "A"], "measure": 9, "reason": "the other way round"}
    (finding,) = check(layout(gear=pieces, let_be=[entry])).findings
    assert finding.let_be is None


def test_sight_let_be_while_seen_lapses_when_hidden():
    cards = {"box": card(service=[{"id": "dial", "kind": "dial", "at": [0, 0], "z": 50, "facing": "out"}])}
    eye = {"x": [500, 500], "y": [1200, 1200], "z": [580.5, 580.5]}
    left = [{"rule": "sight", "subjects": ["A.dial"], "measure": 64, "reason": "known by heart"}]
    post = {
        "id": "P",
        "name": "Post",
        "outline": [[450, 300], [550, 300], [550, 320], [450, 320]],
        "height": 900,
    }
    told = [
        check(layout(gear=[gear("A", 500, 200)], cards=cards, bay={"eye": eye, "stays": stays}, let_be=left))
        for stays in ([], [post])
    ]
    sight = [next(f for f in verdict.findings if f.rule == "sight") for verdict in told]
    assert [f.let_be for f in sight] == ["known by heart", None]
