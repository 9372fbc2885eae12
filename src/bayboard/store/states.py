"""Undo steps: a row of layouts, packed, the oldest dropped when they grow too many."""

from bayboard.model.refused import Refused
from bayboard.store.base import Base, Row
from bayboard.store.records import Mark
from bayboard.store.sealed import hash_of, is_hash, packed, seal, unpacked
from bayboard.store.sentences import path_words

MOST = 300
MOST_BYTES = 20_000_000
_FACTS = "number, label, sha256, seal"
_LONGEST_LABEL = 500  # letters


def marks(base: Base) -> tuple[Mark, ...]:
    """Return the steps in order, unread; their seals are looked at when they are read, for they are many."""
    rows = base.few(2 * MOST, "SELECT number, label FROM state ORDER BY number")
    return tuple(Mark(number, label[:_LONGEST_LABEL]) for number, label in rows if isinstance(label, str))


def around(base: Base, at: int) -> tuple[tuple[Mark, ...], int]:
    """Return the steps and where the draft stands among them; none and 0 when it stands at none of them."""
    there = marks(base)
    return (there, at) if any(mark.number == at for mark in there) else ((), 0)


def text_of(base: Base, number: int) -> bytes:
    """Return the normal form of a step's layout; raise `Refused` when it is gone or has not its hash."""
    row = base.one(f"SELECT {_FACTS}, layout FROM state WHERE number = ?", number)
    if row is None:
        raise Refused(path_words(base.path), "this step is no longer in the file", "Go back to a revision")
    text = unpacked(row[-1]) if isinstance(row[-1], bytes) and _is_whole(row[:-1]) else None
    if text is None or hash_of(text) != row[2]:
        raise base.damaged(f"step {number} is damaged")
    return text


def is_there(base: Base, number: int) -> bool:
    """Return whether the file holds a step."""
    return base.one("SELECT 1 FROM state WHERE number = ?", number) is not None


def last_of(base: Base, sha256: str) -> int:
    """Return the number of the last step with a hash, 0 when there is none."""
    row = base.one("SELECT max(number) FROM state WHERE sha256 = ?", sha256)
    return row[0] if row and isinstance(row[0], int) else 0


def put(base: Base, number: int, label: str, text: bytes) -> None:
    """Write a step."""
    told = (number, label[:_LONGEST_LABEL], hash_of(text))
    base.do(
        f"INSERT INTO state ({_FACTS}, layout) VALUES (?, ?, ?, ?, ?)",
        *told,
        seal("state", *told),
        packed(text),
    )


def drop_after(base: Base, upto: int) -> None:
    """Drop the steps after `upto`."""
    base.do("DELETE FROM state WHERE number > ?", upto)


def trim(base: Base, at: int) -> None:
    """Drop the oldest steps beyond what a file holds, but never the one that the draft stands at."""
    sizes = base.all("SELECT number, length(layout) FROM state ORDER BY number DESC")
    count = total = 0
    for number, size in sizes:
        count, total = count + 1, total + (size if isinstance(size, int) else 0)
        if (count > MOST or total > MOST_BYTES) and number < at:
            base.do("DELETE FROM state WHERE number <= ?", number)
            return


def _is_whole(row: Row) -> bool:
    number, label, sha, sealed = row
    fine = isinstance(label, str) and len(label) <= _LONGEST_LABEL and is_hash(sha)
    return fine and seal("state", number, label, sha) == sealed
