"""Qt itself: a build that destroys None on this Python must never be installed."""

import subprocess
import sys

from PySide6.QtWidgets import QLabel


def test_qt_does_not_eat_none(qtbot):
    # measured on 6.12.0 with Python 3.11: one reference to None is lost with every call that returns nothing
    label = QLabel()
    qtbot.addWidget(label)
    label.setText("a")
    before = sys.getrefcount(None)
    for _ in range(500):
        label.setText("a")
    assert sys.getrefcount(None) - before > -50


def test_the_first_frame_loads_nothing_slow():
    slow = "('shapely', 'numpy', 'reportlab')"
    code = f"import sys, bayboard.window.app; print(*[m for m in {slow} if m in sys.modules])"
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout.split() == []
