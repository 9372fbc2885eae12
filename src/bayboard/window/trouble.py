"""What happens when something breaks: it is logged, the layout saved aside, the person told; work goes on."""

import faulthandler
import logging
import sys
from collections.abc import Callable
from pathlib import Path
from types import TracebackType
from typing import TextIO

import platformdirs

LOG = logging.getLogger("bayboard")
_LARGEST_LOG = 1_000_000  # bytes; a longer log starts anew


class Trouble:
    """Where broken acts are reported.  One for the program; the window gives `told` and `set_aside`."""

    def __init__(self) -> None:
        self.told: Callable[[str], None] | None = None
        self.set_aside: Callable[[], Path | None] | None = None
        self._busy = False
        self._seen: set[str] = set()

    def report(self, error: BaseException) -> None:
        """Log an exception, save the layout aside and say so; the same fault again is only logged."""
        LOG.error("something went wrong", exc_info=error)
        where = _where(error)
        if self._busy or where in self._seen:
            return
        self._busy = True
        try:
            self._seen.add(where)
            self._tell(self._save())
        finally:
            self._busy = False

    def forget(self) -> None:
        """Let a fault that was told once be told again."""
        self._seen.clear()

    def _save(self) -> Path | None:
        try:
            return self.set_aside() if self.set_aside else None
        except Exception:  # nothing may break while a break is reported
            LOG.exception("the layout could not be saved aside")
            return None

    def _tell(self, aside: Path | None) -> None:
        kept = (
            f"Your layout is saved aside as {aside}." if aside else "Your layout is still here; save it now."
        )
        if self.told:
            self.told(f"Something went wrong in the last act. {kept} You can go on.")


TROUBLE = Trouble()


def _where(error: BaseException) -> str:
    """Return the kind of an exception and the line it came from."""
    trace = error.__traceback__
    while trace is not None and trace.tb_next is not None:
        trace = trace.tb_next
    place = f"{trace.tb_frame.f_code.co_filename}:{trace.tb_lineno}" if trace is not None else ""
    return f"{type(error).__name__} {place}"


def watch(folder: Path | None = None) -> None:
    """Log to the user's log folder, or to `folder`, and catch whatever no one else catches."""
    _open_log(folder)
    sys.excepthook = _caught
    if sys.stderr is not None and _has_handle(sys.stderr):
        faulthandler.enable()


def _has_handle(stream: TextIO) -> bool:
    try:
        return stream.fileno() >= 0
    except (OSError, ValueError, AttributeError):
        return False


def _caught(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
    if issubclass(kind, KeyboardInterrupt):
        sys.__excepthook__(kind, error, trace)
        return
    TROUBLE.report(error.with_traceback(trace))


def _open_log(folder: Path | None) -> None:
    if LOG.handlers:
        return
    handler: logging.Handler = logging.StreamHandler()
    try:
        folder = folder or Path(platformdirs.user_log_dir("Bayboard", appauthor=False))
        folder.mkdir(parents=True, exist_ok=True)
        path = folder / "bayboard.log"
        fresh = not path.exists() or path.stat().st_size > _LARGEST_LOG
        handler = logging.FileHandler(path, mode="w" if fresh else "a", encoding="utf-8")
    except OSError:
        pass  # a log that cannot be written must not stop the work: stderr it is
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(message)s"))
    LOG.addHandler(handler)
