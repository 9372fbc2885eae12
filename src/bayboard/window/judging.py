"""The rules' look at what is in the hand: a share of each frame, and the rest between two frames."""

from collections.abc import Callable
from math import inf
from time import monotonic

from PySide6.QtCore import QObject, QTimer, Signal

from bayboard.edits.edit import Edit
from bayboard.job.job import Job
from bayboard.rules.check import Verdict

SLICE = 0.006  # s that the rules may take of a frame, and of each pause between two
LONGEST = 1.5  # s of moving without a pause after which a frame waits for the rules after all


class Judging(QObject):
    """Previews edits of a job without letting the frame wait for its rules; `done` when they are."""

    done = Signal()

    def __init__(self, job: Callable[[], Job], parent: QObject) -> None:
        super().__init__(parent)
        self._job = job
        self._told: Verdict | None = None
        self._since = 0.0  # when what is shown was last judged, 0.0 while it is
        self._next = QTimer(self)
        self._next.setSingleShot(True)
        self._next.timeout.connect(self._go_on)

    def preview(self, edit: Edit) -> bool:
        """Show the job with an edit on top; return whether the rules have looked at all of it."""
        waits = self._since and monotonic() - self._since > LONGEST
        job = self._job()
        job.preview(edit, inf if waits else SLICE)
        if not job.judged:
            self._since = self._since or monotonic()
            self._next.start()
        return job.judged

    def told(self) -> Verdict:
        """Return the verdict of what is shown, or while that is being worked out the last one in full."""
        if self._told is None or self._job().judged:
            self._told = self._job().verdict
        return self._told

    def rest(self) -> None:
        """Know that the rules have looked at all."""
        self._told, self._since = self._job().verdict, 0.0
        self._next.stop()

    def _go_on(self) -> None:
        if self._job().judge(SLICE):
            self.done.emit()
        else:
            self._next.start()
