"""Which job files this program has open, told by the files themselves and not by their names.

On POSIX systems, closing any handle of a file lets go every lock that the program has on it: no file that
is open here may be opened and closed beside SQLite's back (https://www.sqlite.org/howtocorrupt.html, 2.2).
"""

from collections import Counter
from pathlib import Path
from threading import Lock

Identity = tuple[int, int]

_open: Counter[Identity] = Counter()
_guard = Lock()


def identity_of(path: Path) -> Identity:
    """Return what tells the file at `path` from any other; raise OSError when there is none."""
    there = path.stat()
    return there.st_dev, there.st_ino


def opens(identity: Identity) -> None:
    """Know that a file is open here once more."""
    with _guard:
        _open[identity] += 1


def closes(identity: Identity) -> None:
    """Know that a file is open here once less."""
    with _guard:
        _open[identity] -= 1
        if _open[identity] <= 0:
            del _open[identity]


def is_open_here(path: Path) -> bool:
    """Return whether the file at `path` is open in this program; False when there is none."""
    try:
        with _guard:
            return identity_of(path) in _open
    except (OSError, ValueError):
        return False
