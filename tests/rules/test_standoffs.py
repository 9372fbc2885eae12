"""The standoff that is told cures what it is told for, and a hair less does not."""

import csv
import json
from itertools import groupby
from pathlib import Path

import pytest
from msgspec.structs import replace
from tests.build import document

from bayboard.model.read import from_document
from bayboard.rules import standoffs
from bayboard.rules.check import check
from bayboard.rules.scene import Scene

CASES = Path(__file__).parents[1] / "cases"
RULES = ("on-landing", "on-vent", "on-stay")


def _layouts():
    for rule in RULES:
        with (CASES / f"{rule}.csv").open(encoding="utf-8", newline="") as file:
            for case, group in groupby(csv.DictReader(file), key=lambda row: row["case"]):
                rows = list(group)
                if any(row["severity"] == "must" for row in rows):
                    members = json.loads(rows[0]["members"])
                    yield pytest.param(from_document(document(**members)), rule, id=f"{rule}: {case}")


def _found(layout, rule):
    return [f for f in check(layout).findings if f.rule == rule and f.severity == "must"]


def _stood_off(layout, board_id, mm):
    boards = tuple(replace(b, standoff=mm) if b.id == board_id else b for b in layout.boards)
    return replace(layout, boards=boards)


@pytest.mark.parametrize(("layout", "rule"), list(_layouts()))
def test_the_standoff_that_is_told_is_just_enough(layout, rule):
    for finding in _found(layout, rule):
        need = standoffs.curing_standoff(Scene(layout), finding)
        if finding.measure is None:
            assert need is None
            continue
        board = finding.subjects[1]
        for mm, gone in ((need + 1e-6, True), (need - 1e-3, False)):
            left = {f.subjects for f in _found(_stood_off(layout, board, mm), rule)}
            assert (finding.subjects not in left) is gone, mm


def test_no_standoff_is_told_for_other_findings():
    doc = document(
        bay={"way_in": [100, 100]},
        gear=[{"id": "A", "card": "box", "at": [0, 0]}, {"id": "B", "card": "box", "at": [99, 0]}],
    )
    layout = from_document(doc)
    said = check(layout).findings
    assert {f.rule for f in said} >= {"overlap", "off-board", "way-in"}
    assert {standoffs.curing_standoff(Scene(layout), finding) for finding in said} == {None}


def test_sentences_round_the_standoff_up():
    landing = {"id": "L1", "outline": [[500, 200], [560, 200], [560, 260], [500, 260]], "recess": -20.01}
    for units, wanted in (("mm", "20.1 mm"), ("in", "51/64 in")):
        layout = from_document(document(bay={"landings": [landing], "way_in": [1200, 900]}, units=units))
        (said,) = [f.says for f in check(layout).findings]
        assert f"It needs a standoff of {wanted} there" in said
