"""Undo steps in the file: many, but not without end."""

import pytest
from tests.build import gear, layout
from tests.store.bench import PLAIN, asked, moved, refusal, write_moves

from bayboard.store import states
from bayboard.store.job_file import Damaged, make_job_file


@pytest.fixture
def file(tmp_path):
    with make_job_file(tmp_path / "van.bay", PLAIN) as made:
        yield made


def test_the_last_300_are_kept():
    assert (states.MOST, states.MOST_BYTES) == (300, 20_000_000)


def test_the_oldest_go_when_they_are_too_many(file, monkeypatch):
    monkeypatch.setattr(states, "MOST", 5)
    write_moves(file, 9)
    assert [mark.number for mark in file.draft().states] == [6, 7, 8, 9, 10]
    assert file.state(6) == moved(5)
    assert "no longer in the file" in str(refusal(file.state, 1))


def test_the_oldest_go_when_they_are_too_large(file, monkeypatch):
    write_moves(file, 6)
    size = max(row[0] for row in asked(file.path, "SELECT length(layout) FROM state"))
    monkeypatch.setattr(states, "MOST_BYTES", 4 * size)
    write_moves(file, 1, 7)
    assert 3 <= len(file.draft().states) <= 5
    assert file.draft().states[-1].label == "Move 7"


def test_the_step_that_the_draft_stands_at_stays_whatever_comes_after(file, monkeypatch):
    write_moves(file, 4)
    file.write(moved(1), upto=5, add=(), at=2)
    monkeypatch.setattr(states, "MOST", 2)
    file.write(moved(1), upto=5, add=(), at=2)
    assert file.draft().states[0].number == 2


def test_a_step_takes_little_room(file):
    many = layout(gear=[gear(f"A{n}", 10 * n, 50) for n in range(80)])
    file.write(many, upto=1, add=[("Many", many)], at=2)
    ((packed, plain),) = asked(
        file.path, "SELECT length(state.layout), length(draft.layout) FROM state, draft WHERE number = 2"
    )
    assert packed < plain / 4


def test_a_step_whose_words_were_changed_is_damaged(file):
    write_moves(file, 2)
    file._base.do("UPDATE state SET label = 'Other' WHERE number = 2")
    assert isinstance(refusal(file.state, 2), Damaged)
    assert any("step 2 is damaged" in said for said in file.check_whole())
