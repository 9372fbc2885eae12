"""Work beside the window: in a process of its own, in place where none can be had."""

import os
import subprocess
import sys
from concurrent.futures import Future
from contextlib import suppress

import psutil
import pytest
from tests.window.print.bench import wide

from bayboard.paper.options import Options
from bayboard.window.beside import Beside, whole
from bayboard.window.print.making import NotMade, Pressed, Sheets, lay_out, not_made, press
from bayboard.window.trouble import TROUBLE


@pytest.fixture
def beside(qapp):
    made = Beside()
    yield made
    made.close()


def plain(payload):
    """Return twice the payload."""
    yield 0.5
    return 2 * payload


def breaks(payload):
    """Break half-way."""
    yield 0.5
    raise KeyError(payload)


def test_the_process_gives_what_the_same_work_gives_in_place(beside, qtbot):
    asked, came = (wide(), Options("a4")), []
    beside.start(press, asked, came.append)
    beside.start(lay_out, asked, came.append)
    assert came == []  # nothing is done while one asks
    qtbot.waitUntil(lambda: len(came) == 2, timeout=20_000)
    assert isinstance(came[0], Pressed) and came[0] == whole(press, asked)
    assert isinstance(came[1], Sheets) and came[1] == whole(lay_out, asked)


class Executor:
    """Stands for a process pool: keeps futures for the test to end."""

    def __init__(self):
        self.futures = []

    def submit(self, function, *args):
        self.futures.append(Future())
        return self.futures[-1]

    def shutdown(self, wait, cancel_futures):
        self.closed = True


def test_a_result_that_was_called_off_is_dropped(beside, qapp):
    beside.process.pool, came = Executor(), []
    ticket = beside.start(plain, 4, came.append)
    ticket.stop()
    beside.process.pool.futures[0].set_result(8)
    qapp.processEvents()
    assert came == []


def test_a_process_that_dies_is_replaced_by_work_in_place(beside, qapp):
    from concurrent.futures.process import BrokenProcessPool

    beside.process.pool, came = Executor(), []
    beside.start(plain, 4, came.append)
    beside.process.pool.futures[0].set_exception(BrokenProcessPool("killed"))
    qapp.processEvents()
    assert came == [8]
    beside.start(plain, 5, came.append)
    assert came == [8, 10]


@pytest.mark.parametrize("here", [False, True])
def test_work_that_breaks_is_reported_and_said(beside, qapp, qtbot, monkeypatch, here):
    told, came = [], []
    monkeypatch.setattr(TROUBLE, "report", told.append)
    beside.process.here = here
    beside.process.pool = Executor()
    with qtbot.waitSignal(beside.broke, timeout=1000):
        beside.start(breaks, "x", came.append)
        if not here:
            beside.process.pool.futures[0].set_exception(KeyError("x"))
    assert came == [] and isinstance(told[0], KeyError)


def test_after_closing_nothing_arrives_any_more(beside, qapp):
    pool = beside.process.pool = Executor()
    came = []
    beside.start(plain, 4, came.append)
    beside.close()
    pool.futures[0].set_result(8)
    qapp.processEvents()
    assert came == [] and pool.closed


def test_a_refusal_comes_back_as_a_sentence_for_the_screen():
    refused = whole(lay_out, (wide(), Options("a4", margin=90.0)))
    assert isinstance(refused, NotMade) and refused.place == "--margin"
    assert refused.says[0].isupper() and "--margin" not in refused.says
    assert whole(press, (wide(), Options("a4", margin=90.0))) == refused


def test_a_place_in_the_layout_is_kept_in_the_sentence():
    from bayboard.model.refused import Refused

    made = not_made(Refused("board BD › outline", "needs 900 sheets", "Choose larger paper"))
    assert made.says == "Board BD › outline: needs 900 sheets. Choose larger paper."


def test_the_stage_is_loaded_without_the_fonts_of_the_paper():
    code = "import sys, bayboard.window.print.stage; sys.exit('reportlab' in sys.modules)"
    env = os.environ | {"QT_QPA_PLATFORM": "offscreen"}
    assert subprocess.run([sys.executable, "-c", code], env=env, check=False).returncode == 0


KILLED = """
import os
from bayboard.window.beside import Process

if __name__ == "__main__":
    print(Process().begun().submit(os.getpid).result(), flush=True)
    os._exit(1)
"""


def test_a_window_that_is_killed_leaves_no_process_behind(tmp_path):
    script = tmp_path / "killed.py"
    script.write_text(KILLED, encoding="utf-8")
    words = [sys.executable, str(script)]
    ran = subprocess.run(words, stdout=subprocess.PIPE, text=True, check=False, timeout=60)
    with suppress(psutil.NoSuchProcess):  # gone before anybody looked
        psutil.Process(int(ran.stdout)).wait(timeout=5)
