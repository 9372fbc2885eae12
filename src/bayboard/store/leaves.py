"""Rows read off a file's pages themselves, for where a damaged page bars SQLite's way to them.

Every page is looked at as if it were a leaf of a table, whatever leads to it; what is read is worth no more
than its seal.  The form is that of https://www.sqlite.org/fileformat.html sections 1.6 and 2.1.
"""

from collections.abc import Iterator
from pathlib import Path
from types import TracebackType
from typing import Self

from bayboard.model.raw import LARGEST_FILE
from bayboard.store.photo_kind import LARGEST_PHOTO
from bayboard.store.schema import PAGE

Value = int | float | str | bytes | None

_LEAF = 13  # the kind of page that holds rows of a table
_HEAD = 8  # bytes before the list of a leaf's cells
_FIRST = 100  # bytes of the file's header on its first page
_MOST_LOCAL = PAGE - 35  # bytes of a row that stay on its page
_LEAST_LOCAL = (PAGE - 12) * 32 // 255 - 23
_LONGEST = max(LARGEST_PHOTO, LARGEST_FILE) + 1_000_000  # bytes of a row
_LONGEST_TEXT = LARGEST_FILE // 2  # bytes; in memory a letter may take four times as much
_COLUMNS = 9  # the most that a table of ours has


class Leaves:
    """The pages of a file that SQLite need not be able to read.  `size`: bytes of the file."""

    def __init__(self, path: Path) -> None:
        self._file = path.open("rb")
        self.size = path.stat().st_size  # bytes
        self._count = -(-self.size // PAGE)
        self._left = 4 * self.size  # bytes to follow; a chain that many rows share has no end

    def __enter__(self) -> Self:
        """Return the leaves themselves."""
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Let the file go."""
        self._file.close()

    def rows(self, columns: int) -> Iterator[tuple[int, list[Value]]]:
        """Yield number and values of whatever can be read as a row of so many columns."""
        for number in range(1, self._count + 1):
            page = self._page(number)
            start = _FIRST if number == 1 else 0
            if page[start] != _LEAF:
                continue
            for cell in _cells(page, start):
                row = self._row(page, cell, columns)
                if row is not None:
                    yield row

    def _page(self, number: int) -> bytes:
        self._file.seek((number - 1) * PAGE)
        # of a file that was cut the last page is short, and still holds whole rows
        return self._file.read(PAGE).ljust(PAGE, b"\0")

    def _row(self, page: bytes, at: int, columns: int) -> tuple[int, list[Value]] | None:
        length, at = _number(page, at)
        if length > _LONGEST:
            return None
        row, at = _number(page, at)
        kinds = _kinds(page, at)
        if kinds is None or len(kinds) != columns:
            return None
        payload = self._payload(page, at, length)
        if payload is None:
            return None
        head, _ = _number(payload, 0)
        values = _values(payload, head, kinds)
        return None if values is None else (_signed(row), values)

    def _payload(self, page: bytes, at: int, length: int) -> bytes | None:
        """Return a row's bytes with those that lie on other pages, None when they are not there."""
        if length <= _MOST_LOCAL:
            return page[at : at + length]
        local = _LEAST_LOCAL + (length - _LEAST_LOCAL) % (PAGE - 4)
        local = local if local <= _MOST_LOCAL else _LEAST_LOCAL
        self._left -= length
        if self._left < 0:
            return None
        parts, had = [page[at : at + local]], local
        following = int.from_bytes(page[at + local : at + local + 4], "big")
        while had < length and 0 < following <= self._count:
            page = self._page(following)
            parts.append(page[4 : 4 + length - had])
            had += len(parts[-1])
            following = int.from_bytes(page[:4], "big")
        return b"".join(parts) if had == length else None


def _cells(page: bytes, start: int) -> list[int]:
    """Return where the cells of a leaf begin, as far as that can be."""
    count = min(int.from_bytes(page[start + 3 : start + 5], "big"), (PAGE - _HEAD) // 2)
    first = start + _HEAD
    places = [int.from_bytes(page[n : n + 2], "big") for n in range(first, first + 2 * count, 2)]
    return [place for place in places if first <= place < PAGE]


def _kinds(page: bytes, at: int) -> list[int] | None:
    """Return the kinds of a row's values, None when there is no such list."""
    end, place = _number(page, at)
    kinds: list[int] = []
    while place < at + end and len(kinds) <= _COLUMNS:
        kind, place = _number(page, place)
        kinds.append(kind)
    return kinds if place == at + end else None


def _values(payload: bytes, at: int, kinds: list[int]) -> list[Value] | None:
    values: list[Value] = []
    for kind in kinds:
        length = _length(kind)
        data = payload[at : at + length]
        if len(data) < length or (kind % 2 and length > _LONGEST_TEXT):
            return None
        values.append(_value(kind, data))
        at += length
    return values


def _length(kind: int) -> int:
    if kind >= 12:
        return (kind - 12) // 2
    return (0, 1, 2, 3, 4, 6, 8, 8, 0, 0, 0, 0)[kind]


def _value(kind: int, data: bytes) -> Value:
    if kind >= 12:
        return data.decode("utf-8", "replace") if kind % 2 else data
    if kind in (8, 9):
        return kind - 8
    if kind in (0, 7, 10, 11):
        return None  # no column of a sealed row holds a broken number
    return int.from_bytes(data, "big", signed=True)


def _number(data: bytes, at: int) -> tuple[int, int]:
    """Return a number of one to nine bytes and where it ends; 0 beyond the end."""
    value = 0
    for place in range(at, min(at + 8, len(data))):
        value = value << 7 | data[place] & 0x7F
        if data[place] < 0x80:
            return value, place + 1
    return (value << 8 | data[at + 8], at + 9) if at + 8 < len(data) else (0, len(data))


def _signed(value: int) -> int:
    return value - 2**64 if value >= 2**63 else value
