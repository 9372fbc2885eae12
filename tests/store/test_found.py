"""Words by which a vehicle is found: neither case nor accents count, and all of them must be there."""

import unicodedata
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayboard.store.found import (
    Facts,
    Found,
    RevisionNote,
    asked_for,
    chosen,
    moment,
    newest_first,
    plain,
    told,
    words_of,
)

words = st.text(st.sampled_from("aäàÄßåøŁ eéÉ 1-"), max_size=12)


def found(name, *notes, changed="2026-11-25T15:43:41Z", file=None):
    facts = Facts(
        name=name, notes=tuple(RevisionNote(number=i + 1, kept="", note=n) for i, n in enumerate(notes))
    )
    path = Path(file or f"/shop/{name}.bay")
    return Found(str(path), changed, words_of(path, facts), told(facts))


@pytest.mark.parametrize(
    ("text", "spoken"),
    [
        ("Ostrel", "ostrel"),
        ("Überländer", "uberlander"),
        ("U\u0308ber", "uber"),
        ("STRASSE straße", "strasse strasse"),
        ("Łódź", "lodz"),
        ("smørrebrød", "smorrebrod"),
        ("İzmir ılık", "izmir ilik"),
        ("ΑΘΉΝΑ", "αθηνα"),
    ],
)
def test_case_and_accents_do_not_count(text, spoken):
    assert plain(text) == spoken


@settings(derandomize=True, max_examples=60, deadline=None)
@given(words)
def test_spelling_plainly_twice_changes_nothing(text):
    assert plain(plain(text)) == plain(text)


@settings(derandomize=True, max_examples=60, deadline=None)
@given(words)
def test_composed_and_decomposed_letters_are_alike(text):
    """Unicode Standard Annex 15: NFC and NFD are canonically equivalent."""
    assert plain(unicodedata.normalize("NFC", text)) == plain(unicodedata.normalize("NFD", text))


@settings(derandomize=True, max_examples=60, deadline=None)
@given(words, words, words)
def test_a_vehicle_is_found_when_and_only_when_each_word_is_somewhere_in_it(name, note, text):
    there = plain(f"{name}\n{name}\n\n{note}")
    wanted = all(word in there for word in plain(text).split())
    one = found(name, note, file=f"/shop/{name.strip() or 'x'}.bay")
    if not name.strip():
        there = plain(f"{name}\nx\n\n{note}")
        wanted = all(word in there for word in plain(text).split())
    assert bool(chosen(text, [one])) == wanted


def test_words_may_stand_in_name_and_notes():
    one, other = found("Ostrel pickup", "relay added"), found("Ostrel van", "wired")
    assert chosen("relay OSTREL", [one, other]) == (one,)
    assert chosen("ostrel", [one, other]) == (one, other)
    assert chosen("ostrel nothing", [one, other]) == ()


def test_no_words_ask_for_every_vehicle():
    every = (found("a"), found("b"))
    assert chosen("  ", every) == every
    assert asked_for(" b a b ") == (b"b", b"a")


def test_the_newest_comes_first_and_equals_go_by_name():
    old, new = found("old", changed="2026-01-01T00:00:00Z"), found("new", changed="2026-11-01T00:00:00Z")
    a, b = found("a"), found("b")
    assert newest_first([old, b, new, a]) == (a, b, new, old)


def test_facts_that_the_index_lost_leave_the_name():
    lost = Found("/shop/pickup.bay", "", b"", b'{"name": 5')
    assert lost.facts == Facts(name="pickup")
    assert lost.holder is None


def test_a_time_of_change_is_told_in_utc():
    assert moment(1_764_085_421_500_000_000) == "2025-11-25T15:43:41Z"
    assert moment(10**30) == ""
