"""What the tests of keeping share: job files, windows on them, another program that holds one."""

import subprocess
import sys
from contextlib import contextmanager
from pathlib import Path

from PySide6.QtCore import QPointF
from PySide6.QtTest import QTest
from tests.build import gear, layout

from bayboard.job.job import open_job
from bayboard.store.job_file import make_job_file
from bayboard.window.keeping import keeper

ENOUGH = keeper.REST + 250  # ms in which a change is written when hands rest
HOLDER = """
import sys
from pathlib import Path
from bayboard.store.job_file import open_job_file
with open_job_file(Path(sys.argv[1]), take="take" in sys.argv[2:]) as file:
    if "write" in sys.argv[2:]:
        file.set_meta("from", "elsewhere")
    print("held", flush=True)
    sys.stdin.read()
"""


def small(**more):
    """Return a small bay with one stand-in, A, at (200, 200)."""
    return layout(**({"gear": [gear("A", 200, 200)]} | more))


def job_file(path, keep=("first",), **more):
    """Make a job file with as many revisions as there are notes, each moved on a little; return its path."""
    from bayboard.edits.move_gear import MoveGear

    make_job_file(path, small(**more)).close()
    job = open_job(path)
    for at, note in enumerate(keep):
        if at:
            job.do(MoveGear(("A",), 1.0, 0.0))
        job.keep(note)
    job.close()
    return path


def window_on(open_window, path, **more):
    """Return the hands of a window in which a file was opened."""
    hands = open_window(first_start=True, **more)
    hands.window.files.open_path(path)
    hands.app.processEvents()
    return hands


def rest(ms=ENOUGH):
    """Let hands rest, so that what waits is written."""
    QTest.qWait(ms)


def answer(hands, word):
    """Press an answer of the notice."""
    button = next(b for b in hands.window.notice.buttons if b.text() == word)
    hands.click(button.mapTo(hands.window, QPointF(button.rect().center())))
    hands.app.processEvents()


def answers(hands):
    """Return the answers of the notice that stands, () for none."""
    notice = hands.window.notice
    return tuple(button.text() for button in notice.buttons) if notice.isVisible() else ()


def in_file(path):
    """Return the draft of a job file as it is on the disk."""
    job = open_job(path, look=True)
    try:
        return job.layout
    finally:
        job.close()


def state(hands):
    """Return what the strip says of the file, whatever it says of the last act."""
    return hands.window.strip.state()


@contextmanager
def held_elsewhere(path, *how):
    """Have another program hold a job file; `how`: "take" it over, "write" to it."""
    command = [sys.executable, "-c", HOLDER, str(path), *how]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as other:
        try:
            assert other.stdout.readline().strip() == "held"
            yield other
        finally:
            other.stdin.close()
            other.wait(20)


def shelf():
    """Return the job files on the shelf."""
    from bayboard.job.shelf import shelf_folder

    folder = Path(shelf_folder())
    return sorted(folder.glob("*.bay")) if folder.is_dir() else []
