"""A job in a job file: what it keeps, goes back to and still knows when it is opened again."""

from contextlib import closing

import pytest
from tests.build import card, gear, layout

from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.move_gear import MoveGear
from bayboard.job.job import Job, open_job
from bayboard.model.layout import Printed
from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.store.job_file import PrintLine

RIGHT = MoveGear(("A1",), 10.0, 0.0)
UP = MoveGear(("A1",), 0.0, 5.0)
LINE = PrintLine(revision="1", paper="a4", face="front", sheets=("drill",), words="walnut harbour", pages=2)
CARDS = {"box": card(screws=[{"at": [40, 20], "thread": "M5"}])}
PRINTED = Printed(revision="1", holes=())


@pytest.fixture
def path(tmp_path):
    return tmp_path / "pickup.bay"


@pytest.fixture
def job(path):
    """A job in a job file, closed afterwards."""
    made = Job(layout(cards=CARDS, gear=[gear("A1", 200, 150)]))
    made.house(path)
    with closing(made):
        yield made


def _again(job):
    """Close a job and return it opened again."""
    job.close()
    return open_job(job.path)


def _at(job):
    return job.layout.gear[0].at


def test_an_edit_is_in_the_file_once_it_is_flushed(job):
    job.do(RIGHT)
    assert job.unwritten
    job.flush()
    assert not job.unwritten
    with closing(open_job(job.path, look=True)) as other:
        assert other.layout == job.layout


def test_undo_history_survives_closing(job):
    job.do(RIGHT)
    job.do(UP)
    label = job.undo_label
    with closing(_again(job)) as again:
        assert again.undo_label == label
        assert again.undo() == label
        assert _at(again) == (210.0, 150.0)
        again.undo()
        assert (_at(again), again.undo_label) == ((200.0, 150.0), None)


def test_what_was_undone_can_be_done_again_after_closing(job):
    job.do(RIGHT)
    job.undo()
    with closing(_again(job)) as again:
        again.redo()
        assert _at(again) == (210.0, 150.0)


def test_a_history_begun_without_a_file_moves_in_with_it(path):
    job = Job(layout(cards=CARDS, gear=[gear("A1", 200, 150)]))
    job.do(RIGHT)
    job.house(path)
    with closing(_again(job)) as again:
        again.undo()
        assert _at(again) == (200.0, 150.0)


def test_keeping_makes_revisions_in_order(job):
    first = job.keep("first mock-up")
    job.do(RIGHT)
    second = job.keep("shown to owner")
    assert [(r.number, r.parent, r.note) for r in job.revisions()] == [
        (1, None, "first mock-up"),
        (2, 1, "shown to owner"),
    ]
    assert job.revision(first.number).gear[0].at == (200.0, 150.0)
    assert job.revision(second.number) == job.layout


def test_the_draft_knows_whether_it_is_kept(job):
    assert job.kept_as() is None
    job.keep("")
    assert job.kept_as() == 1
    job.do(RIGHT)
    assert job.kept_as() is None
    job.undo()
    assert job.kept_as() == 1


def test_going_back_keeps_the_present_draft_first(job):
    job.keep("one")
    job.do(RIGHT)
    moved = job.layout
    assert job.restore(1) == "Go back to revision 1"
    assert _at(job) == (200.0, 150.0)
    assert job.revision(2) == moved


def test_going_back_from_a_kept_draft_keeps_nothing_twice(job):
    job.keep("one")
    job.do(RIGHT)
    job.keep("two")
    job.restore(1)
    assert len(job.revisions()) == 2


def test_going_back_is_one_undo_step_that_survives_closing(job):
    job.keep("one")
    job.do(RIGHT)
    moved = job.layout
    job.restore(1)
    with closing(_again(job)) as again:
        assert again.undo() == "Go back to revision 1"
        assert write(again.layout) == write(moved)


def test_the_draft_comes_of_the_revision_it_went_back_to(job):
    job.keep("one")
    job.do(RIGHT)
    job.restore(1)
    assert job.parent == 1
    job.undo()
    assert job.parent == 2
    with closing(_again(job)) as again:
        assert again.parent == 2


def test_going_back_to_what_the_draft_is_changes_nothing(job):
    job.keep("one")
    before = job.layout
    assert "already" in job.restore(1)
    assert job.layout is before


def test_going_back_leaves_drilled_what_is_drilled(job):
    job.keep("one")
    job.do(DrillHole("A1#1", None))
    drilled = job.layout.drilled_holes
    assert drilled
    job.restore(1)
    assert job.layout.drilled_holes == drilled


def test_what_is_printed_is_not_taken_back_by_undo(job):
    job.do(RIGHT)
    job.keep("")
    job.log_print(LINE, PRINTED)
    job.undo()
    assert job.layout.printed == PRINTED
    with closing(_again(job)) as again:
        assert again.layout.printed == PRINTED
        assert [line.words for line in again.prints()] == ["walnut harbour"]


def test_a_draft_is_as_kept_though_it_was_printed_since(job):
    job.keep("one")
    job.log_print(LINE, PRINTED)
    assert job.kept_as() == 1


def test_a_print_without_drill_sheets_leaves_printed_alone(job):
    job.log_print(LINE, None)
    assert job.layout.printed is None
    assert len(job.prints()) == 1


def test_nothing_changes_in_a_job_that_is_only_looked_at(job):
    job.keep("one")
    job.do(RIGHT)
    job.flush()
    with closing(open_job(job.path, look=True)) as looked:
        for act in (lambda: looked.do(UP), looked.undo, lambda: looked.keep(""), lambda: looked.restore(1)):
            with pytest.raises(Refused, match="only looked at"):
                act()
        assert looked.layout == job.layout


def test_a_plain_layout_keeps_no_revisions():
    job = Job(layout())
    with pytest.raises(Refused, match="holds no revisions"):
        job.keep("")
    assert (job.revisions(), job.kept_as(), job.prints()) == ((), None, ())


def test_moving_into_a_new_file_takes_every_revision_along(job, tmp_path):
    job.keep("one")
    job.do(RIGHT)
    job.house(tmp_path / "other.bay")
    assert job.path == tmp_path / "other.bay"
    assert [r.note for r in job.revisions()] == ["one"]
    with closing(_again(job)) as again:
        assert _at(again) == (210.0, 150.0)
        again.undo()
        assert _at(again) == (200.0, 150.0)


def test_a_copy_holds_every_revision_and_the_job_stays_where_it_is(job, tmp_path):
    job.keep("one")
    job.do(RIGHT)
    job.save_copy(tmp_path / "copy.bay")
    assert job.path.name == "pickup.bay"
    with closing(open_job(tmp_path / "copy.bay")) as copy:
        assert (copy.layout, len(copy.revisions())) == (job.layout, 1)


def test_opening_and_closing_is_no_change(job):
    job.do(RIGHT)
    job.close()
    with closing(open_job(job.path, look=True)) as before:
        changed = before.file.draft()
    open_job(job.path).close()
    with closing(open_job(job.path, look=True)) as after:
        assert after.file.draft() == changed


def test_nothing_is_left_beside_a_closed_job(job):
    job.do(RIGHT)
    job.close()
    assert [p.name for p in job.path.parent.iterdir()] == ["pickup.bay"]
