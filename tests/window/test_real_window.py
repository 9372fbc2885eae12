"""The window on a real X server: events go to the window's handle, as the server would send them."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from tests.build import gear, layout

pytestmark = pytest.mark.xcb
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=[gear("A", 200, 200), gear("B", 700, 200)]))


def _drag(hands, start, end):
    handle = hands.frame.windowHandle()
    points = [hands.window.mapTo(hands.frame, hands.px(*at).toPoint()) for at in (start, end)]
    QTest.mousePress(handle, LEFT, Qt.KeyboardModifier.NoModifier, points[0])
    for share in (0.2, 0.6, 1.0):
        QTest.mouseMove(handle, points[0] + QPoint(*(share * d for d in (points[1] - points[0]).toTuple())))
        QTest.qWait(20)
    QTest.mouseRelease(handle, LEFT, Qt.KeyboardModifier.NoModifier, points[1])
    hands.app.processEvents()


def test_it_is_a_real_server(qapp):
    assert QGuiApplication.platformName() == "xcb"


def test_a_stand_in_is_dragged_and_put_back_by_one_undo(hands):
    _drag(hands, (200, 200), (300, 260))
    x, y = hands.gear("A").at
    assert (x, y) == (pytest.approx(300, abs=6), pytest.approx(260, abs=6))
    QTest.keyClick(hands.frame.windowHandle(), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert hands.gear("A").at == (200, 200)


def test_the_picture_on_the_server_shows_the_stand_in(hands):
    shown = hands.frame.screen().grabWindow(hands.frame.winId()).toImage()
    spot = hands.window.mapTo(hands.frame, hands.px(180, 190).toPoint())
    assert shown.pixelColor(spot).name() == hands.picture().pixelColor(spot).name()
