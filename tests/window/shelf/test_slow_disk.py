"""A disk that does not answer holds nobody up: what is known is shown, the window works on."""

import threading
import time

import pytest
from tests.build import layout

from bayboard.job.shelf import open_shelf
from bayboard.store.shelf import Shelf
from bayboard.window.last import data_folder
from bayboard.window.shelf.looking import Looking
from bayboard.window.shelf.stage import add_shelf


class Stuck(Shelf):
    """A shelf whose disk answers when it is let go."""

    def __init__(self, gate):
        super().__init__(data_folder() / "shelf.sqlite3")
        self.gate = gate

    def look_over(self, folders, files=()):
        self.gate.wait(20.0)
        yield from super().look_over(folders, files)


@pytest.fixture
def gate():
    opened = threading.Event()
    yield opened
    opened.set()


def test_what_is_known_hangs_there_while_the_disk_is_waited_for(put, folder, open_window, qtbot, gate):
    put("Alder")
    known = open_shelf(data_folder())
    known.find("", [folder])
    known.close()
    hands = open_window(layout())
    stage = add_shelf(hands.window, lambda: Stuck(gate))
    start = time.monotonic()
    stage.open()
    assert time.monotonic() - start < 1.0
    qtbot.waitUntil(lambda: len(stage.desk.shown) == 1, timeout=5_000)
    assert stage.desk.share < 1.0 and "looked over" in stage.line.phrase()
    hands.type("alder")
    assert len(stage.desk.shown) == 1
    gate.set()
    qtbot.waitUntil(lambda: stage.desk.share == 1.0, timeout=10_000)
    stage.desk.end()


def test_a_look_that_is_let_go_tells_nothing_more(put, folder, qtbot, gate):
    put("Alder")
    looking = Looking(lambda: Stuck(gate))
    seen = []
    looking.seen.connect(lambda vehicles, share: seen.append(share))
    looking.start((folder,), ())
    looking.end()
    gate.set()
    qtbot.wait(200)
    assert seen == []


def test_a_shelf_that_breaks_is_reported_and_leaves_the_window_alone(folder, open_window, qtbot):
    from bayboard.window.trouble import TROUBLE

    told = []
    hands = open_window(layout())
    TROUBLE.told = told.append

    def broken():
        raise RuntimeError("no shelf")

    stage = add_shelf(hands.window, broken)
    stage.open()
    qtbot.waitUntil(lambda: bool(told), timeout=5_000)
    stage.put_away()
    assert hands.window.stage == "Arrange"
    TROUBLE.told = None
