"""Python's garbage is collected in the window's thread only.

Collected on a worker's thread, an object of Qt would leave its timers running with nobody to tell, and the
program would crash.
"""

import gc

from PySide6.QtCore import QObject, QTimer

PAUSE = 1000  # ms between two looks


class Sweeper(QObject):
    """Collects as often as Python itself would, but here; from when it is made until `stop`."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        gc.disable()
        self._timer = QTimer(self)
        self._timer.timeout.connect(self.sweep)
        self._timer.start(PAUSE)

    def sweep(self) -> None:
        """Collect the oldest generation that is due, with all younger ones."""
        counts, most = gc.get_count(), gc.get_threshold()
        due = [generation for generation in range(3) if counts[generation] > most[generation] > 0]
        if due:
            gc.collect(due[-1])

    def stop(self) -> None:
        """Leave it to Python again."""
        self._timer.stop()
        gc.enable()
