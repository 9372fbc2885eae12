"""What of a damaged job file is whole: asked for row by row, and read off the pages where that fails."""

from collections.abc import Callable, Iterator
from functools import partial
from itertools import islice
from typing import Any, TypeVar

from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.store import drafts, metas, opening, photos, prints, revisions, states
from bayboard.store.base import Base
from bayboard.store.leaves import Leaves
from bayboard.store.photo_kind import photo_kind
from bayboard.store.records import Draft, PrintLine, Revision
from bayboard.store.sealed import hash_of

R = TypeVar("R")
Whole = tuple[Revision, bytes, bytes | None]

_MOST = 10_000  # rows of a table
_FAR = 2_000  # numbers that are tried where the file does not tell its last


class Salvage:
    """A damaged file; `lost` names what was there and is not whole, as far as that can be told."""

    def __init__(self, base: Base, leaves: Leaves) -> None:
        self.base = base
        self.lost: list[str] = []
        self._leaves = leaves
        self._room = 2 * leaves.size

    def revisions(self) -> Iterator[Whole]:
        """Yield every whole revision with its text and picture, in order."""
        numbers, sure = self._numbers("revision")
        if not sure:
            self.lost.append("revisions that can no longer be counted, if there were more")
        loose = {} if sure else {row[0][0]: row for row in islice(self._loose_revisions(), _MOST)}
        for number in sorted({*numbers, *loose}):
            whole = tried(partial(_revision, self.base, number)) or _loose_whole(loose.get(number))
            if whole is None:
                whole = tried(partial(self._bare, number))
            if whole is not None and self._has_room(len(whole[1])):
                yield whole
            elif sure:
                self.lost.append(f"revision {number}")

    def steps(self) -> Iterator[tuple[int, str, bytes]]:
        """Yield number, label and text of every whole undo step, in order."""
        for number in self._numbers("state")[0]:
            text = tried(partial(states.text_of, self.base, number))
            row = tried(partial(self.base.one, "SELECT label FROM state WHERE number = ?", number))
            if text is not None and row is not None:
                yield number, row[0], text

    def draft(self) -> Draft | None:
        """Return the draft, or what stands nearest to it, None when there is nothing."""
        found = tried(lambda: opening.found_draft(self.base))
        sha = tried(partial(drafts.read_sha, self.base))
        if found is not None and (not found[2] or found[0].sha256 == sha):
            return found[0]
        loose = self._loose_draft()
        if loose is not None:
            return loose
        self.lost.append("the draft itself")
        return found[0] if found is not None else self._newest_revision()

    def photos(self) -> Iterator[bytes]:
        """Yield every whole photo, each once."""
        numbers, sure = self._numbers("photo", "rowid")
        for number in numbers:
            data = tried(partial(photos.numbered, self.base, number))
            if data is not None and self._has_room(len(data)):
                yield data
            elif sure:
                self.lost.append(f"photo {number}")
        if not sure:
            self.lost.append("photos that can no longer be counted, if there were more")
            for _, (sha, _, _, loose) in self._leaves.rows(4):
                if isinstance(loose, bytes) and hash_of(loose) == sha and photo_kind(loose):
                    yield loose

    def prints(self) -> Iterator[PrintLine]:
        """Yield every whole line of the print log, in order."""
        numbers, sure = self._numbers("print")
        loose = {} if sure else {line.number: line for line in islice(self._loose_prints(), _MOST)}
        for number in sorted({*numbers, *loose}):
            line = tried(partial(prints.line_of, self.base, number)) or loose.get(number)
            if line is not None:
                yield line
            elif sure:
                self.lost.append(f"line {number} of the print log")

    def metas(self) -> dict[str, Any]:
        """Return the whole stored values by name."""
        rows = tried(lambda: self.base.few(_MOST, "SELECT name FROM meta")) or []
        values = {
            row[0]: tried(partial(metas.read_value, self.base, row[0]))
            for row in rows
            if isinstance(row[0], str)
        }
        return {name: value for name, value in values.items() if value is not None}

    def _bare(self, number: int) -> Whole | None:
        """Return a revision that has its hash, though note, time or parent are damaged, and name that."""
        found = revisions.bare(self.base, number)
        if found is None:
            return None
        self.lost.append(f"what was noted of revision {number}")
        return *found, None

    def _has_room(self, size: int) -> bool:
        """Return whether so many bytes more can have been in the file; rows that share pages have no end."""
        self._room -= size
        return self._room >= 0

    def _numbers(self, table: str, column: str = "number") -> tuple[list[int], bool]:
        """Return the numbers of a table's rows, and whether these are all; else those that may be there."""
        whole = tried(lambda: self.base.few(_MOST, f"SELECT {column} FROM {table} ORDER BY {column}"))
        if whole is not None:
            # a damaged tree may lead to a row twice
            return sorted({row[0] for row in whole if isinstance(row[0], int) and row[0] > 0}), True
        if tried(lambda: self.base.all(f"SELECT 1 FROM {table} LIMIT 0")) is None:
            return [], False
        return [n for n in range(1, _FAR) if self._may_be_there(table, column, n)], False

    def _may_be_there(self, table: str, column: str, number: int) -> bool:
        """Return whether a row is there, or cannot be told to be missing."""
        try:
            return self.base.one(f"SELECT 1 FROM {table} WHERE {column} = ?", number) is not None
        except Refused:
            return True

    def _loose_revisions(self) -> Iterator[tuple[tuple[Any, ...], Any, Any]]:
        """Yield facts, picture and layout of what the pages hold of revisions, each with its seal."""
        for number, (_, *values) in self._leaves.rows(9):
            facts = (number, *values[:6])
            if revisions.sealed(facts) is not None:
                yield facts, values[6], values[7]

    def _loose_draft(self) -> Draft | None:
        """Return the draft that changed last of those that the pages hold; older ones lie about, too."""
        newest: Draft | None = None
        for number, (_, *values) in self._leaves.rows(9):
            row = drafts.whole(tuple(values)) if number == 1 else None
            layout = tried(partial(read, row.text)) if row is not None else None
            if row is not None and layout is not None and (newest is None or row.changed > newest.changed):
                newest = Draft(layout, row.parent, row.changed, row.sha256, (), row.at)
        return newest

    def _loose_prints(self) -> Iterator[PrintLine]:
        for number, (_, *values) in self._leaves.rows(9):
            line = prints.whole((number, *values))
            if line is not None:
                yield line

    def _newest_revision(self) -> Draft | None:
        """Return the newest whole revision as a draft."""
        lost, self.lost = self.lost, []
        found = None
        for revision, text, _ in self.revisions():
            layout = tried(partial(read, text))
            if layout is not None:
                found = Draft(layout, revision.number, revision.kept, revision.sha256, (), 0)
        self.lost = lost
        return found


def tried(act: Callable[[], R]) -> R | None:
    """Return what an act returns, None when it is refused."""
    try:
        return act()
    except Refused:
        return None


def _revision(base: Base, number: int) -> Whole:
    text = revisions.text_of(base, number)
    return revisions.facts(base, number), text, tried(lambda: revisions.picture_of(base, number))


def _loose_whole(row: tuple[tuple[Any, ...], Any, Any] | None) -> Whole | None:
    """Return a row of the pages as a revision, None when its layout has not its hash."""
    if row is None:
        return None
    facts, picture, layout = row
    revision = revisions.sealed(facts)
    text = layout.encode("utf-8") if isinstance(layout, str) else b""
    if revision is None or hash_of(text) != revision.sha256:
        return None
    drawn = picture if isinstance(picture, bytes) and hash_of(picture) == facts[5] else None
    return revision, text, drawn
