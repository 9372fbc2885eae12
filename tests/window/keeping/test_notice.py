"""Notices: a question is not covered by what is only told, and no answer goes to another question."""

import pytest

from bayboard.window.notice import CLOSE, Notice
from bayboard.window.theme import LIGHT


@pytest.fixture
def notice(qtbot):
    from PySide6.QtCore import QRect
    from PySide6.QtWidgets import QWidget

    room = QWidget()
    qtbot.addWidget(room)
    room.resize(1000, 600)
    made = Notice(LIGHT, room)
    made.lay(QRect(0, 60, 1000, 500))
    room.show()
    yield made
    room.close()


def press(notice, word):
    next(button for button in notice.buttons if button.text() == word).click()


def test_what_is_told_waits_behind_a_question(notice):
    heard = []
    notice.ask("Which?", ("This", "That"), heard.append)
    notice.tell("The disk is full.")
    assert notice.text == "Which?"
    press(notice, "That")
    assert heard == ["That"]
    assert notice.text == "The disk is full."
    assert notice.isVisible()


def test_a_question_takes_the_place_of_another_and_only_it_is_answered(notice):
    first, second = [], []
    notice.ask("First?", ("Yes", "No"), first.append)
    notice.ask("Second?", ("Yes", "No"), second.append)
    press(notice, "Yes")
    assert (first, second) == ([], ["Yes"])
    assert not notice.isVisible()


def test_what_was_told_comes_back_after_a_question(notice):
    notice.tell("The disk is full.")
    notice.ask("Which?", ("This", "That"), lambda _: None)
    press(notice, "This")
    assert notice.text == "The disk is full."


def test_a_note_does_not_cover_a_must(notice):
    notice.tell("The disk is full.")
    notice.tell("Opened after a crash.", "note")
    assert notice.text == "The disk is full."
    press(notice, CLOSE)
    assert notice.text == "Opened after a crash."


def test_what_is_no_longer_true_is_taken_back(notice):
    notice.tell("The disk is full.")
    notice.withdraw("The disk is full.")
    assert not notice.isVisible()
    notice.ask("Which?", ("This", "That"), lambda _: None)
    notice.tell("The disk is full.")
    notice.withdraw("The disk is full.")
    press(notice, "This")
    assert not notice.isVisible()


def test_an_answer_may_ask_again(notice):
    heard = []
    notice.ask("Sure?", ("Yes", "No"), lambda _: notice.ask("Quite?", ("Yes", "No"), heard.append))
    press(notice, "Yes")
    assert notice.text == "Quite?"
    press(notice, "No")
    assert heard == ["No"]


def test_the_same_sentence_does_not_wait_twice(notice):
    notice.ask("Which?", ("This",), lambda _: None)
    for _ in range(3):
        notice.tell("The disk is full.")
    assert len(notice.waiting) == 1


def test_long_sentences_have_their_answers_below(notice):
    notice.ask("A sentence. " * 30, ("Save what can be read", "Go on in another file", "Not now"))
    foot = max(button.geometry().bottom() for button in notice.buttons)
    assert foot < notice.height()
    assert all(button.geometry().left() >= 0 for button in notice.buttons)
    notice.grab()


def test_what_is_told_of_the_last_act_is_seen_and_the_ways_out_come_back(notice):
    heard = []
    notice.offer("The disk is full.", ("Go on in another file", CLOSE), "must", heard.append)
    notice.tell("van.bay is the file itself.")
    assert notice.text == "van.bay is the file itself."
    press(notice, CLOSE)
    assert notice.text == "The disk is full."
    press(notice, "Go on in another file")
    assert heard == ["Go on in another file"]
