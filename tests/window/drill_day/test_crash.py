"""Drill day survives a crash: a real window is killed after some presses, and the ticks are there again."""

import subprocess
import sys
from pathlib import Path

import pytest
from tests.window.drill_day.days import board_day, book_on, drill_all

from bayboard.job.job import open_job
from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.window.drill_day.book import Book
from bayboard.window.theme import LIGHT
from bayboard.window.workplace import Workplace

CHILD = Path(__file__).with_name("crash_child.py")


def killed_after(path, presses):
    """Run the child until it has confirmed so many presses, kill it, and return the last count it told."""
    words = [sys.executable, str(CHILD), str(path)]
    with subprocess.Popen(words, stdout=subprocess.PIPE, encoding="utf-8") as child:
        try:
            told = [int(child.stdout.readline().removeprefix("made ")) for _ in range(presses)]
        finally:
            child.kill()
        rest = child.stdout.read()
    return told[-1], len(rest.splitlines())


# 1: the first datum hole; 4: the measure of the datum holes is made too; 8: in the middle of the slot
@pytest.mark.parametrize("presses", [1, 4, 8])
def test_every_tick_that_was_confirmed_is_there_after_a_kill(qapp, tmp_path, presses):
    path = tmp_path / "day.bay"
    told, later = killed_after(path, presses)
    job = open_job(path)
    book = Book(Workplace(job, LIGHT))
    count = book.count()[0]
    assert told <= count <= told + later + 1
    assert presses < 4 or book.notes.checked == {"BD"}
    drill_all(book)
    assert book.count() == (8, 8)
    job.close()


def test_half_a_slot_lies_in_the_file(qapp, tmp_path):
    path = tmp_path / "day.bay"
    book = book_on(board_day(), path)
    book.choose(("H3", 1))
    first = book.now().at
    book.drill()
    book.place.job.close()
    again = Book(Workplace(open_job(path), LIGHT))
    assert again.notes.halves == {"H3": first}
    assert again.count() == (1, 8)
    again.place.job.close()


def test_a_file_that_cannot_be_written_is_said_and_the_work_goes_on(qapp, tmp_path):
    book, said = book_on(board_day(), tmp_path / "day.bay"), []
    book.failed.connect(said.append)

    def full():
        raise Refused("", "the disk is full", "Free some room")

    book.place.job.flush = full
    assert book.drill()
    assert len(said) == 1 and "disk is full" in said[0]
    assert book.count() == (1, 8)


def test_a_job_that_is_only_looked_at_is_not_ticked(qapp, tmp_path):
    path = tmp_path / "day.bay"
    mine = book_on(board_day(), path)
    drill_all(mine, 3)
    job = open_job(path, look=True)
    book, said = Book(Workplace(job, LIGHT)), []
    book.failed.connect(said.append)
    assert book.count() == (3, 8)
    assert not book.drill() and book.take_back() == ""
    assert book.count() == (3, 8) and "only looked at" in said[0]
    job.close()
    mine.place.job.close()


def plain_book(tmp_path):
    """Return the book of a plain .json layout."""
    path = tmp_path / "day.json"
    path.write_text(write(board_day()), encoding="utf-8")
    return Book(Workplace(open_job(path), LIGHT)), path


def test_a_plain_layout_is_made_a_job_file_before_the_first_tick(qapp, tmp_path):
    book, path = plain_book(tmp_path)

    def house():
        book.place.job.house(path.with_suffix(".bay"))
        return True

    book.house = house
    book.choose(("H3", 1))
    book.drill()
    book.place.job.close()
    again = Book(Workplace(open_job(path.with_suffix(".bay")), LIGHT))
    assert again.count() == (1, 8)
    again.place.job.close()


def test_without_a_job_file_the_plain_layout_takes_what_is_drilled_and_nobody_asks_twice(qapp, tmp_path):
    book, path = plain_book(tmp_path)
    asked = []

    def house():
        asked.append(1)
        return False

    book.house = house
    drill_all(book, 5)
    assert Book(Workplace(open_job(path), LIGHT)).count() == (5, 8)
    assert asked == [1]
