"""Motion: at most 150 ms, to its end in any case, and none where it is not wanted."""

import pytest
from PySide6.QtCore import QObject

from bayboard.window import calm, motion
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


@pytest.mark.parametrize("calm_desktop", [True, False])
def test_unless_the_person_chose_it_is_as_the_desktop_asks(monkeypatch, calm_desktop):
    monkeypatch.setattr(motion, "system_calm", lambda: calm_desktop)
    motion.choose(None)
    assert motion.wanted() is not calm_desktop
    motion.choose(calm_desktop)
    assert motion.wanted() is calm_desktop


@pytest.mark.parametrize(
    ("name", "text", "expected"),
    [
        ("kdeglobals", "[KDE]\nAnimationDurationFactor=0\n", True),
        ("kdeglobals", "[KDE]\nAnimationDurationFactor=0.7\n", False),
        ("gtk-4.0/settings.ini", "[Settings]\ngtk-enable-animations=false\n", True),
        ("gtk-3.0/settings.ini", "[Settings]\ngtk-enable-animations=1\n", False),
    ],
)
def test_a_free_desktop_says_it_in_one_of_three_places(tmp_path, monkeypatch, name, text, expected):
    path = tmp_path / name
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, encoding="utf-8")
    found = {name: str(path)}
    monkeypatch.setattr(calm.QStandardPaths, "locate", lambda _, asked: found.get(asked, ""))
    monkeypatch.setattr(calm.shutil, "which", lambda _: None)
    assert calm._free_desktop() is expected
