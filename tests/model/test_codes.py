"""The code of a set of sheets and of the stand-ins cut from it."""

import re
from difflib import SequenceMatcher
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.build import gear, layout, rectangle
from tests.model.changed import changed
from tests.model.rich import rich

from bayboard.model.codes import CARD_SIGNS, card_code, set_code
from bayboard.model.read import from_document
from bayboard.model.rounding import rounded, rounded_point
from bayboard.tables.where import shipped

WHOLE = from_document(rich())
WORDS = shipped("shared", "words.txt").read_text(encoding="utf-8").split()


def test_a_set_code_is_two_different_words_of_the_list():
    for n in range(300):
        first, second = set_code(layout(gear=[gear("A1", n, 0)]), "a4", "front").split(" ")
        assert first != second
        assert {first, second} <= set(WORDS)


@pytest.mark.parametrize(
    "doc",
    [
        changed("printed", to=None),
        changed("let_be", to=[]),
        changed("photos", to=[]),
        changed("units", to="mm"),
        changed("x", to={}),
    ],
    ids=["printed", "let_be", "photos", "units", "x"],
)
def test_what_changes_no_hole_leaves_the_set_code(doc):
    assert set_code(from_document(doc), "a4", "front") == set_code(WHOLE, "a4", "front")


@pytest.mark.parametrize(
    "doc",
    [
        changed("gear", 1, "at", to=[1300, 150.000001]),
        changed("boards", 0, "outline", to=rectangle(0, 0, 900, 401)),
        changed("limits", to={}),
        changed("vehicle", "note", to=""),
        changed("fixings", 1, "thread", to="M6"),
    ],
    ids=["moved gear", "another outline", "other limits", "another note", "another thread"],
)
def test_a_change_of_the_layout_changes_the_set_code(doc):
    assert set_code(from_document(doc), "a4", "front") != set_code(WHOLE, "a4", "front")


def test_paper_face_and_printer_each_change_the_set_code():
    codes = {
        set_code(WHOLE, *with_)
        for with_ in [("a4", "front"), ("a3", "front"), ("a4", "back"), ("a4", "front", "1.002 0.999 0.0001")]
    }
    assert len(codes) == 4


def test_a_moved_stand_in_keeps_the_card_code_and_a_changed_outline_does_not():
    code = card_code(layout(gear=[gear("A1", 10, 20)]))
    assert card_code(layout(gear=[gear("A1", 300, 20, turn=90, lift=3, taped=True)])) == code
    assert card_code(layout(gear=[{"id": "A1", "card": "box", "at": None}])) == code
    assert card_code(layout(gear=[gear("A1", 10, 20)], cards={"box": _longer()})) != code
    assert card_code(layout(gear=[gear("A2", 10, 20)])) != code
    assert card_code(layout(gear=[gear("A1", 10, 20, card="slab")])) != code
    assert card_code(layout(gear=[gear("A1", 10, 20)], vehicle={"name": "Other"})) != code


def _longer():
    from tests.build import card

    return card(100.5)


def test_a_card_code_is_four_signs_that_nobody_mistakes():
    codes = [card_code(layout(vehicle={"name": str(n)})) for n in range(300)]
    assert all(re.fullmatch(f"[{CARD_SIGNS}]{{4}}", code) for code in codes)
    assert len(set(codes)) > 295
    # letters and figures that look alike in a stencil or a hand: common practice, no source
    assert not set(CARD_SIGNS) & set("0O1I2Z5S8B")


def test_codes_are_the_same_in_every_process():
    # written down once: a set in the drawer must still be told from today's
    assert set_code(layout(), "a4", "front") == "pewter river"
    assert card_code(layout()) == "M9W7"


def test_the_words_are_many_short_plain_and_in_order():
    assert len(WORDS) >= 512
    assert sorted(set(WORDS)) == WORDS
    assert all(re.fullmatch("[a-z]{4,9}", word) for word in WORDS)


def test_no_word_is_one_letter_from_another():
    neighbours = [
        (a, b)
        for a, b in combinations(WORDS, 2)
        if abs(len(a) - len(b)) <= 1 and a[0] == b[0] and SequenceMatcher(None, a, b).ratio() > 0.93
    ]
    assert not neighbours
    seen = {}
    for word in WORDS:
        for at in range(len(word)):
            # two words that differ by one letter share the pattern with that letter out
            pattern = word[:at] + "?" + word[at + 1 :]
            assert pattern not in seen, (word, seen.get(pattern))
            seen[pattern] = word


@settings(derandomize=True, max_examples=100)
@given(st.floats(-100_000, 100_000))
def test_dragged_values_are_kept_to_a_millionth(mm):
    assert abs(rounded(mm) - mm) <= 5.1e-7
    assert rounded(rounded(mm)) == rounded(mm)
    assert str(rounded(mm)) != "-0.0"
    assert rounded_point((mm, -mm)) == (rounded(mm), rounded(-mm))
