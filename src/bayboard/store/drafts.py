"""The draft: what is worked on, as it is in the file."""

from dataclasses import dataclass, replace

from bayboard.store.base import Base, Row
from bayboard.store.sealed import hash_of, is_hash, is_time, now, seal
from bayboard.store.troubles import Damaged

_FACTS = "parent, changed, sha256, at, picture_sha256, seal"


@dataclass(frozen=True, slots=True)
class DraftRow:
    """The draft unread: its text in normal form, and the facts beside it."""

    parent: int | None
    changed: str
    at: int
    text: bytes
    picture: bytes | None

    @property
    def sha256(self) -> str:
        """Return the hash of the text."""
        return hash_of(self.text)


def read_row(base: Base) -> DraftRow:
    """Return the draft; raise `Refused` when its seal or hash is broken."""
    row = base.one(f"SELECT {_FACTS}, picture, layout FROM draft WHERE one = 1")
    if row is None:
        raise base.damaged("the draft is missing")
    found = whole(row)
    if found is None:
        raise base.damaged("the draft is damaged")
    return found if _has_parent(base, found.parent) else replace(found, parent=None)


def _has_parent(base: Base, parent: int | None) -> bool:
    try:
        return base.one("SELECT 1 FROM revision WHERE number = ?", parent) is not None
    except Damaged:
        return False


def whole(row: Row) -> DraftRow | None:
    """Return a row as a draft, None when its seal or hash is broken."""
    parent, changed, sha, at, drawn, sealed, picture, layout = row
    fine = (parent is None or isinstance(parent, int)) and is_time(changed) and is_hash(sha)
    fine = fine and isinstance(at, int) and isinstance(layout, str)
    if not fine or seal("draft", *row[:5]) != sealed or hash_of(layout.encode("utf-8")) != sha:
        return None
    drawing = picture if isinstance(picture, bytes) and hash_of(picture) == drawn else None
    return DraftRow(parent, changed, at, layout.encode("utf-8"), drawing)


def bare(base: Base) -> DraftRow | None:
    """Return a draft whose text has its hash, though what is told beside it is damaged; else None."""
    row = base.one("SELECT sha256, layout FROM draft WHERE one = 1")
    text = row[1].encode("utf-8") if row and isinstance(row[1], str) else b""
    return changed_now(None, 0, text, None) if row and hash_of(text) == row[0] else None


def facts(base: Base) -> tuple[int | None, int] | None:
    """Return parent and state of a draft whose text is damaged, None when they are, too."""
    row = base.one(f"SELECT {_FACTS} FROM draft WHERE one = 1")
    if row is None or seal("draft", *row[:5]) != row[5] or not isinstance(row[3], int):
        return None
    return (row[0] if isinstance(row[0], int) else None), row[3]


def put(base: Base, row: DraftRow) -> None:
    """Write the draft in place of the one before."""
    drawn = hash_of(row.picture) if row.picture is not None else None
    told = (row.parent, row.changed, row.sha256, row.at, drawn)
    base.do(
        f"INSERT OR REPLACE INTO draft (one, {_FACTS}, picture, layout) VALUES (1, ?, ?, ?, ?, ?, ?, ?, ?)",
        *told,
        seal("draft", *told),
        row.picture,
        row.text.decode("utf-8"),
    )


def changed_now(parent: int | None, at: int, text: bytes, picture: bytes | None) -> DraftRow:
    """Return a draft that changes at this moment."""
    return DraftRow(parent, now(), at, text, picture)


def read_sha(base: Base) -> object:
    """Return the hash that the file gives for its draft."""
    row = base.one("SELECT sha256 FROM draft WHERE one = 1")
    return row[0] if row else None
