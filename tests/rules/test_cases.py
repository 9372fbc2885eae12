"""Hand-worked cases: each row of tests/cases/RULE.csv was worked out from the rule's words first.

Columns: `case` a sentence; `members` JSON for `tests.build.document`; `severity` must, should, note,
unchecked, or empty for silence; `subjects` split by spaces; `measure` and `limit` numbers, `null`, or empty
where not asserted; `worked` the arithmetic.  A row speaks of one rule: all that this rule says must be that
one thing.  Several rows of the same `case` are told together.
"""

import csv
import json
from itertools import groupby
from pathlib import Path

import pytest
from tests.build import layout

from bayboard.rules.check import check

CASES = Path(__file__).parents[1] / "cases"


def _cases():
    for path in sorted(CASES.glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            rows = list(csv.DictReader(file))
        for name, group in groupby(rows, key=lambda row: row["case"]):
            yield pytest.param(path.stem, list(group), id=f"{path.stem}: {name}")


def _number(text):
    return None if text == "null" else pytest.approx(float(text), abs=1e-4)


@pytest.mark.parametrize(("rule", "rows"), list(_cases()))
def test_a_rule_says_what_was_worked_out_by_hand(rule, rows):
    members = json.loads(rows[0]["members"])
    verdict = check(layout(**members))
    said = [f for f in verdict.findings if f.rule == rule]
    missing = [u for u in verdict.unchecked if u.rule == rule]
    spoken = [row for row in rows if row["severity"] not in ("", "unchecked")]
    asked = [row for row in rows if row["severity"] == "unchecked"]
    assert sorted(" ".join(u.subjects) for u in missing) == sorted(row["subjects"] for row in asked)
    assert sorted((f.severity, " ".join(f.subjects)) for f in said) == sorted(
        (row["severity"], row["subjects"]) for row in spoken
    )
    for row in spoken:
        (found,) = [
            f for f in said if " ".join(f.subjects) == row["subjects"] and f.severity == row["severity"]
        ]
        for member in ("measure", "limit"):
            if row[member]:
                assert getattr(found, member) == _number(row[member]), (member, found)


def test_every_rule_has_three_cases():
    from bayboard.rules import RULES

    for rule in RULES:
        path = CASES / f"{rule.RULE}.csv"
        assert path.exists(), f"no hand-worked cases for {rule.RULE}"
        with path.open(encoding="utf-8", newline="") as file:
            assert len({row["case"] for row in csv.DictReader(file)}) >= 3, rule.RULE
