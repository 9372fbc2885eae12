"""The whole check of a job file, once a day and after a crash: beside the window, which never waits."""

import contextlib
from collections.abc import Callable

from PySide6.QtCore import QObject, QThreadPool, QTimer, Signal

from bayboard.model.refused import Refused
from bayboard.store.job_file import JobFile
from bayboard.window.workplace import Workplace

WAIT = 3_000  # ms after the opening: first the person, then the check


class WholeCheck(QObject):
    """Reads a job file whole in a thread of its own; `harmed` carries the sentences of what is not whole."""

    began = Signal()
    ended = Signal()
    harmed = Signal(object)  # sentences, at least one
    _found = Signal(object, object)  # the file, its sentences; from the thread to the window

    def __init__(self, place: Workplace, parent: QObject) -> None:
        super().__init__(parent)
        self.place = place
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(WAIT)
        self._timer.timeout.connect(self.begin)
        self._found.connect(self._tell)
        place.opened.connect(self._wait)

    def _wait(self) -> None:
        self._timer.stop()
        file = self.place.job.file
        if file is not None and file.check_due:
            self._timer.start()

    def begin(self) -> None:
        """Begin to read the file on the Wall."""
        job = self.place.job
        file = job.file
        if file is not None:
            self.began.emit()
            QThreadPool.globalInstance().start(_Reading(job.examine, file, self._found.emit).run)

    def _tell(self, file: JobFile, sentences: tuple[str, ...]) -> None:
        self.ended.emit()
        if file is not self.place.job.file:
            return  # another vehicle is on the Wall by now
        if sentences:
            self.harmed.emit(sentences)
        else:
            with contextlib.suppress(Refused):  # it is checked again tomorrow, or now if that is not written
                file.was_checked()


class _Reading:
    """One reading; it holds what the thread needs, and nothing of the window but the way back."""

    def __init__(
        self,
        examine: Callable[[], tuple[str, ...]],
        file: JobFile,
        found: Callable[[JobFile, tuple[str, ...]], None],
    ) -> None:
        self.examine = examine
        self.file = file
        self.found = found

    def run(self) -> None:
        """Read it and send what is found; the window may be gone by then."""
        try:
            sentences = self.examine()
        except Exception as error:  # a reading that breaks must be told, not end the thread unseen
            sentences = (f"It could not be read whole ({type(error).__name__}).",)
        with contextlib.suppress(RuntimeError):
            self.found(self.file, sentences)
