"""The index of the shelf: a table beside the user's other data that can be made anew at any time.

A broken index, one of another form, or one that somebody keeps locked is no reason to say anything: it is
thrown away and begun again, in memory where it cannot be in the file.  A row whose sum does not agree is
not there.
"""

import contextlib
import sqlite3
import zlib
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar

from bayboard.store.found import Found

FORM = 1
_FOUND = "file, changed, words, told, sum"
APPLICATION = int.from_bytes(b"BayS", "big")
PATIENCE = 1.0  # s that another program's write is waited for
MEMORY = ":memory:"
_SIDES = ("", "-journal", "-wal", "-shm")
_TABLES = (
    """CREATE TABLE IF NOT EXISTS vehicle (
 file TEXT PRIMARY KEY NOT NULL,
 folder TEXT NOT NULL,
 mtime INTEGER NOT NULL,
 size INTEGER NOT NULL,
 changed TEXT NOT NULL,
 words BLOB NOT NULL,
 told BLOB NOT NULL,
 sum INTEGER NOT NULL
) STRICT""",
    "CREATE INDEX IF NOT EXISTS vehicle_in ON vehicle (folder, file, mtime, size)",
    "CREATE TABLE IF NOT EXISTS picture (file TEXT PRIMARY KEY NOT NULL, png BLOB NOT NULL) STRICT",
    f"PRAGMA application_id = {APPLICATION}",
    f"PRAGMA user_version = {FORM}",
)

Stamp = tuple[int, int]  # time of change in ns, size in bytes
A = TypeVar("A")


@dataclass(frozen=True, slots=True)
class Entry:
    """What the index stores of a file; `stamp` is what the file had when it was read."""

    folder: str
    stamp: Stamp
    found: Found
    picture: bytes | None


class Index:
    """The rows of the index; what SQLite cannot do with it is done with a new one."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._conn = self._opened()

    # --- questions ---

    def stamps(self, folders: Sequence[str]) -> dict[str, Stamp]:
        """Return the stamp of each file that is known in the folders."""
        asked = _in("SELECT file, mtime, size FROM vehicle WHERE folder", folders)
        return {file: (mtime, size) for file, mtime, size in self._all(*asked)}

    def stamp(self, file: str) -> Stamp | None:
        """Return the stamp of a file, None when it is not known."""
        rows = self._all("SELECT mtime, size FROM vehicle WHERE file = ?", (file,))
        return rows[0] if rows else None

    def vehicles(self, folders: Sequence[str]) -> list[Found]:
        """Return what is known in the folders, in no order."""
        asked = _in(f"SELECT {_FOUND} FROM vehicle WHERE folder", folders)
        return [Found(*row[:4]) for row in self._all(*asked) if _sum(*row[:4]) == row[4]]

    def vehicle(self, file: str) -> Found | None:
        """Return what is known of a file."""
        rows = self._all(f"SELECT {_FOUND} FROM vehicle WHERE file = ?", (file,))
        return Found(*rows[0][:4]) if rows and _sum(*rows[0][:4]) == rows[0][4] else None

    def picture(self, file: str) -> bytes | None:
        """Return the picture of a vehicle, None when it has none."""
        if not is_spelled(file):
            return None
        rows = self._all("SELECT png FROM picture WHERE file = ?", (file,))
        return rows[0][0] if rows and isinstance(rows[0][0], bytes) else None

    # --- changes ---

    def put(self, entries: Iterable[Entry]) -> None:
        """Store what was read, in place of what was known of those files."""
        listed = list(entries)

        def write(conn: sqlite3.Connection) -> None:
            """Write all rows in one transaction."""
            with conn:
                conn.executemany(
                    "INSERT OR REPLACE INTO vehicle VALUES (?, ?, ?, ?, ?, ?, ?, ?)", map(_row, listed)
                )
                conn.executemany("DELETE FROM picture WHERE file = ?", [(e.found.file,) for e in listed])
                drawn = [(e.found.file, e.picture) for e in listed if e.picture is not None]
                conn.executemany("INSERT INTO picture VALUES (?, ?)", drawn)

        self._do(write)

    def forget(self, files: Iterable[str]) -> None:
        """Let go of files that are no longer there."""
        gone = [(file,) for file in files]

        def write(conn: sqlite3.Connection) -> None:
            """Delete all rows in one transaction."""
            with conn:
                conn.executemany("DELETE FROM vehicle WHERE file = ?", gone)
                conn.executemany("DELETE FROM picture WHERE file = ?", gone)

        self._do(write)

    def begin_anew(self) -> None:
        """Let go of the index that is there and begin one in memory."""
        self.close()
        self._conn = self._begun(in_memory=True)

    def close(self) -> None:
        """Let the index go."""
        with contextlib.suppress(sqlite3.Error):
            self._conn.close()

    # --- how ---

    def _all(self, question: str, values: Sequence[object]) -> list[Any]:
        return self._do(lambda conn: conn.execute(question, values).fetchall())

    def _do(self, act: Callable[[sqlite3.Connection], A]) -> A:
        """Do it; when SQLite cannot, with an index begun anew, and last in memory."""
        try:
            return act(self._conn)
        except sqlite3.Error as error:
            self.close()
            self._conn = self._begun(in_memory=_in_use(error))
        try:
            return act(self._conn)
        except sqlite3.Error:
            self.close()
            self._conn = self._begun(in_memory=True)
        return act(self._conn)

    def _opened(self) -> sqlite3.Connection:
        try:
            return _connected(self.path)
        except (sqlite3.Error, OSError, ValueError) as error:
            return self._begun(in_memory=_in_use(error))

    def _begun(self, in_memory: bool) -> sqlite3.Connection:
        """Return a new index in place of the one that is there, in memory where that cannot be."""
        if not in_memory:
            with contextlib.suppress(sqlite3.Error, OSError, ValueError):
                for side in _SIDES:
                    self.path.with_name(self.path.name + side).unlink(missing_ok=True)
                return _connected(self.path)
        return _connected(None)


def _connected(path: Path | None) -> sqlite3.Connection:
    """Return an index that can be used; raise when the file at `path` is none."""
    if path is not None:
        path.parent.mkdir(parents=True, exist_ok=True)
    conn = sqlite3.connect(MEMORY if path is None else path, timeout=PATIENCE)
    try:
        conn.execute("PRAGMA trusted_schema = OFF")
        conn.execute("PRAGMA synchronous = NORMAL")
        _make_tables(conn)
    except BaseException:
        conn.close()
        raise
    return conn


def _make_tables(conn: sqlite3.Connection) -> None:
    """Make the tables in a new file; raise for a file that is no index of this form."""
    (tables,) = conn.execute("SELECT count(*) FROM sqlite_master").fetchone()
    if not tables:
        # two programs may begin the same file at once: one makes the tables, the other finds them
        with conn:
            conn.execute("BEGIN IMMEDIATE")
            for statement in _TABLES:
                conn.execute(statement)
    said = tuple(conn.execute(f"PRAGMA {name}").fetchone()[0] for name in ("application_id", "user_version"))
    if said != (APPLICATION, FORM):
        raise sqlite3.DatabaseError("this is an index of another form")


def is_spelled(file: str) -> bool:
    """Return whether a path can be written in the index: some names on a disk are no text."""
    try:
        file.encode("utf-8")
    except UnicodeEncodeError:
        return False
    return True


def _in_use(error: Exception) -> bool:
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF
    return code in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)


def _in(question: str, folders: Sequence[str]) -> tuple[str, Sequence[object]]:
    return f"{question} IN ({', '.join('?' * len(folders))})", folders


def _row(entry: Entry) -> tuple[object, ...]:
    found = entry.found
    told = (found.changed, found.words, found.told)
    return (found.file, entry.folder, *entry.stamp, *told, _sum(found.file, *told))


def _sum(file: str, changed: str, words: bytes, told: bytes) -> int:
    return zlib.crc32(told, zlib.crc32(words, zlib.crc32(f"{file}\0{changed}".encode("utf-8", "replace"))))
