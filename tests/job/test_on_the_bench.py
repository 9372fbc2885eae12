"""What the print log tells of the sheets on the bench."""

import pytest

from bayboard.job.on_the_bench import on_the_bench, paper_of
from bayboard.store.records import PrintLine


def line(revision, *sheets, words="walnut harbour", paper="a4", face="front"):
    return PrintLine(revision=revision, paper=paper, face=face, sheets=sheets, words=words, pages=1)


WHOLE = line("4", "drill", "cards")


def test_before_the_first_drill_sheet_there_is_nothing_on_the_bench():
    assert on_the_bench(()) is None
    assert on_the_bench((line("1", "cards"),)) is None


def test_the_last_whole_set_lies_on_the_bench():
    found = on_the_bench((line("1", "drill"), WHOLE, line("5", "cards")))
    assert found is not None
    assert (found.whole, found.now, found.swapped) == (4, 4, ())


def test_swapped_sheets_make_the_set_show_a_later_revision_and_keep_its_seams():
    found = on_the_bench((WHOLE, line("5", "drill 3", "drill 7", words="copper ladder")))
    assert found is not None
    assert (found.whole, found.now, found.line.revision) == (4, 5, "5")
    assert found.staying((1, 2, 3, 4)) == (("walnut harbour", (1, 2, 4)), ("copper ladder", (3,)))


def test_a_sheet_swapped_twice_bears_the_later_words():
    lines = (
        WHOLE,
        line("5", "drill 3", "drill 7", words="copper ladder"),
        line("6", "drill 3", words="elm nut"),
    )
    found = on_the_bench(lines)
    assert found is not None
    staying = found.staying((1, 3, 7))
    assert staying == (("walnut harbour", (1,)), ("elm nut", (3,)), ("copper ladder", (7,)))


def test_a_new_whole_set_throws_all_older_sheets_away():
    found = on_the_bench((WHOLE, line("5", "drill 3"), line("6", "drill", words="elm nut")))
    assert found is not None
    assert (found.whole, found.staying((1, 2))) == (6, (("elm nut", (1, 2)),))


@pytest.mark.parametrize("other", [{"paper": "letter"}, {"face": "back"}])
def test_sheets_of_other_paper_or_face_are_swapped_in_no_set(other):
    found = on_the_bench((WHOLE, line("5", "drill 3", **other)))
    assert found is not None
    assert found.now == 4


@pytest.mark.parametrize(
    "odd", [line("draft", "drill"), line("", "drill"), line("²", "drill"), line("7", "drill x")]
)
def test_a_line_that_makes_no_sense_is_passed_over(odd):
    found = on_the_bench((WHOLE, odd))
    assert found is not None
    assert found.now == 4


@pytest.mark.parametrize(
    ("paper", "read"),
    [("a4", ("a4", 10.0)), ("a4 margin 6", ("a4", 6.0)), ("a4 margin x", ("a4", 10.0))],
)
def test_paper_and_white_edge_are_read_from_the_log(paper, read):
    assert paper_of(line("1", "drill", paper=paper)) == read
