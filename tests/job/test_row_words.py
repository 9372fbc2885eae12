"""What differs, row by row, where ids meet: a card may have the id of a stand-in, and an id may pass on."""

from copy import deepcopy

import pytest
from tests.build import card, document, gear

from bayboard.job.row_words import Rows
from bayboard.model.compare import compare
from bayboard.model.read import from_document

SAME = document(
    cards={"A": card(name="Amplifier"), "H1": card(name="Processor")},
    gear=[gear("A", 100, 100, card="A")],
    fixings=[{"id": "H1", "at": [20, 20], "thread": "M6"}],
)


def _told(change, start=SAME):
    """Return label and words of each row after the change."""
    doc = deepcopy(start)
    change(doc)
    old, new = from_document(start), from_document(doc)
    return {row.label: row.words for row in Rows(old, new, compare(old, new)).all()}


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (lambda doc: doc["gear"][0].update(at=[110, 100]), {"A": "moved right 10 mm"}),
        (lambda doc: doc["gear"][0].update(taped=True), {"A": "taped down"}),
        (
            lambda doc: doc["cards"]["A"].update(height=60),
            {"Amplifier": "changed: height 60 mm, was 50 mm"},
        ),
        (lambda doc: doc["gear"].pop(), {"A": "went"}),
        (lambda doc: doc["fixings"][0].update(at=[30, 20]), {"Holes": "H1 moved"}),
        (lambda doc: doc["cards"].pop("H1"), {"Processor": "card went"}),
    ],
)
def test_a_card_with_the_id_of_a_thing_is_not_told_what_became_of_that_thing(change, told):
    assert _told(change) == told


def test_a_card_that_comes_with_the_id_of_a_thing_is_all_that_is_new():
    start = document(gear=[gear("A", 100, 100)])
    assert _told(lambda doc: doc["cards"].update(A=card(name="Amplifier")), start) == {
        "Amplifier": "is a new card"
    }


def test_an_id_that_passes_from_a_stand_in_to_a_hole_is_gone_there_and_new_here():
    def passes(doc):
        doc["gear"].pop()
        doc["fixings"].append({"id": "A", "at": [30, 30], "thread": "M6"})

    assert _told(passes) == {"A": "went", "Holes": "A is new"}


@pytest.mark.parametrize(
    ("count", "told"), [(1, "1 finding let be, 0 then"), (2, "2 findings let be, 0 then")]
)
def test_what_was_let_be_is_counted(count, told):
    entry = {"rule": "air", "subjects": ["A"], "measure": 3, "reason": "a draught"}
    assert _told(lambda doc: doc.update(let_be=[entry] * count)) == {"Let be": told}
