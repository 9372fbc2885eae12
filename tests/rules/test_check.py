"""The verdict: sorted, told once, counted, numbered; ids mean nothing to it."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.bays import bay
from tests.build import card, gear, layout

from bayboard.model.read import from_document
from bayboard.rules.check import check, judged
from bayboard.rules.finding import SEVERITIES, Finding, Unchecked, heads


@pytest.fixture(scope="module")
def verdict():
    return check(from_document(bay(12, across=4)))


def _finding(severity, rule, *subjects, measure=1.0):
    return Finding(
        rule=rule,
        severity=severity,
        subjects=subjects,
        measure=measure,
        limit=None,
        unit="mm",
        at=None,
        says="",
    )


def test_findings_stand_by_severity_rule_and_subjects(verdict):
    keys = [(SEVERITIES.index(f.severity), f.rule, f.subjects) for f in verdict.findings]
    assert keys == sorted(keys)
    assert {f.severity for f in verdict.findings} == set(SEVERITIES)


@settings(max_examples=30, derandomize=True)
@given(
    st.permutations(
        [("must", "b", "A"), ("must", "a", "B"), ("should", "a", "A"), ("note", "a", "A"), ("must", "a", "A")]
    )
)
def test_the_order_does_not_depend_on_who_spoke_first(said):
    found = judged(layout(), {"all": [_finding(*s) for s in said]}).findings
    assert [(f.severity, f.rule, f.subjects[0]) for f in found] == [
        ("must", "a", "A"),
        ("must", "a", "B"),
        ("must", "b", "A"),
        ("should", "a", "A"),
        ("note", "a", "A"),
    ]


def test_an_unchecked_line_is_told_once_for_a_rule_and_its_subjects():
    lines = [Unchecked(rule=r, subjects=("A",), says=f"{r} {n}") for n in (1, 2) for r in ("x", "w")]
    assert [u.says for u in judged(layout(), {"all": lines}).unchecked] == ["w 1", "x 1"]


def test_counts_are_of_what_is_told(verdict):
    for severity in SEVERITIES:
        assert verdict.counts[severity] == sum(f.severity == severity for f in verdict.findings)
    assert verdict.counts["unchecked"] == len(verdict.unchecked)
    assert list(verdict.counts) == ["must", "should", "note", "let_be", "unchecked"]


def test_findings_are_numbered_from_one(verdict):
    assert [verdict.number(f) for f in verdict.findings] == list(range(1, len(verdict.findings) + 1))


def test_an_empty_board_has_nothing_to_say():
    found = check(layout(bay={"way_in": [1200, 900]}))
    assert (found.findings, found.unchecked, set(found.counts.values())) == ((), (), {0})


def test_gear_on_the_bench_takes_part_in_no_rule():
    waiting = gear("A", 0, 0, "big") | {"at": None}
    assert check(layout(gear=[waiting], cards={"big": card(5000, 5000, None)})) == check(layout())


def test_the_heads_of_a_saying_are_the_things_it_is_about():
    assert heads(_finding("must", "a", "A1.dial", "B2#3", "post")) == ("A1", "B2", "post")


def _renamed(value, names):
    if isinstance(value, dict):
        return {key: _renamed(item, names) for key, item in value.items()}
    if isinstance(value, list):
        return [_renamed(item, names) for item in value]
    if isinstance(value, str):
        head, mark, rest = value.partition("#" if "#" in value else ".")
        return names.get(head, head) + mark + rest
    return value


def test_other_ids_get_the_same_findings():
    doc = bay(12, across=4)
    parts = [*doc["gear"], *doc["leads"], *doc["fixings"], *doc["boards"], *doc["boards"][0]["cutouts"]]
    parts += [
        item for kind in ("landings", "stays", "no_drill", "seats", "entries") for item in doc["bay"][kind]
    ]
    names = {part["id"]: f"z{n:03}" for n, part in enumerate(reversed(parts))}
    new = check(from_document(_renamed(doc, names)))
    old = check(from_document(doc))
    assert {_told(f, {}) for f in new.findings} == {_told(f, names) for f in old.findings}
    assert old.findings


def _told(finding, names):
    subjects = tuple(_renamed(subject, names) for subject in finding.subjects)
    rounded = finding.measure if finding.measure is None else round(finding.measure, 6)
    return finding.rule, finding.severity, subjects, rounded, finding.limit, finding.at
