"""Bayboard opened without a file: the last vehicle on the Wall, the shelf below it."""

import subprocess
import sys

import pytest
from PySide6.QtWidgets import QApplication

from bayboard.window.app import Opening
from bayboard.window.first_frame import Frame
from bayboard.window.last import remember
from bayboard.window.theme import LIGHT


@pytest.fixture
def opened(qapp, qtbot):
    """Return a function that opens the program on a path or None and returns its frame."""
    frames = []

    def run(path):
        frame = Frame(LIGHT, Opening(path).furnish)
        qtbot.addWidget(frame)
        frames.append(frame)
        frame.show()
        qtbot.waitUntil(lambda: frame.furniture is not None, timeout=10_000)
        frame.activateWindow()
        qtbot.wait(100)
        return frame.furniture

    yield run
    for frame in frames:
        shelf = frame.furniture.panes["Shelf"]
        shelf.desk.end()
        frame.furniture.place.job.close()
        frame.settled = True


def test_the_last_vehicle_hangs_on_the_wall_and_the_shelf_is_open(put, opened):
    put("Alder")
    remember(put("Birch"))
    window = opened(None)
    assert window.stage == "Shelf"
    assert window.place.layout.vehicle.name == "Birch"
    assert QApplication.focusWidget() is window.panes["Shelf"].line.field


def test_a_file_that_is_named_opens_without_the_shelf(put, opened):
    remember(put("Alder"))
    window = opened(str(put("Birch")))
    assert window.stage == "Arrange" and window.place.layout.vehicle.name == "Birch"


def test_the_first_time_there_is_the_first_start(folder, opened):
    window = opened(None)
    assert window.stage == "Arrange" and window.place.first_start


def test_a_last_vehicle_that_is_gone_leaves_the_shelf(put, opened):
    put("Alder")
    gone = put("Birch")
    remember(gone)
    gone.unlink()
    window = opened(None)
    assert window.stage == "Shelf" and window.place.first_start


def test_nothing_of_the_shelf_is_loaded_before_the_first_frame():
    code = (
        "import sys; import bayboard.window.app, bayboard.window.first_frame;"
        "print([n for n in sys.modules if 'shelf' in n or n in ('sqlite3', 'PIL', 'psutil', 'shapely')])"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "[]"
