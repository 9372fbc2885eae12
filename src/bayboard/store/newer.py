"""A file of a newer form: its notes and pictures are shown, whatever else is in it."""

from pathlib import Path
from typing import Any

from bayboard.model.refused import Refused
from bayboard.store.base import connected
from bayboard.store.revisions import tidy
from bayboard.store.sealed import is_time
from bayboard.store.troubles import Kept, Newer

_MOST = 1_000  # revisions
_LARGEST_PICTURE = 200_000  # bytes
_SHOWN = {
    "number": "number",
    "kept": "substr(kept, 1, 40)",
    "note": "substr(note, 1, 2000)",
    "picture": f"CASE WHEN length(picture) <= {_LARGEST_PICTURE} THEN picture END",
}


def refused(path: Path, target: Path) -> Newer:
    """Return the refusal of a newer file with what could be read of its revisions."""
    try:
        return Newer(path, _kept(target))
    except Refused:
        return Newer(path, ())


def _kept(target: Path) -> tuple[Kept, ...]:
    base = connected(target, look=True)
    try:
        if not base.one("SELECT 1 FROM sqlite_master WHERE name = 'revision' AND sql LIKE 'CREATE TABLE%'"):
            return ()  # a view or a foreign table could do anything
        there = {str(row[1]) for row in base.all("PRAGMA table_info(revision)")}
        columns = [shown if name in there else "NULL" for name, shown in _SHOWN.items()]
        question = f"SELECT {', '.join(columns)} FROM revision LIMIT {_MOST}"
        found = [_one(*row) for row in base.all(question)]
    finally:
        base.close()
    return tuple(kept for kept in found if kept is not None)


def _one(number: Any, kept: Any, note: Any, picture: Any) -> Kept | None:
    if not isinstance(number, int):
        return None
    return Kept(
        number,
        kept if is_time(kept) else "",
        tidy(note) if isinstance(note, str) else "",
        picture if isinstance(picture, bytes) else None,
    )
