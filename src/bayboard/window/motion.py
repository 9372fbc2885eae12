"""Motion: a value eased from one figure to another within 150 ms, so that one sees what was done.

Nothing waits for it: what an act does to the layout is done before the motion begins.
"""

from collections.abc import Callable

from PySide6.QtCore import QEasingCurve, QObject, QVariantAnimation

from bayboard.window.wishes import reduced_motion

LIFT, SETTLE, SNAP, CURE, LEVER = 90, 80, 80, 150, 150  # ms
LONGEST = 150  # ms; whatever is asked for


class _Set:
    """What is set for this run of the program: None is as the person and the desktop wish."""

    moving: bool | None = None


def choose(moving: bool | None) -> None:
    """Have motion, have none, or (None) do as the person and the desktop wish."""
    _Set.moving = moving


def wanted() -> bool:
    """Return whether anything is to move at all."""
    return not reduced_motion() if _Set.moving is None else _Set.moving


class Ease(QObject):
    """One value on its way.  `step` is called with it for each frame, and with its end always."""

    def __init__(self, owner: QObject, step: Callable[[float], None], now: float = 0.0) -> None:
        super().__init__(owner)
        self.now = now
        self._step = step
        self._run = QVariantAnimation(self)
        self._run.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._run.valueChanged.connect(self._take)

    @property
    def running(self) -> bool:
        """Return whether the value is still on its way."""
        return self._run.state() == QVariantAnimation.State.Running

    def run(self, ms: int, end: float = 1.0, start: float | None = None) -> None:
        """Ease from `start`, or from where the value is now, to `end`; at once where no motion is wanted."""
        self._run.stop()
        begin = self.now if start is None else start
        if not wanted() or begin == end:
            self._take(end)
            return
        self._run.blockSignals(True)  # a new end by itself would tell of a value half-way
        self._run.setDuration(min(ms, LONGEST))
        self._run.setStartValue(float(begin))
        self._run.setEndValue(float(end))
        self._run.blockSignals(False)
        self._take(begin)
        self._run.start()

    def finish(self) -> None:
        """Go to the end at once."""
        if self.running:
            self._run.stop()
            self._take(self._run.endValue())

    def _take(self, value: float) -> None:
        self.now = value
        self._step(value)
