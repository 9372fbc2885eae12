"""Motion: at most 150 ms, to its end in any case, and none where it is not wanted."""

import pytest
from PySide6.QtCore import QObject

from bayboard.window import motion
from bayboard.window.motion import LONGEST, Ease


@pytest.fixture
def eased(qapp):
    owner = QObject()
    seen = []
    ease = Ease(owner, seen.append)
    ease.owner, ease.seen = owner, seen
    return ease


def test_without_motion_a_value_is_at_its_end_at_once(eased):
    eased.run(150, 1.0)
    assert eased.seen == [1.0]
    assert not eased.running


def test_with_motion_it_rises_steadily_to_its_end(eased, qtbot):
    motion.choose(True)
    eased.run(60, 1.0)
    assert eased.running
    qtbot.waitUntil(lambda: not eased.running, timeout=2000)
    assert eased.seen[-1] == 1.0
    assert eased.seen == sorted(eased.seen)
    assert len(eased.seen) >= 3


def test_no_motion_lasts_longer_than_150_ms(eased):
    motion.choose(True)
    eased.run(10_000, 1.0)
    assert eased._run.duration() == LONGEST == 150
    eased.finish()
    assert eased.seen[-1] == 1.0 and not eased.running


def test_a_second_motion_goes_on_from_where_the_first_was(eased):
    motion.choose(True)
    eased.run(150, 1.0)
    eased._run.setCurrentTime(75)
    half = eased.now
    eased.run(150, 0.0)
    assert 0.0 < half < 1.0
    assert eased._run.startValue() == half


@pytest.mark.parametrize("still", [True, False])
def test_unless_it_is_set_it_is_as_person_and_desktop_wish(monkeypatch, still):
    monkeypatch.setattr(motion, "reduced_motion", lambda: still)
    motion.choose(None)
    assert motion.wanted() is not still
    motion.choose(still)
    assert motion.wanted() is still
