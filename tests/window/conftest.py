"""Window tests run without a screen unless one is asked for; each has a window with hands to work it."""

import gc
import os
import tempfile
from itertools import count

import pytest

from bayboard.window.wishes import Wishes

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
# also for a window that outlives its test by a moment: nothing ever goes to the user's own shelf
os.environ["BAYBOARD_SHELF"] = tempfile.mkdtemp(prefix="bayboard-shelf-")


@pytest.fixture(autouse=True)
def application(qapp):
    """Have an application before any font is made, whichever test comes first: Qt crashes without one."""
    return qapp


@pytest.fixture(autouse=True)
def nothing_moves():
    """Have no motion unless a test asks for it: everything is where it belongs at once."""
    from bayboard.window import motion

    motion.choose(False)
    yield
    motion.choose(False)


@pytest.fixture(autouse=True)
def collected_here():
    """Collect windows that are gone in this thread alone.

    A worker thread that happens to collect one leaves its timers running with nobody to tell: Qt crashes.
    What was loaded before the first window lives to the end: set apart, it is not searched each time.
    """
    if gc.isenabled():
        gc.disable()
        gc.collect()
        gc.freeze()
    yield
    if next(TESTS) % 20 == 0:
        gc.collect()


TESTS = count(1)


@pytest.fixture(autouse=True)
def own_folders(tmp_path, monkeypatch):
    """Keep what the window remembers, logs, saves aside and puts on the shelf out of the user's folders."""
    import platformdirs

    monkeypatch.setattr(platformdirs, "user_data_dir", lambda *_, **__: str(tmp_path / "data"))
    monkeypatch.setattr(platformdirs, "user_config_dir", lambda *_, **__: str(tmp_path / "config"))
    monkeypatch.setattr(platformdirs, "user_log_dir", lambda *_, **__: str(tmp_path / "log"))
    monkeypatch.setattr(platformdirs, "user_documents_dir", lambda: str(tmp_path / "documents"))
    monkeypatch.setenv("BAYBOARD_SHELF", str(tmp_path / "shelf"))
    monkeypatch.setattr("bayboard.window.wishes._now", Wishes())


@pytest.fixture
def open_window(qapp, qtbot):
    """Return a function that opens a window on a layout and gives the hands for it."""
    from tests.window.hands import Hands

    from bayboard.window.trouble import TROUBLE

    made, broken = [], []
    TROUBLE.told = broken.append
    TROUBLE.forget()

    def opened(layout=None, size=(1600, 1000), first_start=False, path=None):
        hands = Hands(layout, size, first_start, path)
        made.append(hands)
        qtbot.addWidget(hands.frame)
        return hands

    yield opened
    for hands in made:
        hands.frame.settled = True
        hands.window.files.keeper.let_go()
    mine, TROUBLE.told = TROUBLE.told == broken.append, None
    assert not (mine and broken), "a painting broke; see the log above"
