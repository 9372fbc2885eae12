"""A vehicle as the shelf knows it: what stands on its card, and the words it is found by."""

import unicodedata
from collections.abc import Iterable
from datetime import UTC, datetime
from functools import lru_cache
from pathlib import Path

import msgspec

from bayboard.model.layout import Value
from bayboard.store.holder import Hold, runs
from bayboard.store.troubles import Holder

LONGEST_WORDS = 200_000  # letters by which one vehicle is found
# letters that carry their accent in one piece
_ALIKE = str.maketrans({"ø": "o", "ł": "l", "đ": "d", "ð": "d", "ħ": "h", "ı": "i", "æ": "ae", "œ": "oe"})


class RevisionNote(Value, frozen=True, kw_only=True):
    """A revision as it is listed: its number, when it was kept (UTC), its note."""

    number: int
    kept: str
    note: str


class Facts(Value, frozen=True, kw_only=True):
    """What a file says of its vehicle.

    `notes` are those of its newest revisions, newest first, `revisions` counts them all.  `printed`: when it
    was printed last (UTC), "" for never.  `hold`: who the file says has it open.  `trouble`: why it cannot
    be read, "" for a file that can.
    """

    name: str
    note: str = ""
    revisions: int = 0
    notes: tuple[RevisionNote, ...] = ()
    printed: str = ""
    hold: Hold | None = None
    trouble: str = ""


class Found(msgspec.Struct, frozen=True):
    """A vehicle on the shelf: its file, when it was last worked on (UTC), and what the index has of it.

    `words` is the text it is found by, `told` its facts unread, both in UTF-8.
    """

    file: str
    changed: str
    words: bytes
    told: bytes

    @property
    def path(self) -> Path:
        """Return the vehicle's file."""
        return Path(self.file)

    @property
    def facts(self) -> Facts:
        """Return what the file said when it was read; only its name when the index lost the rest."""
        return _facts(self.told) or Facts(name=self.path.stem)

    @property
    def holder(self) -> Holder | None:
        """Return who has it open, as far as can be told; None for nobody, or a program that is gone."""
        hold = self.facts.hold
        if hold is None or runs(hold) is False:
            return None
        return Holder(hold.user, hold.host, hold.since)


def told(facts: Facts) -> bytes:
    """Return facts as the index stores them."""
    return msgspec.json.encode(facts)


@lru_cache(maxsize=2048)
def _facts(text: bytes) -> Facts | None:
    try:
        return msgspec.json.decode(text, type=Facts)
    except msgspec.MsgspecError:
        return None


def words_of(path: Path, facts: Facts) -> bytes:
    """Return the text in which a vehicle's words are looked for."""
    texts = (facts.name, path.stem, facts.note, *(note.note for note in facts.notes))
    return plain("\n".join(texts)[:LONGEST_WORDS]).encode("utf-8", "replace")


def plain(text: str) -> str:
    """Return a text without case and accents, as it is searched."""
    if text.isascii():
        return text.lower()
    apart = unicodedata.normalize("NFKD", text)
    bare = "".join(letter for letter in apart if not unicodedata.combining(letter))
    return bare.casefold().translate(_ALIKE)


def asked_for(text: str) -> tuple[bytes, ...]:
    """Return the words of a search in UTF-8; all of them must be in a vehicle's words."""
    return tuple(dict.fromkeys(word.encode("utf-8", "replace") for word in plain(text).split()))


def chosen(text: str, vehicles: Iterable[Found]) -> tuple[Found, ...]:
    """Return those of the vehicles that a search is about, in their order."""
    asked = asked_for(text)
    if not asked:
        return tuple(vehicles)
    return tuple(v for v in vehicles if all(word in v.words for word in asked))


def newest_first(vehicles: Iterable[Found]) -> tuple[Found, ...]:
    """Return the vehicles with the one last worked on first."""
    return tuple(sorted(sorted(vehicles, key=lambda v: v.file), key=lambda v: v.changed, reverse=True))


def moment(mtime_ns: int) -> str:
    """Return a file's time of change as it is stored, UTC; "" when there is no such time."""
    try:
        return datetime.fromtimestamp(mtime_ns // 1_000_000_000, UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    except (ValueError, OverflowError, OSError):
        return ""
