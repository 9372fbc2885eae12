"""Lists under a finger: real touches push them, a tap is a click, resting asks for the menu."""

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtTest import QTest
from tests.build import gear, layout

from bayboard.window.gestures.gesture import HOLD

CLOSE = [gear(f"A{n}", 60 + 108 * (n % 8), 80 + 120 * (n // 8)) for n in range(24)]  # each 8 mm off the next


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=CLOSE))


@pytest.fixture
def findings(hands):
    hands.bar = hands.window.findings.scroll.verticalScrollBar()
    assert hands.bar.maximum() > 100
    return hands.window.findings


def inside(hands, area, x=60.0, y=100.0):
    return area.viewport().mapTo(hands.window, QPointF(x, y))


def push(hands, area, by):
    at = inside(hands, area)
    hands.fingers(at).drag(at + QPointF(0, by)).lift()


def test_a_finger_pushes_the_findings_as_far_as_it_goes(hands, findings):
    chosen = hands.place.finding
    push(hands, findings.scroll, -70)
    assert hands.bar.value() == pytest.approx(70, abs=1)
    push(hands, findings.scroll, 40)
    assert hands.bar.value() == pytest.approx(30, abs=1)
    assert hands.place.finding == chosen


def test_a_list_is_pushed_no_farther_than_its_ends(hands, findings):
    push(hands, findings.scroll, 80)
    assert hands.bar.value() == 0


def test_a_tap_goes_to_the_finding_under_it(hands, findings):
    row = findings.list.spots()[2]
    at = findings.list.mapTo(hands.window, row.rect.center())
    hands.fingers(at).move(at + QPointF(3, -4)).lift()
    assert hands.place.spoken_of() == row.row.finding


def test_a_finger_that_rests_asks_for_the_findings_menu_and_does_nothing_more(hands, findings, qtbot):
    row, asked = findings.list.spots()[2], []
    findings.list.menu_wanted.disconnect()
    findings.list.menu_wanted.connect(asked.append)
    finger = hands.fingers(findings.list.mapTo(hands.window, row.rect.center()))
    QTest.qWait(HOLD + 60)
    finger.drag(inside(hands, findings.scroll)).lift()
    assert len(asked) == 1
    assert hands.bar.value() == 0
    assert hands.place.spoken_of() == row.row.finding


def test_two_fingers_down_and_up_click_nothing_twice(hands, findings):
    spoken = hands.place.spoken_of()
    at = inside(hands, findings.scroll)
    hands.fingers(at, at + QPointF(60, 0)).drag(at + QPointF(0, -60), at + QPointF(60, -60)).lift()
    assert hands.place.spoken_of() == spoken


def test_the_page_of_why_is_pushed_and_its_fields_take_a_tap(open_window):
    hands = open_window(layout(gear=CLOSE), size=(1280, 800))
    page = hands.window.findings.page
    hands.window.findings.tell_why(next(f for f in hands.place.verdict.findings if f.rule == "gap"))
    field = next(line.field for line in page.body.lines if line.field is not None)
    hands.app.processEvents()
    page.scroll.ensureWidgetVisible(field)
    hands.fingers(field.mapTo(hands.window, QPointF(field.rect().center()))).lift()
    assert field.hasFocus()
    bar = page.scroll.verticalScrollBar()
    bar.setValue(bar.maximum())
    assert bar.value() > 20
    push(hands, page.scroll, 30)
    assert bar.value() == pytest.approx(bar.maximum() - 30, abs=1) or bar.value() == 0
