"""Why a job file is not opened or not written: each a `Refused`, told apart where a caller decides on it."""

import sqlite3
from dataclasses import dataclass
from pathlib import Path

from bayboard.model.refused import Refused
from bayboard.store.sentences import path_words

_STILL_HERE = "Your work is still here"
_RESCUE = "What is whole in it can be rescued into a new file"


@dataclass(frozen=True, slots=True)
class Holder:
    """Who has a job file open: the user's name, the computer, and since when (UTC)."""

    name: str
    host: str
    since: str


@dataclass(frozen=True, slots=True)
class Kept:
    """A revision of a file that only shows its notes: what could not be read is None or empty."""

    number: int
    kept: str
    note: str
    picture: bytes | None


class Held(Refused):
    """Somebody else has the job file open."""

    def __init__(self, place: str, what: str, do: str, holder: Holder) -> None:
        super().__init__(place, what, do)
        self.holder = holder


class Newer(Refused):
    """The job file is of a form that this Bayboard does not know; `kept`: its notes and pictures."""

    def __init__(self, path: Path, kept: tuple[Kept, ...]) -> None:
        super().__init__(
            path_words(path), "this was made by a newer Bayboard", "It can be looked at, not changed"
        )
        self.kept = kept


class Damaged(Refused):
    """The job file, or the part of it that was asked for, does not hold what was written."""


class CutShort(Refused):
    """The last change was begun and not ended, and who only looks cannot take it back."""


class Changed(Refused):
    """The file is no longer as this window left it, so nothing is written over it."""


def damaged(path: Path, what: str) -> Damaged:
    """Return the sentence for a job file that does not hold what was written."""
    return Damaged(path_words(path), what, _RESCUE)


def cut_short(path: Path) -> CutShort:
    """Return the sentence for a file that is only looked at and has a change to be taken back."""
    return CutShort(
        path_words(path),
        "the last change in it was cut short",
        "Open it to work on it, which takes that change back",
    )


def moved(path: Path) -> Changed:
    """Return the sentence for a file that is no longer where it was."""
    return Changed(path_words(path), "this file is no longer there", "Put it back, or save a copy")


def sentence(path: Path, error: sqlite3.Error, at_work: bool = True) -> Refused:
    """Return what SQLite says of a file as one sentence; `at_work`: there is work that could be lost."""
    code = getattr(error, "sqlite_errorcode", None)
    if code is None:
        return damaged(path, "this job file holds text that cannot be read")
    if code == sqlite3.SQLITE_READONLY_ROLLBACK:
        return cut_short(path)
    if code == sqlite3.SQLITE_READONLY_DBMOVED:
        return moved(path)
    if code == sqlite3.SQLITE_READONLY_DIRECTORY:
        code = sqlite3.SQLITE_CANTOPEN
    said = _SAID.get(code & 0xFF)
    if said is not None:
        what, when_working, when_opening = said
        return Refused(path_words(path), what, f"{_STILL_HERE}; {when_working}" if at_work else when_opening)
    if code & 0xFF in _DAMAGE:
        return damaged(path, "this job file is damaged")
    name = getattr(error, "sqlite_errorname", "SQLITE_ERROR").removeprefix("SQLITE_").lower()
    return Refused(path_words(path), f"this job file cannot be used ({name})", "Try a copy of it")


# what it is, what to do when there is work in memory, what to do when the file is being opened
_SAID = {
    sqlite3.SQLITE_FULL: (
        "the disk is full",
        "free some room and keep again",
        "Free some room and open it again, or only look at it",
    ),
    sqlite3.SQLITE_IOERR: (
        "the disk does not take it",
        "see to the disk and keep again, or save a copy elsewhere",
        "See to the disk, or only look at it",
    ),
    sqlite3.SQLITE_READONLY: (
        "this file may only be read",
        "save a copy elsewhere, or only look at it",
        "Look at it, or work on a copy elsewhere",
    ),
    sqlite3.SQLITE_CANTOPEN: (
        "nothing may be written in that folder",
        "save a copy in another folder",
        "Look at it, or work on a copy in another folder",
    ),
    sqlite3.SQLITE_PERM: (
        "this file may not be opened",
        "save a copy elsewhere",
        "Ask its owner, or copy it",
    ),
    sqlite3.SQLITE_BUSY: (
        "another program is using this file",
        "wait a moment and keep again",
        "Wait a moment and open it again",
    ),
    sqlite3.SQLITE_LOCKED: (
        "another program is using this file",
        "wait a moment and keep again",
        "Wait a moment and open it again",
    ),
    sqlite3.SQLITE_PROTOCOL: (
        "this folder does not let files be locked",
        "save a copy in another folder",
        "Work on a copy in another folder",
    ),
    sqlite3.SQLITE_NOLFS: (
        "the disk does not take files so large",
        "save a copy elsewhere",
        "Work on a copy elsewhere",
    ),
    sqlite3.SQLITE_NOMEM: (
        "there is no memory left",
        "close other programs and keep again",
        "Close other programs and open it again",
    ),
}
_DAMAGE = {
    sqlite3.SQLITE_CORRUPT,
    sqlite3.SQLITE_NOTADB,
    sqlite3.SQLITE_FORMAT,
    sqlite3.SQLITE_TOOBIG,
    sqlite3.SQLITE_ERROR,
    sqlite3.SQLITE_MISMATCH,
    sqlite3.SQLITE_CONSTRAINT,
    sqlite3.SQLITE_INTERRUPT,
}
