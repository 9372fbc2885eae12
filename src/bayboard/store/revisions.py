"""Revisions: written once, listed without reading a layout."""

from bayboard.model.refused import Refused
from bayboard.store.base import Base, Row
from bayboard.store.records import Revision
from bayboard.store.sealed import hash_of, is_hash, is_time, now, seal
from bayboard.store.sentences import path_words

LONGEST_NOTE = 2_000  # letters
MOST = 10_000  # revisions of a file
_DAMAGED = "(damaged)"
_FACTS = "number, parent, kept, note, sha256, picture_sha256, seal"


def listed(base: Base) -> tuple[Revision, ...]:
    """Return what was kept, oldest first; a line whose seal is broken says so in its note."""
    rows = base.few(MOST, f"SELECT {_FACTS} FROM revision ORDER BY number")
    found = (_listed(row) for row in rows)
    return tuple(revision for revision in found if revision is not None)


def facts(base: Base, number: int) -> Revision:
    """Return what is told of one revision; raise `Refused` when there is none or its seal is broken."""
    return _sealed(base, number, base.one(f"SELECT {_FACTS} FROM revision WHERE number = ?", number))


def newest(base: Base) -> int | None:
    """Return the number of the newest revision, None before the first."""
    row = base.one("SELECT max(number) FROM revision")
    return row[0] if row and isinstance(row[0], int) else None


def text_of(base: Base, number: int) -> bytes:
    """Return the normal form of a revision; raise `Refused` when it does not have its hash."""
    row = base.one(f"SELECT {_FACTS}, layout FROM revision WHERE number = ?", number)
    revision = _sealed(base, number, row and row[:-1])
    text = row[-1].encode("utf-8") if row and isinstance(row[-1], str) else b""
    if hash_of(text) != revision.sha256:
        raise base.damaged(f"revision {number} is damaged")
    return text


def bare(base: Base, number: int) -> tuple[Revision, bytes] | None:
    """Return a revision and its text, which has its hash, though what is told of it is damaged; else None."""
    row = base.one("SELECT kept, note, sha256, layout FROM revision WHERE number = ?", number)
    if row is None or not isinstance(row[3], str) or number > MOST:
        return None
    kept, note, sha, text = *row[:3], row[3].encode("utf-8")
    if hash_of(text) != sha:
        return None
    told = tidy(f"{_DAMAGED} {note[:LONGEST_NOTE]}") if isinstance(note, str) else _DAMAGED
    return Revision(number, None, kept if is_time(kept) else now(), told, sha), text


def picture_of(base: Base, number: int) -> bytes | None:
    """Return the picture of a revision, None when it has none."""
    row = base.one(f"SELECT {_FACTS}, picture FROM revision WHERE number = ?", number)
    _sealed(base, number, row and row[:-1])
    if row is None or row[5] is None:
        return None
    if not isinstance(row[-1], bytes) or hash_of(row[-1]) != row[5]:
        raise base.damaged(f"the picture of revision {number} is damaged")
    return row[-1]


def add(base: Base, revision: Revision, text: bytes, picture: bytes | None) -> None:
    """Write a revision."""
    drawn = hash_of(picture) if picture is not None else None
    told = (revision.number, revision.parent, revision.kept, revision.note, revision.sha256, drawn)
    base.do(
        f"INSERT INTO revision ({_FACTS}, picture, layout) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        *told,
        seal("revision", *told),
        picture,
        text.decode("utf-8"),
    )


def following(base: Base, parent: int | None, note: str, text: bytes) -> Revision:
    """Return the revision that comes next."""
    last = newest(base) or 0
    if last >= MOST:
        raise Refused(path_words(base.path), f"{MOST} revisions are all it takes", "Go on in a copy")
    return Revision(last + 1, parent, now(), tidy(note), hash_of(text))


def tidy(note: str) -> str:
    """Return a note in one line: what cannot be shown becomes a space."""
    shown = "".join(letter if letter.isprintable() else " " for letter in note[: 2 * LONGEST_NOTE])
    return " ".join(shown.split())[:LONGEST_NOTE]


def _sealed(base: Base, number: int, row: Row | None) -> Revision:
    if row is None:
        raise Refused(path_words(base.path), f"there is no revision {number}", _have(base))
    revision = sealed(row)
    if revision is None:
        raise base.damaged(f"revision {number} is damaged")
    return revision


def sealed(row: Row) -> Revision | None:
    """Return a row as a revision, None when its seal is broken."""
    revision = _revision(row)
    return revision if revision is not None and seal("revision", *row[:6]) == row[6] else None


def _have(base: Base) -> str:
    last = newest(base)
    return "Nothing is kept in it yet" if last is None else f"The newest is {last}"


def _listed(row: Row) -> Revision | None:
    revision = _revision(row)
    if revision is None or seal("revision", *row[:6]) == row[6]:
        return revision
    return Revision(
        revision.number, revision.parent, revision.kept, f"{_DAMAGED} {revision.note}", revision.sha256
    )


def _revision(row: Row) -> Revision | None:
    """Return the row as a revision, None when its values are not of that kind."""
    number, parent, kept, note, sha, drawn, mark = row
    fine = isinstance(number, int) and (parent is None or isinstance(parent, int))
    fine = fine and is_time(kept) and is_hash(sha)
    fine = fine and isinstance(note, str) and len(note) <= LONGEST_NOTE
    fine = fine and (drawn is None or is_hash(drawn)) and is_hash(mark)
    return Revision(number, parent, kept, tidy(note), sha) if fine else None
