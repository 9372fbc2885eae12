"""Long work beside the window: in one process of its own, so that no frame waits for it."""

import os
from collections.abc import Callable
from concurrent.futures import Future
from multiprocessing import parent_process
from threading import Thread
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from bayboard.job.runner import Done, InPlace, P, Progress, R, Task, Ticket, finished
from bayboard.window.trouble import TROUBLE

if TYPE_CHECKING:
    from concurrent.futures import ProcessPoolExecutor


def whole(task: "Task[P, R]", payload: P) -> R | None:
    """Return the result of a task run to its end."""
    result = finished(task(payload), Ticket(), lambda: False)
    return None if result is None else result[0]


def ends_with_window() -> None:
    """Have this process end as soon as the window's has: one that was killed leaves none behind."""
    parent = parent_process()
    if parent is not None:
        Thread(target=_end_after, args=(parent.join,), daemon=True).start()


def _end_after(wait: Callable[[], None]) -> None:
    wait()
    os._exit(1)


class Process:
    """The one process beside the window; whoever has long work shares it.

    `here`: no process can be had, work is done in place.
    """

    def __init__(self) -> None:
        self.here = False
        self.pool: ProcessPoolExecutor | None = None

    def begun(self) -> "ProcessPoolExecutor":
        """Return its pool, started with the first call."""
        if self.pool is None:
            from concurrent.futures import ProcessPoolExecutor  # noqa: PLC0415  slow to load
            from multiprocessing import get_context  # noqa: PLC0415

            context = get_context("spawn")
            self.pool = ProcessPoolExecutor(1, mp_context=context, initializer=ends_with_window)
        return self.pool

    def lost(self) -> None:
        """Do all work in place from now on: the process died or could not be started."""
        self.pool, self.here = None, True

    def close(self) -> None:
        """Let the process go; a later task starts another."""
        pool, self.pool = self.pool, None
        if pool is not None:
            pool.shutdown(wait=False, cancel_futures=True)


class Beside(QObject):
    """A runner in the process beside the window.  Results arrive in the window's own thread.

    Where no process can be had, tasks are run in place.  `broke` says that a task of this runner raised:
    it was reported, and its `done` will not be called.
    """

    broke = Signal()
    _ended = Signal(object)

    def __init__(self, parent: QObject | None = None, process: Process | None = None) -> None:
        super().__init__(parent)
        self.process = process or Process()
        self._running: dict[Future[Any], tuple[Ticket, Task[Any, Any], Any, Done[Any]]] = {}
        self._ended.connect(self._take)

    def start(
        self, task: "Task[P, R]", payload: P, done: "Done[R]", progress: Progress | None = None
    ) -> Ticket:
        """Run the task in the process; its progress is not told."""
        if self.process.here:
            return self._in_place(task, payload, done)
        ticket = Ticket()
        try:
            future = self.process.begun().submit(whole, task, payload)
        except (OSError, RuntimeError):
            self.process.lost()
            return self._in_place(task, payload, done)
        self._running[future] = (ticket, task, payload, done)
        future.add_done_callback(self._tell)
        return ticket

    def _tell(self, future: "Future[Any]") -> None:
        """Pass the end of a task on to the window's thread; called in a thread of the pool."""
        try:
            self._ended.emit(future)
        except RuntimeError:
            return  # the window is gone

    def _take(self, future: "Future[Any]") -> None:
        ticket, task, payload, done = self._running.pop(future)
        if ticket.stopped or future.cancelled():
            return
        error = future.exception()
        if error is None:
            done(future.result())
        elif isinstance(error, OSError | RuntimeError):
            # the process died or could not be started: RuntimeError covers the broken pool
            self.process.lost()
            self._in_place(task, payload, done)
        else:
            TROUBLE.report(error)
            self.broke.emit()

    def _in_place(self, task: "Task[P, R]", payload: P, done: "Done[R]") -> Ticket:
        try:
            return InPlace().start(task, payload, done)
        except Exception as error:
            TROUBLE.report(error)
            self.broke.emit()
            return Ticket()

    def close(self) -> None:
        """Stop what runs and let the process go; a later task starts another."""
        for ticket, *_ in self._running.values():
            ticket.stop()
        self.process.close()
