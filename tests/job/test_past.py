"""The undo steps of a job and what of them its file holds, against a file that is a plain dict."""

import random

import pytest
from tests.build import gear, layout

from bayboard.edits.history import History
from bayboard.edits.move_gear import MoveGear
from bayboard.job.past import Past, past_of
from bayboard.model.layout import Printed
from bayboard.store.records import Draft, Mark

START = layout(gear=[gear("A1", 200, 150)])


class PlainFile:
    """The states of a file as a dict, and where the draft is."""

    def __init__(self):
        self.states, self.at = {}, 0

    def write(self, past):
        batch = past.batch()
        if batch is None:
            return past
        self.states = {n: s for n, s in self.states.items() if n <= batch.upto}
        for i, (label, there) in enumerate(batch.add, start=1):
            self.states[batch.upto + i] = (label, there)
        self.at = batch.at
        return past.wrote(batch)

    def opened(self):
        marks = tuple(Mark(n, label) for n, (label, _) in sorted(self.states.items()))
        return past_of(Draft(self.states[self.at][1], None, "", "", marks, self.at))

    def state(self, number):
        return self.states[number][1]


def _moved(past, far):
    return past.do(MoveGear(("A1",), far, 0.0))


@pytest.fixture
def file():
    return PlainFile()


def _three_moves(file):
    past = file.write(Past(History(START)))
    for far in (1.0, 2.0, 3.0):
        past = file.write(_moved(past, far))
    return past


def test_what_was_done_before_the_file_was_opened_is_undone_step_by_step(file):
    last = _three_moves(file)
    past = file.opened()
    labels = []
    while past.undo_label:
        labels.append(past.undo_label)
        past = past.undo(file.state)
    assert labels == [step.label for step in reversed(last.history.done)]
    assert past.history.now == START


def test_what_was_undone_before_closing_is_done_again_after_opening(file):
    past = _three_moves(file)
    final = past.history.now
    file.write(past.undo(file.state).undo(file.state))
    past = file.opened()
    assert past.redo_label is not None
    past = past.redo(file.state).redo(file.state)
    assert (past.history.now, past.redo_label) == (final, None)


def test_only_the_new_step_is_written(file):
    past = _moved(_three_moves(file), 4.0)
    batch = past.batch()
    assert len(batch.add) == 1
    assert (batch.upto, batch.at) == (4, 5)


def test_undo_writes_no_layout_again(file):
    batch = _three_moves(file).undo(file.state).batch()
    assert (batch.add, batch.at) == ((), 3)


def test_a_new_edit_after_undo_drops_what_was_undone(file):
    past = _three_moves(file).undo(file.state).undo(file.state)
    past = file.write(_moved(past, 9.0))
    assert past.redo_label is None
    assert [label for label, _ in file.states.values()] == [label for label, _ in past.row()]


def test_a_new_edit_drops_unread_steps_that_were_undone(file):
    file.write(_three_moves(file).undo(file.state).undo(file.state))
    past = file.write(_moved(file.opened(), 9.0))
    assert past.redo_label is None
    assert len(file.states) == 3


def test_a_move_that_joins_the_last_takes_its_place_in_the_file(file):
    past = _three_moves(file)
    past = file.write(past.do(MoveGear(("A1",), 0.5, 0.0), folds=True))
    assert len(file.states) == 4
    assert file.states[4][1] is past.history.now


def test_nothing_is_left_to_write_after_a_write(file):
    assert _three_moves(file).batch() is None


def test_what_was_printed_is_not_undone(file):
    printed = Printed(revision="1", holes=())
    past = _three_moves(file).told(printed)
    assert past.batch() is None
    past = past.undo(file.state)
    assert past.history.now.printed == printed
    assert file.opened().undo(file.state).history.now.printed is None  # the plain file was not told


def test_unread_steps_take_on_what_is_printed_now(file):
    _three_moves(file)
    printed = Printed(revision="1", holes=())
    past = file.opened().told(printed).undo(file.state)
    assert past.history.now.printed == printed


@pytest.mark.parametrize("seed", range(6))
def test_random_acts_leave_the_file_as_the_row(file, seed):
    chance, past = random.Random(seed), file.write(Past(History(START)))
    row, here = [START], 0
    for _ in range(120):
        act = chance.choice("dddduuurwwo")
        if act == "d":
            past, row = _moved(past, chance.uniform(0.5, 3.0)), row[: here + 1]
            row.append(past.history.now)
            here += 1
        elif act == "u":
            past, here = past.undo(file.state), max(here - 1, 0)
        elif act == "r":
            past, here = past.redo(file.state), min(here + 1, len(row) - 1)
        elif act == "w":
            past = file.write(past)
        else:
            past = file.write(past)
            past = file.opened()
        assert past.history.now == row[here]
    file.write(past)
    assert [there for _, there in file.states.values()] == row
