"""The printing desk: nothing is worked out unasked, and what comes too late is dropped."""

import pytest
from tests.window.print.bench import Later, wide

from bayboard.edits.move_gear import MoveGear
from bayboard.job.job import Job
from bayboard.job.runner import InPlace
from bayboard.window import last
from bayboard.window.print.desk import IDLE, PrintDesk, first_choices
from bayboard.window.print.making import NotMade
from bayboard.window.theme import LIGHT
from bayboard.window.workplace import Workplace


@pytest.fixture
def place(qapp):
    return Workplace(Job(wide()), LIGHT)


def test_nothing_is_worked_out_until_the_stage_is_looked_at(place):
    runner = Later()
    desk = PrintDesk(place, runner)
    place.do(MoveGear(("A1",), 5.0, 0.0))
    assert runner.waiting == []
    desk.show(True)
    assert len(runner.waiting) == 1


def test_what_was_worked_out_of_an_older_layout_is_dropped(place):
    runner = Later()
    desk = PrintDesk(place, runner)
    desk.show(True)
    place.do(MoveGear(("A1",), 5.0, 0.0))
    desk.lay_now()
    assert len(runner.waiting) == 1  # one at a time
    runner.finish_one()
    assert desk.sheets is None and len(runner.waiting) == 1  # too old, and the new one is asked for
    runner.finish_one()
    assert desk.sheets is not None and desk.fresh
    holes = {h.id: h.at for board in desk.boards() for h in board.holes}
    assert holes["A1#1"] == pytest.approx((200 + 5 - 110, 200 - 70))


def test_sheets_are_laid_anew_only_after_a_moment_of_rest(place, qtbot):
    desk = PrintDesk(place, InPlace())
    desk.show(True)
    times = desk.laid
    for _ in range(4):
        place.do(MoveGear(("A1",), 1.0, 0.0))
        qtbot.wait(IDLE // 5)
    assert desk.laid == times
    qtbot.waitUntil(lambda: desk.fresh, timeout=2000)
    assert desk.laid == times + 1


def test_a_layout_that_comes_back_to_what_is_laid_is_not_laid_again(place):
    runner = Later()
    desk = PrintDesk(place, runner)
    desk.show(True)
    runner.finish_one()
    desk.choose(paper="a3")
    desk.choose(paper="a4")
    desk.lay_now()
    assert runner.waiting == [] and desk.fresh


def test_the_stage_rests_while_another_is_on_screen(place):
    runner = Later()
    desk = PrintDesk(place, runner)
    desk.show(True)
    desk.show(False)
    place.do(MoveGear(("A1",), 5.0, 0.0))
    runner.finish_one()
    assert runner.waiting == []


def test_another_vehicle_takes_the_sheets_of_the_old_one_off_and_keeps_the_paper(place):
    desk = PrintDesk(place, InPlace())
    desk.choose(paper="letter", units="in", off=frozenset(("cards",)))
    desk.show(True)
    runner = desk.runner = Later()
    place.take(Job(wide(gear=[])))
    assert desk.sheets is None and desk.choices.paper == "letter"
    assert desk.choices.off == frozenset() and desk.units == "mm"
    desk.lay_now()
    runner.finish_one()
    assert desk.count("drill") > 0 and desk.count("cards") == 0


def test_a_saved_pdf_is_no_longer_spoken_of_when_the_layout_is_another(place, tmp_path):
    desk = PrintDesk(place, InPlace())
    desk.show(True)
    desk.make_pdf(tmp_path / "out.pdf")
    assert desk.saved == tmp_path / "out.pdf"
    place.do(MoveGear(("A1",), 5.0, 0.0))
    desk.lay_now()
    assert desk.saved is None and desk.saved_words == ""


def test_work_that_broke_is_said_and_the_desk_goes_on(place):
    desk = PrintDesk(place, Later())
    desk.show(True)
    desk.broke()
    assert isinstance(desk.refused, NotMade) and not desk.laying
    desk.runner = InPlace()
    desk.choose(paper="a3")
    desk.lay_now()
    assert desk.refused is None and desk.ready()


def test_one_begins_with_the_paper_that_goes_with_the_units_then_with_the_last_one(place, tmp_path):
    assert (first_choices("mm").paper, first_choices("in").paper) == ("a4", "letter")
    desk = PrintDesk(place, InPlace())
    desk.show(True)
    desk.choose(paper="tabloid", margin=6.0)
    desk.make_pdf(tmp_path / "out.pdf")
    begun = first_choices("mm")
    assert (begun.paper, begun.margin) == ("tabloid", 6.0)


@pytest.mark.parametrize("kept", [("a5", 10.0), ("a4", 0.5), ("a4", 900.0), ("a4", float("nan"))])
def test_a_broken_memory_of_the_paper_is_harmless(kept):
    last.remember_paper(*kept)
    assert (first_choices("mm").paper, first_choices("mm").margin) == ("a4", 10.0)


def test_the_vehicle_and_the_paper_are_remembered_beside_each_other(tmp_path):
    file = tmp_path / "bay.json"
    file.write_text("{}", encoding="utf-8")
    last.remember(file)
    last.remember_paper("a3", 7.5)
    last.remember(file)
    assert last.last_paper() == ("a3", 7.5) and last.last_vehicle() == file.resolve()
