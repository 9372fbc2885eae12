"""Who is told of changes, in order, whatever a listener raises."""

from collections.abc import Callable

from bayboard.job.change import Change

Callback = Callable[[Change], None]


class Telling:
    """The listeners of a job.  News made while news is told comes after it."""

    def __init__(self) -> None:
        self._callbacks: list[Callback] = []
        self._news: list[Change] = []
        self._busy = False

    @property
    def heard(self) -> bool:
        """Return whether anybody listens."""
        return bool(self._callbacks)

    def add(self, callback: Callback) -> Callable[[], None]:
        """Call `callback` with all news from now on; return a function that ends it."""
        self._callbacks.append(callback)
        return lambda: self._callbacks.remove(callback) if callback in self._callbacks else None

    def tell(self, news: Change) -> None:
        """Call every callback, whatever they raise; news made meanwhile is told after, in order."""
        self._news.append(news)
        if self._busy:
            return
        self._busy, raised = True, []
        try:
            while self._news:
                raised += _told(tuple(self._callbacks), self._news.pop(0))
        finally:
            self._busy = False
        if len(raised) == 1:
            raise raised[0]
        if raised:
            raise ExceptionGroup("several callbacks failed", raised)


def _told(callbacks: tuple[Callback, ...], news: Change) -> list[Exception]:
    raised: list[Exception] = []
    for callback in callbacks:
        try:
            callback(news)
        except Exception as error:
            raised.append(error)
    return raised
