"""An open job file as SQLite sees it: asked in SQL, answering in rows or in one sentence.

Whatever is in the file, opening it runs no code of it, follows no path in it and takes no size from it.
"""

import contextlib
import sqlite3
from pathlib import Path, PurePath
from typing import Any

from bayboard.model.raw import LARGEST_FILE
from bayboard.model.refused import Refused
from bayboard.store.photo_kind import LARGEST_PHOTO
from bayboard.store.troubles import Damaged, damaged, sentence

Row = tuple[Any, ...]

_MOST_READ = 150_000_000  # bytes that one answer may have
_MOST_STEPS = 400  # times ten thousand steps of SQLite's machine that one answer may take

_DEFENSIVE = 1010  # SQLITE_DBCONFIG_DEFENSIVE of sqlite3.h, which Python 3.11 has no name for
_PATIENCE = 3.0  # s that a write waits for a reader to finish
_OLDEST = (3, 37, 0)
_LONGEST = LARGEST_FILE + 2_000_000  # bytes of a layout with its picture
_LARGEST = LARGEST_PHOTO + 100_000
_SHORT = 5_000_000  # bytes of a value in a list; a stored value has a million letters at most
_LIMITS = {
    sqlite3.SQLITE_LIMIT_LENGTH: _LARGEST,
    sqlite3.SQLITE_LIMIT_SQL_LENGTH: 20_000,
    sqlite3.SQLITE_LIMIT_COLUMN: 40,
    sqlite3.SQLITE_LIMIT_EXPR_DEPTH: 40,
    sqlite3.SQLITE_LIMIT_ATTACHED: 0,
    sqlite3.SQLITE_LIMIT_TRIGGER_DEPTH: 2,
    sqlite3.SQLITE_LIMIT_WORKER_THREADS: 0,
}
_ALWAYS = (
    "PRAGMA trusted_schema = OFF",
    "PRAGMA cell_size_check = ON",
    "PRAGMA mmap_size = 0",
    "PRAGMA foreign_keys = ON",
    "PRAGMA temp_store = MEMORY",
    "PRAGMA synchronous = EXTRA",  # FULL, and the folder once the journal is gone, which commits
    "PRAGMA fullfsync = ON",
)


class Base:
    """One connection to one file; every answer is read to its end, so that no lock outlives a question."""

    def __init__(self, path: Path, conn: sqlite3.Connection) -> None:
        self.path = path
        self.conn = conn
        self.at_work = False  # there is work in memory that a sentence has to speak of
        self._steps = 0
        conn.set_progress_handler(self._goes_on_too_long, 10_000)

    def one(self, question: str, *values: object) -> Row | None:
        """Return the first row, None when there is none; raise `Refused` when SQLite cannot."""
        rows = self.all(question, *values)
        return rows[0] if rows else None

    def all(self, question: str, *values: object) -> list[Row]:
        """Return every row; raise `Refused` when SQLite cannot, or a value is longer than any layout."""
        self.conn.setlimit(sqlite3.SQLITE_LIMIT_LENGTH, _LONGEST)
        return self._answer(question, values)

    def large(self, question: str, *values: object) -> list[Row]:
        """Return every row, with values as long as a photo may be."""
        self.conn.setlimit(sqlite3.SQLITE_LIMIT_LENGTH, _LARGEST)
        return self._answer(question, values)

    def _answer(self, question: str, values: tuple[object, ...]) -> list[Row]:
        self._steps = 0
        rows, read = [], 0
        try:
            with contextlib.closing(self.conn.execute(question, values)) as answer:
                for row in answer:
                    rows.append(row)
                    read += 100 + sum(len(value) for value in row if isinstance(value, str | bytes))
                    if read > _MOST_READ:
                        # pages that are shared by many rows make much of a small file
                        raise self.damaged("this job file is damaged")
        except (sqlite3.Error, OverflowError, UnicodeDecodeError) as error:
            raise self.said(error) from None
        return rows

    def few(self, most: int, question: str) -> list[Row]:
        """Return every row; raise `Damaged` for more, or longer values, than a list in a job file has."""
        self.conn.setlimit(sqlite3.SQLITE_LIMIT_LENGTH, _SHORT)
        rows = self._answer(f"{question} LIMIT {most + 1}", ())
        if len(rows) > most:
            raise self.damaged(f"this job file holds more than {most} rows of a kind")
        return rows

    def do(self, statement: str, *values: object) -> None:
        """Run a statement that answers nothing; raise `Refused` when SQLite cannot."""
        self.all(statement, *values)

    def said(self, error: Exception) -> Exception:
        """Return the sentence for what SQLite raised; a mistake of the caller stays what it is."""
        if isinstance(error, sqlite3.ProgrammingError):
            return error
        if isinstance(error, sqlite3.Error):
            return sentence(self.path, error, self.at_work)
        if isinstance(error, UnicodeDecodeError):
            return self.damaged("this job file is damaged")  # SQLite's own words repeat its bytes
        return self.damaged("this job file holds a number that cannot be")

    def damaged(self, what: str) -> Damaged:
        """Return the sentence for something in this file that is not as it was written."""
        return damaged(self.path, what)

    def _goes_on_too_long(self) -> bool:
        self._steps += 1
        return self._steps > _MOST_STEPS

    def close(self) -> None:
        """Let the file go."""
        with contextlib.suppress(sqlite3.Error):
            self.conn.close()


def connected(path: Path, look: bool) -> Base:
    """Return an open file that must exist; raise `Refused` when SQLite does not open it."""
    refuse_old_sqlite()
    whole = Path(path).resolve()
    try:
        conn = sqlite3.connect(uri_of(whole, look), uri=True, isolation_level=None, timeout=_PATIENCE)
    except sqlite3.Error as error:
        raise sentence(path, error, at_work=False) from None
    base = Base(path, conn)
    try:
        set_up(conn)
        if look:
            base.do("PRAGMA query_only = ON")
    except (sqlite3.Error, UnicodeDecodeError) as error:
        conn.close()
        raise base.said(error) from None
    return base


def refuse_old_sqlite() -> None:
    """Raise `Refused` where Python came with an SQLite that knows no strict tables."""
    if sqlite3.sqlite_version_info < _OLDEST:
        needed = ".".join(map(str, _OLDEST[:2]))
        raise Refused(
            "",
            f"this Python came with SQLite {sqlite3.sqlite_version}, and job files need {needed} or later",
            "Run Bayboard with another Python",
        )


def unconnected() -> Base:
    """Return a base in which nothing is found, for a file that SQLite does not open at all."""
    return Base(Path(), sqlite3.connect(":memory:"))


def uri_of(path: PurePath, look: bool) -> str:
    """Return the address by which SQLite opens an absolute path, whatever letters are in it."""
    address = path.as_uri()
    if path.drive.startswith("\\\\"):
        # SQLite takes no computer's name in an address; the share goes into the path
        address = address.replace("file://", "file:////", 1)
    return f"{address}?mode={'ro' if look else 'rw'}"


def set_up(conn: sqlite3.Connection) -> None:
    """Hold a connection to what a job file needs, before anything in the file is read."""
    for limit, most in _LIMITS.items():
        conn.setlimit(limit, most)
    if hasattr(conn, "setconfig"):  # Python 3.12 and later
        conn.setconfig(_DEFENSIVE, True)
    conn.text_factory = _text
    for statement in _ALWAYS:
        conn.execute(statement)


def _text(raw: bytes) -> str:
    return raw.decode("utf-8", "replace")
