"""A drag does not wait for the rules; a moment after the hand rests all is told."""

import pytest
from PySide6.QtTest import QTest
from tests.bays import bay

from bayboard.model.read import from_document
from bayboard.rules.check import check
from bayboard.window import judging

START = from_document(bay(6, across=3, chained=True))
REST = 100  # ms of a resting hand after which everything shown is what a fresh check says
PIECE, MOVED = "A4", {"A4", "P4", "G4", "S4", "P5", "G5", "S5"}


@pytest.fixture
def dragged(open_window, monkeypatch):
    """Return a window in which a piece has just been dragged, its rules only begun."""
    monkeypatch.setattr(judging, "SLICE", 0.0)
    hands = open_window(START)
    x, y = hands.gear(PIECE).at
    hands.press(hands.px(x, y))
    for by in (6, 14, 25):
        hands.move(hands.px(x + by, y + by))
    return hands


def test_the_frame_shows_the_piece_and_nothing_older_of_it(dragged):
    place = dragged.place
    assert place.hand.pieces == {PIECE}
    assert not place.judged
    show = dragged.wall.show_now()
    assert not {mark.subject for mark in show.marks if mark.subject} & MOVED
    dragged.wall.grab()
    dragged.window.section.grab()
    assert not place.judged, "painting must not wait for the rules"


def test_after_a_moment_of_rest_all_is_as_a_fresh_check_says(dragged):
    QTest.qWait(REST)
    place = dragged.place
    fresh = check(place.shown)
    assert place.judged
    assert (place.heard, place.told, place.verdict) == (fresh, fresh, fresh)
    told = {mark.number for mark in dragged.wall.show_now().marks}
    assert told <= set(range(1, len(fresh.findings) + 1))


def test_letting_go_keeps_nothing_that_is_not_judged(dragged):
    x, y = START.gear[4].at
    dragged.release(dragged.px(x + 25, y + 25))
    assert dragged.place.judged
    assert dragged.place.verdict == check(dragged.layout)


def test_a_hand_that_never_rests_is_told_in_the_end(dragged, monkeypatch):
    monkeypatch.setattr(judging, "LONGEST", 0.0)
    x, y = START.gear[4].at
    dragged.move(dragged.px(x + 31, y + 12))
    assert dragged.place.judged
