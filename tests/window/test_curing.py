"""Cures as a person uses them: looked for at rest, shown in chalk, taken with Enter as one named step."""

import pytest
from PySide6.QtCore import QPointF
from tests.build import gear, layout
from tests.window.hands import CTRL

from bayboard.edits.move_gear import MoveGear
from bayboard.job.runner import InPlace, Ticket, finished
from bayboard.rules.cures import Curer
from bayboard.window.curing import LOOKING, MOVED_ON, NONE

# A and B 3 mm apart (must), C and D 10 mm (should)
PIECES = [gear("A", 200, 200), gear("B", 303, 200), gear("C", 700, 200), gear("D", 810, 200)]


class Waiting:
    """A runner that keeps its tasks for the test to end."""

    def __init__(self):
        self.tasks = []

    def start(self, task, payload, done, progress=None):
        self.tasks.append((Ticket(), task, payload, done))
        return self.tasks[-1][0]

    def end(self):
        ticket, task, payload, done = self.tasks.pop(0)
        if not ticket.stopped:
            done(finished(task(payload), Ticket(), lambda: False)[0])


@pytest.fixture
def hands(open_window):
    """Return a window with its cures found."""
    hands = open_window(layout(gear=PIECES))
    hands.curing = hands.window.findings.cure_beside(InPlace())
    hands.curing.look()
    return hands


@pytest.fixture
def slow(open_window):
    """Return a window whose cures are found when the test says so."""
    hands = open_window(layout(gear=PIECES))
    hands.runner = Waiting()
    hands.curing = hands.window.findings.cure_beside(hands.runner)
    hands.curing.look()
    return hands


def listed(hands):
    return hands.window.findings.list


def opened(hands):
    return listed(hands).open_spot()


def at(hands, felt):
    return listed(hands).mapTo(hands.window, QPointF(felt.center()))


def gaps(hands):
    return [f.subjects for f in hands.place.verdict.findings if f.rule == "gap" and f.severity == "must"]


def test_the_open_row_offers_what_the_rules_found(hands):
    (must,) = [f for f in hands.place.verdict.findings if f.severity == "must"]
    first = Curer(hands.layout).cures(must)[0]
    assert opened(hands).acts[0][0] == first.edit.label(hands.layout)


def test_enter_takes_the_first_cure_as_one_step_named_as_its_button(hands):
    words = opened(hands).acts[0][0]
    listed(hands).setFocus()
    hands.key("Return")
    assert gaps(hands) == []
    assert hands.place.job.undo_label == words
    hands.key("Z", CTRL)
    assert gaps(hands) == [("A", "B")]
    assert hands.place.job.undo_label is None


def test_pressing_the_button_takes_the_cure(hands):
    hands.click(at(hands, opened(hands).acts[0][1]))
    assert gaps(hands) == []


def test_n_and_enter_cure_from_the_wall(hands):
    hands.key("N")
    hands.key("Return")
    assert gaps(hands) == []


def test_enter_opens_the_card_where_the_finding_is_about_something_else(hands):
    hands.key("N")
    hands.click_mm(700, 200)
    hands.key("Return")
    assert gaps(hands) == [("A", "B")]


def test_enter_says_that_a_cure_is_still_looked_for(slow):
    slow.key("N")
    slow.key("Return")
    assert slow.line() == "Still looking for a move. Press Enter again in a moment."
    assert not slow.card.across.hasFocus()


def test_a_cured_row_stays_struck_through(hands):
    hands.click(at(hands, opened(hands).acts[0][1]))
    assert [row.finding.subjects for row in listed(hands).rows() if row.cured] == [("A", "B")]


def test_the_pointer_over_a_cure_shows_in_chalk_where_it_leads(hands):
    assert hands.wall.show_now().cures == ()
    hands.move(at(hands, opened(hands).acts[0][1]))
    (cure,) = hands.wall.show_now().cures
    after = hands.place.cure.apply(hands.layout)
    moved = next(b for a, b in zip(hands.layout.gear, after.gear, strict=True) if a != b)
    before = hands.gear(moved.id)
    way = (moved.at[0] - before.at[0], moved.at[1] - before.at[1])
    assert cure.end == pytest.approx((cure.start[0] + way[0], cure.start[1] + way[1]))
    assert cure.text == opened(hands).acts[0][0]
    hands.move(hands.px(500, 380))
    listed(hands).leaveEvent(None)
    assert hands.wall.show_now().cures == ()


def test_the_keys_on_the_list_show_what_enter_would_do(hands):
    listed(hands).setFocus()
    assert len(hands.wall.show_now().cures) == 1
    hands.window.to_wall()
    assert hands.wall.show_now().cures == ()


def test_showing_a_cure_changes_nothing(hands):
    before = hands.layout
    hands.move(at(hands, opened(hands).acts[0][1]))
    assert hands.layout is before and hands.place.shown is before


def test_while_a_move_is_looked_for_the_row_says_so_and_enter_goes_there(slow):
    assert opened(slow).row.hint == LOOKING
    assert opened(slow).acts == ()
    listed(slow).setFocus()
    slow.key("Return")
    assert gaps(slow) == [("A", "B")]
    assert set(slow.place.selected) == {"A", "B"}
    slow.runner.end()
    assert opened(slow).row.hint == "" and opened(slow).acts


def test_where_no_move_cures_the_row_says_so(slow, monkeypatch):
    def nothing(_, __):
        yield
        return ()

    monkeypatch.setattr(Curer, "seek", nothing)
    slow.runner.end()
    assert opened(slow).row.hint == NONE


def test_the_finding_spoken_of_is_looked_at_first(slow):
    should = next(f for f in slow.place.verdict.findings if f.severity == "should")
    slow.place.take_up(should)
    assert slow.curing.wanted()[0] == should


def test_nothing_is_looked_for_while_something_is_in_the_hand(slow):
    (ticket, *_) = slow.runner.tasks[0]
    slow.press(slow.px(700, 200))
    slow.move(slow.px(720, 200))
    assert ticket.stopped
    slow.curing.look()
    assert len(slow.runner.tasks) == 1
    slow.release(slow.px(720, 200))
    slow.curing.look()
    assert len(slow.runner.tasks) == 2


def test_a_layout_that_changed_takes_the_buttons_with_it(hands):
    assert opened(hands).acts
    hands.place.do(MoveGear(("D",), 50.0, 0.0))
    assert opened(hands).acts == ()
    hands.curing.look()
    assert opened(hands).acts


def test_a_stale_cure_is_tried_again_and_never_taken_silently(hands):
    (must,) = [f for f in hands.place.verdict.findings if f.severity == "must"]
    act = hands.curing.acts(must)[0]
    hands.place.do(MoveGear(("B",), -2.0, 0.0))
    before = hands.layout
    assert not hands.curing.take(must, act)
    assert hands.layout is before
    assert hands.line() == MOVED_ON


def test_a_cure_of_another_layout_that_still_cures_is_taken(hands):
    (must,) = [f for f in hands.place.verdict.findings if f.severity == "must"]
    act = hands.curing.acts(must)[0]
    hands.place.do(MoveGear(("D",), 50.0, 0.0))
    assert hands.curing.take(must, act)
    assert gaps(hands) == []


def test_what_was_let_be_is_not_cured_with_enter(hands):
    should = next(f for f in hands.place.verdict.findings if f.rule == "gap" and f.severity == "should")
    listed(hands).ask(should)
    hands.type("both are cold")
    hands.key("Return")
    hands.place.take_up(next(f for f in hands.place.verdict.findings if f.let_be))
    assert not listed(hands).cure_now()
