"""The context menu: at most seven lines, verb first, the key at the right; worked by keys."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from tests.build import gear, layout

from bayboard.window.keys import BINDINGS, OTHERS
from bayboard.window.menu import lines


@pytest.fixture
def hands(open_window):
    waiting = gear("C", 0, 0) | {"at": None}
    return open_window(layout(gear=[gear("A", 200, 200), gear("B", 303, 200), waiting]))


def open_by_keys(hands, widget):
    widget.setFocus()
    at = widget.mapToGlobal(QPoint(1, 1))
    QApplication.sendEvent(widget, QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(1, 1), at))
    return hands.window.menu


def told(menu):
    return [action.text() for action in menu.actions()]


CHOSEN = {"none": (), "one": ("A",), "many": ("A", "B"), "waiting": ("C",)}


@pytest.mark.parametrize("chosen", CHOSEN.values(), ids=CHOSEN.keys())
def test_a_menu_has_seven_lines_at_most_and_names_keys_that_do_it(hands, chosen):
    hands.place.select(chosen)
    shown = {key for binding in BINDINGS for key in binding.shown.split(", ")} | {k for k, _ in OTHERS}
    found = lines(hands.place)
    assert 3 <= len(found) <= 7
    assert all(act and words[0].isupper() for act, words, _ in found)
    assert {key for *_, key in found} <= shown | {"", "0", "Ctrl S"}


def test_the_menu_of_a_stand_in_is_worked_by_keys(hands):
    hands.place.select(("A",))
    menu = open_by_keys(hands, hands.wall)
    assert menu.isVisible() and told(menu)[0] == "Turn a quarter\tR"
    QTest.keyClick(menu, Qt.Key.Key_Down)
    QTest.keyClick(menu, Qt.Key.Key_Return)
    assert hands.gear("A").turn == 90


def test_the_menu_of_a_finding_does_what_its_row_offers(hands):
    rows = hands.window.findings.list
    menu = open_by_keys(hands, rows)
    words = told(menu)
    assert len(words) <= 7 and words[-1] == "Next finding\tN"
    next(a for a in menu.actions() if a.text() == "Show it on the Wall").trigger()
    menu.close()
    assert set(hands.place.selected) == {"A", "B"}


def test_the_menu_paints_its_lines(hands):
    hands.place.select(("A",))
    menu = open_by_keys(hands, hands.wall)
    paper = menu.grab().toImage()
    row = menu.actionGeometry(menu.actions()[0])
    inks = {paper.pixelColor(x, row.center().y()).name() for x in range(row.left(), row.right())}
    assert len(inks) > 4  # letters, not bare paper
