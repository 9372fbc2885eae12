"""Printing from a job file: kept and logged, and afterwards told which of those sheets are old."""

from contextlib import closing, suppress
from datetime import UTC

import pytest
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from tests.build import card, gear
from tests.paper.readers import page_text
from tests.window.print.bench import Later, Printing, wide

from bayboard.__main__ import main
from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.move_gear import MoveGear
from bayboard.job.job import Job, open_job
from bayboard.job.printing import print_now
from bayboard.model.refused import Refused
from bayboard.paper.book import Options, book
from bayboard.store.records import PrintLine
from bayboard.window.print import words
from bayboard.window.print.slip import SWAP, WHOLE

UP = MoveGear(("A1",), 0.0, 4.0)
A4 = Options("a4")
GREY = QImage.Format.Format_Grayscale8


@pytest.fixture
def job(tmp_path):
    """A job in a job file, not yet printed."""
    made = Job(wide())
    made.house(tmp_path / "pickup.bay")
    yield made
    with suppress(Refused):
        made.close()


@pytest.fixture
def printed(job):
    """A job whose whole set was printed as revision 1."""
    print_now(job, A4, lambda made: None)
    return job


@pytest.fixture
def clips(tmp_path):
    """A job with two small pieces far apart, printed as revision 1."""
    clip = card(60, 40, 30, screws=[{"at": [20, 10], "thread": "M5"}])
    cards = {"clip": clip}
    made = Job(wide(cards=cards, gear=[gear("A1", 90, 80, "clip"), gear("A2", 820, 330, "clip")]))
    made.house(tmp_path / "clips.bay")
    print_now(made, A4, lambda book: None)
    with closing(made):
        yield made


@pytest.fixture
def at_print(printing):
    """Return a function that opens a window at the Print stage on a job."""

    def opened(job, **choices) -> Printing:
        hands = printing(**choices)
        hands.place.take(job)
        hands.rest()
        return hands

    return opened


def said(hands):
    return " ".join(text for text, _ in hands.stage.stacks.slip.sentences())


def test_a_print_of_a_job_file_is_kept_logged_and_said(at_print, job, tmp_path):
    hands = at_print(job)
    hands.desk.make_pdf(tmp_path / "out.pdf")
    assert [r.note for r in job.revisions()] == ["for printing"]
    (line,) = job.prints()
    assert (line.revision, line.sheets, line.pages) == ("1", ("drill", "cards"), hands.desk.count())
    assert hands.window.strip.line == "Printed as revision 1."
    assert job.layout.printed is not None
    assert all("revision 1" in text for text in page_text((tmp_path / "out.pdf").read_bytes())[:1])


def test_the_pdf_is_the_one_that_the_command_makes_of_the_same_job_file(at_print, job, tmp_path):
    hands = at_print(job)
    other = tmp_path / "other.bay"
    job.save_copy(other)
    hands.desk.make_pdf(tmp_path / "mine.pdf")
    assert main(["print", str(other), "--paper", "a4", "--out", str(tmp_path / "theirs.pdf")]) == 0
    assert (tmp_path / "mine.pdf").read_bytes() == (tmp_path / "theirs.pdf").read_bytes()


def test_what_is_saved_is_still_said_once_the_print_is_logged(at_print, job, tmp_path):
    hands = at_print(job)
    hands.desk.make_pdf(tmp_path / "out.pdf")
    hands.rest()
    assert hands.desk.saved == tmp_path / "out.pdf"
    assert hands.desk.fresh


def test_a_print_that_cannot_be_written_is_not_logged(at_print, job, tmp_path):
    hands = at_print(job)
    hands.desk.make_pdf(tmp_path / "no such folder" / "out.pdf")
    assert job.prints() == ()
    assert "no such folder" in hands.desk.saved_words


def test_a_draft_that_cannot_be_kept_is_not_printed(at_print, job, tmp_path, monkeypatch):
    def full(note):
        raise Refused("", "the disk is full", "Free some room")

    hands = at_print(job)
    monkeypatch.setattr(job, "keep", full)
    hands.desk.make_pdf(tmp_path / "out.pdf")
    assert not (tmp_path / "out.pdf").exists()
    assert hands.desk.saved_words == "The disk is full. Free some room."
    assert hands.desk.ready()


def test_a_log_that_cannot_be_written_is_said_beside_the_saved_pdf(at_print, job, tmp_path, monkeypatch):
    def refuse(line, printed):
        raise Refused("", "the disk is full", "Free some room")

    hands = at_print(job)
    monkeypatch.setattr(job, "log_print", refuse)
    hands.desk.make_pdf(tmp_path / "out.pdf")
    assert hands.desk.saved is not None
    told = [text for _, text in hands.stage.print_card.lines()]
    assert "Not in the print log: The disk is full. Free some room." in told


def test_of_a_job_only_looked_at_the_pdf_is_made_and_that_it_is_not_logged_is_said(at_print, job, tmp_path):
    job.flush()
    with closing(open_job(job.path, look=True)) as other:
        hands = at_print(other)
        hands.desk.make_pdf(tmp_path / "out.pdf")
        assert "not kept as a revision" in page_text((tmp_path / "out.pdf").read_bytes())[0]
        assert words.NOT_LOGGED in [text for _, text in hands.stage.print_card.lines()]
    assert job.prints() == ()


def test_a_plain_layout_tells_of_no_prints(printing):
    hands = printing()
    assert not hands.stage.stacks.slip.isVisible()
    assert hands.desk.asked()[1].revision == ""


def test_the_stage_begins_with_the_paper_that_lies_on_the_bench(at_print, job):
    print_now(job, Options("letter", margin=6.0, face="back"), lambda made: None)
    chosen = at_print(job).desk.choices
    assert (chosen.paper, chosen.margin, chosen.face) == ("letter", 6.0, "back")


def test_right_after_the_print_every_sheet_holds(at_print, printed):
    hands = at_print(printed)
    assert hands.stage.stacks.slip.isVisible()
    assert words.ALL_HOLD in said(hands)
    assert hands.desk.swap_numbers() == ()


def test_after_a_change_the_sheets_to_swap_are_named_marked_and_printed_alone(at_print, printed, tmp_path):
    hands = at_print(printed)
    hands.place.do(UP)
    hands.rest()
    numbers = hands.desk.swap_numbers()
    showing = {p.number for p in hands.desk.sheets.pages if any("A1#" in s.id for s in p.shows)}
    assert set(numbers) <= showing
    assert 0 < len(numbers) < hands.desk.count()
    assert "4 holes differ: A1#1, A1#2, A1#3, A1#4." in said(hands)
    assert words.swap_told(numbers) in said(hands)
    assert hands.stage.sheets.phrase().startswith(f"{words.swap_sheets(numbers)} to swap")
    assert hands.stage.print_card.make.text() == f"Make the PDF of {words.swap_sheets(numbers)}"
    hands.desk.make_pdf(tmp_path / "few.pdf")
    texts = page_text((tmp_path / "few.pdf").read_bytes())
    assert len(texts) == len(numbers)
    for number, text in zip(numbers, texts, strict=True):
        assert f"sheet {number} of {hands.desk.count('drill')}" in text
        assert f"SWAP SHEET {number}" in text
        assert f"of set {printed.prints()[0].words}" in text


def test_the_sheet_in_hand_is_the_one_that_leaves_the_printer(at_print, printed, tmp_path):
    hands = at_print(printed)
    hands.place.do(UP)
    hands.rest()
    layout, options = hands.desk.asked_for()
    page = hands.stage.page.page()
    assert page == book(layout, options).pages[0]


def test_once_they_are_swapped_the_set_shows_the_new_revision(at_print, printed, tmp_path):
    hands = at_print(printed)
    hands.place.do(UP)
    hands.rest()
    hands.desk.make_pdf(tmp_path / "few.pdf")
    hands.rest()
    assert hands.desk.swap_numbers() == ()
    assert said(hands).startswith("Printed as revision 2")
    assert words.ALL_HOLD in said(hands)
    assert not any(f.rule == "reprint" for f in hands.place.verdict.findings)


def test_a_second_swap_names_the_words_of_both_older_sets(at_print, clips, tmp_path):
    hands = at_print(clips)
    for edit, name in ((UP, "a.pdf"), (MoveGear(("A2",), 0.0, -4.0), "b.pdf")):
        hands.place.do(edit)
        hands.rest()
        hands.desk.make_pdf(tmp_path / name)
        hands.rest()
    whole, first, _ = clips.prints()
    text = page_text((tmp_path / "b.pdf").read_bytes())[0]
    assert f"of set {whole.words}" in text
    assert f"of set {first.words}" in text


def test_the_whole_set_can_be_had_all_the_same(at_print, printed):
    hands = at_print(printed)
    hands.place.do(UP)
    hands.rest()
    switch = hands.stage.stacks.slip.switch
    assert switch.isVisible()
    assert switch.held == SWAP
    hands.click_on(switch, switch.halves()[1].center())
    assert switch.held == WHOLE
    assert hands.desk.swap_numbers() == ()
    assert hands.stage.print_card.make.text() == f"Make the PDF of {hands.desk.count()} sheets"
    assert hands.desk.asked_for()[1].swap is None


def test_the_switch_is_reached_and_thrown_by_keys(at_print, printed):
    hands = at_print(printed)
    hands.place.do(UP)
    hands.rest()
    hands.stage.stacks.setFocus()
    hands.key("Tab")
    assert hands.stage.stacks.slip.switch.hasFocus()
    hands.key("Space")
    assert hands.desk.choices.whole


def test_with_other_paper_nothing_is_swapped(at_print, printed):
    hands = at_print(printed)
    hands.place.do(UP)
    hands.desk.choose(paper="a3")
    hands.rest()
    assert hands.desk.swap_numbers() == ()
    assert words.OTHER_PAPER in said(hands)


def test_another_outline_asks_for_the_whole_set(at_print, job):
    job.do(MoveGear(("A1",), 0.0, 0.0))
    print_now(job, A4, lambda made: None)
    longer = wide(board={"outline": [[0, 0], [1300, 0], [1300, 400], [0, 400]], "corner_radius": 20})

    class Saw:
        """The board is cut from a longer sheet."""

        def apply(self, layout):
            return longer

        def label(self, layout):
            return "Longer board"

    job.do(Saw())
    hands = at_print(job)
    assert words.ALL_AGAIN in said(hands)
    assert hands.desk.swap_numbers() == ()


def test_a_tick_of_the_drill_day_makes_no_sheet_old(at_print, printed):
    hands = at_print(printed)
    hands.place.do(DrillHole("A1#1", None))
    hands.rest()
    assert words.ALL_HOLD in said(hands)


def test_a_weighing_that_comes_too_late_is_dropped(at_print, clips):
    later = Later()
    hands = at_print(clips, runner=later)
    while later.waiting:
        later.finish_one()
    hands.place.do(UP)
    hands.desk.lay_now()
    later.finish_one()  # the whole set; the weighing is on its way
    hands.place.do(MoveGear(("A2",), 0.0, 4.0))
    later.finish_one()
    assert hands.desk.swap_numbers() == ()
    while later.waiting:
        later.finish_one()
    assert "2 holes differ" in said(hands)
    assert hands.desk.swap_numbers()


def test_a_revision_that_cannot_be_read_is_said_and_the_whole_set_is_printed(at_print, printed, monkeypatch):
    def lost(number):
        raise Refused("pickup.bay", "revision 1 is damaged", "Print again")

    monkeypatch.setattr(printed, "revision", lost)
    hands = at_print(printed)
    assert said(hands) == "What was printed cannot be had: revision 1 is damaged."
    assert hands.desk.swap_numbers() == ()


def test_the_slip_lists_the_last_five_prints_newest_first(at_print, printed):
    for _ in range(6):
        print_now(printed, Options("a4", ("cards",)), lambda made: None)
    log = at_print(printed).stage.stacks.slip.log()
    assert len(log) == 5
    assert all("revision 1, A4, " in line for line in log)


@pytest.mark.parametrize("size", [(1600, 1000), (1280, 800), (1180, 680)])
def test_slip_and_stacks_stand_apart_and_the_switch_stands_in_the_slip(at_print, printed, size):
    hands = at_print(printed, size=size)
    hands.place.do(UP)
    hands.rest()
    stacks = hands.stage.stacks
    slip = stacks.slip
    assert stacks.rect().contains(slip.geometry())
    assert slip.rect().contains(slip.switch.geometry())
    assert slip._after_lines() <= slip.switch.geometry().top() + 4
    assert all(not stack.sheet.toRect().intersects(slip.geometry()) for stack in stacks.stacks())


def test_sheets_to_swap_are_marked_by_more_than_colour(at_print, printed):
    """A mark has dark figures on its ground: as grey it is still told from paper."""
    hands = at_print(printed)
    hands.place.do(UP)
    hands.rest()
    QTest.qWait(20)
    marked = hands.stage.sheets.grab().toImage().convertToFormat(GREY)
    hands.desk.choose(whole=True)
    hands.rest()
    plain = hands.stage.sheets.grab().toImage().convertToFormat(GREY)
    assert marked != plain


LINE = PrintLine(
    number=3, at="2026-11-24T23:30:00Z", revision="4", paper="a4", face="front", sheets=("drill",),
    words="walnut harbour", pages=14,
)  # fmt: skip


def test_a_print_is_told_by_its_day():
    assert words.printed_told(LINE, UTC) == "Printed as revision 4 on Tue 24 Nov, A4."
    assert words.logged(LINE, UTC) == "Tue 24 Nov: revision 4, A4, 14 sheets"


@pytest.mark.parametrize(
    ("numbers", "told"),
    [
        ((3,), "Swap sheet 3; the others stay."),
        ((3, 7), "Swap sheets 3 and 7; the others stay."),
        ((1, 5, 6, 7, 8, 12), "Swap sheets 1, 5–8 and 12; the others stay."),
    ],
)
def test_sheets_to_swap_are_named(numbers, told):
    assert words.swap_told(numbers) == told


@pytest.mark.parametrize(
    ("names", "told"),
    [
        (("H3",), "1 hole differs: H3."),
        (("A2#1", "A2#2", "H3"), "3 holes differ: A2#1, A2#2, H3."),
        (tuple(f"H{n}" for n in range(1, 8)), "7 holes differ: H1, H2, H3, H4 and 3 more."),
        ((), "No hole differs."),
    ],
)
def test_holes_that_differ_are_named(names, told):
    assert words.holes_told(names) == told


def test_a_log_that_cannot_be_read_is_said_and_the_stage_goes_on(at_print, printed, monkeypatch):
    def gone():
        raise Refused("pickup.bay", "the stick was pulled", "Put it back")

    monkeypatch.setattr(printed, "prints", gone)
    hands = at_print(printed)
    assert said(hands) == "What was printed cannot be had: the stick was pulled."
    assert hands.stage.stacks.slip.isVisible()
    assert hands.desk.count() > 0


def test_a_hole_that_is_made_is_known_as_made_on_the_wall(at_print, printed):
    hands = at_print(printed)
    hands.place.do(DrillHole("A1#1", None))
    hands.rest()
    made = {hole.id for board in hands.desk.boards() for hole in board.holes if hole.made}
    assert made == {"A1#1"}


def test_while_it_is_not_known_which_sheets_are_old_no_swap_is_printed(at_print, clips, tmp_path):
    later = Later()
    hands = at_print(clips, runner=later)
    hands.place.do(MoveGear(("A1",), 0.0, 4.0))
    hands.desk.lay_now()
    while later.waiting:
        later.finish_one()
    assert hands.desk.swapping
    hands.place.do(MoveGear(("A2",), 0.0, 4.0))
    assert not hands.desk.ready()
    hands.desk.make_pdf(tmp_path / "stale.pdf")
    assert later.waiting == []
    assert len(clips.revisions()) == 1
