"""Printing a job: kept before, logged after, and never a line for sheets that were not written."""

from contextlib import closing

import pytest
from tests.build import card, gear, layout
from tests.paper.readers import page_text

from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.move_gear import MoveGear
from bayboard.job.job import Job, open_job
from bayboard.job.printing import print_now, revision_ahead
from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.paper.book import Options
from bayboard.paper.options import DRAFT, SwapSheets

CARDS = {"box": card(screws=[{"at": [40, 20], "thread": "M5"}])}
DRILL = Options("a4", ("drill",))
STAND_INS = Options("a4", ("cards",))


def made_layout():
    return layout(cards=CARDS, gear=[gear("A1", 200, 150)])


@pytest.fixture
def job(tmp_path):
    """A job in a job file, closed afterwards."""
    made = Job(made_layout())
    made.house(tmp_path / "pickup.bay")
    with closing(made):
        yield made


def nowhere(_book):
    """Write nothing, as when all goes well."""


def move(job):
    job.do(MoveGear(("A1",), 10.0, 0.0))


def test_a_draft_is_kept_before_it_is_printed_and_the_sheets_name_it(job):
    made = print_now(job, DRILL, nowhere)
    assert [(r.number, r.note) for r in job.revisions()] == [(1, "for printing")]
    assert all("revision 1" in text for text in page_text(made.pdf()))
    assert job.prints()[0].revision == "1"


def test_a_draft_that_is_kept_already_is_not_kept_again(job):
    job.keep("for the morning")
    print_now(job, DRILL, nowhere)
    print_now(job, DRILL, nowhere)
    assert [r.note for r in job.revisions()] == ["for the morning"]
    assert [line.revision for line in job.prints()] == ["1", "1"]


def test_what_is_ahead_is_what_the_print_names(job):
    job.keep("first")
    move(job)
    ahead = revision_ahead(job)
    print_now(job, DRILL, nowhere)
    assert (ahead, job.prints()[-1].revision) == ("2", "2")


def test_drill_sheets_are_printed_as_they_stand_and_cards_change_nothing_of_that(job):
    print_now(job, STAND_INS, nowhere)
    assert job.layout.printed is None
    print_now(job, DRILL, nowhere)
    printed = job.layout.printed
    assert printed is not None
    assert (printed.revision, [h.id for h in printed.holes]) == ("1", ["A1#1"])
    assert [line.sheets for line in job.prints()] == [("cards",), ("drill",)]


def test_undo_does_not_unprint(job):
    move(job)
    print_now(job, DRILL, nowhere)
    job.undo()
    assert job.layout.printed is not None
    assert job.layout.printed.holes[0].at == (250.0, 170.0)


def test_a_print_that_cannot_be_written_is_not_logged_but_its_revision_is_kept(job):
    def full(_book):
        raise Refused("OUT.pdf", "the disk is full", "Free some room")

    with pytest.raises(Refused, match="disk is full"):
        print_now(job, DRILL, full)
    assert (job.prints(), job.layout.printed) == ((), None)
    assert len(job.revisions()) == 1


def test_what_cannot_be_printed_is_not_kept_either(job):
    with pytest.raises(Refused):
        print_now(job, Options("a4", ("drill",), margin=90.0), nowhere)
    assert job.revisions() == ()


def test_a_log_that_cannot_be_written_says_that_the_sheets_are_there(job, monkeypatch):
    def refuse(line, printed):
        raise Refused("pickup.bay", "the file was changed underneath", "Open it again")

    monkeypatch.setattr(job, "log_print", refuse)
    with pytest.raises(Refused, match="sheets are written, but not in the print log: the file was changed"):
        print_now(job, DRILL, nowhere)


def test_an_older_revision_is_printed_under_its_own_number(job):
    job.keep("first")
    move(job)
    print_now(job, DRILL, nowhere, number=1)
    assert [r.note for r in job.revisions()] == ["first"]
    printed = job.layout.printed
    assert printed is not None
    assert (printed.revision, printed.holes[0].at) == ("1", (240.0, 170.0))


def test_of_a_job_only_looked_at_nothing_is_kept_or_logged(job):
    job.flush()
    with closing(open_job(job.path, look=True)) as other:
        assert revision_ahead(other) == DRAFT
        print_now(other, DRILL, nowhere)
    assert (job.revisions(), job.prints()) == ((), ())


def test_a_job_only_looked_at_still_names_the_revision_it_stands_at(job):
    job.keep("first")
    with closing(open_job(job.path, look=True)) as other:
        assert revision_ahead(other) == "1"


def test_a_plain_layout_is_printed_as_ever_and_never_written_to(tmp_path):
    path = tmp_path / "plain.json"
    path.write_text(write(made_layout()), encoding="utf-8")
    before = path.read_bytes()
    job = open_job(path)
    assert revision_ahead(job) == ""
    print_now(job, DRILL, nowhere)
    assert path.read_bytes() == before
    assert job.layout.printed is None


def test_the_log_holds_the_set_words_the_paper_and_how_many_pages_came_out(job):
    made = print_now(job, Options("letter", ("drill", "cards"), margin=6.0, face="back"), nowhere)
    (line,) = job.prints()
    assert (line.paper, line.face, line.sheets) == ("letter margin 6", "back", ("drill", "cards"))
    assert line.pages == len(made.pages)
    assert f"set {line.words}" in page_text(made.pdf())[0]


def test_sheets_that_were_swapped_are_logged_one_by_one(job):
    print_now(job, DRILL.with_swap(SwapSheets((2,), (("walnut harbour", (1,)),))), nowhere)
    (line,) = job.prints()
    assert (line.sheets, line.pages) == (("drill 2",), 1)
    assert job.layout.printed is not None


def test_what_is_drilled_after_the_print_makes_no_other_print_of_it(job):
    print_now(job, DRILL, nowhere)
    job.do(DrillHole("A1#1", None))
    print_now(job, DRILL, nowhere)
    assert [line.revision for line in job.prints()] == ["1", "2"]
