"""Who has a job file open: told by the file, and by whether that program still runs."""

import getpass
import os
import platform
import secrets
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import psutil

from bayboard.store.base import Base, Row
from bayboard.store.sealed import is_time, now
from bayboard.store.sentences import path_words
from bayboard.store.troubles import Held, Holder

_LONGEST = 40  # letters of a name that a sentence repeats
_SAME_START = 60.0  # s; a clock that was set does not make another program of one
_NOBODY = "UPDATE holder SET token = NULL, user = NULL, host = NULL, pid = NULL, started = NULL, since = NULL"
_open_here: set[str] = set()  # tokens of the files that this program has open


@dataclass(frozen=True, slots=True)
class Hold:
    """What a program writes into the file that it holds."""

    token: str
    user: str
    host: str
    pid: int
    started: float
    since: str


def held_by(base: Base) -> Hold | None:
    """Return who the file says holds it, running or not; None for nobody."""
    row = base.one("SELECT token, user, host, pid, started, since FROM holder WHERE one = 1")
    return None if row is None or row[0] is None else _hold(row)


def runs(hold: Hold) -> bool | None:
    """Return whether the program that holds the file still runs; None when it cannot be told from here."""
    if hold.host != host():
        return None
    if hold.pid == os.getpid() and abs(hold.started - _started(os.getpid())) < _SAME_START:
        return hold.token in _open_here
    try:
        process = psutil.Process(hold.pid)
        ended = process.status() == psutil.STATUS_ZOMBIE  # and its parent has not asked after it yet
        return not ended and abs(hold.started - process.create_time()) < _SAME_START
    except psutil.NoSuchProcess:
        return False
    except psutil.Error:
        return True


def refuse_held(base: Base) -> None:
    """Raise `Held` when another program has the file open, or when that cannot be told from here."""
    other = held_by(base)
    if other is not None and runs(other) is not False:
        raise held(base.path, other)


def take(base: Base, hold: Hold) -> None:
    """Write into the file who holds it."""
    base.do(
        "UPDATE holder SET token = ?, user = ?, host = ?, pid = ?, started = ?, since = ? WHERE one = 1",
        hold.token,
        hold.user,
        hold.host,
        hold.pid,
        hold.started,
        hold.since,
    )
    _open_here.add(hold.token)


def release(base: Base, token: str) -> None:
    """Let the file go, if it is still held with that token."""
    base.do(f"{_NOBODY} WHERE one = 1 AND token = ?", token)


def clear(base: Base) -> None:
    """Let nobody hold the file, whoever did."""
    base.do(_NOBODY)


def forget(token: str) -> None:
    """Know that this program no longer has the file open."""
    _open_here.discard(token)


def own_hold() -> Hold:
    """Return what this program writes when it takes a file."""
    pid = os.getpid()
    return Hold(secrets.token_hex(16), _user(), host(), pid, _started(pid), now())


def held(path: Path, hold: Hold) -> Held:
    """Return the sentence for a file that is held: who, where, since when."""
    what = f"it is open{_since(hold.since)} on {hold.host} by {hold.user}"
    return Held(
        path_words(path),
        what,
        "Look at it, or close it there",
        Holder(hold.user, hold.host, hold.since),
    )


def host() -> str:
    """Return this computer's name."""
    return _plain(platform.node(), "a computer without a name")


def _since(since: str) -> str:
    """Return " since 14:02", with the day when it was not today; nothing for a time that is none."""
    if not is_time(since):
        return ""
    local = datetime.fromisoformat(since).astimezone()
    today = local.date() == datetime.now(UTC).astimezone().date()
    return local.strftime(" since %H:%M" if today else " since %Y-%m-%d %H:%M")


def _hold(row: Row) -> Hold:
    token, user, host_name, pid, started, since = row
    return Hold(
        str(token),
        _plain(user, "somebody"),
        _plain(host_name, "another computer"),
        pid if isinstance(pid, int) and 0 < pid < 2**31 else 0,
        started if isinstance(started, float) else 0.0,
        since if is_time(since) else "",
    )


def _plain(text: object, otherwise: str) -> str:
    shown = "".join(letter for letter in str(text or "") if letter.isprintable())[:_LONGEST].strip()
    return shown or otherwise


def _started(pid: int) -> float:
    return psutil.Process(pid).create_time()


def _user() -> str:
    try:
        return _plain(getpass.getuser(), "somebody")
    except (OSError, KeyError, ImportError):
        return "somebody"
