"""Long work: started, watched, stopped.

A task is a generator function of its payload: it yields how far it is, from 0 to 1, and returns its result.
Between two yields it can be stopped, whichever runner has it.
"""

from collections.abc import Callable, Generator
from typing import Protocol, TypeVar

P = TypeVar("P")
R = TypeVar("R")

Task = Callable[[P], Generator[float, None, R]]
Done = Callable[[R], None]
Progress = Callable[[float], None]


class Ticket:
    """A hold on work that was started."""

    def __init__(self) -> None:
        self._stopped = False

    @property
    def stopped(self) -> bool:
        """Return whether somebody asked for the work to stop."""
        return self._stopped

    def stop(self) -> None:
        """Ask the work to stop; `done` will not be called for it."""
        self._stopped = True


class Runner(Protocol):
    """Whoever runs a task: in place, or beside the window."""

    def start(self, task: Task[P, R], payload: P, done: Done[R], progress: Progress | None = None) -> Ticket:
        """Start the task; call `progress` on the way and `done` with the result, unless it is stopped."""
        ...


class InPlace:
    """Runs a task at once, to its end; `should_stop` is asked at every yield."""

    def __init__(self, should_stop: Callable[[], bool] | None = None) -> None:
        self._should_stop = should_stop or (lambda: False)

    def start(self, task: Task[P, R], payload: P, done: Done[R], progress: Progress | None = None) -> Ticket:
        """Run the task and return its ticket; an exception of the task comes out of here."""
        ticket = Ticket()
        result = finished(task(payload), ticket, self._should_stop, progress)
        if result is not None:
            done(result[0])
        return ticket


def finished(
    work: Generator[float, None, R],
    ticket: Ticket,
    should_stop: Callable[[], bool],
    progress: Progress | None = None,
) -> tuple[R] | None:
    """Return the result of a running task as a tuple of one, None when it was stopped."""
    while True:
        try:
            share = next(work)
        except StopIteration as end:
            return None if ticket.stopped else (end.value,)
        if progress is not None:
            progress(share)
        if ticket.stopped or should_stop():
            ticket.stop()
            work.close()
            return None
