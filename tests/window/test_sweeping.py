"""Garbage is collected in the window's thread, and only there."""

import gc
import weakref

import pytest
from PySide6.QtCore import QObject

from bayboard.window.sweeping import Sweeper


class Ring:
    """Something that only a collection takes away."""

    def __init__(self):
        self.me = self


@pytest.fixture
def sweeper(qapp):
    parent = QObject()
    made = Sweeper(parent)
    yield made
    made.stop()
    gc.disable()  # as the tests of the window have it


def test_python_does_not_collect_by_itself(sweeper):
    assert not gc.isenabled()


def test_what_is_due_is_collected(sweeper):
    ring = weakref.ref(Ring())
    heap = [[i] for i in range(gc.get_threshold()[0] + 10)]
    sweeper.sweep()
    assert heap and ring() is None


def test_nothing_is_collected_before_it_is_due(sweeper):
    gc.collect()
    ring = weakref.ref(Ring())
    sweeper.sweep()
    assert ring() is not None


def test_python_collects_again_once_it_is_stopped(sweeper):
    sweeper.stop()
    assert gc.isenabled()
