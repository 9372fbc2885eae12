"""The form of a job file: the tables, and how a file says that it is one.

Wide columns stand last, so that listing a table never walks through them.  `seal` is the SHA-256 over the
row's other values; of a layout and a picture it takes their own SHA-256, so that a list of notes can be
trusted without reading a single layout.
"""

import sqlite3
from functools import cache
from pathlib import Path

from bayboard.store.base import Base

APPLICATION = int.from_bytes(b"BayB", "big")
FORM = 1
PAGE = 4096  # bytes

SCHEMA = (
    """CREATE TABLE holder (
 one INTEGER PRIMARY KEY CHECK (one = 1),
 writes INTEGER NOT NULL,
 checked TEXT,
 token TEXT,
 user TEXT,
 host TEXT,
 pid INTEGER,
 started REAL,
 since TEXT
) STRICT""",
    """CREATE TABLE meta (
 name TEXT PRIMARY KEY NOT NULL,
 value TEXT NOT NULL,
 seal TEXT NOT NULL
) STRICT""",
    """CREATE TABLE revision (
 number INTEGER PRIMARY KEY CHECK (number > 0),
 parent INTEGER REFERENCES revision (number),
 kept TEXT NOT NULL,
 note TEXT NOT NULL,
 sha256 TEXT NOT NULL,
 picture_sha256 TEXT,
 seal TEXT NOT NULL,
 picture BLOB,
 layout TEXT NOT NULL
) STRICT""",
    """CREATE TABLE draft (
 one INTEGER PRIMARY KEY CHECK (one = 1),
 parent INTEGER REFERENCES revision (number),
 changed TEXT NOT NULL,
 sha256 TEXT NOT NULL,
 at INTEGER NOT NULL,
 picture_sha256 TEXT,
 seal TEXT NOT NULL,
 picture BLOB,
 layout TEXT NOT NULL
) STRICT""",
    """CREATE TABLE state (
 number INTEGER PRIMARY KEY CHECK (number > 0),
 label TEXT NOT NULL,
 sha256 TEXT NOT NULL,
 seal TEXT NOT NULL,
 layout BLOB NOT NULL
) STRICT""",
    """CREATE TABLE photo (
 sha256 TEXT PRIMARY KEY NOT NULL,
 kind TEXT NOT NULL CHECK (kind IN ('jpg', 'png')),
 size INTEGER NOT NULL,
 data BLOB NOT NULL
) STRICT""",
    """CREATE TABLE print (
 number INTEGER PRIMARY KEY CHECK (number > 0),
 at TEXT NOT NULL,
 revision TEXT NOT NULL,
 paper TEXT NOT NULL,
 face TEXT NOT NULL,
 sheets TEXT NOT NULL,
 words TEXT NOT NULL,
 pages INTEGER NOT NULL,
 seal TEXT NOT NULL
) STRICT""",
    """CREATE TRIGGER revision_is_kept BEFORE UPDATE ON revision
BEGIN SELECT RAISE(ABORT, 'revisions stay as they were written; keep a new one'); END""",
    """CREATE TRIGGER revision_stays BEFORE DELETE ON revision
BEGIN SELECT RAISE(ABORT, 'revisions stay as they were written; keep a new one'); END""",
    """CREATE TRIGGER revision_follows BEFORE INSERT ON revision
WHEN NEW.number <= (SELECT coalesce(max(number), 0) FROM revision)
BEGIN SELECT RAISE(ABORT, 'revisions stay as they were written; keep a new one'); END""",
    """CREATE TRIGGER print_is_kept BEFORE UPDATE ON print
BEGIN SELECT RAISE(ABORT, 'prints stay as they were logged'); END""",
    """CREATE TRIGGER print_stays BEFORE DELETE ON print
BEGIN SELECT RAISE(ABORT, 'prints stay as they were logged'); END""",
    """CREATE TRIGGER print_follows BEFORE INSERT ON print
WHEN NEW.number <= (SELECT coalesce(max(number), 0) FROM print)
BEGIN SELECT RAISE(ABORT, 'prints stay as they were logged'); END""",
)

Entry = tuple[str, str, str, str | None]


def create(conn: sqlite3.Connection) -> None:
    """Make the tables in an empty file, which says from then on what it is."""
    conn.execute(f"PRAGMA page_size = {PAGE}")
    conn.execute("PRAGMA encoding = 'UTF-8'")
    conn.execute(f"PRAGMA application_id = {APPLICATION}")
    conn.execute(f"PRAGMA user_version = {FORM}")
    for statement in SCHEMA:
        conn.execute(statement)


@cache
def expected() -> tuple[Entry, ...]:
    """Return what the schema of a job file holds: type, name, table and SQL text of each entry."""
    conn = sqlite3.connect(":memory:")
    try:
        create(conn)
        return entries(Base(Path(":memory:"), conn))
    finally:
        conn.close()


def entries(base: Base) -> tuple[Entry, ...]:
    """Return what the schema of a file holds, in the order of names."""
    found = base.all("SELECT type, name, tbl_name, sql FROM sqlite_master ORDER BY name, type, sql")
    return tuple((kind, name, table, sql) for kind, name, table, sql in found)
