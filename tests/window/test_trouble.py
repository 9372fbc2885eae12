"""When something breaks it is logged, the layout is saved aside, the person is told, and work goes on."""

import subprocess
import sys

import pytest
from tests.build import gear, layout
from tests.window.hands import CTRL

from bayboard.model.read import read
from bayboard.window import trouble
from bayboard.window.trouble import TROUBLE, Trouble


@pytest.fixture
def hands(open_window):
    found = open_window(layout(gear=[gear("A", 200, 200)]))
    TROUBLE.told, TROUBLE.set_aside = found.window.notice.tell, found.window.set_aside
    yield found
    TROUBLE.told = TROUBLE.set_aside = None
    TROUBLE.forget()


def test_a_painting_that_breaks_leaves_the_rest_alone(hands, monkeypatch):
    def broken(*_):
        raise RuntimeError("the brush fell")

    monkeypatch.setattr("bayboard.window.wall_view.paint_live", broken)
    hands.picture()
    assert "Something went wrong" in hands.window.notice.text
    monkeypatch.undo()
    hands.picture()
    hands.drag_mm((200, 200), (300, 300), CTRL)
    assert hands.gear("A").at == pytest.approx((300, 300), abs=1e-6)


def test_the_layout_is_saved_aside_as_it_was(hands, tmp_path):
    hands.drag_mm((200, 200), (300, 300))
    TROUBLE.report(RuntimeError("an act broke"))
    (aside,) = (tmp_path / "data" / "set aside").glob("*.json")
    assert read(aside.read_text(encoding="utf-8")) == hands.layout
    assert str(aside) in hands.window.notice.text


def test_the_same_fault_again_is_told_once(tmp_path):
    told = []
    one = Trouble()
    one.told, one.set_aside = told.append, lambda: tmp_path
    for _ in range(3):
        try:
            raise ValueError("again")
        except ValueError as error:
            one.report(error)
    assert len(told) == 1


def test_a_save_that_fails_too_is_told_and_harmless():
    told = []
    one = Trouble()

    def full():
        raise OSError("the disk is full")

    one.told, one.set_aside = told.append, full
    one.report(ValueError("first"))
    assert "save it now" in told[0]


def test_an_exception_in_a_slot_is_logged_and_the_program_goes_on(tmp_path):
    code = f"""
import os, sys
os.environ["QT_QPA_PLATFORM"] = "offscreen"
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from bayboard.window import trouble
app = QApplication([])
trouble.watch(Path({str(tmp_path)!r}))
told = []
trouble.TROUBLE.told = told.append
def broken(): raise RuntimeError("a slot broke")
QTimer.singleShot(0, broken)
QTimer.singleShot(20, app.quit)
app.exec()
print(len(told), "went on")
"""
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "1 went on"
    log = (tmp_path / "bayboard.log").read_text(encoding="utf-8")
    assert "a slot broke" in log
    assert "Traceback" in log


def test_an_exception_while_a_painter_is_open_does_not_end_the_process():
    # a painter that is left open when an exception flies ends in a segmentation fault
    code = """
import os
os.environ["QT_QPA_PLATFORM"] = "offscreen"
from bayboard.window.app import application
from bayboard.window.canvas import Canvas
from bayboard.window.theme import LIGHT
app = application()
class Broken(Canvas):
    layered = False
    theme = LIGHT
    def paint_live(self, p):
        raise RuntimeError("broken")
view = Broken()
view.resize(200, 100)
view.show()
for _ in range(5):
    view.grab()
    app.processEvents()
print("still here")
"""
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout.strip()) == (0, "still here")


def test_a_log_that_cannot_be_written_stops_nothing(tmp_path, monkeypatch):
    (tmp_path / "file").write_text("not a folder", encoding="utf-8")
    monkeypatch.setattr(trouble.LOG, "handlers", [])
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    trouble.watch(tmp_path / "file" / "log")
    trouble.LOG.error("said to stderr instead")
